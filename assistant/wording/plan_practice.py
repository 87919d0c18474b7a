"""The lines of the plan page that differ with the practice: bed, mix, water, sowing, tasks."""

from assistant.agronomy import constants_work as w
from assistant.agronomy import mat
from assistant.agronomy.life.making import ground_m2, laid_m2
from assistant.agronomy.practices import PieceKind, Practice
from assistant.agronomy.quantities import Quantities
from assistant.agronomy.rounding import Measure, measured
from assistant.agronomy.tasks import Task
from assistant.agronomy.told import mix_told, square_metre_told_g
from assistant.agronomy.work import loads
from assistant.wording import amounts
from assistant.wording import messages_plan as plan
from assistant.wording.day import what_of
from assistant.wording.day_practice import Make, batch_of, make_of, parts_of
from assistant.wording.message import Say

CM_PER_M = 100.0


def is_mat(practice: Practice) -> bool:
    """Whether the words for mats fit: they name a frame of 50 x 30 cm."""
    return make_of(practice) is Make.MAT


def _cm(metres: float) -> float:
    return round(metres * CM_PER_M, 1)


def bed_lines(q: Quantities, practice: Practice) -> tuple[Say, ...]:
    """The bed, and the mats or trays on it, or the beds that make it up."""
    bed, piece = measured(q.nursery_area_m2, Measure.AREA_M2), practice.bed.piece
    strip, laid = w.STRIP_WIDTH_M.value, laid_m2(q, practice)
    ground = plan.GROUND(ground=measured(ground_m2(laid), Measure.AREA_M2), strip=strip)
    if piece is None:
        size = (w.OPEN_BED_LENGTH_M.value, w.OPEN_BED_WIDTH_M.value)
        count = mat.beds(q.nursery_area_m2, *size)
        beds = plan.BEDS_OPEN(count=count, length=size[0], width=size[1])
        return plan.BED_OPEN(bed=bed), beds
    if is_mat(practice):
        return plan.BED(bed=bed, mats=amounts.mats(practice, q.mats)), ground
    length, width = _cm(piece.length_m.value), _cm(piece.width_m.value)
    mats = amounts.mats(practice, q.mats)
    return plan.BED_MATS(bed=bed, mats=mats, length=length, width=width), ground


def frame_line(practice: Practice) -> Say | None:
    """The frame that shapes mats, where there is one."""
    piece = practice.bed.piece
    if not practice.bed.has_frame or piece is None:
        return None
    if is_mat(practice):
        return plan.FRAME()
    length, width = _cm(piece.length_m.value), _cm(piece.width_m.value)
    return plan.FRAME_SIZE(length=length, width=width, depth=_cm(practice.bed.depth_m.value))


def mix_line(q: Quantities, practice: Practice) -> Say:
    """What is brought onto the bed, in pails or, for a small bed, in parts."""
    told = mix_told(q, practice)
    if not (q.soil_pails or q.rice_hull_pails):
        return plan.MANURE(mix=amounts.water_at_length(told.litres, q.pail_litres))
    cubic = measured(q.soil_mix_m3, Measure.MIX_M3)
    if not is_mat(practice):
        depth = _cm(practice.bed.depth_m.value)
        if told.in_pails:
            return plan.MIX_DEEP(mix=cubic, depth=depth, parts=parts_of(told))
        return plan.MIX_DEEP_SMALL(mix=told.litres, depth=depth, parts=batch_of(practice))
    if not told.in_pails:
        return plan.MIX_SMALL(mix=told.litres)
    return plan.MIX(mix=cubic, soil=told.soil, manure=told.manure, hull=told.hull)


def water_lines(q: Quantities, practice: Practice) -> tuple[Say, ...]:
    """The water that stands, and what each watering by hand takes."""
    by_hand = mat.watering_l(q.nursery_area_m2, practice)
    watering = plan.WATERING(water=amounts.water_at_length(by_hand, q.pail_litres))
    if not q.flood_water_l:
        return (watering,)
    water = amounts.water_at_length(q.flood_water_l, q.pail_litres)
    if is_mat(practice):
        return (watering, plan.WATER(water=water))
    depth = _cm(practice.bed.flood_depth_m.value)
    stands = plan.WATER_DEEP(water=water, depth=depth)
    return (watering, stands) if practice.bed.piece else (stands,)


def sharing_lines(q: Quantities, practice: Practice) -> tuple[Say, Say]:
    """How the seed is shared out, and what the loads weigh."""
    pail = loads.pail_of_mix_kg(q.pail_litres)
    low, high = (measured(end, Measure.WEIGHT_KG) for end in pail)
    piece = practice.bed.piece
    if piece is None:
        sow = plan.SOW_OPEN(grams=square_metre_told_g(q))
        return sow, plan.LOADS_PAIL(litres=q.pail_litres, high=high)
    weigh = plan.LOADS_TRAY if piece.kind is PieceKind.TRAY else plan.LOADS
    weight = measured(loads.wet_mat_kg(practice), Measure.WEIGHT_KG)
    return (
        plan.HEAPS(heaps=amounts.heaps(q, practice)),
        weigh(mat=weight, litres=q.pail_litres, low=low, high=high),
    )


def task_name(task: Task, practice: Practice) -> Say:
    """A task's short name, in the words that fit the practice."""
    return what_of(task.code, practice)
