"""A day that is named in a sentence, out of the blue or beside an open task.

"Change to 15 June", "we sow on Friday", "opened it yesterday": heard as another day of the plan
or as the day of a deed, and read back before anything is kept. A day of something else (the
market, a neighbour's field) is let pass, and so is what an open question about a day reads.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from datetime import date, timedelta

from assistant.acts import Act
from assistant.agronomy.calendar import DayChoice
from assistant.agronomy.life.changes import after
from assistant.agronomy.life.events import By, PutOff
from assistant.agronomy.nursery import Nursery
from assistant.agronomy.tasks import TaskCode
from assistant.dialogue import conversations as talks
from assistant.dialogue import endings as e
from assistant.dialogue.accounted import takes_words
from assistant.dialogue.corrections import DATES, NUMBERS
from assistant.dialogue.endings_delay import planting_waits
from assistant.dialogue.engine import ask, begin, find
from assistant.dialogue.in_part import tells_of_rest
from assistant.dialogue.items import answer_items, settle, split_label
from assistant.dialogue.matched import surely_asked
from assistant.dialogue.questions import Conversation
from assistant.dialogue.values import (
    AnswerItem,
    Happened,
    Item,
    Kept,
    Known,
    SaveNursery,
    Session,
    Turn,
)
from assistant.hearing import understand
from assistant.hearing.dating import Dated, Idea, around_day
from assistant.reading import (
    Outcome,
    Reading,
    Reason,
    denies,
    is_accounted_for,
    names_day,
    parts_of,
    read_area,
    read_date,
    without_day,
)
from assistant.wording import messages_answers as a
from assistant.wording import messages_talk as m
from assistant.wording.day import about, what_of
from assistant.wording.message import Message

_LIKELY = 0.6
_NEAR_D = 20  # from the plan's own day; a day alone that is farther off says too little
_SOON_D = 30  # a day farther from the plan's is likelier of another season's bed
_NO_DAY = (Reason.IMPOSSIBLE, Reason.OTHER_CALENDAR)  # 31 June, a day of the moon: asked anew


@dataclass(frozen=True)
class _Told:
    """A day as it was told: what it is of, and how it was read."""

    text: str
    around: Dated
    reading: Reading[date]

    @property
    def days(self) -> tuple[date, ...]:
        """The day, or the two that it may be."""
        if self.reading.value is not None:
            return (self.reading.value,)
        return tuple(option.value for option in self.reading.options)


def dated_surely(text: str, known: Known) -> Turn | None:
    """As `dated`, of a text that names work and says that its day is moved, past or to come,
    and asks nothing: its other words ("rain delayed us") are the reason."""
    text = _without_reason(text, known)
    around = around_day(text, known.ears.days, (known.catalogue.language,))
    if around is None or not around.works or not names_day(text, known.lexicon, known.today):
        return None
    if not around.moves and (_asks(text, known) or around.told == around.coming):
        return None
    if not around.moves and surely_asked(text, known):
        return None
    return dated(text, known)


def _asks(text: str, known: Known) -> bool:
    weights = understand(text, known.ears, known.catalogue.language).weights
    return "?" in text or weights[Act.QUESTION] >= _LIKELY


def dated(text: str, known: Known) -> Turn | None:
    """The turn for a day in a sentence; None where none is named, or it is of another thing."""
    if not _listens(known) or tells_of_rest(text, known):
        return None
    told = _told(_without_reason(text, known), known)
    if told is None or _is_of_else(told, known):
        return None
    if known.items and known.today in told.days and len(told.days) == 1:
        return None  # what is told of today answers what was asked today
    if _plans(known):
        return _kept_early(told, known)
    if not known.nurseries:
        return _first_plan(told, known)
    meant = _beds_meant(text, known)
    if _changes(known) and known.session is not None:  # the day itself, where what is asked
        known = replace(known, session=known.session.held)
    able = [bed for bed in meant if _work(told, bed, known) is not None] or list(meant)
    bed = _one_bed(told, able, known)
    if bed is None:
        return _which_bed(told, known)
    work = _work(told, bed, known)
    return _TURNS[work](told, bed, known) if work else None


def _without_reason(text: str, known: Known) -> str:
    """The one part of a text that names a day and its work, where what stands beside is of
    something else: "we plant on Friday, because of a funeral"."""
    languages = (known.catalogue.language,)
    whole = around_day(text, known.ears.days, languages)
    if whole is None or not whole.other:
        return text
    parts = parts_of(text, known.lexicon)
    named = [part for part in parts if names_day(part, known.lexicon, known.today)]
    if len(parts) < 2 or len(named) != 1:  # noqa: PLR2004 (one part is the whole)
        return text
    around = around_day(named[0], known.ears.days, languages)
    return named[0] if around is not None and around.works and not around.other else text


def _one_bed(told: _Told, able: list[Nursery], known: Known) -> Nursery | None:
    """Of several beds the one that was asked for this work today, or the only one for which a
    day to come can still be meant."""
    if len(able) == 1:
        return able[0]
    waits = [bed for bed in able if _waits_for(_work(told, bed, known), bed, known)]
    ahead = [bed for bed in able if not (bed.sown and _work(told, bed, known) is Idea.SOW)]
    return next((each[0] for each in (waits, ahead) if len(each) == 1), None)


_ASKS: Mapping[Idea | None, tuple[TaskCode, ...]] = {
    Idea.SOW: (TaskCode.SOW,),
    Idea.SOAK: (TaskCode.SOAK,),
    Idea.UNCOVER: (TaskCode.UNCOVER_FLOOD,),
    Idea.PLANT: (TaskCode.TRANSPLANT, TaskCode.OVERDUE),
}


def _waits_for(work: Idea | None, bed: Nursery, known: Known) -> bool:
    return any(_open(code, bed, known) is not None for code in _ASKS.get(work, ()))


def _which_bed(told: _Told, known: Known) -> Turn | None:
    """Which bed, and which of its days: nothing is taken of a day that may be of either."""
    past = told.around.says_past or (bool(told.days) and max(told.days) < known.today)
    named = told.around.works or told.around.moves or known.items
    if past or _changes(known) or not told.days or not named:
        return None
    return e.opened(begin(talks.DATES, held=e.lasting(known.session)), known)


def _listens(known: Known) -> bool:
    """Whether a day is nobody else's to read: no words are asked for, and no day."""
    farmer = known.farmer
    if farmer is None or farmer.consent_at is None or farmer.stopped_at is not None:
        return False
    if takes_words(known):
        return False
    question = find(known.session, talks.TABLES) if known.session else None
    if question is None or question.reads not in DATES | NUMBERS:
        return True
    # Of a plan that is changed, "9/10" is the seed that was asked and "0.3 ha" the field.
    return question.reads not in DATES and not _changes(known)


