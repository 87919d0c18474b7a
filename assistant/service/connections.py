"""Whose the lines' connections are: one process of all has them, for as long as it says so."""

from collections.abc import Callable, Collection, Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta
from decimal import Decimal
from typing import Protocol

from assistant.channel import Fate, Handover
from assistant.service.days import day_start
from assistant.service.house import House
from assistant.store import Fared, Line

OWNED_FOR = timedelta(seconds=20)  # a process that died is followed after so long


def own(house: House, owner: str, now: datetime) -> bool:
    """Takes the connections, or keeps them; False where another process has them."""
    with house.store.work() as work:
        return work.lines.own(owner, now, now + OWNED_FOR)


def give_back(house: House, owner: str, now: datetime) -> None:
    """Lets another process have the connections at once."""
    with house.store.work() as work:
        work.lines.disown(owner, now)


def take_turns(
    house: House,
    line: str,
    now: datetime,
    share: Callable[[datetime], tuple[datetime, datetime]],
) -> timedelta:
    """Takes turns of a line that several processes send by; how long until they begin.

    Args:
        share: from until when turns are taken, when ours begin and until when all are then
    """
    with house.store.work() as work:
        work.lock(f"turns of {line}")
        taken = work.lines.turns_taken_until(line, now)
        begin, until = share(taken)
        if until != taken:
            work.lines.take_turns(line, until)
    return begin - now


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
            work.running.rest(now, now + rest, handover.detail, name=line)


def note_why(house: House, line: str, why: str, now: datetime) -> None:
    """Keeps why a line that keeps a connection cannot send, or that it can again, for people to
    see also while nothing is to be sent."""
    with house.store.work() as work:
        if not why:
            work.running.answered(now, took=False, name=line)
        work.running.rest(now, now + OWNED_FOR if why else now, why, name=line)


@dataclass(frozen=True)
class LineStands:
    """How a line stands: segments it `used` today, of so many `a_day`, what they cost; what its
    receipts tell."""

    name: str
    line: Line
    used: int
    a_day: int | None
    cost: Decimal | None
    rests: bool
    fared: Fared


class Allows(Protocol):
    """What is set of a line."""

    @property
    def a_day(self) -> int | None: ...
    @property
    def price(self) -> Decimal | None: ...
    @property
    def a_second(self) -> float | None: ...
    @property
    def kind(self) -> str: ...


def lines_stand(
    house: House, names: Collection[str], terms: Mapping[str, Allows], now: datetime
) -> tuple[LineStands, ...]:
    """How the lines stand; of a deployment with one line, that one, without a name."""
    since = day_start(now, house.zone)
    with house.store.look() as work:
        if not names:
            line, used = work.running.line(), work.lines.used_by_all(since)
            price = house.tariff.per_segment if house.tariff else None
            fared = work.lines.fared(None, since, now)
            return (_stands("", line, used, None, price, now, fared),)
        return tuple(
            _stands(
                name,
                work.running.line(name),
                work.lines.used(name, since),
                terms[name].a_day,
                terms[name].price,
                now,
                work.lines.fared(name, since, now),
            )
            for name in names
        )


def _stands(
    name: str,
    line: Line,
    used: int,
    a_day: int | None,
    price: Decimal | None,
    now: datetime,
    fared: Fared,
) -> LineStands:
    rests = not line.may_send(now)
    cost = None if price is None else price * used
    return LineStands(name, line, used, a_day, cost, rests, fared)


def forget_parts(house: House, now: datetime) -> int:
    """Lets go of operators' ids that no receipt will name any more; how many those were."""
    with house.store.work() as work:
        return work.lines.forget_parts(now)
