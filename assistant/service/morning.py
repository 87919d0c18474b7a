"""Which nurseries must be seen today and why, and the calls for help beside them.

A reason goes from the list when the farmer answers, when the plan moves on, or when an officer
notes a visit on or after the day it began.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from datetime import date, datetime, timedelta
from enum import IntEnum
from itertools import chain

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.constants import RAIN_WATCH_LAST_DAY
from assistant.agronomy.dangers.rows import DANGERS, RAIN
from assistant.agronomy.life.rows import TASKS
from assistant.agronomy.nursery import Nursery
from assistant.agronomy.practices import Window
from assistant.people import Farmer, Village
from assistant.reminders.values import Reminder
from assistant.service.calls import CallCard, calls
from assistant.service.days import local_date
from assistant.service.house import House
from assistant.service.sight import Sight
from assistant.service.standing import RollFilter
from assistant.service.storms.danger import OLDEST_D, SOWS_SOON_D, stage_of
from assistant.store import HeldTo, WatchedBed, Work
from assistant.wording import messages_web as web
from assistant.wording import messages_web_told as web_told
from assistant.wording.dangers import name_of
from assistant.wording.day import what_of
from assistant.wording.message import Say

ONE_DAY = timedelta(days=1)
SHOWN_D = 7  # how long an unanswered task or a bad sign stays on the list
NOT_UP_TIMES = 2  # "not up" on one day is common in cool weather; again the next day is not
OLD_AGAIN_D = 3  # an old bed that was visited comes back after so many days


_OLD_ANY = web.WHY_OLD_ANY()


class VisitCause(IntEnum):
    """Why a nursery must be seen, the most urgent first."""

    RAIN_HELP = 1
    RAIN_SILENT = 2
    NOT_UP = 3
    SILENT = 4
    YELLOW = 5
    OLD = 6
    SOWING_SILENT = 7


@dataclass(frozen=True)
class VisitReason:
    """One reason, in words, and since when it holds; `task` is the one not answered."""

    why: VisitCause
    say: Say
    since: date
    task: TaskCode | None = None

    @property
    def kind(self) -> Say:
        """The reason without what differs between beds, as the day: the name of a group."""
        return _OLD_ANY if self.why is VisitCause.OLD else self.say


@dataclass(frozen=True)
class ToSee:
    """One nursery that must be seen, with all its reasons, the most urgent first."""

    farmer: Farmer
    village: Village | None
    nursery_id: int
    label: str
    day: int
    reasons: tuple[VisitReason, ...]
    visited_on: date | None


def gathered(
    work: Work, house: House, sight: Sight, now: datetime
) -> tuple[tuple[CallCard, ...], tuple[ToSee, ...]]:
    """All open calls and all nurseries to be seen, the most urgent first, in a transaction that
    is open."""
    gathering = Gathering(work, house, sight, now, sight.scope())
    found = calls(work, house, sight, now, gathering.scope)
    return (*found.alarms, *found.shown), gathering.to_see()


Found = tuple[Farmer, Nursery | WatchedBed, VisitReason]


@dataclass(frozen=True)
class Gathering:
    """Finds the reasons; one transaction, one officer, one moment."""

    work: Work
    house: House
    sight: Sight
    now: datetime
    scope: tuple[int, ...] | None
    # What thousands of lines share is reckoned once.
    _days: dict[str, date] = field(default_factory=dict, init=False)
    _old_says: dict[int, Say] = field(default_factory=dict, init=False)
    _windows: dict[tuple[object, ...], Window] = field(default_factory=dict, init=False)

    def today(self, farmer: Farmer) -> date:
        """The date in a farmer's village."""
        zone = self.sight.zone(farmer.village_id, self.house.zone)
        if zone not in self._days:
            self._days[zone] = local_date(self.now, zone)
        return self._days[zone]

    def unsure(self) -> int:
        """How many farmers were asked to agree and have not answered."""
        asked = HeldTo(RollFilter.ASKED, self.sight.officer.id, self.now)
        return self.work.roll.count(self.scope, "", asked)

    def to_see(self) -> tuple[ToSee, ...]:
        """All nurseries with a reason that no visit has answered, most urgent first."""
        rain = self._rain(), self._dangers()
        kinds = (*rain, self._silent(), self._not_up(), self._yellow(), self._old())
        by_nursery: dict[int, list[Found]] = {}
        for found in chain.from_iterable(kinds):
            by_nursery.setdefault(found[1].id, []).append(found)
        visits = self.work.watch.last_visits(list(by_nursery))
        listed = (self._line(found, visits) for found in by_nursery.values())
        return tuple(sorted((line for line in listed if line.reasons), key=_urgency))

    def _line(self, found: list[Found], visits: Mapping[int, date]) -> ToSee:
        farmer, nursery, _ = found[0]
        visited_on = visits.get(nursery.id)
        first: dict[tuple[VisitCause, TaskCode | None], VisitReason] = {}
        for _, _, reason in sorted(found, key=lambda each: (each[2].why, each[2].since)):
            if not self._seen(reason, visited_on, farmer):
                first.setdefault((reason.why, reason.task), reason)
        return ToSee(
            farmer=farmer,
            village=self.sight.village(farmer.village_id),
            nursery_id=nursery.id,
            label=nursery.called,
            day=nursery.day(self.today(farmer)),
            reasons=tuple(first.values()),
            visited_on=visited_on,
        )

    def _seen(self, reason: VisitReason, visited_on: date | None, farmer: Farmer) -> bool:
        """Whether a visit has answered a reason; old seedlings must be looked at again."""
        if visited_on is None:
            return False
        if reason.why is VisitCause.OLD:
            return visited_on > self.today(farmer) - timedelta(days=OLD_AGAIN_D)
        return visited_on >= reason.since

    # --- one for each kind of reason ---------------------------------------------------------

    def _rain(self) -> Iterator[Found]:
        """Young beds under a warning that are not known to be covered."""
        around = self.now.date()
        last = int(RAIN_WATCH_LAST_DAY.value)
        sown_from, until = around - timedelta(days=last + 1), around + ONE_DAY
        for each in self.work.watch.under_warning(self.scope, self.now, sown_from, until):
            day = each.nursery.youngest_day(self.today(each.farmer))
            if each.standing.answer == "covered" or not 0 <= day <= last:
                continue
            needs_help = each.standing.answer == "help"
            why = VisitCause.RAIN_HELP if needs_help else VisitCause.RAIN_SILENT
            say = web.WHY_RAIN_HELP() if needs_help else web.WHY_RAIN_SILENT()
            yield each.farmer, each.nursery, VisitReason(why, say, self.today(each.farmer))

    def _dangers(self) -> Iterator[Found]:
        """Beds that another danger may harm and of which nobody said that what it asks is done;
        of those that are told by days only who asked for help."""
        around = self.now.date()
        span = around - timedelta(days=OLDEST_D), around + timedelta(days=SOWS_SOON_D + 1)
        others = DANGERS.codes(lambda row: row.code != RAIN)
        for each in self.work.watch.under_warning(self.scope, self.now, *span, others):
            danger, today = DANGERS[each.standing.danger], self.today(each.farmer)
            answer = each.standing.answer
            waits = answer == "help" or (answer is None and not danger.by_days)
            if not waits or stage_of(each.nursery, today) not in danger.stages:
                continue
            helped = answer == "help"
            say = (web.WHY_DANGER_HELP if helped else web.WHY_DANGER_SILENT)(
                danger=name_of(danger.code)
            )
            why = VisitCause.RAIN_HELP if helped else VisitCause.RAIN_SILENT
            yield each.farmer, each.nursery, VisitReason(why, say, today)

    def _silent(self) -> Iterator[Found]:
        """Tasks that nobody answered, but for what has happened since."""
        says: dict[tuple[TaskCode, str], Say] = {}
        for farmer, nursery, task in self.work.watch.unanswered(
            self.scope, TASKS.codes(lambda row: row.silence_shown), self._since()
        ):
            kind = task.task, nursery.practice.code
            if kind not in says:
                says[kind] = web.WHY_SILENT(what=what_of(task.task, nursery.practice))
            say = says[kind]
            why = VisitCause.SOWING_SILENT if task.task is TaskCode.SOW else VisitCause.SILENT
            yield farmer, nursery, VisitReason(why, say, task.day, task.task)

    def _not_up(self) -> Iterator[Found]:
        """Beds of which "not up" was said on two days, and not uncovered since."""
        said: dict[int, list[tuple[Farmer, WatchedBed, Reminder]]] = {}
        for found in self.work.watch.answered(
            self.scope, TaskCode.UNCOVER_FLOOD, "not_yet", self._since()
        ):
            said.setdefault(found[1].id, []).append(found)
        for times in said.values():
            farmer, nursery, latest = times[-1]
            if len(times) >= NOT_UP_TIMES and not nursery.uncovered:
                yield (
                    farmer,
                    nursery,
                    VisitReason(VisitCause.NOT_UP, web.WHY_NOT_UP(), latest.day),
                )

    def _yellow(self) -> Iterator[Found]:
        """Beds that were told of as yellow, and those for which urea was advised."""
        for farmer, nursery, task in self.work.watch.answered(
            self.scope, TaskCode.COLOUR_CHECK, "yellow", self._since()
        ):
            yield farmer, nursery, VisitReason(VisitCause.YELLOW, web.WHY_YELLOW(), task.day)
        for farmer, nursery in self.work.watch.urea_advised(self.scope, self._since()):
            on = nursery.urea_on or self._since()
            yield farmer, nursery, VisitReason(VisitCause.YELLOW, web_told.WHY_UREA(), on)

    def _old(self) -> Iterator[Found]:
        """Beds past their last day for transplanting; forgotten ones are no longer listed."""
        around = self.now.date()
        windows = [practice.window for practice in self.house.store.practices.values()]
        oldest = around - timedelta(days=max(each.latest.value for each in windows) + 1)
        youngest = around - timedelta(days=min(each.last.value for each in windows))
        for farmer, nursery in self.work.watch.old(self.scope, oldest, youngest):
            window, day = self._window(nursery), nursery.day(self.today(farmer))
            if window.last.value < day <= window.latest.value:
                since = nursery.sow_date + timedelta(days=window.last.value + 1)
                say = self._old_says.get(day) or web.WHY_OLD(day=day)
                self._old_says[day] = say
                yield farmer, nursery, VisitReason(VisitCause.OLD, say, since)

    def _window(self, bed: WatchedBed) -> Window:
        """When a bed is planted out; those of one pace share it."""
        if bed.pace not in self._windows:
            self._windows[bed.pace] = bed.paced.window
        return self._windows[bed.pace]

    def _since(self) -> date:
        return self.now.date() - timedelta(days=SHOWN_D)


def _urgency(line: ToSee) -> tuple[object, ...]:
    village = line.village.name if line.village else ""
    reason = line.reasons[0]
    return (
        reason.why,
        village,
        reason.since,
        line.farmer.name or line.farmer.phone,
        line.label,
    )