def _changes(known: Known) -> bool:
    """Whether it is just asked what of a plan is to be changed."""
    return known.session is not None and known.session.conversation == talks.DATES.name


def _beds_meant(text: str, known: Known) -> tuple[Nursery, ...]:
    """The bed that is named or was chosen; all of them where none is."""
    _, meant = split_label(text, known)
    chosen = known.session.answers.get("nursery") if known.session else None
    is_chosen = _changes(known) and chosen is not None
    return tuple(bed for bed in meant if bed.id == chosen) or meant if is_chosen else meant


def _plans(known: Known) -> bool:
    return known.session is not None and known.session.conversation == talks.PLAN.name


def _told(text: str, known: Known) -> _Told | None:
    """The day that a text tells; a bare number is none."""
    text = _without_other_day(text, known)
    language = known.catalogue.language
    around = around_day(text, known.ears.days, (language,))
    if not names_day(text, known.lexicon, known.today):
        return None
    if around is None:
        around = Dated()
    if not around.works and _is_land(text, known):
        return None  # "1.5 ha" is no first of May
    if _changes(known):
        around = replace(around, moves=True)
    reading = read_date(text, known.lexicon, known.today, past=around.says_past)
    if reading.reason is Reason.DAY_MISMATCH:  # "Friday the 5th": perhaps the one gone by
        gone = read_date(text, known.lexicon, known.today, past=True)
        reading = gone if gone.outcome is Outcome.UNDERSTOOD else reading
    named = bool(around.works) or around.moves  # "45/50" alone is no day of the calendar
    if reading.value is None and not reading.options:
        asks_anew = named and reading.reason in _NO_DAY
        return _Told(text, around, reading) if asks_anew else None
    return _Told(text, around, reading)


