"""The lines of the plan page that differ with the practice: bed, mix, water, sowing, tasks."""

from assistant.agronomy import constants_work as w
from assistant.agronomy import mat
from assistant.agronomy.practices import PieceKind, Practice
from assistant.agronomy.quantities import Quantities, WarningCode
from assistant.agronomy.rounding import Measure, measured, pails_of
from assistant.agronomy.seed import G_PER_KG, sprouted_kg
from assistant.agronomy.tasks import Task
from assistant.agronomy.work import loads
from assistant.wording import messages_plan as m
from assistant.wording.day import what_of
from assistant.wording.day_practice import Make, counts_mats, make_of, parts_of
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
    if piece is None:
        size = (w.OPEN_BED_LENGTH_M.value, w.OPEN_BED_WIDTH_M.value)
        count = mat.beds(q.nursery_area_m2, *size)
        beds = m.BEDS_OPEN(count=count, length=size[0], width=size[1])
        return m.BED_OPEN(bed=bed), beds
    if is_mat(practice):
        return (m.BED(bed=bed, mats=q.mats),)
    length, width = _cm(piece.length_m.value), _cm(piece.width_m.value)
    sized = m.BED_MATS if counts_mats(practice) else m.BED_TRAYS
    return (sized(bed=bed, mats=q.mats, length=length, width=width),)


def frame_line(practice: Practice) -> Say | None:
    """The frame that shapes mats, where there is one."""
    piece = practice.bed.piece
    if not practice.bed.has_frame or piece is None:
        return None
    if is_mat(practice):
        return m.FRAME()
    length, width = _cm(piece.length_m.value), _cm(piece.width_m.value)
    return m.FRAME_SIZE(length=length, width=width, depth=_cm(practice.bed.depth_m.value))


def mix_line(q: Quantities, practice: Practice) -> Say:
    """What is brought onto the bed, in pails or, for a small bed, in parts."""
    small = WarningCode.SMALL_MIX in q.warnings
    litres = measured(q.soil_mix_m3 * mat.L_PER_M3, Measure.MIX_L)
    if not (q.soil_pails or q.rice_hull_pails):
        return m.MANURE(mix=litres, pails=pails_of(litres, q.pail_litres))
    cubic = measured(q.soil_mix_m3, Measure.MIX_M3)
    if not is_mat(practice):
        deep, mix = (m.MIX_DEEP_SMALL, litres) if small else (m.MIX_DEEP, cubic)
        return deep(mix=mix, depth=_cm(practice.bed.depth_m.value), parts=parts_of(q))
    if small:
        return m.MIX_SMALL(mix=litres)
    return m.MIX(mix=cubic, soil=q.soil_pails, manure=q.manure_pails, hull=q.rice_hull_pails)


def water_lines(q: Quantities, practice: Practice) -> tuple[Say, ...]:
    """The water that stands, and what each watering by hand takes."""
    by_hand = mat.watering_l(q.nursery_area_m2)
    watering = m.WATERING(
        litres=measured(by_hand, Measure.WATER_L), pails=pails_of(by_hand, q.pail_litres)
    )
    if not q.flood_water_l:
        return (watering,)
    litres = measured(q.flood_water_l, Measure.WATER_L)
    pails = pails_of(q.flood_water_l, q.pail_litres)
    if is_mat(practice):
        return (watering, m.WATER(litres=litres, pails=pails))
    depth = _cm(practice.bed.flood_depth_m.value)
    stands = m.WATER_DEEP(litres=litres, pails=pails, depth=depth)
    return (watering, stands) if practice.bed.piece else (stands,)


def sharing_lines(q: Quantities, practice: Practice) -> tuple[Say, Say]:
    """How the seed is shared out, and what the loads weigh."""
    pail = loads.pail_of_mix_kg(q.pail_litres)
    low, high = (measured(end, Measure.WEIGHT_KG) for end in pail)
    piece = practice.bed.piece
    if piece is None:
        grams = sprouted_kg(mat.seed_g_per_m2(q.seed_kg, q.nursery_area_m2) / G_PER_KG)
        sow = m.SOW_OPEN(grams=measured(grams * G_PER_KG, Measure.SEED_G))
        return sow, m.LOADS_PAIL(litres=q.pail_litres, high=high)
    heaps, weigh = m.HEAPS, m.LOADS
    if piece.kind is PieceKind.TRAY:
        heaps, weigh = m.HEAPS_TRAYS, m.LOADS_TRAY
    weight = measured(loads.wet_mat_kg(practice), Measure.WEIGHT_KG)
    grams = measured(q.sprouted_per_mat_g, Measure.SEED_G)
    return (
        heaps(mats=q.mats, grams=grams),
        weigh(mat=weight, litres=q.pail_litres, low=low, high=high),
    )


def task_name(task: Task, practice: Practice) -> Say:
    """A task's short name, in the words that fit the practice."""
    return what_of(task.code, practice)
