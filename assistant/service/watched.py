"""What stands in the database for who watches the service: numbers, no names, no phones."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime

from assistant.service.house import House
from assistant.service.pulse import Pulse, pulse
from assistant.store import Lane


@dataclass(frozen=True)
class ServiceFigures:
    """How the service stands: its pulse, the texts that wait by lane, nurseries set aside."""

    pulse: Pulse
    waiting: Mapping[Lane, int]
    set_aside: int


def figures(house: House, now: datetime) -> ServiceFigures:
    """The figures of this moment."""
    with house.store.look() as work:
        waiting = work.running.waiting_by_lane(now)
        aside = work.running.count_aside()
    return ServiceFigures(
        pulse(house, now), {lane: waiting.get(lane, 0) for lane in Lane}, aside
    )
