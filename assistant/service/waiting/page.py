"""Waiting for me: all that waits for an officer, by what can wait least.

People in danger; warnings to decide on and those that the service took back; help in the rain;
words that nobody could read; calls; numbers that texts do not reach; answers of the office that
wait for a second reader; nurseries to see. Of each kind as many lines are shown as the page has
room for, the first of all in full; the rest is folded, and the page says how much that is.
"""

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta
from typing import TypeVar
from zoneinfo import ZoneInfo

from assistant.people import Village
from assistant.service.calls import UNHEARD_FOR, CallCard, Calls, calls
from assistant.service.days import local_date
from assistant.service.house import House
from assistant.service.morning import Gathering, ToSee, VisitCause
from assistant.service.sight import Sight
from assistant.service.standing import DEAD_FOR
from assistant.service.storms.rain_drafts import StormLine
from assistant.service.waiting.storms import (
    ToDecide,
    Withdrawn,
    standing_here,
    to_decide,
    withdrawn,
)
from assistant.store import DeadNumber, KeptQuestion, TextState, Unheeded, Work
from assistant.wording.message import Say

LINES = 9  # of all kinds together, before nurseries
UNREAD_FOR = timedelta(days=3)


@dataclass(frozen=True)
class UnreadWords:
    """Words that nobody could read; times are local to the village."""

    of: Unheeded
    village: Village | None


@dataclass(frozen=True)
class UnreachedNumber:
    """A number that texts do not reach; times are local to the village."""

    of: DeadNumber
    village: Village | None


@dataclass(frozen=True)
class WaitingGroup:
    """Nurseries of one village, or with one reason: the name, what is in it how often, and
    the lines."""

    key: str
    name: Say | str | None  # None: of no village
    parts: tuple[tuple[Say | str, int], ...]
    lines: tuple[ToSee, ...]


@dataclass(frozen=True)
class Waiting:
    """The page. `shown` is how many lines of each kind stand unfolded, `first` the kind whose
    first line is the first thing to do. `urgent` are calls for help in the rain, `rain` beds
    whose phones asked for help without such a call, `others` the other calls."""

    today: date
    villages: tuple[Village, ...]
    chosen: int | None
    by_reason: bool
    calls: Calls
    urgent: tuple[CallCard, ...]
    others: tuple[CallCard, ...]
    decide: tuple[ToDecide, ...]
    withdrawn: tuple[Withdrawn, ...]
    standing: tuple[StormLine, ...]
    rain: tuple[ToSee, ...]
    words: tuple[UnreadWords, ...]
    dead: tuple[UnreachedNumber, ...]
    to_read: tuple[KeptQuestion, ...]
    to_see: tuple[ToSee, ...]
    groups: tuple[WaitingGroup, ...]
    unsure: int

    @property
    def counts(self) -> Mapping[str, int]:
        """How many there are of each kind that stands before the nurseries, by rank."""
        return {
            "alarms": len(self.calls.alarms),
            "withdrawn": len(self.withdrawn),
            "decide": len(self.decide),
            "rain": len(self.urgent) + len(self.rain),
            "words": len(self.words),
            "calls": len(self.others),
            "dead": len(self.dead),
            "to-read": len(self.to_read),
        }

    @property
    def shown(self) -> Mapping[str, int]:
        """How many of each are unfolded."""
        return spread(self.counts, LINES)

    @property
    def folded(self) -> int:
        """How many lines are not seen until something is opened, nurseries among them."""
        shown = self.shown
        beds = 0 if self.chosen or len(self.groups) == 1 else len(self.to_see)
        return sum(count - shown[kind] for kind, count in self.counts.items()) + beds

    @property
    def first(self) -> str | None:
        """The first kind that there is any of."""
        return next((kind for kind, count in self.counts.items() if count), None)

    @property
    def quiet(self) -> bool:
        """Whether nothing is to be done or looked at."""
        return not (self.first or self.calls.waiting or self.to_see or self.standing)


def spread(counts: Mapping[str, int], lines: int) -> dict[str, int]:
    """Shares lines between kinds: one to each that there is any of, then by rank."""
    shown = {kind: min(1, count) for kind, count in counts.items()}
    left = lines - sum(shown.values())
    for kind, count in counts.items():
        more = max(0, min(left, count - shown[kind]))
        shown[kind] += more
        left -= more
    return shown


def waiting_for(
    house: House,
    sight: Sight,
    now: datetime,
    village_id: int | None = None,
    *,
    by_reason: bool = False,
) -> Waiting:
    """What waits for an officer in all their villages, or in one of them."""
    chosen = sight.village(village_id)
    with house.store.look() as work:
        gathering = Gathering(work, house, sight, now, sight.scope(village_id))
        scope, villages = gathering.scope, (chosen,) if chosen else sight.villages
        to_see = gathering.to_see()
        beds = tuple(line for line in to_see if not _asks_help(line))
        found = calls(work, house, sight, now, scope)
        urgent = tuple(call for call in found.shown if call.urgent)
        called = {call.farmer.id for call in urgent}
        return Waiting(
            today=local_date(now, chosen.zone if chosen else house.zone),
            villages=sight.villages,
            chosen=chosen.id if chosen else None,
            by_reason=by_reason,
            calls=found,
            urgent=urgent,
            others=tuple(call for call in found.shown if not call.urgent),
            decide=_here(to_decide(work, sight, now), villages),
            withdrawn=_back(withdrawn(work, sight, now), villages),
            standing=standing_here(work, sight, villages, now),
            rain=tuple(
                line for line in to_see if _asks_help(line) and line.farmer.id not in called
            ),
            words=_words(work, house, sight, scope, now),
            dead=_dead(work, house, sight, scope, now),
            to_read=work.questions.to_read(scope, sight.officer.id),
            to_see=beds,
            groups=_by_reason(beds) if by_reason else _by_village(beds),
            unsure=gathering.unsure(),
        )