def _is_land(text: str, known: Known) -> bool:
    return read_area(text, known.land_words, known.region).outcome is Outcome.UNDERSTOOD


def _without_other_day(text: str, known: Known) -> str:
    """A day without the one that it was not: "sown on the 11th, not the 10th"."""
    words = text.split()
    for place in range(len(words) - 1, 0, -1):
        if not denies(words[place], known.lexicon):
            continue
        told, other = " ".join(words[:place]), " ".join(words[place + 1 :])
        is_day = other.isdigit() or names_day(other, known.lexicon, known.today)
        if is_day and names_day(told, known.lexicon, known.today):
            return told
    return text


def _is_of_else(told: _Told, known: Known) -> bool:
    around = told.around
    if around.other or "?" in told.text:
        return True
    if around.works:
        return False
    if not around.moves and told.days == (known.today,):
        return True  # "the water has gone now": today is no day to name of work to come
    unsure = told.reading.reason is Reason.DAY_MISMATCH
    is_past = bool(told.days) and max(told.days) < known.today and not unsure
    if is_past or (not around.moves and denies(told.text, known.lexicon)):
        return True  # "moved the mats yesterday", "not tomorrow"
    if around.moves:
        return False
    if _asks(told.text, known):
        return True
    # A day and next to nothing else; an open question or another task reads that better.
    busy = known.session is not None or any(each.task not in _DATED for each in known.items)
    rest = without_day(told.text, known.lexicon, known.today)
    if rest and (known.items or not is_accounted_for(rest, known.lexicon)):
        return True  # "done, on Monday" answers the task
    return busy


_DATED = frozenset(
    {
        TaskCode.SOAK,
        TaskCode.SOW,
        TaskCode.LEAF_COUNT,
        TaskCode.TRANSPLANT,
        TaskCode.OVERDUE,
    }
)
"""Work that waits for a day, or after which one is asked: to it, a day alone says which."""


# --- what the day is of ----------------------------------------------------------------------


def _work(told: _Told, bed: Nursery, known: Known) -> Idea | None:
    """What the day is of, for this bed: what is named, else what comes next."""
    works = told.around.works
    if bed.transplanted_on is not None:
        return None
    if Idea.SOAK in works and not bed.sown:
        return Idea.SOAK
    if Idea.UNCOVER in works and bed.sown:
        return Idea.UNCOVER
    if Idea.SOW in works and Idea.PLANT not in works:
        return Idea.SOW
    if not works:
        return _next_work(told, bed, known)
    if Idea.PLANT not in works:
        return None
    return Idea.PLANT if bed.sown or not _is_near_sowing(told, bed) else Idea.SOW


def _next_work(told: _Told, bed: Nursery, known: Known) -> Idea | None:
    """Of a day and no work: of what comes next in the plan, where it can be of that."""
    planned = bed.anchors.transplant_date if bed.sown else bed.sow_date
    near = not told.days or any(abs((day - planned).days) <= _NEAR_D for day in told.days)
    asked = {i.task for i in known.items if i.nursery_id == bed.id} & _DATED
    waits = bed.delay_why is not None  # since then any day to come is the new one
    if not told.around.moves and not near and not asked and not waits:
        return None
    if TaskCode.SOAK in asked:
        return Idea.SOAK
    return Idea.PLANT if bed.sown else Idea.SOW


def _is_near_sowing(told: _Told, bed: Nursery) -> bool:
    """ "Plant" is also said for sowing: whose day of the plan is nearer."""
    if not told.days:
        return False
    day = told.days[0]
    return abs(day - bed.sow_date) <= abs(day - bed.anchors.transplant_date)


# --- sowing ----------------------------------------------------------------------------------


