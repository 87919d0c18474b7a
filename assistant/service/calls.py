"""Calls for help as an officer sees them: open ones, and those whose answer has not left or
has not arrived.

An answer that waits for the end of the quiet hours stays in sight until it leaves; one that
was lost brings its call back, since the farmer has heard nothing.
"""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta
from enum import StrEnum
from zoneinfo import ZoneInfo

from assistant.people import Farmer, Village
from assistant.service.alarm_kinds import ALARMS, CLIMBS
from assistant.service.days import local_date
from assistant.service.house import House
from assistant.service.sight import Sight
from assistant.service.texts import Hush, hush
from assistant.service.told import URGENT, ToldCall, told
from assistant.store import (
    PRIVATE,
    AlarmCourse,
    Call,
    HandedOn,
    OwnWords,
    TextState,
    Unheard,
    Work,
)

MOST_CALLS = 50
UNHEARD_FOR = timedelta(days=4)  # two longer than an officer's words are worth sending


class CallStage(StrEnum):
    """How far a call is."""

    OPEN = "open"
    LOST = "lost"  # answered, and the text did not arrive
    WAITS = "waits"  # answered, and the text has not left


@dataclass(frozen=True)
class CallCard:
    """One call for help; times are local to the village.

    `leaves_at` is when an answer leaves that waits, `may_hasten` whether it can go at once;
    `hush` is what the quiet hours would do to an answer written now; `course` how far an alarm
    has come; `linked` whether the farmer's own page is open to this officer; `private`: only
    they and the leads see it; `about` is the code of the trouble, `handed` who gave it to
    whom.
    """

    id: int
    farmer: Farmer
    village: Village | None
    nursery_id: int | None
    label: str | None
    day: int | None
    at: datetime
    told: ToldCall
    urgent: bool
    answers: tuple[OwnWords, ...]
    course: AlarmCourse | None = None
    stage: CallStage = CallStage.OPEN
    leaves_at: datetime | None = None
    may_hasten: bool = False
    hush: Hush | None = None
    linked: bool = True
    private: bool = False
    about: str = ""
    handed: HandedOn | None = None


@dataclass(frozen=True)
class Calls:
    """All calls that somebody must see to, the most urgent first (as many as are shown), how
    many those are, and those whose answer waits to leave; before them all alarms, those of
    people first."""

    alarms: tuple[CallCard, ...]
    shown: tuple[CallCard, ...]
    in_all: int
    waiting: tuple[CallCard, ...]


def calls(
    work: Work, house: House, sight: Sight, now: datetime, scope: tuple[int, ...] | None
) -> Calls:
    """The calls of some villages; None is everybody, also farmers of no village."""
    found = _Found(work, house, sight, now)
    unheard = work.calls.unheard(now - UNHEARD_FOR, scope, sight.officer)
    here = [each for each in unheard if each.state in (TextState.WAITING, TextState.CLAIMED)]
    lost = {each.call.id: each for each in unheard if each not in here}
    still_open = work.calls.open(scope, sight.officer)
    ordered = by_urgency((*still_open, *(each.call for each in lost.values())))
    alarms = [call for call in ordered if call.about in ALARMS]
    open_calls = [call for call in ordered if call.about not in ALARMS]
    shown = open_calls[:MOST_CALLS]
    found.read([*alarms, *shown, *(each.call for each in here)])
    return Calls(
        alarms=tuple(found.card(call, lost.get(call.id)) for call in alarms),
        shown=tuple(found.card(call, lost.get(call.id)) for call in shown),
        in_all=len(open_calls),
        waiting=tuple(found.card(each.call, each) for each in here[:MOST_CALLS]),
    )


def by_urgency(calls: Iterable[Call]) -> list[Call]:
    """People who are hurt, then what is urgent, then the rest; the oldest first."""
    return sorted(
        calls, key=lambda call: (call.about not in CLIMBS, call.about not in URGENT, call.at)
    )


class _Found:
    """Makes cards of calls; one transaction, one officer, one moment."""

    def __init__(self, work: Work, house: House, sight: Sight, now: datetime) -> None:
        self._work, self._house, self._sight, self._now = work, house, sight, now
        self._answers: dict[int, list[OwnWords]] = {}
        self._courses: dict[int, AlarmCourse] = {}
        self._handed: dict[int, HandedOn] = {}

    def read(self, calls: Iterable[Call]) -> None:
        """What was answered to these calls and who was told of them, in one question each."""
        ids = [call.id for call in calls]
        for each in self._work.story.own_words(call_ids=ids):
            self._answers.setdefault(each.call_id or 0, []).append(each)
        self._courses = self._work.alarms.courses(ids)
        self._handed = self._work.handed.of(ids)

    def card(self, call: Call, unheard: Unheard | None) -> CallCard:
        """One call, with what became of its answer."""
        name = self._sight.zone(call.farmer.village_id, self._house.zone)
        zone, nursery = ZoneInfo(name), call.nursery
        quiet = None if call.about in CLIMBS else hush(self._house, name, self._now)
        stage = _stage(unheard)
        waits = unheard is not None and stage is CallStage.WAITS
        return CallCard(
            id=call.id,
            farmer=call.farmer,
            village=self._sight.village(call.farmer.village_id),
            nursery_id=nursery.id if nursery else None,
            label=nursery.called if nursery else None,
            day=nursery.day(self._today(name)) if nursery else None,
            at=call.at.astimezone(zone),
            told=told(call.about, call.words),
            urgent=call.about in URGENT,
            answers=tuple(self._answers.get(call.id, ())),
            course=_here(self._courses.get(call.id), zone),
            stage=stage,
            leaves_at=unheard.due_at.astimezone(zone) if unheard and waits else None,
            may_hasten=_may_hasten(unheard, quiet),
            hush=quiet,
            private=call.about == PRIVATE,
            about=call.about,
            handed=_given(self._handed.get(call.id), zone),
            linked=self._sight.sees(call.farmer.village_id),
        )

    def _today(self, zone: str) -> date:
        return local_date(self._now, zone)


def _given(handed: HandedOn | None, zone: ZoneInfo) -> HandedOn | None:
    return replace(handed, at=handed.at.astimezone(zone)) if handed else None


def _here(course: AlarmCourse | None, zone: ZoneInfo) -> AlarmCourse | None:
    """With the times of the village."""
    if course is None:
        return None
    told = tuple(replace(each, at=each.at.astimezone(zone)) for each in course.told)
    next_at = course.next_at.astimezone(zone) if course.next_at else None
    return replace(course, told=told, next_at=next_at)


def _stage(unheard: Unheard | None) -> CallStage:
    if unheard is None:
        return CallStage.OPEN
    here = unheard.state in (TextState.WAITING, TextState.CLAIMED)
    return CallStage.WAITS if here else CallStage.LOST


def _may_hasten(unheard: Unheard | None, quiet: Hush | None) -> bool:
    if unheard is None or quiet is None or not quiet.may_break:
        return False
    return unheard.state is TextState.WAITING and not unheard.urgent
