"""The mat, which the core knows without a file; `mat.toml` says the same and shows the form."""

from collections.abc import Mapping
from types import MappingProxyType

from assistant.agronomy import constants as c
from assistant.agronomy import constants_work as w
from assistant.agronomy.practices.practice import (
    Anchor,
    BedMake,
    DayPoint,
    Days,
    Labour,
    MatSize,
    PieceKind,
    Planting,
    Practice,
    TaskRule,
    Window,
)
from assistant.agronomy.sourced.constant import Constant, practice
from assistant.agronomy.tasks import TaskCode


def plain_days(days: float) -> Constant:
    """Days that follow from what they hang on and need no source: the day itself, the next."""
    return practice("days", days, "days")


def _at(anchor: Anchor, days: Constant | int = 0) -> DayPoint:
    return DayPoint(anchor, days if isinstance(days, Constant) else plain_days(days))


_SOW, _UNCOVER, _DRAIN = Anchor.SOW, Anchor.UNCOVER, Anchor.DRAIN

MAT = Practice(
    code="mat",
    names=(
        ("en", "mat"),
        ("sw", "mkeka"),
        ("fr", "tapis"),
        ("hi", "चटाई"),
        ("bn", "ম্যাট"),
        ("id", "tikar bibit"),
        ("vi", "thảm mạ"),
        ("pt", "tapete"),
        ("fil", "banig"),
    ),
    bed=BedMake(
        share=c.NURSERY_SHARE,
        max_seeds_per_cm2=c.MAX_SEEDS_PER_CM2,
        depth_m=c.MAT_DEPTH_M,
        soil_parts=c.SOIL_PARTS,
        manure_parts=c.MANURE_PARTS,
        hull_parts=c.HULL_PARTS,
        flood_depth_m=c.FLOOD_DEPTH_M,
        sheet_allowance=c.SHEET_ALLOWANCE,
        piece=MatSize(PieceKind.MAT, c.MAT_LENGTH_M, c.MAT_WIDTH_M),
        has_frame=True,
    ),
    planting=Planting(c.SPACING_CM, c.SPACING_CM, c.SEEDLINGS_PER_HILL, c.ESTABLISHMENT),
    window=Window(
        first=c.TRANSPLANT_FIRST_DAY,
        last=c.TRANSPLANT_LAST_DAY,
        assumed=c.TRANSPLANT_ASSUMED_DAY,
        earliest=c.TRANSPLANT_EARLIEST_DAY,
        latest=c.TRANSPLANT_LATEST_DAY,
        leaves_first=c.LEAVES_FIRST,
        leaves_last=c.LEAVES_LAST,
    ),
    days=Days(
        uncover=c.UNCOVER_DAY,
        uncover_latest=c.UNCOVER_LATEST_DAY,
        drain_before=c.DRAIN_BEFORE_TRANSPLANT_D,
        tasks=(
            TaskRule(TaskCode.SEED_TEST, _at(_SOW, c.SEED_TEST_DAY)),
            TaskRule(TaskCode.COLLECT, _at(_SOW, c.COLLECT_DAY)),
            TaskRule(TaskCode.MIX, _at(_SOW, c.MIX_DAY)),
            TaskRule(TaskCode.SOAK, _at(_SOW, c.SOAK_DAY)),
            TaskRule(TaskCode.DRAIN_SEED, _at(_SOW, c.DRAIN_SEED_DAY)),
            TaskRule(TaskCode.SOW, _at(_SOW)),
            TaskRule(TaskCode.WATER, _at(_SOW), _at(_UNCOVER, -1)),
            TaskRule(TaskCode.RAIN_WATCH, _at(_SOW), _at(_SOW, c.RAIN_WATCH_LAST_DAY)),
            TaskRule(TaskCode.UNCOVER_FLOOD, _at(_UNCOVER)),
            TaskRule(TaskCode.KEEP_WATER, _at(_UNCOVER, 1), _at(_DRAIN, -1)),
            TaskRule(TaskCode.COLOUR_CHECK, _at(_SOW, c.COLOUR_CHECK_DAY)),
            TaskRule(TaskCode.LEAF_COUNT, _at(_SOW, c.LEAF_COUNT_DAY)),
            TaskRule(TaskCode.CHOOSE_DAY, _at(_SOW, c.LEAF_COUNT_DAY)),
            TaskRule(TaskCode.DRAIN_BED, _at(_DRAIN)),
        ),
    ),
    labour=Labour(w.MAT_RAISE_H_PER_M2, w.MAT_LIFT_H_PER_HA, w.PLANTING_H_PER_HA),
)

MAT_ONLY: Mapping[str, Practice] = MappingProxyType({MAT.code: MAT})
