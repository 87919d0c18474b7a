"""What is said of beds that are no mats: a table of texts that stand instead of those for mats.

The texts of the house speak of mats. Where a bed is a tray, or an open bed that is flooded or
only watered, another text with the same sense stands here; what fits all has no row.
"""

from collections.abc import Mapping
from enum import StrEnum

from assistant.agronomy.constants_work import BY_HAND_MOST_L
from assistant.agronomy.mat import watered_every_d, watering_l
from assistant.agronomy.nursery import Nursery
from assistant.agronomy.practices import MAT, PieceKind, Practice
from assistant.agronomy.tasks import TaskCode
from assistant.agronomy.told import MixTold
from assistant.wording import messages_again as again
from assistant.wording import messages_care as care
from assistant.wording import messages_cautions as h
from assistant.wording import messages_plan as plan
from assistant.wording import messages_practice as p
from assistant.wording import messages_result as r
from assistant.wording import messages_seed as seed
from assistant.wording import messages_steps as steps
from assistant.wording import messages_talk as m
from assistant.wording import messages_tasks as t
from assistant.wording.message import Listed, Message, Say


class Make(StrEnum):
    """The kinds of bed that texts tell apart."""

    MAT = "mat"
    OTHER_MAT = "other_mat"  # of another size, mix or window than the texts name
    TRAY = "tray"
    WET = "wet"  # open, water stands on it
    DRY = "dry"  # open, only watered


def make_of(practice: Practice) -> Make:
    """The kind of bed of a practice, by what its file says of it."""
    bed = practice.bed
    if bed.piece is None:
        return Make.WET if bed.flood_depth_m.value > 0 else Make.DRY
    if bed.piece.kind is PieceKind.TRAY:
        return Make.TRAY
    return Make.MAT if _named(practice) == _named(MAT) else Make.OTHER_MAT


def _named(practice: Practice) -> tuple[float, ...]:
    """The numbers of a practice that the texts for mats have in words."""
    bed, window, piece = practice.bed, practice.window, practice.bed.piece
    numbers = (
        *(bed.depth_m, bed.soil_parts, bed.manure_parts, bed.hull_parts, bed.flood_depth_m),
        *((piece.length_m, piece.width_m) if piece else ()),
        *(window.first, window.last, window.leaves_first, window.leaves_last),
    )
    return tuple(number.value for number in numbers)


def counts_mats(practice: Practice) -> bool:
    """Whether its bed is told of in mats."""
    return make_of(practice) in (Make.MAT, Make.OTHER_MAT)


