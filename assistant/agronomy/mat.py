"""The mat bed: its area, mats, soil mix, sheet, water and the urea that may be needed."""

from typing import NamedTuple

from assistant.agronomy import constants as c
from assistant.agronomy.field import FieldInputs
from assistant.agronomy.rounding import whole_up
from assistant.agronomy.seed import CM2_PER_M2, G_PER_KG, seed_kg, seeds_in

L_PER_M3 = 1_000.0
G_PER_L_PERCENT = 10.0
MAT_AREA_M2 = c.MAT_LENGTH_M.value * c.MAT_WIDTH_M.value


class Pails(NamedTuple):
    """Whole pails of each part of the mix, and the measure that stands for one pail [L]."""

    soil: int
    manure: int
    rice_hull: int
    measure_litres: float


def plain_area_m2(field_area_m2: float) -> float:
    """Bed [m2] by the fixed share of the field."""
    return field_area_m2 * c.NURSERY_SHARE.value


def nursery_area_m2(inputs: FieldInputs) -> float:
    """Bed [m2]: a fixed share of the field, enlarged where seeds would lie too thick."""
    seeds = seeds_in(seed_kg(inputs), inputs.grain_weight_g)
    return max(
        plain_area_m2(inputs.field_area_m2), seeds / c.MAX_SEEDS_PER_CM2.value / CM2_PER_M2
    )


def mats(area_m2: float) -> int:
    """Mats that cover a bed [m2], the last one begun counted whole."""
    return whole_up(area_m2 / MAT_AREA_M2)


def soil_mix_m3(area_m2: float) -> float:
    """Mix [m3] for a layer of mat depth over the bed."""
    return area_m2 * c.MAT_DEPTH_M.value


def pails(mix_m3: float, pail_litres: float) -> Pails:
    """Whole batches of the mix, rounded up.

    Below one batch the parts stay 7 : 2 : 1 and the measure shrinks: `measure_litres` is then
    a tenth of the mix and the pails are still counted 7, 2 and 1.
    """
    parts = (c.SOIL_PARTS.value, c.MANURE_PARTS.value, c.HULL_PARTS.value)
    mix_measures = mix_m3 * L_PER_M3 / sum(parts)
    batches = whole_up(mix_measures / pail_litres)
    soil, manure, hull = (int(part) * batches for part in parts)
    return Pails(soil, manure, hull, min(pail_litres, mix_measures))


def sheet_m2(area_m2: float) -> float:
    """Plastic sheet [m2] for a bed, with an allowance for overlap and edges."""
    return area_m2 * (1 + c.SHEET_ALLOWANCE.value)


def flood_water_l(area_m2: float) -> float:
    """Water [L] to stand one flood depth deep over the bed, seepage not counted."""
    return area_m2 * c.FLOOD_DEPTH_M.value * L_PER_M3


def spray_water_l(area_m2: float) -> float:
    """Water [L] in which the urea is dissolved, if the leaves are yellow."""
    return area_m2 * c.SPRAY_L_PER_M2.value


def dissolved_g(litres: float, percent: float) -> float:
    """What makes a solution of so many percent in water [g]: 10 g per litre for each."""
    return litres * percent * G_PER_L_PERCENT


def urea_g(area_m2: float) -> float:
    """Urea [g] in that water. Caution: only if yellow, once, never stronger."""
    return dissolved_g(spray_water_l(area_m2), c.UREA_PERCENT.value)


def nitrogen_g_per_m2() -> float:
    """Nitrogen [g/m2] that one urea spray brings."""
    return urea_g(1.0) * c.UREA_N_SHARE.value


def seed_per_mat_g(dry_kg: float, area_m2: float) -> float:
    """Dry seed [g] on one mat, spread evenly over the bed."""
    return dry_kg * G_PER_KG * MAT_AREA_M2 / area_m2
