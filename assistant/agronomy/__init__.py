"""What the trade knows: quantities, calendar and the sourced constants behind them.

`field` the inputs of one nursery; `quantities` what it needs; `calendar` its days; `nursery`
both for one bed; `constants` every number with its source (`SOURCES.md` is made from it).
All functions are pure; units are in the names.
"""