# What names a mat fits no other bed.
_NO_MAT: Mapping[Message, Message] = {
    m.GREEN_NOTED: p.GREEN_NOTED,
    t.P_FILL_GAPS: p.P_FILL_GAPS,
    t.P_RESULT: p.P_RESULT,
    t.ASK_MATS: p.ASK_SUFFICED,
    m.TRANSPLANTED_NOTED: p.PLANTED_NOTED,
    care.STAND_FILL: p.STAND_FILL,
    care.DO_FILL: p.DO_FILL,
    care.FILL_NOTED: p.FILL_NOTED,
    r.ASK_MATS: p.ASK_SUFFICED_OF,
    seed.MIXED: p.MIXED,
    r.MATS_LEFT: p.SOME_LEFT,
    r.ASK_RESOWN: p.ASK_RESOWN,
    r.SURPLUS: p.SURPLUS,
    r.SHORT: p.SHORT,
    care.SPARE: p.SPARE,
    care.T_SPARE: p.T_SPARE,
    care.DRY_LATER: p.DROUGHT_LATER,
    care.FLOOD_EARLY: p.FLOOD_EARLY,
    m.RAIN_ADVICE_EARLY: p.RAIN_EARLY,
    plan.C_RAIN: plan.C_RAIN_BED,
    plan.C_LOAD: plan.C_LOAD_BED,
}
# Where water stands on the bed or round it, as deep as its file says.
_DEEP: Mapping[Message, Message] = {
    care.M_WATER: p.M_DEEP,
    care.COLD_LATER: p.COLD_LATER_DEEP,
    care.FLOOD_LATER: p.FLOOD_LATER_DEEP,
    m.RAIN_ADVICE_LATER: p.RAIN_LATER_DEEP,
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
    again.ALL_SOWN: again.ALL_SOWN_OPEN,
    care.AGAIN_DATES: p.MOVED_OPEN,
    care.PLANT_LIFT: p.PULL_TIP,
    plan.LIFT: plan.PULL,
}
INSTEAD: Mapping[Make, Mapping[Message, Message]] = {
    Make.MAT: {},
    Make.OTHER_MAT: {
        **_DEEP,
        t.P_COLLECT: t.P_COLLECT_SMALL,
        t.P_MIX: p.P_MIX_TRAYS,
        t.P_MIX_SMALL: p.P_MIX_TRAYS,
        m.RESULT_SEED: p.SEED_MATS,
        m.RESULT_MIX: p.MIX_TRAYS,
        m.RESULT_MIX_SMALL: p.MIX_TRAYS,
    },
    Make.TRAY: {
        **_NO_MAT,
        **_DEEP,
        t.P_COLLECT: p.P_COLLECT_TRAYS,
        t.P_COLLECT_SMALL: p.P_COLLECT_TRAYS,
        t.P_MIX: p.P_MIX_TRAYS,
        t.P_MIX_SMALL: p.P_MIX_TRAYS,
        steps.P_MAKE_BED: steps.P_MAKE_TRAYS,
        t.P_SOW: p.P_SOW_TRAYS,
        t.P_UNCOVER: p.P_UNCOVER_TRAYS,
        t.P_UNCOVER_RAIN: p.P_WAIT_TRAYS,
        t.P_KEEP_WATER: p.P_KEEP_TRAYS,
        t.P_DRAIN_BED: p.P_DRAIN_TRAYS,
        t.P_TRANSPLANT: p.P_PLANT_TRAYS,
        m.RESULT_SEED: p.SEED_TRAYS,
        m.RESULT_MIX: p.MIX_TRAYS,
        m.RESULT_MIX_SMALL: p.MIX_TRAYS,
        care.PLANT_LIFT: p.LIFT_TRAYS,
        plan.LIFT: plan.LIFT_TRAYS,
    },
    Make.WET: {
        **_OPEN,
        **_DEEP,
        t.P_MIX: p.P_BED_WET,
        t.P_MIX_SMALL: p.P_BED_WET,
        t.P_DRAIN_SEED: p.P_DRAIN_SEED,
        t.P_SOW: p.P_SOW_WET,
        h.SNAKES_AND_WATER: h.CHILDREN,
        t.P_WATER: p.P_WET,
        t.P_UNCOVER: p.P_LET_IN,
        t.P_UNCOVER_RAIN: p.P_WAIT_WET,
        t.P_KEEP_WATER: p.P_KEEP_WET,
        p.P_KEEP_UNSURE: p.P_LET_IN,
        t.P_MORE_SOW: p.P_MORE_SOW_WET,
        t.P_MORE_UNCOVER: p.P_MORE_UP_WET,
        m.NOT_UP_NOTED: p.NOT_UP_WET,
        m.NOT_UP_ADVICE: p.NOT_UP_TIP_WET,
        care.WAIT_NOTED: p.WAIT_WET,
        care.DRY_EARLY: p.DROUGHT_WET,
        care.WATERING: p.WATERING_WET,
    },
    Make.DRY: {
        **_OPEN,
        t.P_MIX: p.P_BED_DRY,
        t.P_MIX_SMALL: p.P_BED_DRY,
        t.P_SOW: p.P_SOW_DRY,
        h.SNAKES_AND_WATER: h.SNAKES,
        t.P_WATER: p.P_WATER_DRY,
        t.P_UNCOVER: p.P_UNCOVER_DRY,
        t.P_UNCOVER_RAIN: p.P_WAIT_TRAYS,
        care.M_WATER: p.M_NONE_STANDS,
        care.COLD_LATER: p.COLD_LATER_DRY,
        care.FLOOD_LATER: p.FLOOD_LATER_DRY,
        care.WATERING: p.WATERING_DRY,
        care.PLANT_LIFT: p.PULL_DRY,
        m.RAIN_ADVICE_LATER: p.RAIN_LATER_DRY,
    },
}


