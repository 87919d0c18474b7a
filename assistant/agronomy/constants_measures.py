"""Measures that a farmer has: a level spoon, a bottle cap; what seed and urea weigh in them.

As in `constants`: each number stands here once, with its source or an honest word.
"""

from assistant.agronomy.sourced import sources as s
from assistant.agronomy.sourced.constant import Constant, HowSure, chosen, published

SPROUTED_KG_PER_L = published(
    "sprouted_kg_per_l",
    0.587,
    "kg per L",
    s.PIDS_2005,
    low=0.55,
    high=0.62,
    note="sprouted and drained: 15-30 L are 8.8-17.6 kg; the range is that of dry paddy",
)
UREA_KG_PER_L = published(
    "urea_kg_per_l",
    0.75,
    "kg per L",
    s.UREA_TRADE,
    low=0.67,
    high=0.80,
    note="granules 0.73-0.77, middle of a plain trade page; 10-12 g on a level spoon give the "
    "range",
)
SPOON_ML = published(
    "spoon_ml",
    15.0,
    "mL",
    s.LSU_MEASURES,
    low=14.8,
    high=15.0,
    note="a level tablespoon; 32 to the pint of 473 mL; 15 by the metric spoon",
)
CAP_ML = chosen(
    "cap_ml",
    6.4,
    "mL",
    s.EHINGA,
    how_sure=HowSure.JUDGEMENT,
    low=5.0,
    high=7.5,
    note="the cap of a water bottle, level: 6 g of compound fertilizer (Rwanda), that is some "
    "0.93 kg/L; caps differ, so a cap is filled with water and counted into a spoon first",
)

MEASURE_CONSTANTS = tuple(
    value for value in tuple(globals().values()) if isinstance(value, Constant)
)
