"""What a nursery costs by a programme's price list, and what that is against a wet bed.

Nothing is claimed: both are computed from the same prices, the same field and the published
hours of each practice. Frames and trays last for years and are not counted, nor is the land.
"""

from dataclasses import dataclass, replace

from assistant.agronomy.field import FieldInputs
from assistant.agronomy.labour import nursery_days
from assistant.agronomy.practices import Practice
from assistant.agronomy.quantities import Quantities, quantities
from assistant.agronomy.seed import G_PER_KG


@dataclass(frozen=True)
class PriceList:
    """Prices of one programme, in its own money.

    `pail_litres` is the pail that soil, manure and hull are priced by [L].
    """

    currency: str
    seed_per_kg: float
    soil_per_pail: float
    manure_per_pail: float
    rice_hull_per_pail: float
    sheet_per_m2: float
    urea_per_kg: float
    labour_per_day: float
    pail_litres: float = 10.0


@dataclass(frozen=True)
class Cost:
    """What one nursery costs. `urea_if_yellow` stands beside the total, since few need it."""

    seed: float
    soil: float
    manure: float
    rice_hull: float
    sheet: float
    labour: float
    urea_if_yellow: float
    labour_days: float

    @property
    def total(self) -> float:
        """All but the urea."""
        return self.seed + self.soil + self.manure + self.rice_hull + self.sheet + self.labour


@dataclass(frozen=True)
class Against:
    """A nursery beside another practice for the same field; savings may be below nothing."""

    practice: Practice
    quantities: Quantities
    cost: Cost
    saved: float
    seed_saved_kg: float
    bed_saved_m2: float
    labour_saved_days: float


def cost(q: Quantities, practice: Practice, prices: PriceList) -> Cost:
    """What a nursery costs: seed, mix, sheet, and labour until the seedlings are lifted."""
    priced_pails = q.mix_measure_litres / prices.pail_litres
    days = nursery_days(q, practice)
    return Cost(
        seed=q.seed_kg * prices.seed_per_kg,
        soil=q.soil_pails * priced_pails * prices.soil_per_pail,
        manure=q.manure_pails * priced_pails * prices.manure_per_pail,
        rice_hull=q.rice_hull_pails * priced_pails * prices.rice_hull_per_pail,
        sheet=q.sheet_m2 * prices.sheet_per_m2,
        labour=days * prices.labour_per_day,
        urea_if_yellow=q.urea_g / G_PER_KG * prices.urea_per_kg,
        labour_days=days,
    )


def against(
    inputs: FieldInputs, practice: Practice, other: Practice, prices: PriceList
) -> Against:
    """A nursery against another practice for the same field, seed lot and spacing.

    The other is taken at its own usual establishment, which is what sets their seed apart.
    """
    own = quantities(inputs, practice)
    usual = replace(inputs, establishment=other.planting.establishment.value)
    theirs = quantities(usual, other)
    own_cost, their_cost = cost(own, practice, prices), cost(theirs, other, prices)
    return Against(
        practice=other,
        quantities=theirs,
        cost=their_cost,
        saved=their_cost.total - own_cost.total,
        seed_saved_kg=theirs.seed_kg - own.seed_kg,
        bed_saved_m2=theirs.nursery_area_m2 - own.nursery_area_m2,
        labour_saved_days=their_cost.labour_days - own_cost.labour_days,
    )
