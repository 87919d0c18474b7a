"""What a nursery costs by a programme's price list, and what that is against a wet bed.

Nothing is claimed: both are computed from the same prices and the same field, with the hours of
each practice, which are published but for making an open bed (from memory). Frames and trays
last for years and are not counted, nor is the land.
"""

from dataclasses import dataclass, replace

from assistant.agronomy.field import FieldInputs
from assistant.agronomy.mat import L_PER_M3, mix_shares
from assistant.agronomy.practices import Practice
from assistant.agronomy.quantities import Quantities, quantities
from assistant.agronomy.seed import G_PER_KG
from assistant.agronomy.work.labour import nursery_days


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
class NurseryCost:
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
    cost: NurseryCost
    saved: float
    seed_saved_kg: float
    bed_saved_m2: float
    labour_saved_days: float


def cost(q: Quantities, practice: Practice, prices: PriceList) -> NurseryCost:
    """What a nursery costs: seed, mix, sheet, and labour until the seedlings are lifted."""
    priced_pails = q.soil_mix_m3 * L_PER_M3 / prices.pail_litres
    shares = mix_shares(practice)
    days = nursery_days(q, practice)
    return NurseryCost(
        seed=q.seed_kg * prices.seed_per_kg,
        soil=shares.soil * priced_pails * prices.soil_per_pail,
        manure=shares.manure * priced_pails * prices.manure_per_pail,
        rice_hull=shares.hull * priced_pails * prices.rice_hull_per_pail,
        sheet=q.sheet_m2 * prices.sheet_per_m2,
        labour=days * prices.labour_per_day,
        urea_if_yellow=q.urea_g / G_PER_KG * prices.urea_per_kg,
        labour_days=days,
    )


def against(
    inputs: FieldInputs, practice: Practice, other: Practice, prices: PriceList
) -> Against:
    """A nursery against another practice for the same field and seed lot.

    The other is taken at its own usual establishment, which is what sets their seed apart, and
    planted alike; but where the field is planted as this practice usually is (a machine's
    rows), the other is planted as it usually is.
    """
    own = quantities(inputs, practice)
    theirs = quantities(_planted_by(other, practice, inputs), other)
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


def _planted_by(other: Practice, practice: Practice, inputs: FieldInputs) -> FieldInputs:
    given = (inputs.spacing_row_cm, inputs.spacing_hill_cm, inputs.seedlings_per_hill)
    row_cm, hill_cm, seedlings = _usual(other) if given == _usual(practice) else given
    return replace(
        inputs,
        spacing_row_cm=row_cm,
        spacing_hill_cm=hill_cm,
        seedlings_per_hill=seedlings,
        establishment=other.planting.establishment.value,
    )


def _usual(practice: Practice) -> tuple[float, float, int]:
    p = practice.planting
    return p.row_cm.value, p.hill_cm.value, int(p.seedlings_per_hill.value)
