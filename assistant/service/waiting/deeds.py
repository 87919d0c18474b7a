"""What is done from the list, for one line or for all that are ticked, and undone for a minute.

Each deed is one transaction that holds the phones it touches, and leaves what undoes it. Texts
wait a minute before they leave; what somebody in danger is told does not.
"""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta

from assistant.agronomy.nursery import Nursery
from assistant.people import Farmer
from assistant.reminders.values import Reminder
from assistant.service.alarm_kinds import ALARMS, CLIMBS
from assistant.service.alarms.ladder import seen_to
from assistant.service.audit import Subject, TrailAct, note
from assistant.service.days import local_date
from assistant.service.desk.visits import (
    Change,
    Dates,
    Kept,
    Wrong,
    foresee,
    move,
    open_tasks,
    settle_tasks,
)
from assistant.service.house import House
from assistant.service.later import ChosenHour
from assistant.service.letters import Manner, Pen, Posted, Unsent
from assistant.service.sight import Sight
from assistant.service.storms.warnings import latest_of_each
from assistant.service.waiting.before import Before, go_back
from assistant.service.waiting.picks import Pick, Picked, picked
from assistant.store import DEAD, PRIVATE, UNREAD, DeskDeed, Given
from assistant.wording.message import Say

UNDO_FOR = timedelta(minutes=1)
DEEDS = ("visited", "rang", "text", "move", "seen", "hand")


class Nothing:
    """Nothing was done: nobody is left for whom it could be."""


NOTHING = Nothing()


@dataclass(frozen=True)
class Noted:
    """What an officer saw on a day, or heard on the phone; `done`: what was asked is done,
    `covered`: the beds are covered."""

    on: date | None
    words: str = ""
    done: bool = False
    covered: bool = False


@dataclass(frozen=True)
class Did:
    """A deed was done for so many lines."""

    deed: str
    count: int


Outcome = Did | Nothing | Wrong | Unsent


def look_at(
    house: House, sight: Sight, keys: Iterable[str], deed: str, now: datetime
) -> Picked:
    """For which lines a deed would be."""
    with house.store.look() as work:
        return picked(Pen(work, house, sight, now), keys, deed)


def one_deed(
    house: House,
    sight: Sight,
    keys: Iterable[str],
    deed: str,
    now: datetime,
    each: Callable[[Pen, Sequence[Pick], Before], int | Wrong | Unsent],
    once: str = "",
) -> Outcome:
    """One deed in one transaction: its phones are locked in the order of their numbers.

    What becomes of texts names the deed that is kept: "told" where one has left already,
    "later" where one waits for the end of the quiet hours. `once`: the name of a note that
    may come twice; the second time nothing is done, and it is none's fault.
    """
    with house.store.work() as work:
        pen, before = Pen(work, house, sight, now), Before()
        picks = picked(pen, keys, deed).picks
        for phone in sorted({pick.farmer.phone for pick in picks}):
            work.lock(phone)
        if not picks:
            return NOTHING
        if once and work.desk.has_note(once, sight.officer.id):
            return Did(deed, 0)
        done = each(pen, picks, before)
        if isinstance(done, (Wrong, Unsent)):
            return done
        if not done:
            return NOTHING
        if once:
            work.desk.add_note(once, sight.officer.id, now)
        kind = before.how or deed
        work.desk.did(sight.officer.id, kind, done, before.data(), now)
        return Did(kind, done)


# --- visits and rings ------------------------------------------------------------------------


def visit(
    house: House,
    sight: Sight,
    keys: Iterable[str],
    noted: Noted,
    now: datetime,
    *,
    by_phone: bool = False,
    once: str = "",
) -> Outcome:
    """Notes that nurseries were seen, or that their farmers were spoken with."""

    def each(pen: Pen, picks: Sequence[Pick], before: Before) -> int | Wrong:
        wrong = next((fault for pick in picks if (fault := _cannot(pen, pick, noted))), None)
        if wrong is not None:
            return wrong
        for pick in picks:
            _visit(pen, pick, noted, before, by_phone=by_phone)
        return len(picks)

    return one_deed(house, sight, keys, "rang" if by_phone else "visited", now, each, once)


