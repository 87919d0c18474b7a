"""The day of sowing from the hands that are there: mats an hour, and when the last is done.

Making and sowing the bed is reckoned by published person-hours; a day is no longer than
`HOURS_PER_DAY`, since sprouted seed does not wait and nobody works well in the heat of noon.
"""

import datetime as dt
from dataclasses import dataclass

from assistant.agronomy import constants_work as w
from assistant.agronomy.rounding import whole_up
from assistant.agronomy.work.labour import NurseryWork
from assistant.agronomy.work.loads import WeightRange


@dataclass(frozen=True)
class SowingDay:
    """How the work of one bed goes with so many hands.

    Args:
        hands: people who make and sow the bed
        begins: when they begin
        hours: until all is sown and watered [h], the quick and the slow end
        pieces_an_hour: mats or trays an hour [1/h], None on an open bed
        days: days that it takes, at the slow end
        hands_for_a_day: people who do it in one day, at the slow end
    """

    hands: int
    begins: dt.time
    hours: WeightRange
    pieces_an_hour: WeightRange | None
    days: int
    hands_for_a_day: int

    @property
    def ends(self) -> tuple[dt.time, dt.time]:
        """When the last is sown, soon and late; on the last day where it takes several."""
        return _after(self.begins, self._last_day(self.hours.low)), _after(
            self.begins, self._last_day(self.hours.high)
        )

    def _last_day(self, hours: float) -> float:
        a_day = w.HOURS_PER_DAY.value
        return hours - a_day * (whole_up(hours / a_day) - 1)


def sowing_day(work: NurseryWork, begins: dt.time) -> SowingDay:
    """The day of sowing, from the labour of a nursery and its hands."""
    hours = WeightRange(work.raise_h.low / work.hands, work.raise_h.high / work.hands)
    pieces = WeightRange(work.mats / hours.high, work.mats / hours.low) if work.mats else None
    return SowingDay(
        hands=work.hands,
        begins=begins,
        hours=hours,
        pieces_an_hour=pieces,
        days=whole_up(hours.high / w.HOURS_PER_DAY.value),
        hands_for_a_day=whole_up(work.raise_h.high / w.HOURS_PER_DAY.value),
    )


def _after(begins: dt.time, hours: float) -> dt.time:
    """The time so many hours later, to the quarter hour up."""
    minutes = whole_up((begins.hour * 60 + begins.minute + hours * 60) / 15) * 15
    return dt.time(min(minutes // 60, 23), minutes % 60 if minutes < 24 * 60 else 45)
