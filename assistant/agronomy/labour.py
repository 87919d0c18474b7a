"""How long planting by hand takes, from published person-hours."""

from assistant.agronomy import constants as c
from assistant.agronomy.loads import Span
from assistant.agronomy.seed import M2_PER_HA


def planting_hours(field_area_m2: float, hands: int) -> Span:
    """Hours that so many people need to plant a field by hand: the published range."""
    share = field_area_m2 / M2_PER_HA / hands
    low, high = c.PLANTING_H_PER_HA.low or 0.0, c.PLANTING_H_PER_HA.high or 0.0
    return Span(low * share, high * share)