def _sow(told: _Told, bed: Nursery, known: Known) -> Turn | None:
    day = _one_day(told, known)
    is_ahead = day is not None and day > known.today and not told.around.says_past
    if bed.sown and not (bed.sow_assumed and is_ahead):
        return _sown_already(told, bed, known)
    if day is None:
        return _which(talks.SOW_THEN, "sowing", told, bed, known)
    if day < known.today or (day == known.today and told.around.says_past):
        answered = _answered(told, known)
        return answered or _sown_then(day, told, bed, known)
    item = _open(TaskCode.SOW, bed, known)
    if item is not None and known.today < day <= known.today + timedelta(days=_NEAR_D):
        return _waits_till(item, day, m.SOW_LATER_NOTED, bed, known)
    if day == bed.sow_date and known.items:
        return None
    if day == bed.sow_date:
        return e.ended(_passing(known), known, e.said(about(a.SOW_ON, bed, known.today)))
    return _asked(talks.SOW_THEN, bed, known, sowing=day)


def _sown_already(told: _Told, bed: Nursery, known: Known) -> Turn | None:
    """A bed that is sown has no other day to come; that it was sown on another may be told."""
    day = _one_day(told, known)
    past = day is not None and day < known.today and told.around.says_past
    if past and day is not None and day != bed.sow_date and abs(bed.day(day)) <= _SOON_D:
        return _sown_then(day, told, bed, known)
    return e.ended(_passing(known), known, e.said(about(a.SOWN_ON, bed, known.today)))


def _sown_then(day: date, told: _Told, bed: Nursery, known: Known) -> Turn | None:
    if abs(bed.day(day)) > _SOON_D:
        return None
    session = _begun(talks.SOW_THEN, bed, known, sowing=day)
    return e.opened(replace(session, step="sown", path=("sowing",)), known)


def _soak(told: _Told, bed: Nursery, known: Known) -> Turn | None:
    """The seed is sown as many days after soaking as the plan has it."""
    day = _one_day(told, known)
    if day is None or (day < known.today and known.items):
        return None  # its own task asks for that
    item = _open(TaskCode.SOAK, bed, known)
    if item is not None and known.today < day <= known.today + timedelta(days=_NEAR_D):
        return _waits_till(item, day, a.SOW_ON, bed, known)
    sowing = day + timedelta(days=bed.soak_before_d)
    if sowing < known.today:
        return None
    return _asked(talks.SOW_THEN, bed, known, sowing=sowing)


def _waits_till(item: Item, day: date, noted: Message, bed: Nursery, known: Known) -> Turn:
    """Not yet, and until when: the work that was asked today moves at once, since nothing else
    was said of it and tomorrow's text must know."""
    event = PutOff(on=known.today, by=By.FARMER, task=item.task, was=item.day, until=day)
    moved = after(bed, event)
    if item.task is TaskCode.SOW and day - timedelta(days=moved.soak_before_d) > known.today:
        noted = a.SOW_ON  # sprouted seed does not keep so long: other seed is soaked for it
    changes = (AnswerItem(item, "not_yet"), Happened(bed.id, event), SaveNursery(moved))
    text = e.said(about(noted, moved, known.today))
    return e.ended(_passing(known), known, text, changes=changes)


# --- planting and uncovering -----------------------------------------------------------------


def _plant(told: _Told, bed: Nursery, known: Known) -> Turn | None:
    day = _one_day(told, known)
    if day is None:
        return _which(talks.PLANT_THEN, "transplanting", told, bed, known)
    if day < known.today or (told.around.says_past and day == known.today):
        return _answered(told, known) or _planted_then(day, bed, known)
    item = _open(TaskCode.TRANSPLANT, bed, known) or _open(TaskCode.OVERDUE, bed, known)
    if item is not None and day > known.today:
        return _put_off(item, day, told, bed, known)
    if item is not None:
        return None
    if bed.delay_why is not None and day > known.today:
        waiting = Item(bed.id, TaskCode.TRANSPLANT, bed.anchors.transplant_date)
        return planting_waits(waiting, bed, known, e.holds(known.session), told.text, day)
    if day == bed.anchors.transplant_date:
        return _as_planned(day, bed, known)
    if not told.around.works and bed.judge_transplanting(day) is DayChoice.IMPOSSIBLE:
        return e.opened(begin(talks.DATES, held=e.lasting(known.session)), known)
    return _asked(talks.PLANT_THEN, bed, known, transplanting=day)


