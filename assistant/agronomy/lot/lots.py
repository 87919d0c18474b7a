"""Two lots of seed for one field: mixed in one bed, or one to fill up what another lacks."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from assistant.agronomy import constants as c
from assistant.agronomy import constants_work as w
from assistant.agronomy.errors import AgronomyError
from assistant.agronomy.field import FieldInputs
from assistant.agronomy.lot.germination import mixed_germination
from assistant.agronomy.seed import G_PER_KG, seed_kg, seeds_in


@dataclass(frozen=True)
class SeedLot:
    """Dry seed of one origin.

    Args:
        kg: weight [kg]
        germination: [fraction 0-1]
        grain_weight_g: weight of 1000 grains [g]

    Raises:
        AgronomyError: no seed, or a share that is none.
    """

    kg: float
    germination: float
    grain_weight_g: float = c.GRAIN_WEIGHT_G.value

    def __post_init__(self) -> None:
        if not (self.kg > 0 and self.grain_weight_g > 0 and 0 <= self.germination <= 1):
            raise AgronomyError(f"expected a weight and a share of 0 to 1, got {self}")

    @property
    def seeds(self) -> float:
        """Grains in it."""
        return seeds_in(self.kg, self.grain_weight_g)


def mixed(lots: Sequence[SeedLot]) -> SeedLot:
    """All lots in one: each counts by its grains, not by its weight.

    Raises:
        AgronomyError: no lot at all.
    """
    germination = mixed_germination([(lot.seeds, lot.germination) for lot in lots])
    kg = sum(lot.kg for lot in lots)
    seeds = sum(lot.seeds for lot in lots)
    return SeedLot(kg, germination, kg * G_PER_KG / seeds * 1_000)


def should_part(lots: Sequence[SeedLot]) -> bool:
    """Whether lots differ so much that they are better sown on mats of their own."""
    shares = [lot.germination for lot in lots]
    return bool(shares) and max(shares) - min(shares) > w.LOTS_APART.value


def fill_up_kg(inputs: FieldInputs, at_hand: SeedLot, other: SeedLot) -> float:
    """Seed of another lot [kg] that a field needs beside the lot at hand, if any.

    Raises:
        AgronomyError: the other lot does not germinate at all.
    """
    need = seed_kg(_with(inputs, at_hand))
    missing = max(1 - at_hand.kg / need, 0.0)
    return missing * seed_kg(_with(inputs, other))


def _with(inputs: FieldInputs, lot: SeedLot) -> FieldInputs:
    return replace(inputs, germination=lot.germination, grain_weight_g=lot.grain_weight_g)