# What is brought onto the bed, as far as its file says that there is any of it.
_MANURE_ONLY: Mapping[Message, Message] = {
    h.HANDS_HULL: h.HANDS,
    plan.COST_MIX: plan.COST_MANURE,
    plan.C_MIX: plan.C_MANURE,
}
_NO_HULL: Mapping[Message, Message] = {
    h.HANDS_HULL: h.HANDS,
    plan.COST_MIX: plan.COST_MIX_PLAIN,
    plan.C_MIX: plan.C_MANURE,
}
# Texts for an open bed speak of manure alone.
_MORE_THAN_MANURE: Mapping[Message, Message] = {
    p.MIX_OPEN: p.MIX_TRAYS,
    p.P_COLLECT_OPEN: p.P_COLLECT_MIX,
    p.P_BED_WET: p.P_MIX_TRAYS,
    p.P_BED_DRY: p.P_MIX_TRAYS,
}


# Of a bed that takes more water than is carried by hand.
_MUCH_WATER: Mapping[Message, Message] = {
    p.P_WATER_DRY: p.P_WATER_MUCH,
    p.WATERING_DRY: p.WATERING_MUCH,
}


def fitting(message: Message, nursery: Nursery) -> Message:
    """The text that fits the bed of a nursery, and its size."""
    fits = fitting_practice(message, nursery.practice)
    if fits not in _MUCH_WATER:
        return fits
    litres = watering_l(nursery.quantities.nursery_area_m2, nursery.practice)
    return _MUCH_WATER[fits] if litres > BY_HAND_MOST_L.value else fits


def fitting_practice(message: Message, practice: Practice) -> Message:
    """The text that fits the beds of a practice."""
    fits = INSTEAD[make_of(practice)].get(message, message)
    return _by_parts(practice).get(fits, fits)


def _by_parts(practice: Practice) -> Mapping[Message, Message]:
    bed = practice.bed
    if not (bed.soil_parts.value or bed.hull_parts.value):
        return _MANURE_ONLY
    return _MORE_THAN_MANURE if bed.hull_parts.value else {**_MORE_THAN_MANURE, **_NO_HULL}


def batch_of(practice: Practice) -> Listed:
    """What one batch of a practice's mix is made of, in pails or tins."""
    bed = practice.bed
    return _listed(bed.soil_parts.value, bed.manure_parts.value, bed.hull_parts.value)


def parts_of(mix: MixTold) -> Listed:
    """What a mix is made of, in pails: only what there is any of."""
    return _listed(mix.soil, mix.manure, mix.hull)


def _listed(soil: float, manure: float, hull: float) -> Listed:
    amounts = {p.PART_SOIL: soil, p.PART_MANURE: manure, p.PART_HULL: hull}
    return Listed(tuple(part(amount=amount) for part, amount in amounts.items() if amount))


CM_PER_M = 100.0


def as_cm(metres: float) -> float:
    """A length as it is told [cm]."""
    return round(metres * CM_PER_M, 1)


def depth_cm(practice: Practice) -> float:
    """The water that stands on a bed or round it [cm]."""
    return as_cm(practice.bed.flood_depth_m.value)


def most_cm(practice: Practice) -> float:
    """The most water that is published for tall seedlings on such a bed [cm]."""
    depth = practice.bed.flood_depth_m
    return as_cm(depth.high or depth.value)


def own_name(code: TaskCode, practice: Practice) -> Say | None:
    """A task's short name where it tells a figure of the bed, or differs on an open one."""
    if code is TaskCode.KEEP_WATER:
        return plan.N_KEEP_DEEP(depth=depth_cm(practice))
    if practice.bed.piece is not None:
        return None
    if code is TaskCode.MIX:
        return plan.N_MAKE_BED()
    if code is TaskCode.WATER:
        every = watered_every_d(practice)
        return plan.N_WATER_EVERY(days=every) if every > 1 else plan.N_WET_MUD()
    if code is TaskCode.UNCOVER_FLOOD:
        return plan.N_LET_IN() if practice.bed.flood_depth_m.value else plan.N_STRAW_OFF()
    return None