def _cannot(pen: Pen, pick: Pick, noted: Noted) -> Wrong | None:
    today = _today(pen, pick.farmer)
    if noted.on is None:
        return Wrong.NO_DAY
    if noted.on > today:
        return Wrong.FUTURE
    nursery = pick.nursery
    early = nursery is not None and noted.on < min(nursery.made_on, nursery.sow_date)
    return Wrong.BEFORE_PLAN if early else None


def _visit(pen: Pen, pick: Pick, noted: Noted, before: Before, *, by_phone: bool) -> None:
    nursery, work = pick.nursery, pen.work
    if nursery is None or noted.on is None:
        return
    made = work.story.add_visit(
        nursery.id, pen.sight.officer.id, noted.on, noted.words, pen.now
    )
    before.visits.append(made)
    if noted.done:
        _settle(pen, pick.farmer, nursery, noted.on, before)
    if noted.covered:
        _cover(pen, pick.farmer, before)
    act = TrailAct.RANG if by_phone else TrailAct.VISITED
    note(work, pen.sight.officer.id, act, pen.now, subject_of(pick), noted.on.isoformat())


def _settle(pen: Pen, farmer: Farmer, nursery: Nursery, on: date, before: Before) -> None:
    """What was asked of a bed is done."""
    tasks: tuple[Reminder, ...] = open_tasks(pen.work, nursery)
    if not tasks:
        return
    before.keep_asked(tasks)
    last = pen.work.events.last_id(nursery.id)
    moved = settle_tasks(pen.work, pen.house, farmer, nursery, tasks, on, pen.now)
    before.keep_bed(nursery, moved, last)


def _cover(pen: Pen, farmer: Farmer, before: Before) -> None:
    """The beds of a phone are covered: its answer to the warnings that stand."""
    work, village_id = pen.work, farmer.village_id
    standing = latest_of_each(work, village_id, pen.now) if village_id else ()
    for each in standing:  # help that was asked for is told by the visit alone
        if work.warnings.waits_for(each.id, farmer.phone):
            work.warnings.answer(each.id, farmer.phone, "covered", pen.now)
            before.warned.append((each.id, farmer.phone))


def covered_by_phone(
    house: House, sight: Sight, draft_id: int, farmer_ids: Iterable[int], now: datetime
) -> Did | None:
    """Farmers who were silent under a warning say by phone that their beds are covered; None
    for a warning that is not in sight or stands no more."""
    with house.store.work() as work:
        given = work.drafts.given(sight.village_ids, draft_id=draft_id)
        standing = [each for each in given if each.stands(now)]
        if not standing:
            return None
        found = (work.people.farmer_by_id(each) for each in sorted(set(farmer_ids)))
        farmers = [each for each in found if each and sight.sees(each.village_id)]
        before, done = Before(), 0
        for farmer in sorted(farmers, key=lambda each: each.phone):
            work.lock(farmer.phone)
            done += _said_covered(Pen(work, house, sight, now), farmer, standing, before)
        if done:
            work.desk.did(sight.officer.id, "rang", done, before.data(), now)
        return Did("rang", done)


def _said_covered(pen: Pen, farmer: Farmer, standing: Sequence[Given], before: Before) -> bool:
    waited = [each for each in standing if pen.work.warnings.waits_for(each.id, farmer.phone)]
    for each in waited:
        pen.work.warnings.answer(each.id, farmer.phone, "covered", pen.now)
        before.warned.append((each.id, farmer.phone))
    if waited:
        about = Subject(farmer.id, village_id=farmer.village_id)
        note(pen.work, pen.sight.officer.id, TrailAct.RANG, pen.now, about, "covered")
    return bool(waited)


# --- seen ------------------------------------------------------------------------------------


def see(house: House, sight: Sight, keys: Iterable[str], now: datetime) -> Outcome:
    """Takes lines from the list that somebody has looked at."""

    def each(pen: Pen, picks: Sequence[Pick], before: Before) -> int:
        for pick in picks:
            _see(pen, pick, before)
        return len(picks)

    return one_deed(house, sight, keys, "seen", now, each)


