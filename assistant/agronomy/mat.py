"""The bed: its area, mats or trays, soil mix, sheet, water and the urea that may be needed.

All follow the practice; the mat where none is given. The urea is the same weak spray for every
practice: stronger or scattered urea is published for wet beds, but one rule is safe to keep.
"""

from dataclasses import replace
from typing import NamedTuple

from assistant.agronomy import constants as c
from assistant.agronomy import constants_work as w
from assistant.agronomy.field import FieldInputs
from assistant.agronomy.practices import MAT, Practice
from assistant.agronomy.rounding import whole_up
from assistant.agronomy.seed import CM2_PER_M2, G_PER_KG, seed_kg, seeds_in
from assistant.agronomy.tasks import TaskCode

L_PER_M3 = 1_000.0
G_PER_L_PERCENT = 10.0


class Pails(NamedTuple):
    """Whole pails of each part of the mix, and the measure that stands for one pail [L]."""

    soil: int
    manure: int
    rice_hull: int
    measure_litres: float


class Shares(NamedTuple):
    """The part of the mix that is soil, manure and hull [fraction]."""

    soil: float
    manure: float
    hull: float


def plain_area_m2(field_area_m2: float, practice: Practice = MAT) -> float:
    """Bed [m2] by the fixed share of the field."""
    return field_area_m2 * practice.bed.share.value


def nursery_area_m2(inputs: FieldInputs, practice: Practice = MAT) -> float:
    """Bed [m2]: a fixed share of the field, enlarged where seeds would lie too thick."""
    seeds = seeds_in(seed_kg(inputs), inputs.grain_weight_g)
    return max(
        plain_area_m2(inputs.field_area_m2, practice),
        seeds / practice.bed.max_seeds_per_cm2.value / CM2_PER_M2,
    )


def smaller_bed(inputs: FieldInputs, practice: Practice = MAT) -> Practice:
    """The practice with a bed that shrinks where little seed is sown: until seeds lie as thick
    as a mat should have them, and no smaller than the smallest share that was published."""
    share, full = practice.bed.share, c.FULL_SEEDS_PER_CM2.value
    seeds = seeds_in(seed_kg(inputs), inputs.grain_weight_g)
    needed = seeds / min(full, practice.bed.max_seeds_per_cm2.value) / CM2_PER_M2
    least = share.value if share.low is None else share.low
    own = min(max(needed / inputs.field_area_m2, least), share.value)
    return replace(practice, bed=replace(practice.bed, share=replace(share, value=own)))


def mats(area_m2: float, practice: Practice = MAT) -> int:
    """Mats or trays that cover a bed [m2], the last one begun counted whole; 0 without any."""
    piece = practice.bed.piece
    return whole_up(area_m2 / piece.area_m2) if piece else 0


def soil_mix_m3(area_m2: float, practice: Practice = MAT) -> float:
    """Mix [m3] for the practice's layer over the bed; on an open bed only the manure."""
    return area_m2 * practice.bed.depth_m.value


def mix_shares(practice: Practice = MAT) -> Shares:
    """What each part is of the mix."""
    bed = practice.bed
    parts = (bed.soil_parts.value, bed.manure_parts.value, bed.hull_parts.value)
    return Shares(*(part / sum(parts) for part in parts))


def pails(mix_m3: float, pail_litres: float, practice: Practice = MAT) -> Pails:
    """Whole batches of the mix, rounded up.

    Below one batch the parts stay as they are and the measure shrinks: of a mat's 7 : 2 : 1
    `measure_litres` is then a tenth of the mix and the pails are still counted 7, 2 and 1.
    """
    bed = practice.bed
    parts = (bed.soil_parts.value, bed.manure_parts.value, bed.hull_parts.value)
    mix_measures = mix_m3 * L_PER_M3 / sum(parts)
    batches = whole_up(mix_measures / pail_litres)
    soil, manure, hull = (int(part) * batches for part in parts)
    return Pails(soil, manure, hull, min(pail_litres, mix_measures))


def beds(area_m2: float, length_m: float, width_m: float) -> int:
    """Beds of one size that make up an area, the last one begun counted whole."""
    return whole_up(area_m2 / (length_m * width_m))


def sheet_m2(area_m2: float, practice: Practice = MAT) -> float:
    """Plastic sheet [m2] for a bed, with an allowance for overlap and edges; 0 without."""
    allowance = practice.bed.sheet_allowance
    return area_m2 * (1 + allowance.value) if allowance else 0.0


def flood_water_l(area_m2: float, practice: Practice = MAT) -> float:
    """Water [L] to stand one flood depth deep over the bed, seepage not counted."""
    return area_m2 * practice.bed.flood_depth_m.value * L_PER_M3


def watered_every_d(practice: Practice = MAT) -> int:
    """Days from one watering by hand to the next; 1 where the file says no more."""
    rules = practice.days.tasks
    return next((rule.every_d for rule in rules if rule.code is TaskCode.WATER), 1)


def watering_l(area_m2: float, practice: Practice = MAT) -> float:
    """Water [L] that a bed without standing water gets each time it is watered by hand.

    One that is watered each so many days gets what it has lost in them.
    """
    every_d = watered_every_d(practice)
    if every_d > 1:
        return area_m2 * w.WET_SURFACE_LOSS_MM_D.value * every_d
    return area_m2 * w.WATERING_L_PER_M2.value


def spray_water_l(area_m2: float) -> float:
    """Water [L] in which the urea is dissolved, if the leaves are yellow."""
    return area_m2 * c.SPRAY_L_PER_M2.value


def dissolved_g(litres: float, percent: float) -> float:
    """What makes a solution of so many percent in water [g]: 10 g per litre for each."""
    return litres * percent * G_PER_L_PERCENT


def urea_g(area_m2: float) -> float:
    """Urea [g] in that water. Caution: only if yellow, once, never stronger."""
    return dissolved_g(spray_water_l(area_m2), c.UREA_PERCENT.value)


def seed_g_per_m2(dry_kg: float, area_m2: float) -> float:
    """Dry seed [g] on each square metre of the bed."""
    return dry_kg * G_PER_KG / area_m2


def seed_per_mat_g(dry_kg: float, area_m2: float, practice: Practice = MAT) -> float:
    """Dry seed [g] on one mat or tray, spread evenly over the bed; 0 without any."""
    piece = practice.bed.piece
    return dry_kg * G_PER_KG * piece.area_m2 / area_m2 if piece else 0.0