def _as_planned(day: date, bed: Nursery, known: Known) -> Turn:
    """The day that the plan has: now it is the farmer's own."""
    chosen = bed.transplanting_on(day)
    text = e.said(about(m.TRANSPLANT_SET, chosen, known.today, date=day))
    return e.ended(_passing(known), known, text, changes=(SaveNursery(chosen),))


def _planted_then(day: date, bed: Nursery, known: Known) -> Turn | None:
    if not bed.sown or bed.judge_transplanting(day) is DayChoice.IMPOSSIBLE:
        return None
    return _asked(talks.PLANTED_THEN, bed, known, day=day)


def _put_off(item: Item, day: date, told: _Told, bed: Nursery, known: Known) -> Turn:
    """Not yet, and until when in the same breath: the mats get their water back at once, and
    only why is asked."""
    turn = planting_waits(item, bed, known, e.holds(known.session), told.text, day)
    session = turn.session
    if session is None or session.conversation != talks.DELAY.name or "why" in session.answers:
        return turn
    kept: dict[str, Kept] = {"until": day.isoformat(), "until_words": told.reading.words}
    noted = m.NOTED_EARLY(reading=told.reading.words)
    first = replace(turn.texts[0], says=(noted, *turn.texts[0].says))
    session = replace(session, answers={**session.answers, **kept})
    return replace(turn, session=session, texts=(first, *turn.texts[1:]))


def _uncover(told: _Told, bed: Nursery, known: Known) -> Turn | None:
    day = _one_day(told, known)
    if day is None:
        return None
    if day <= known.today and (bed.uncovered or day <= bed.sow_date):
        return _uncovered_before(day, told, bed, known)
    if bed.uncovered:
        return None
    if day <= known.today:
        if not told.around.says_past and day == known.today:
            return None
        answered = _answered(told, known)
        fits = bed.may_uncover_on(day)
        return answered or (_asked(talks.UNCOVERED_THEN, bed, known, day=day) if fits else None)
    item = _open(TaskCode.UNCOVER_FLOOD, bed, known)
    if item is not None:
        fits = bed.may_uncover_on(day)
        return _waits_till(item, day, a.UNCOVER_ON, bed, known) if fits else None
    return e.ended(_passing(known), known, e.said(about(a.UNCOVER_ON, bed, known.today)))


def _uncovered_before(day: date, told: _Told, bed: Nursery, known: Known) -> Turn | None:
    """Told once more; or on a day on which nothing was sown yet, so that its own is said. Where
    other work is asked, "opened the outlet yesterday" may be of that."""
    if not told.around.says_past:
        return None
    if bed.uncovered and known.items:
        return _answered(told, known)
    if day <= bed.sow_date:
        return e.ended(_passing(known), known, e.said(about(a.SOWN_ON, bed, known.today)))
    what = what_of(TaskCode.UNCOVER_FLOOD, bed.practice)
    noted = e.said(m.DONE_NOTED(label=bed.called, what=what))
    return e.ended(_passing(known), known, noted)


_TURNS: Mapping[Idea, Callable[[_Told, Nursery, Known], Turn | None]] = {
    Idea.SOW: _sow,
    Idea.SOAK: _soak,
    Idea.PLANT: _plant,
    Idea.UNCOVER: _uncover,
}


# --- what is opened --------------------------------------------------------------------------


def _one_day(told: _Told, known: Known) -> date | None:
    """The one day that is meant; of a word for two, the one that the tense leaves."""
    if told.reading.value is not None:
        unsure = told.reading.reason in (Reason.UNUSUAL, Reason.DAY_MISMATCH)
        return None if unsure else told.reading.value
    around = told.around
    if around.moves and known.today in told.days:  # "the date is 20 June now"
        other = [each for each in told.days if each != known.today]
        return other[0] if len(other) == 1 else None
    if around.told == around.coming:
        return None
    left = [each for each in told.days if (each < known.today) == around.told]
    return left[0] if len(left) == 1 else None


