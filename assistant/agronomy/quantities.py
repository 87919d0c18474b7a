"""All quantities of one nursery, exact, and the codes of what deserves a warning."""

from dataclasses import dataclass
from enum import StrEnum

from assistant.agronomy import constants as c
from assistant.agronomy import mat, seed
from assistant.agronomy.field import FieldInputs
from assistant.agronomy.lot.germination import Good
from assistant.agronomy.practices import MAT, Practice

EVERYWHERE = Good()


class WarningCode(StrEnum):
    """What a person should be told beside the figures."""

    DO_NOT_SOW = "do_not_sow"
    BED_ENLARGED = "bed_enlarged"
    SMALL_MIX = "small_mix"
    GRAIN_WEIGHT_UNUSUAL = "grain_weight_unusual"
    SEED_RATE_UNUSUAL = "seed_rate_unusual"
    # Added by whoever knows the country and today's date; never by the arithmetic.
    WEAK_SEED = "weak_seed"
    PAST_DATE = "past_date"


@dataclass(frozen=True)
class Quantities:
    """What one nursery needs, unrounded; the unit of each number is in its name.

    `pail_litres` is the person's pail; `mix_measure_litres` the measure to mix with, smaller
    than the pail where the mix is less than one batch; `establishment` what was counted on.
    """

    field_area_m2: float
    hills: float
    seedlings: float
    seed_kg: float
    sprouted_seed_kg: float
    nursery_area_m2: float
    seeds_per_cm2: float
    mats: int
    seed_per_mat_g: float
    soil_mix_m3: float
    pail_litres: float
    mix_measure_litres: float
    soil_pails: int
    manure_pails: int
    rice_hull_pails: int
    sheet_m2: float
    flood_water_l: float
    urea_g: float
    spray_water_l: float
    establishment: float
    warnings: tuple[WarningCode, ...]

    @property
    def sprouted_per_mat_g(self) -> float:
        """Sprouted seed [g] on one mat."""
        return seed.sprouted_kg(self.seed_per_mat_g)


def quantities(inputs: FieldInputs, practice: Practice = MAT) -> Quantities:
    """Everything one nursery needs, from the field, the seed lot and the practice."""
    dry_kg = seed.seed_kg(inputs)
    area = mat.nursery_area_m2(inputs, practice)
    mix = mat.soil_mix_m3(area, practice)
    pails = mat.pails(mix, inputs.pail_litres, practice)
    return Quantities(
        field_area_m2=inputs.field_area_m2,
        hills=seed.hills(inputs),
        seedlings=seed.seedlings(inputs),
        seed_kg=dry_kg,
        sprouted_seed_kg=seed.sprouted_kg(dry_kg),
        nursery_area_m2=area,
        seeds_per_cm2=seed.seeds_in(dry_kg, inputs.grain_weight_g) / (area * seed.CM2_PER_M2),
        mats=mat.mats(area, practice),
        seed_per_mat_g=mat.seed_per_mat_g(dry_kg, area, practice),
        soil_mix_m3=mix,
        pail_litres=inputs.pail_litres,
        mix_measure_litres=pails.measure_litres,
        soil_pails=pails.soil,
        manure_pails=pails.manure,
        rice_hull_pails=pails.rice_hull,
        sheet_m2=mat.sheet_m2(area, practice),
        flood_water_l=mat.flood_water_l(area, practice),
        urea_g=mat.urea_g(area),
        spray_water_l=mat.spray_water_l(area),
        establishment=inputs.establishment,
        warnings=_warnings(inputs, practice, area, pails),
    )


def least_seed_rate(inputs: FieldInputs) -> float:
    """The seed for a hectare below which the figures are asked about again [kg/ha]."""
    single = inputs.seedlings_per_hill == 1
    return (c.SINGLE_SEED_RATE_LOW_KG_PER_HA if single else c.SEED_RATE_LOW_KG_PER_HA).value


def is_weak(germination: float, good: Good = EVERYWHERE) -> bool:
    """Seed that needs a thicker sowing: below what is good there, not yet hopeless."""
    return c.WEAK_GERMINATION.value <= germination < good.share


def is_hopeless(germination: float) -> bool:
    """Seed that should be replaced, not sown."""
    return germination < c.WEAK_GERMINATION.value


def _warnings(
    inputs: FieldInputs, practice: Practice, area_m2: float, pails: mat.Pails
) -> tuple[WarningCode, ...]:
    rate = seed.seed_rate_kg_per_ha(inputs)
    usual_rate = least_seed_rate(inputs) <= rate <= c.SEED_RATE_HIGH_KG_PER_HA.value
    enlarged = area_m2 > mat.plain_area_m2(inputs.field_area_m2, practice)
    usual_grain = c.GRAIN_WEIGHT_G.holds(inputs.grain_weight_g)
    found = {
        WarningCode.DO_NOT_SOW: is_hopeless(inputs.germination),
        WarningCode.BED_ENLARGED: enlarged,
        WarningCode.SMALL_MIX: pails.measure_litres < inputs.pail_litres,
        WarningCode.GRAIN_WEIGHT_UNUSUAL: not usual_grain,
        WarningCode.SEED_RATE_UNUSUAL: not usual_rate,
    }
    return tuple(code for code, true in found.items() if true)
