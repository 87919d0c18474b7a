"""What a season gave: the field planted, mats left or short, so how many seedlings stood."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date
from typing import NamedTuple

from assistant.agronomy.errors import AgronomyError
from assistant.agronomy.field import LIMITS
from assistant.agronomy.practices import MAT, Practice
from assistant.agronomy.season.establishment import Establishment, SeasonSeen, learned

M2_PER_HA = 10_000
# Asked so long after the result: what was planted some days before that is cut by then.
# Common practice, no source: most lowland rice is cut 80 to 110 days after planting.
YIELD_ASKED_AFTER_D = 95
# Paddy [kg/ha] that a field can give: less is a slip or a lost crop, more no field has given.
# From memory: farmers' fields give 1,000 to 8,000, records stand near 17,000.
YIELD_KG_PER_HA = (100.0, 18_000.0)


@dataclass(frozen=True)
class SeasonOutcome:
    """One nursery at the end of its season.

    Args:
        field_area_m2, planted_area_m2: the field that was planned, and what was planted [m2]
        mats, mats_left: mats that were raised, and those over when the field was planted
        establishment: what the plan counted on [fraction 0-1]
        practice: the code of how the seedlings were raised
        seed_share: dry seed that was really sown, for each kg of the plan
        yield_kg: the paddy of the field [kg], None where nobody told it
        yield_asked: the day on which it was asked for, once

    Raises:
        AgronomyError: nothing planted, no seed, or more mats left than there were.
    """

    nursery_id: int
    farmer_id: int
    ended_on: date
    field_area_m2: float
    planted_area_m2: float
    mats: int
    mats_left: float
    resown: bool
    establishment: float
    practice: str = MAT.code
    seed_share: float = 1.0
    yield_kg: float | None = None
    yield_asked: date | None = None

    def __post_init__(self) -> None:
        planted = self.planted_area_m2 > 0 and self.seed_share > 0
        if not planted or not 0 <= self.mats_left < self.mats:
            raise AgronomyError(
                f"expected a planted area, seed and mats used, got {self}; ask the farmer again"
            )

    @property
    def mats_used(self) -> float:
        """Mats whose seedlings were planted."""
        return self.mats - self.mats_left

    @property
    def yield_kg_per_ha(self) -> float | None:
        """Paddy for each hectare that was planted [kg/ha]."""
        return (
            None if self.yield_kg is None else self.yield_kg / self.planted_area_m2 * M2_PER_HA
        )

    @property
    def is_short(self) -> bool:
        """Whether part of the field was left without seedlings."""
        return self.planted_area_m2 < self.field_area_m2

    @property
    def observed_establishment(self) -> float:
        """Seedlings planted out per germinated seed, by what was planted from how many mats.

        The plan sows for the whole field on all mats at `establishment`; planting a share of
        the field from a share of the mats says by how much that was off, and so does other
        seed on the mats than was planned. It stands on the germination and the hills of the
        plan, and so carries their errors too.
        """
        planted = self.planted_area_m2 / self.field_area_m2
        share = planted / (self.mats_used / self.mats) / self.seed_share
        limits = LIMITS["establishment"]
        return min(max(self.establishment * share, limits.low), limits.high)

    @property
    def seen(self) -> SeasonSeen:
        """The season as what is learned from: the share, and the mats it was seen on."""
        return SeasonSeen(self.observed_establishment, self.mats_used)


def own_establishment(
    outcomes: Sequence[SeasonOutcome], practice: Practice = MAT
) -> Establishment | None:
    """What is believed after those of these seasons that a practice raised; None after none."""
    seen = [outcome.seen for outcome in outcomes if outcome.practice == practice.code]
    return learned(seen, practice.planting.establishment.value) if seen else None


class Learned(NamedTuple):
    """What seasons by one practice have taught, and how many they were."""

    practice: Practice
    establishment: Establishment
    seasons: int


def learned_by_practice(
    outcomes: Sequence[SeasonOutcome], practices: Iterable[Practice]
) -> tuple[Learned, ...]:
    """The belief of each practice that any of these seasons was raised by, in their order."""
    found = []
    for practice in practices:
        own = own_establishment(outcomes, practice)
        if own is not None:
            count = sum(each.practice == practice.code for each in outcomes)
            found.append(Learned(practice, own, count))
    return tuple(found)
