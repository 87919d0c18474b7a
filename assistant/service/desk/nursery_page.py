"""A nursery on one page: where it stands, its plan and tasks, messages both ways, its story."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, datetime
from zoneinfo import ZoneInfo

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.life.rows import TASKS
from assistant.agronomy.lot.germination import good_seed
from assistant.agronomy.nursery import Nursery
from assistant.agronomy.work.labour import work as labour
from assistant.channel import Channel
from assistant.people import Farmer, Village
from assistant.reminders.values import Reminder, State
from assistant.service.desk.happened import StoryLine, lines
from assistant.service.desk.numbers import spans
from assistant.service.desk.visits import open_tasks
from assistant.service.house import House
from assistant.service.known import local_date
from assistant.service.letters import Unsent, why_not
from assistant.service.season.bars import Axis, Bar, axis_of, bar_of
from assistant.service.sight import Sight
from assistant.service.standing import fields_known, roots
from assistant.service.texts import Hush, hush
from assistant.service.told import ToldCall, told
from assistant.store import HeardMessage, OwnWords, PastCall, Sent, TextState, VisitMade, Work
from assistant.wording import messages_plan as plan_texts
from assistant.wording.message import Say
from assistant.wording.plan_costs import priced
from assistant.wording.plan_page import Plan, Section, plan_page
from assistant.wording.plan_practice import task_name

MESSAGES_SHOWN = 6  # unless all are asked for: a slow line, a small screen
MOST_MESSAGES = 200
WET_BED = "wet_bed"  # what a cost is compared with, where its file is there
HANDS = 4  # people that hours of planting are told for, as on the phone


@dataclass(frozen=True)
class TaskLine:
    """One task of the calendar and what became of it."""

    task: TaskCode
    name: Say
    day: int
    on: date
    until: date | None
    state: State | None
    answer: str | None
    answered_at: datetime | None


@dataclass(frozen=True)
class ShownMessage:
    """One message, to or from the phone; times are local to the village."""

    at: datetime
    text: str
    inward: bool
    channel: Channel = Channel.SMS
    answer: str | None = None
    failed: bool = False
    private: bool = False
    state: TextState | None = None
    reached_at: datetime | None = None
    due_at: datetime | None = None
    detail: str = ""


@dataclass(frozen=True)
class CallTold:
    """A call for help in a story, handled or not; `note` is what was done about an alarm."""

    call: PastCall
    at: datetime
    told: ToldCall
    answers: tuple[OwnWords, ...]
    note: str = ""


@dataclass(frozen=True)
class FarmerPage:
    """A farmer, and what passed between them and us; shown with each nursery and alone.
    `fields` are sizes of fields, as written, that an office knew before any nursery could be
    planned."""

    farmer: Farmer
    village: Village | None
    beds: tuple[Nursery, ...]
    messages: tuple[ShownMessage, ...]
    calls: tuple[CallTold, ...]
    unsent: Unsent | None
    today: date
    agreed_on: date | None = None
    stopped_on: date | None = None
    paused_on: date | None = None
    more_messages: bool = False
    roots: tuple[Say, ...] = ()
    fields: tuple[str, ...] = ()
    hush: Hush | None = None


@dataclass(frozen=True)
class NurseryPage:
    """The page of a nursery."""

    person: FarmerPage
    nursery: Nursery
    day: int
    bar: Bar
    axis: Axis
    plan: tuple[Section, ...]
    tasks: tuple[TaskLine, ...]
    open_tasks: tuple[Reminder, ...]
    visits: tuple[VisitMade, ...]
    story: tuple[StoryLine, ...] = ()

    @property
    def earliest_visit(self) -> date:
        """Before this day there was nothing to visit."""
        return min(self.nursery.made_on, self.nursery.sow_date)


def nursery_page(
    house: House, sight: Sight, nursery_id: int, now: datetime, *, whole: bool = False
) -> NurseryPage | None:
    """All there is to see of a nursery; None for one that is not in sight.

    Args:
        whole: with earlier messages too, not the last few only.
    """
    with house.store.look() as work:
        nursery = work.nurseries.get(nursery_id)
        farmer = work.people.farmer_by_id(nursery.farmer_id) if nursery else None
        if nursery is None or farmer is None or not sight.sees(farmer.village_id):
            return None
        person = _person(work, house, sight, farmer, now, whole)
        asked = work.reminders.of_nursery(nursery.id)
        zone = ZoneInfo(sight.zone(farmer.village_id, house.zone))
        bar = bar_of(farmer, nursery, person.village, person.today)
        return NurseryPage(
            person=person,
            nursery=nursery,
            day=nursery.day(person.today),
            bar=bar,
            axis=axis_of((bar,), person.today),
            plan=()
            if nursery.held
            else _plan(nursery, person.today, sight.officer.language, house),
            tasks=tuple(_tasks(nursery, asked, zone)),
            open_tasks=open_tasks(work, nursery),
            visits=work.story.visits([nursery.id]),
            story=lines(nursery, work.events.of_nursery(nursery.id)),
        )


def farmer_page(
    house: House, sight: Sight, farmer_id: int, now: datetime, *, whole: bool = False
) -> FarmerPage | None:
    """A farmer, with all nurseries there are or were; None for one who is not in sight.
    `whole` as above."""
    with house.store.look() as work:
        farmer = work.people.farmer_by_id(farmer_id)
        if farmer is None or not sight.sees(farmer.village_id):
            return None
        return _person(work, house, sight, farmer, now, whole)


def _person(
    work: Work, house: House, sight: Sight, farmer: Farmer, now: datetime, whole: bool
) -> FarmerPage:
    name = sight.zone(farmer.village_id, house.zone)
    zone = ZoneInfo(name)
    limit = MOST_MESSAGES if whole else MESSAGES_SHOWN
    messages = last_messages(work, farmer, zone, limit + 1)
    beds = work.nurseries.of_farmer(farmer.id, open_only=False)
    return FarmerPage(
        farmer=farmer,
        village=sight.village(farmer.village_id),
        beds=beds,
        messages=messages[:limit],
        agreed_on=_day(farmer.consent_at, zone),
        stopped_on=_day(farmer.stopped_at, zone),
        paused_on=_day(farmer.paused_at, zone),
        more_messages=not whole and len(messages) > limit,
        roots=roots(work, farmer, name),
        fields=() if beds else fields_known(work, farmer.id),
        calls=tuple(_calls(work, sight, farmer, zone)),
        unsent=why_not(farmer),
        today=local_date(now, name),
        hush=hush(house, name, now),
    )


def _calls(work: Work, sight: Sight, farmer: Farmer, zone: ZoneInfo) -> Iterator[CallTold]:
    """All calls that this officer may see."""
    found = work.story.calls_of(farmer.id, sight.officer)
    courses = work.alarms.courses([call.id for call in found])
    answers = work.story.own_words(farmer_id=farmer.id)
    for call in found:
        yield CallTold(
            call=call,
            at=call.at.astimezone(zone),
            told=told(call.about, call.words),
            answers=tuple(each for each in answers if each.call_id == call.id),
            note=courses[call.id].note if call.id in courses else "",
        )


def _day(at: datetime | None, zone: ZoneInfo) -> date | None:
    return at.astimezone(zone).date() if at else None


def _plan(nursery: Nursery, today: date, language: str, house: House) -> tuple[Section, ...]:
    """Quantities, labour, the cost where prices are known, cautions; the dates stand in the
    list of tasks, also past ones."""
    wet_bed, prices = house.store.practices.get(WET_BED), house.prices
    plan = Plan(
        area_typed=nursery.area_typed,
        inputs=nursery.inputs,
        quantities=nursery.quantities,
        tasks=nursery.tasks,
        sow=nursery.sow_date,
        today=min(today, nursery.sow_date),
        practice=nursery.practice,
        practice_name=nursery.practice.name(language),
        work=labour(nursery.quantities, nursery.practice, HANDS),
        money=priced(nursery.inputs, nursery.practice, prices, wet_bed) if prices else None,
        good=good_seed(house.region),
    )
    shown = (
        section for section in plan_page(plan) if section.heading.message != plan_texts.CALENDAR
    )
    return tuple(shown)


def _tasks(nursery: Nursery, asked: tuple[Reminder, ...], zone: ZoneInfo) -> Iterator[TaskLine]:
    """The calendar, each task with the latest of its reminders that went out."""
    latest = {each.task: each for each in asked if each.state is not State.WITHDRAWN}
    went = {each.task: each for each in asked if each.asked or each.answer}
    for task in nursery.tasks:
        if nursery.held and not TASKS[task.code].while_held:
            continue
        found = went.get(task.code) or latest.get(task.code)
        answered_at = (
            found.answered_at.astimezone(zone) if found and found.answered_at else None
        )
        yield TaskLine(
            task=task.code,
            name=task_name(task, nursery.practice),
            day=task.day,
            on=task.date,
            until=task.until,
            state=found.state if found else None,
            answer=found.answer if found else None,
            answered_at=answered_at,
        )


# --- messages --------------------------------------------------------------------------------


def last_messages(
    work: Work, farmer: Farmer, zone: ZoneInfo, limit: int
) -> tuple[ShownMessage, ...]:
    """The last messages both ways, the latest first, over every number while it was theirs."""
    found: list[ShownMessage] = []
    for phone, since, until in spans(work, farmer):
        heard = work.story.heard(phone, limit, since, until)
        sent = work.story.sent(phone, limit, since, until)
        found += [
            *(_sent(each, zone) for each in sent),
            *(_heard(each, zone) for each in heard),
        ]
    found.sort(key=lambda message: message.at, reverse=True)
    return tuple(found[:limit])


def _heard(heard: HeardMessage, zone: ZoneInfo) -> ShownMessage:
    return ShownMessage(
        at=heard.at.astimezone(zone),
        text=heard.text,
        inward=True,
        channel=heard.channel,
        answer=heard.answer,
        failed=heard.failed,
        private=heard.private,
    )


def _sent(sent: Sent, zone: ZoneInfo) -> ShownMessage:
    return ShownMessage(
        at=sent.at.astimezone(zone),
        text=sent.text,
        inward=False,
        state=sent.state,
        reached_at=sent.reached_at.astimezone(zone) if sent.reached_at else None,
        due_at=sent.due_at.astimezone(zone),
        detail=sent.detail,
        private=sent.private,
    )
