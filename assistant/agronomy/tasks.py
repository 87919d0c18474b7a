"""The things to do: their codes, and one of them on its day."""

import datetime as dt
from dataclasses import dataclass
from enum import StrEnum


class TaskCode(StrEnum):
    """One thing to do; the order here is the order of work within a day.

    The calendar of a plan holds all but those that follow on something that happened: a seed
    test begun, seed added to a thin bed, a flood, a field planted (see `followups`); and but
    for the making of a bed of mats or trays (see `life.making`).
    """

    SEED_TEST = "seed_test"
    SEED_COUNT = "seed_count"
    SEED_HELD = "seed_held"
    AFTER_FLOOD = "after_flood"
    COLLECT = "collect"
    FIELD_FLOOD = "field_flood"
    FIELD_PLOUGH = "field_plough"
    MIX = "mix"
    SOAK = "soak"
    DRAIN_SEED = "drain_seed"
    MAKE_BED = "make_bed"
    SOW = "sow"
    RAIN_WATCH = "rain_watch"
    WATER = "water"
    FIELD_PUDDLE = "field_puddle"
    UNCOVER_FLOOD = "uncover_flood"
    KEEP_WATER = "keep_water"
    COLOUR_CHECK = "colour_check"
    LEAF_COUNT = "leaf_count"
    CHOOSE_DAY = "choose_day"
    FIELD_LEVEL = "field_level"
    DRAIN_BED = "drain_bed"
    TRANSPLANT = "transplant"
    OVERDUE = "overdue"
    MORE_SOW = "more_sow"
    MORE_UNCOVER = "more_uncover"
    MORE_READY = "more_ready"
    YOUNG_FIELD = "young_field"
    FILL_GAPS = "fill_gaps"
    FIRST_FEED = "first_feed"
    SEASON_RESULT = "season_result"


@dataclass(frozen=True)
class Task:
    """One task: its day from sowing, its date, and its last date where it lasts.

    A task that lasts is done every `every_d` days.
    """

    code: TaskCode
    day: int
    date: dt.date
    until: dt.date | None = None
    every_d: int = 1