def _asks_help(line: ToSee) -> bool:
    return line.reasons[0].why is VisitCause.RAIN_HELP


def _here(found: tuple[ToDecide, ...], villages: Iterable[Village]) -> tuple[ToDecide, ...]:
    wanted = set(villages)
    return tuple(each for each in found if wanted.intersection(each.line.villages))


def _back(found: tuple[Withdrawn, ...], villages: Iterable[Village]) -> tuple[Withdrawn, ...]:
    wanted = set(villages)
    return tuple(each for each in found if wanted.intersection(each.villages))


def _words(
    work: Work, house: House, sight: Sight, scope: tuple[int, ...] | None, now: datetime
) -> tuple[UnreadWords, ...]:
    return tuple(
        UnreadWords(_local(each, house, sight), sight.village(each.farmer.village_id))
        for each in work.desk.unheeded(scope, now - UNREAD_FOR)
    )


def _dead(
    work: Work, house: House, sight: Sight, scope: tuple[int, ...] | None, now: datetime
) -> tuple[UnreachedNumber, ...]:
    return tuple(
        UnreachedNumber(_local(each, house, sight), sight.village(each.farmer.village_id))
        for each in work.desk.dead(scope, now - DEAD_FOR)
    )


T = TypeVar("T", Unheeded, DeadNumber)


def _local(each: T, house: House, sight: Sight) -> T:
    zone = ZoneInfo(sight.zone(each.farmer.village_id, house.zone))
    return replace(each, at=each.at.astimezone(zone))


# --- nurseries in groups ---------------------------------------------------------------------


def _by_village(lines: tuple[ToSee, ...]) -> tuple[WaitingGroup, ...]:
    """One group a village, by name; what is there is counted by reason."""
    found: dict[Village | None, list[ToSee]] = {}
    for line in lines:
        found.setdefault(line.village, []).append(line)
    ordered = sorted(found.items(), key=lambda pair: (pair[0] is None, _name(pair[0])))
    return tuple(
        WaitingGroup(
            key=f"village-{village.id if village else 0}",
            name=village.name if village else None,
            parts=_reasons(each),
            lines=tuple(each),
        )
        for village, each in ordered
    )


def _by_reason(lines: tuple[ToSee, ...]) -> tuple[WaitingGroup, ...]:
    """One group a reason, the most urgent first; what is there is counted by village."""
    found: dict[object, list[ToSee]] = {}
    for line in lines:
        found.setdefault(_reason(line), []).append(line)
    return tuple(
        WaitingGroup(
            key=f"reason-{number}",
            name=each[0].reasons[0].kind,
            parts=_villages(each),
            lines=tuple(each),
        )
        for number, each in enumerate(found.values(), start=1)
    )


def _reason(line: ToSee) -> object:
    return line.reasons[0].why, line.reasons[0].task


def _reasons(lines: list[ToSee]) -> tuple[tuple[Say | str, int], ...]:
    counted = Counter(_reason(line) for line in lines)
    kinds: dict[object, Say | str] = {_reason(line): line.reasons[0].kind for line in lines}
    return tuple((kinds[key], counted[key]) for key in kinds)


def _villages(lines: list[ToSee]) -> tuple[tuple[Say | str, int], ...]:
    counted = Counter(_name(line.village) for line in lines)
    return tuple(sorted(counted.items()))


def _name(village: Village | None) -> str:
    return village.name if village else "-"


# --- how much, for the menu of every page ----------------------------------------------------


@dataclass(frozen=True)
class WaitingCounts:
    """How much waits, but for nurseries; `warnings` are those to decide on or taken back."""

    all: int
    warnings: int


def counts(house: House, sight: Sight, now: datetime) -> WaitingCounts:
    """What stands on the menu of every page: few statements, whatever the number of beds."""
    scope, officer = sight.scope(), sight.officer
    with house.store.look() as work:
        warnings = len(to_decide(work, sight, now)) + len(withdrawn(work, sight, now))
        lost = sum(
            each.state not in (TextState.WAITING, TextState.CLAIMED)
            for each in work.calls.unheard(now - UNHEARD_FOR, scope, officer)
        )
        people = (
            len(work.calls.open(scope, officer))
            + lost
            + work.desk.rain_help(scope, now, local_date(now, house.zone))
            + len(work.desk.unheeded(scope, now - UNREAD_FOR))
            + len(work.questions.to_read(scope, officer.id))
        )
    return WaitingCounts(people + warnings, warnings)
