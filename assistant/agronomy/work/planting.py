"""Planting out: hills along a string, strings across a field, mats for the planters' pace."""

from assistant.agronomy import constants_work as w
from assistant.agronomy.practices import MAT, Practice
from assistant.agronomy.rounding import whole_down, whole_up
from assistant.agronomy.work.loads import WeightRange, wet_mat_kg

CM_PER_M = 100.0


def hills_on_string(string_m: float, hill_cm: float) -> int:
    """Hills along a string of so many metres, one at each end."""
    return whole_down(string_m * CM_PER_M / hill_cm) + 1


def mats_per_hour(mats: int, hours: WeightRange) -> WeightRange:
    """Mats to lift and carry in an hour so that nobody waits, from the hours of planting."""
    return WeightRange(mats / hours.high, mats / hours.low)


def mats_in_a_load(practice: Practice = MAT) -> int:
    """Wet mats or trays that one person carries at a time, within the lifting guide."""
    weight = wet_mat_kg(practice)
    return max(whole_down(w.CARRY_KG.value / weight), 1) if weight else 0


def loads_of_mats(mats: int, practice: Practice = MAT) -> int:
    """Walks to carry all mats or trays to the field; 0 where seedlings are pulled."""
    at_once = mats_in_a_load(practice)
    return whole_up(mats / at_once) if at_once else 0