def _answered(told: _Told, known: Known) -> Turn | None:
    """Told of an open task: its own reader has it, where it takes it."""
    if not known.items:
        return None
    held = e.lasting(known.session)
    turn = answer_items(told.text, known, known.items, True, held)
    took = turn is not None and any(isinstance(each, AnswerItem) for each in turn.changes)
    return turn if took else None


def _open(code: TaskCode, bed: Nursery, known: Known) -> Item | None:
    return next((i for i in known.items if i.task is code and i.nursery_id == bed.id), None)


def _passing(known: Known) -> Session | None:
    held = e.lasting(known.session)
    return begin(talks.MENU, held=held) if held else None


def _begun(table: Conversation, bed: Nursery, known: Known, **days: date) -> Session:
    kept: dict[str, Kept] = {name: day.isoformat() for name, day in days.items()}
    return begin(table, held=e.lasting(known.session), nursery=bed.id, **kept)


def _asked(table: Conversation, bed: Nursery, known: Known, **days: date) -> Turn:
    """The day is read back; another one may be sent in its place."""
    session = _begun(table, bed, known, **days)
    other = next((q.step for q in table.questions.values() if q.reads in DATES), None)
    path = (other,) if other else ()
    return e.opened(replace(session, path=path), known)


def _which(
    table: Conversation, step: str, told: _Told, bed: Nursery, known: Known
) -> Turn | None:
    """One of two days, or a week: which day it is, is asked."""
    days = [option for option in told.reading.options if option.value]
    waiting: dict[str, Kept] | None = None
    if len(days) > 1:
        waiting = {"n": len(days)}
        for place, option in enumerate(days, start=1):
            waiting |= {f"value{place}": option.value.isoformat()}
            waiting |= {f"words{place}": option.words}
    session = replace(_begun(table, bed, known), step=step, waiting=waiting)
    return Turn(session, (ask(session, known, talks.TABLES),))


# --- before there is a plan ------------------------------------------------------------------


def _kept_early(told: _Told, known: Known) -> Turn | None:
    """The day of sowing, told while the field is asked: kept, and the question stands."""
    session = known.session
    if session is None or "sowing" in session.answers or session.waiting:
        return None
    named = Idea.SOW in told.around.works
    if not named or told.reading.outcome is Outcome.AGAIN or told.reading.value is None:
        return None
    moved = replace(session, answers={**session.answers, **_sowing(told.reading)})
    noted = m.NOTED_EARLY(reading=told.reading.words)
    return Turn(moved, (ask(moved, known, talks.TABLES, noted),))


def _first_plan(told: _Told, known: Known) -> Turn | None:
    """Who tells a day of sowing and has no plan yet, wants one."""
    wants = {Idea.SOW, Idea.PLANT} & told.around.works
    if not wants or told.around.says_past or told.reading.value is None or known.session:
        return None
    if told.reading.value < known.today:
        return None
    session = begin(talks.PLAN, None, **_sowing(told.reading))
    return e.opened(session, known, m.NOTED_EARLY(reading=told.reading.words))


def _sowing(reading: Reading[date]) -> dict[str, Kept]:
    kept = reading.value.isoformat() if reading.value else None
    return {"sowing": kept, "sowing_words": reading.words, "sowing_heard": kept}


# --- where a talk of these ends --------------------------------------------------------------


def _done_then(code: TaskCode) -> e.Ending:
    def ending(session: Session, known: Known) -> Turn:
        bed = e.chosen(session, known)
        item = _open(code, bed, known) or Item(bed.id, code, known.today)
        day = date.fromisoformat(str(session.answers["day"]))
        return settle(item, "done", day, known, session.held)

    return ending


DATED_ENDINGS: Mapping[str, e.Ending] = {
    "!uncovered_then": _done_then(TaskCode.UNCOVER_FLOOD),
    "!planted_then": _done_then(TaskCode.TRANSPLANT),
}
