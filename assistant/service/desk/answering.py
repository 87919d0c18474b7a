"""How calls for help are answered, by officer: for a lead, who asks where somebody needs help
before asking why."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta
from statistics import median

from assistant.people import Officer
from assistant.store import Work

BOARD = timedelta(days=31)


@dataclass(frozen=True)
class Answering:
    """How one officer answers.

    half_within: half of the calls they answered waited no longer
    open:        calls of their villages, and those they were given, that nobody has seen to,
                 the oldest since `oldest`
    """

    answered: int = 0
    half_within: timedelta | None = None
    open: int = 0
    oldest: datetime | None = None


def answering(
    work: Work, officers: Iterable[Officer], now: datetime
) -> Mapping[int, Answering]:
    """By the id of an officer. A call of a village with two officers is open for both, one that
    was given to somebody for them alone; who answers it has answered it."""
    waited: dict[int, list[timedelta]] = {}
    for by, came, seen in work.calls.answered(now - BOARD):
        if by is not None:
            waited.setdefault(by, []).append(seen - came)
    still, given = work.calls.open_by_village(), work.handed.open_by_taker()
    return {
        each.id: _one(waited.get(each.id, []), each, still, given.get(each.id))
        for each in officers
    }


def _one(
    waited: list[timedelta],
    officer: Officer,
    still: Mapping[int, tuple[int, datetime]],
    given: tuple[int, datetime] | None,
) -> Answering:
    mine = [still[village] for village in officer.village_ids if village in still]
    mine += [given] if given else []
    return Answering(
        answered=len(waited),
        half_within=median(waited) if waited else None,  # type: ignore[type-var]
        open=sum(count for count, _ in mine),
        oldest=min((oldest for _, oldest in mine), default=None),
    )
