"""How long the work takes and what is carried, from published person-hours.

Hours are spans: the ends are the lowest and the highest figure that somebody published. A pail
is carried half full.
"""

from dataclasses import dataclass

from assistant.agronomy import constants_work as w
from assistant.agronomy.mat import L_PER_M3
from assistant.agronomy.practices import MAT, PieceKind, Practice
from assistant.agronomy.quantities import Quantities
from assistant.agronomy.rounding import whole_up
from assistant.agronomy.seed import M2_PER_HA
from assistant.agronomy.sourced.constant import Constant
from assistant.agronomy.work.loads import WeightRange
from assistant.agronomy.work.planting import loads_of_mats, mats_per_hour

HALF_FULL = 0.5


@dataclass(frozen=True)
class NurseryWork:
    """The work of one nursery with so many hands.

    Args:
        hands: people who work at the same time
        raise_h: making and sowing the bed [person-hours]
        lift_h: cutting and lifting, or pulling and bundling [person-hours]
        plant_h: planting the field [person-hours]
        pail_walks: half pails of mix to carry
        mats: mats or trays to lift; 0 where seedlings are pulled
        mat_walks: walks with mats, as many at once as one person should carry
        mats_an_hour: mats that the planters need in an hour, None without mats
        planters: all hands, or the few that one machine takes
    """

    hands: int
    raise_h: WeightRange
    lift_h: WeightRange
    plant_h: WeightRange
    pail_walks: int
    mats: int
    mat_walks: int
    mats_an_hour: WeightRange | None
    planters: int

    @property
    def plant_hours(self) -> WeightRange:
        """Hours until the field is planted, all planters at it."""
        return WeightRange(self.plant_h.low / self.planters, self.plant_h.high / self.planters)


def planters_of(hands: int, practice: Practice = MAT) -> int:
    """How many of so many people plant: all by hand, no more than its crew at one machine."""
    piece = practice.bed.piece
    by_machine = piece is not None and piece.kind is PieceKind.TRAY
    return min(hands, int(w.MACHINE_CREW.value)) if by_machine else hands


def planting_hours(field_area_m2: float, hands: int, practice: Practice = MAT) -> WeightRange:
    """Hours that so many people need to plant a field: the published range."""
    share = field_area_m2 / M2_PER_HA / planters_of(hands, practice)
    return _span(practice.labour.plant_h_per_ha, share)


def work(q: Quantities, practice: Practice = MAT, hands: int = 1) -> NurseryWork:
    """The work of a nursery and its field."""
    labour, ha = practice.labour, q.field_area_m2 / M2_PER_HA
    plant_h = _span(labour.plant_h_per_ha, ha)
    planters = planters_of(hands, practice)
    hours = WeightRange(plant_h.low / planters, plant_h.high / planters)
    return NurseryWork(
        hands=hands,
        raise_h=_span(labour.raise_h_per_m2, q.nursery_area_m2),
        lift_h=_span(labour.lift_h_per_ha, ha),
        plant_h=plant_h,
        pail_walks=whole_up(q.soil_mix_m3 * L_PER_M3 / (q.pail_litres * HALF_FULL)),
        mats=q.mats,
        mat_walks=loads_of_mats(q.mats, practice),
        mats_an_hour=mats_per_hour(q.mats, hours) if q.mats else None,
        planters=planters,
    )


def nursery_days(q: Quantities, practice: Practice = MAT) -> float:
    """Person-days of raising and lifting, at the usual figures; planting out is not counted."""
    labour, ha = practice.labour, q.field_area_m2 / M2_PER_HA
    hours = labour.raise_h_per_m2.value * q.nursery_area_m2 + labour.lift_h_per_ha.value * ha
    return hours / w.HOURS_PER_DAY.value


def _span(rate: Constant, amount: float) -> WeightRange:
    low = rate.value if rate.low is None else rate.low
    high = rate.value if rate.high is None else rate.high
    return WeightRange(low * amount, high * amount)
