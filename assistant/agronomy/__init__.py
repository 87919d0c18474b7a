"""What the trade knows: quantities, calendar and the sourced constants behind them.

`field` the inputs of one nursery; `quantities` what it needs; `calendar` its days; `nursery`
all of it for one bed; `practices` the ways of raising seedlings; `lot` the seed in hand;
`growth` what is counted on the bed; `work` hours, loads and cost; `season` its end and what is
learned; `constants` and `constants_work` every number with its source (`sourced`), from which
`SOURCES.md` is made. All functions are pure; units are in the names.
"""
