"""What is said of beds that are no mats: a table of texts that stand instead of those for mats.

The texts of the house speak of mats. Where a bed is a tray, or an open bed that is flooded or
only watered, another text with the same sense stands here; what fits all has no row.
"""

from collections.abc import Mapping
from enum import StrEnum

from assistant.agronomy.nursery import Nursery
from assistant.agronomy.practices import PieceKind, Practice
from assistant.agronomy.tasks import TaskCode
from assistant.wording import messages_care as c
from assistant.wording import messages_plan as plan
from assistant.wording import messages_practice as p
from assistant.wording import messages_result as r
from assistant.wording import messages_seed as s
from assistant.wording import messages_talk as m
from assistant.wording import messages_tasks as t
from assistant.wording.message import Message, Say


class Make(StrEnum):
    """The kinds of bed that texts tell apart."""

    MAT = "mat"
    TRAY = "tray"
    WET = "wet"  # open, water stands on it
    DRY = "dry"  # open, only watered


def make_of(practice: Practice) -> Make:
    """The kind of bed of a practice, by what its file says of it."""
    bed = practice.bed
    if bed.piece is not None:
        return Make.MAT if bed.piece.kind is PieceKind.MAT else Make.TRAY
    return Make.WET if bed.flood_depth_m.value > 0 else Make.DRY


# What names a number of leaves, a mat or the two days of draining fits no other bed.
_NO_MAT: Mapping[Message, Message] = {
    t.P_WINDOW: p.P_WINDOW,
    t.P_OVERDUE: p.P_OVERDUE,
    t.P_OVERDUE_OLD: p.P_OVERDUE_OLD,
    t.P_FILL_GAPS: p.P_FILL_GAPS,
    t.P_RESULT: p.P_RESULT,
    t.ASK_MATS: p.ASK_SUFFICED,
    m.GREEN_NOTED: p.GREEN_NOTED,
    m.LEAVES_FEW: p.LEAVES_FEW,
    m.PAST_WINDOW: p.PAST_WINDOW,
    m.TRANSPLANTED_NOTED: p.PLANTED_NOTED,
    m.TRANSPLANT_OUTSIDE: p.PLANT_OUTSIDE,
    c.STAND_FILL: p.STAND_FILL,
    c.DO_FILL: p.DO_FILL,
    c.FILL_NOTED: p.FILL_NOTED,
    r.ASK_MATS: p.ASK_SUFFICED_OF,
    s.MIXED: p.MIXED,
    r.MATS_LEFT: p.SOME_LEFT,
    r.ASK_RESOWN: p.ASK_RESOWN,
    r.SURPLUS: p.SURPLUS,
    r.SHORT: p.SHORT,
}
_OPEN: Mapping[Message, Message] = {
    **_NO_MAT,
    t.P_COLLECT: p.P_COLLECT_OPEN,
    t.P_COLLECT_SMALL: p.P_COLLECT_OPEN,
    t.P_TRANSPLANT: p.P_PULL,
    m.RESULT_SEED: p.SEED_OPEN,
    m.RESULT_MIX: p.MIX_OPEN,
    m.RESULT_MIX_SMALL: p.MIX_OPEN,
    m.RESULT_DATES: p.DATES_OPEN,
    m.RESULT_DATES_SOWN: p.SOWN_OPEN,
    m.SOWING_MOVED: p.MOVED_OPEN,
    m.TRANSPLANT_SET: p.PLANT_DAY_OPEN,
    m.SOWN_NOTED: p.SOWN_NOTED,
    c.AGAIN_DATES: p.MOVED_OPEN,
    c.PLANT_LIFT: p.PULL_TIP,
}
INSTEAD: Mapping[Make, Mapping[Message, Message]] = {
    Make.MAT: {},
    Make.TRAY: {
        **_NO_MAT,
        t.P_COLLECT: p.P_COLLECT_TRAYS,
        t.P_COLLECT_SMALL: p.P_COLLECT_TRAYS,
        t.P_MIX: p.P_MIX_TRAYS,
        t.P_MIX_SMALL: p.P_MIX_TRAYS,
        t.P_SOW: p.P_SOW_TRAYS,
        t.P_UNCOVER: p.P_UNCOVER_TRAYS,
        t.P_UNCOVER_RAIN: p.P_WAIT_TRAYS,
        t.P_KEEP_WATER: p.P_KEEP_TRAYS,
        t.P_DRAIN_BED: p.P_DRAIN_TRAYS,
        t.P_TRANSPLANT: p.P_PLANT_TRAYS,
        m.RESULT_SEED: p.SEED_TRAYS,
        m.RESULT_MIX: p.MIX_TRAYS,
        m.RESULT_MIX_SMALL: p.MIX_TRAYS,
        c.M_WATER: p.M_DEEP,
    },
    Make.WET: {
        **_OPEN,
        t.P_MIX: p.P_BED_WET,
        t.P_MIX_SMALL: p.P_BED_WET,
        t.P_DRAIN_SEED: p.P_DRAIN_SEED,
        t.P_SOW: p.P_SOW_WET,
        t.P_WATER: p.P_WET,
        t.P_UNCOVER: p.P_LET_IN,
        t.P_UNCOVER_RAIN: p.P_WAIT_WET,
        t.P_KEEP_WATER: p.P_KEEP_WET,
        p.P_KEEP_UNSURE: p.P_LET_IN,
        m.NOT_UP_NOTED: p.NOT_UP_WET,
        c.M_WATER: p.M_DEEP,
    },
    Make.DRY: {
        **_OPEN,
        t.P_MIX: p.P_BED_DRY,
        t.P_MIX_SMALL: p.P_BED_DRY,
        t.P_SOW: p.P_SOW_DRY,
        t.P_WATER: p.P_WATER_DRY,
    },
}


def fitting(message: Message, nursery: Nursery) -> Message:
    """The text that fits the bed of a nursery."""
    return INSTEAD[make_of(nursery.practice)].get(message, message)


CM_PER_M = 100.0


def depth_cm(practice: Practice) -> float:
    """The water that stands on a bed or round it [cm]."""
    return round(practice.bed.flood_depth_m.value * CM_PER_M, 1)


def open_bed_name(code: TaskCode, practice: Practice) -> Say | None:
    """A task's short name on an open bed, where it differs from that for mats."""
    if practice.bed.piece is not None:
        return None
    if code is TaskCode.MIX:
        return plan.N_MAKE_BED()
    if code is TaskCode.WATER:
        rule = next(each for each in practice.days.tasks if each.code is code)
        if rule.every_d > 1:
            return plan.N_WATER_EVERY(days=rule.every_d)
        return plan.N_WET_MUD()
    if code is TaskCode.UNCOVER_FLOOD:
        return plan.N_LET_IN()
    if code is TaskCode.KEEP_WATER:
        return plan.N_KEEP_DEEP(depth=depth_cm(practice))
    return None