def _see(pen: Pen, pick: Pick, before: Before) -> None:
    work, officer = pen.work, pen.sight.officer
    if pick.call is not None:
        _handled(pen, pick, before)
        note(work, officer.id, TrailAct.CALL_HANDLED, pen.now, subject_of(pick))
        return
    kind = {"words": UNREAD, "dead": DEAD}[pick.kind]
    before.marks.append(work.desk.mark(kind, pick.farmer.id, officer.id, pen.now))


def _handled(pen: Pen, pick: Pick, before: Before, words: str = "") -> None:
    """A call is seen to, also after an answer to it was lost; `words`: what was done."""
    if pick.call is None:
        return
    work, call = pen.work, pick.call
    if call.handled_at is not None:
        work.calls.seen_after_all(call.id, pen.now)
        return
    alarm = work.alarms.get(call.id)
    next_at = alarm.next_at.isoformat() if alarm and alarm.next_at else None
    before.calls.append((call.id, next_at))
    seen_to(work, call.id, pen.now, pen.sight.officer.id, words)


def close(
    house: House, sight: Sight, key: str, words: str, now: datetime, *, once: str = ""
) -> Outcome:
    """Closes a call, also a cry for help, with what was done about it."""

    def each(pen: Pen, picks: Sequence[Pick], before: Before) -> int:
        for pick in picks:
            _handled(pen, pick, before, words)
            act = TrailAct.CALL_HANDLED
            note(pen.work, pen.sight.officer.id, act, pen.now, subject_of(pick))
        return len(picks)

    return one_deed(house, sight, [key], "closed", now, each, once)


# --- texts -----------------------------------------------------------------------------------


def write_to(
    house: House,
    sight: Sight,
    keys: Iterable[str],
    words: str | Say,
    now: datetime,
    *,
    urgent: bool = False,
    later: ChosenHour | None = None,
) -> Outcome:
    """Sends words to the farmers of these lines, each once; calls among them are answered."""

    def each(pen: Pen, picks: Sequence[Pick], before: Before) -> int | Unsent:
        written: set[int] = set()
        for pick in picks:
            if pick.farmer.id not in written:
                at = None if cannot_wait(pick) else later
                posted = _write(pen, pick, words, urgent=urgent, later=at)
                if isinstance(posted, Unsent):
                    return posted
                before.keep_text(posted.message_id, held=posted.held, waits=posted.waits)
                before.how = "timed" if at else before.how
                written.add(pick.farmer.id)
            _answered(pen, pick, before)
        return len(written)

    return one_deed(house, sight, keys, "text", now, each)


def cannot_wait(pick: Pick) -> bool:
    """Whether words to it leave at once whatever hour was chosen: they answer a cry for help,
    which is closed by them."""
    return pick.call is not None and pick.call.about in ALARMS


def _write(
    pen: Pen, pick: Pick, words: str | Say, *, urgent: bool, later: ChosenHour | None
) -> Posted | Unsent:
    call = pick.call
    how = Manner(
        urgent=urgent,
        at_once=call is not None and call.about in CLIMBS,
        later=later,
        private=call is not None and call.about == PRIVATE,
        hold=True,
    )
    act = TrailAct.CALL_ANSWERED if call else TrailAct.WROTE
    call_id = call.id if call else None
    return pen.write(act, pick.farmer, words, subject_of(pick), how, call_id)


def _answered(pen: Pen, pick: Pick, before: Before) -> None:
    """A line whose farmer is written to is seen by it; a nursery is not."""
    if pick.call is not None:
        _handled(pen, pick, before)
    elif pick.kind == "words":
        officer = pen.sight.officer.id
        before.marks.append(pen.work.desk.mark(UNREAD, pick.farmer.id, officer, pen.now))


# --- days ------------------------------------------------------------------------------------


@dataclass(frozen=True)
class Foreseen:
    """What a new day would change for one line, or why it cannot be."""

    pick: Pick
    change: Change | Wrong


