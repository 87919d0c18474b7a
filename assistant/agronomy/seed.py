"""Hills, seedlings and seed: the standard identity of extension handbooks.

kg = hills x seedlings per hill x grams per 1000 grains / 1e6 / (germination x establishment)
"""

from assistant.agronomy import constants as c
from assistant.agronomy.field import FieldInputs

CM2_PER_M2 = 10_000.0
M2_PER_HA = 10_000.0
G_PER_KG = 1_000.0


def hills_per_m2(row_cm: float, hill_cm: float) -> float:
    """Hills on one square metre at a spacing in cm."""
    return CM2_PER_M2 / (row_cm * hill_cm)


def hills(inputs: FieldInputs) -> float:
    """Hills on the whole field."""
    return inputs.field_area_m2 * hills_per_m2(inputs.spacing_row_cm, inputs.spacing_hill_cm)


def seedlings(inputs: FieldInputs) -> float:
    """Seedlings to be planted out, with those to fill gaps."""
    return hills(inputs) * inputs.seedlings_per_hill * (1 + inputs.gap_filling)


def seeds_in(seed_kg: float, grain_weight_g: float) -> float:
    """Grains in a weight of dry seed [kg], at a 1000-grain weight [g]."""
    return seed_kg * G_PER_KG / (grain_weight_g / 1_000.0)


def seed_kg(inputs: FieldInputs) -> float:
    """Dry seed [kg] so that enough seedlings are left to plant out."""
    seeds = seedlings(inputs) / (inputs.germination * inputs.establishment)
    return seeds * inputs.grain_weight_g / 1_000.0 / G_PER_KG


def sprouted_kg(dry_kg: float) -> float:
    """Weight [kg] of the same seed once sprouted and drained."""
    return dry_kg * c.SPROUTED_PER_DRY.value


def seed_rate_kg_per_ha(inputs: FieldInputs) -> float:
    """Dry seed for each hectare planted [kg/ha], for comparison with handbooks."""
    return seed_kg(inputs) / inputs.field_area_m2 * M2_PER_HA
