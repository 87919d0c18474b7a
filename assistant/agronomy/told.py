"""What a person is told of a nursery's quantities: rounded as they measure, and agreeing.

Each told amount is within a tenth of what was computed, whatever the size (`NEAR`), and those
that hang together agree: the sprouted seed is that of the dry seed told, the heaps together are
the seed there is, and the pails of soil, manure and hull are the mix.
"""

from typing import NamedTuple

from assistant.agronomy.mat import L_PER_M3, mix_shares
from assistant.agronomy.practices import MAT, Practice
from assistant.agronomy.quantities import Quantities
from assistant.agronomy.rounding import Measure, measured
from assistant.agronomy.seed import G_PER_KG, sprouted_kg

NEAR = 0.10
_NOISE = 1e-9


class MixTold(NamedTuple):
    """The mix in words [L]: so many pails of each part.

    Whole batches where they hold no more than a tenth too much, for they are easiest to count;
    else half pails. Where these are too coarse, as on a small bed, the parts are 0 and only the
    litres are told, with the parts of a batch.
    """

    litres: float
    soil: float = 0.0
    manure: float = 0.0
    hull: float = 0.0

    @property
    def pails(self) -> float:
        """Pails of all parts together; 0 where the mix is told in litres."""
        return self.soil + self.manure + self.hull

    @property
    def in_pails(self) -> bool:
        """Whether whole and half pails tell it well."""
        return self.pails > 0


def is_near(told: float, computed: float) -> bool:
    """Whether a told amount is near enough to what was computed."""
    return abs(told - computed) <= computed * (NEAR + _NOISE)


def pails_told(litres: float, pail_litres: float) -> float | None:
    """Water [L] in the person's own pails, to the half pail; None where that is too coarse."""
    exact = litres / pail_litres
    told = measured(exact, Measure.PAILS)
    return told if is_near(told, exact) else None


def seed_told_kg(q: Quantities) -> float:
    """Dry seed [kg], never less than computed."""
    return measured(q.seed_kg, Measure.SEED_KG)


def sprouted_told_kg(q: Quantities) -> float:
    """What the dry seed that was told weighs when sprouted [kg]."""
    return measured(sprouted_kg(seed_told_kg(q)), Measure.SPROUTED_KG)


def heap_told_g(q: Quantities) -> float:
    """Sprouted seed [g] of each of the equal heaps, one a mat: together the seed there is."""
    return measured(sprouted_kg(seed_told_kg(q)) * G_PER_KG / q.mats, Measure.SEED_G)


def square_metre_told_g(q: Quantities) -> float:
    """Sprouted seed [g] on each square metre of a bed without mats."""
    return measured(sprouted_kg(q.seed_kg) * G_PER_KG / q.nursery_area_m2, Measure.SEED_G)


def mix_told(q: Quantities, practice: Practice = MAT) -> MixTold:
    """The mix as it is told, in pails if each part is near enough so."""
    litres, shares = q.soil_mix_m3 * L_PER_M3, mix_shares(practice)
    batches = _pails(q, float(q.soil_pails), float(q.manure_pails), float(q.rice_hull_pails))
    if q.mix_measure_litres < q.pail_litres or not (shares.soil or shares.hull):
        return MixTold(measured(litres, Measure.MIX_L))
    if is_near(batches.litres, litres):
        return batches
    parts = [pails_told(litres * share, q.pail_litres) if share else 0.0 for share in shares]
    if None in parts:
        return MixTold(measured(litres, Measure.MIX_L))
    return _pails(q, *(part or 0.0 for part in parts))


def _pails(q: Quantities, soil: float, manure: float, hull: float) -> MixTold:
    return MixTold((soil + manure + hull) * q.pail_litres, soil, manure, hull)
