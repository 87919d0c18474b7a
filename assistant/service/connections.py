"""Whose the lines' connections are: one process of all has them, for as long as it says so."""

from datetime import datetime, timedelta

from assistant.channel import Fate, Handover
from assistant.service.days import day_start
from assistant.service.house import House

OWNED_FOR = timedelta(seconds=20)  # a process that died is followed after so long


def own(house: House, owner: str, now: datetime) -> bool:
    """Takes the connections, or keeps them; False where another process has them."""
    with house.store.work() as work:
        return work.lines.own(owner, now, now + OWNED_FOR)


def give_back(house: House, owner: str, now: datetime) -> None:
    """Lets another process have the connections at once."""
    with house.store.work() as work:
        work.lines.disown(owner, now)


def used_today(house: House, line: str, now: datetime) -> int:
    """Segments that a line took since midnight in the programme's zone."""
    with house.store.look() as work:
        return work.lines.used(line, day_start(now, house.zone))


def note_line(house: House, line: str, handover: Handover, now: datetime) -> None:
    """Keeps how one of several lines fared."""
    with house.store.work() as work:
        if handover.answered and handover.put_off_until is None:
            work.running.answered(now, took=handover.fate is Fate.ACCEPTED, name=line)
        if handover.rest is not None or not handover.answered:
            rest = handover.rest or timedelta(0)
            work.running.rest(now + rest, handover.detail, name=line)


def forget_parts(house: House, now: datetime) -> int:
    """Lets go of operators' ids that no receipt will name any more; how many those were."""
    with house.store.work() as work:
        return work.lines.forget_parts(now)