def foresee_days(
    house: House, sight: Sight, keys: Iterable[str], day: date, now: datetime
) -> tuple[Foreseen, ...]:
    """What `move_days` would do."""
    with house.store.look() as work:
        pen = Pen(work, house, sight, now)
        return tuple(
            Foreseen(pick, foresee(pen, pick.farmer, pick.nursery, _dates(pick.nursery, day)))
            for pick in picked(pen, keys, "move").picks
            if pick.nursery is not None
        )


def move_days(
    house: House, sight: Sight, keys: Iterable[str], day: date, now: datetime, *, tell: bool
) -> Outcome:
    """Moves the sowing of beds that are not sown, and the planned transplanting of others, to
    a day; where that cannot be the bed stays as it is."""

    def each(pen: Pen, picks: Sequence[Pick], before: Before) -> int | Wrong:
        moved, wrong = 0, Wrong.NOTHING
        for pick in picks:
            done = _move(pen, pick, day, before, tell=tell)
            if isinstance(done, Wrong):
                wrong = done
            else:
                moved += 1
        return moved or wrong

    return one_deed(house, sight, keys, "move", now, each)


def foresee_dates(
    house: House, sight: Sight, nursery_id: int, dates: Dates, now: datetime
) -> Foreseen | None:
    """What `set_dates` would do; None for a nursery not in sight."""
    with house.store.look() as work:
        pen = Pen(work, house, sight, now)
        for pick in picked(pen, [f"bed-{nursery_id}"], "move").picks:
            if pick.nursery is not None:
                return Foreseen(pick, foresee(pen, pick.farmer, pick.nursery, dates))
        return None


def set_dates(
    house: House, sight: Sight, nursery_id: int, dates: Dates, now: datetime, *, tell: bool
) -> Outcome:
    """Moves the plan of one bed to the days that an officer gives, all of them at once."""

    def each(pen: Pen, picks: Sequence[Pick], before: Before) -> int | Wrong:
        done = _move(pen, picks[0], dates, before, tell=tell)
        if isinstance(done, Wrong):
            return done
        before.how = "dates_told" if done.told else "dates"
        return 1

    return one_deed(house, sight, [f"bed-{nursery_id}"], "move", now, each)


def _move(
    pen: Pen, pick: Pick, dates: date | Dates, before: Before, *, tell: bool
) -> Kept | Wrong:
    nursery = pick.nursery
    if nursery is None:
        return Wrong.NOTHING
    last = pen.work.events.last_id(nursery.id)
    how = Manner(hold=True)
    wanted = dates if isinstance(dates, Dates) else _dates(nursery, dates)
    kept = move(pen, pick.farmer, nursery, wanted, tell=tell, how=how)
    if isinstance(kept, Kept):
        before.keep_bed(nursery, kept.nursery, last)
        if kept.message_id:
            before.texts.append(kept.message_id)
    return kept


def _dates(nursery: Nursery, day: date) -> Dates:
    if not nursery.sown:
        return Dates(sow=day)
    return Dates(sown=True, transplant=day)


# --- undoing ---------------------------------------------------------------------------------


def undoable(house: House, sight: Sight, now: datetime) -> DeskDeed | None:
    """What an officer did last, as long as it can be undone."""
    with house.store.look() as work:
        return work.desk.last(sight.officer.id, now - UNDO_FOR)


def undo(house: House, sight: Sight, deed_id: int, now: datetime) -> int | None:
    """Undoes a deed; how many of its texts had left already. None where it is too late."""
    with house.store.work() as work:
        officer = sight.officer.id
        deed = work.desk.undo(deed_id, officer, now - UNDO_FOR, now)
        if deed is None:
            return None
        left = go_back(work, house, deed.before, now)
        note(work, officer, TrailAct.UNDID, now, detail=f"{deed.kind} {deed.count}")
        return left


def _today(pen: Pen, farmer: Farmer) -> date:
    return local_date(pen.now, pen.sight.zone(farmer.village_id, pen.house.zone))


def subject_of(pick: Pick) -> Subject:
    """What the trail tells: of a private call not the village."""
    if pick.call is not None and pick.call.about == PRIVATE:
        return Subject(pick.farmer.id)
    nursery_id = pick.nursery.id if pick.nursery else None
    return Subject(pick.farmer.id, nursery_id, pick.farmer.village_id)
