"""What a farmer tells of the plan without being asked: planted early, the rest tomorrow, why
planting waits and until when, another field or another kind of bed."""

import re
from collections.abc import Callable
from dataclasses import replace
from datetime import date, timedelta

from assistant.agronomy.calendar import DayChoice, TaskCode
from assistant.agronomy.field import LIMITS
from assistant.agronomy.life.changes import after
from assistant.agronomy.life.events import By, Done, PutOff, Why
from assistant.agronomy.life.rows import TASKS, Delay
from assistant.agronomy.nursery import Nursery
from assistant.agronomy.practices import Practice
from assistant.dialogue import conversations as talks
from assistant.dialogue.endings import call, ended, lasting, opened, said
from assistant.dialogue.endings_delay import DELAY_ENDINGS, WHY_CODE
from assistant.dialogue.endings_plan import PLAN_ENDINGS
from assistant.dialogue.endings_result import result_of
from assistant.dialogue.engine import ask, begin
from assistant.dialogue.in_part import part_begun
from assistant.dialogue.told_of_bed import day_in, day_to_come, ideas_in, why_in
from assistant.dialogue.values import (
    AnswerItem,
    Happened,
    Item,
    Kept,
    Known,
    SaveNursery,
    Turn,
)
from assistant.hearing import Idea
from assistant.reading import Outcome, read_area, read_deeds, read_germination, read_told
from assistant.wording import messages_again as again
from assistant.wording import messages_delay as d
from assistant.wording import messages_practice as p
from assistant.wording.day import about
from assistant.wording.message import Message

_SOWS = frozenset({"sow"})
_SOON_D = 2  # so far a sowing may lie from the day that was planned
_STILL_PLANTS_D = 7  # so long after a planting the rest of the field may be planted
_MOST_WORDS = 10  # a longer text that names a field tells of something else

Report = Callable[[str, frozenset[Idea], tuple[Nursery, ...], Known], Turn | None]


def waits(text: str, known: Known) -> Turn | None:
    """Until when planting waits, and perhaps why, where only why was asked."""
    session = known.session
    if session is None or session.conversation != talks.DELAY.name or session.step != "why":
        return None
    why, day = why_in(text, known), day_in(text, known)
    if day is None or _is_planted(text, known):
        return None
    kept: dict[str, Kept] = {"until": day.isoformat()}
    if why is not None:
        kept["why"] = WHY_CODE + why
    told = replace(session, answers={**session.answers, **kept})
    if why is not None:
        return DELAY_ENDINGS["!delayed"](told, known)
    return Turn(told, (ask(told, known, talks.TABLES),))


def _is_planted(text: str, known: Known) -> bool:
    """ "All is planted now": no day to come."""
    plants = TASKS[TaskCode.TRANSPLANT].deeds & read_deeds(text, known.lexicon)
    return bool(plants) and read_told(text, known.lexicon, digits=False).value == "done"


# --- a part today, the rest on another day ---------------------------------------------------


def goes_on(
    text: str, ideas: frozenset[Idea], beds: tuple[Nursery, ...], known: Known
) -> Turn | None:
    """ "The rest tomorrow": of a field that is being planted, else of a bed that is sown."""
    day = day_to_come(text, known) if Idea.REST in ideas else _half_planted(text, ideas, known)
    if day is None:
        return None
    sows = Idea.HALF in ideas and bool(_SOWS & read_deeds(text, known.lexicon))
    found = [(bed, code) for bed in beds if (code := _in_work(bed, sows, known)) is not None]
    return _rest(*found[0], day, known) if len(found) == 1 else None


def _half_planted(text: str, ideas: frozenset[Idea], known: Known) -> date | None:
    """ "Planted half today", where planting was asked: the rest is for tomorrow."""
    asked = any(TASKS[item.task].delay is Delay.PLANTING for item in known.items)
    plants = TASKS[TaskCode.TRANSPLANT].deeds & read_deeds(text, known.lexicon)
    half = Idea.HALF in ideas and bool(plants) and not _ran_out(ideas)
    return known.today + timedelta(days=1) if asked and half else None


def _ran_out(ideas: frozenset[Idea]) -> bool:
    """Whether no seedlings are left for the rest."""
    return Idea.LACKED in ideas or {Idea.GONE, Idea.SEEDLING} <= ideas


def planted_as_far(text: str, known: Known) -> Item | None:
    """The planting that was asked, where a text says that it went as far as the seedlings."""
    items = [i for i in known.items if TASKS[i.task].delay is Delay.PLANTING]
    plants = TASKS[TaskCode.TRANSPLANT].deeds & read_deeds(text, known.lexicon)
    ideas = ideas_in(text, known)
    so_far = Idea.HALF in ideas and _ran_out(ideas) and not _goes_on_later(text, ideas, known)
    told = len(items) == 1 and bool(plants) and so_far and "?" not in text
    return items[0] if told else None


def _goes_on_later(text: str, ideas: frozenset[Idea], known: Known) -> bool:
    """ "The hands ran out, on Monday again"."""
    return bool(ideas & {Idea.REST, Idea.HANDS}) or day_to_come(text, known) is not None


def planted_short(text: str, known: Known) -> Turn | None:
    """ "Planted half, the seedlings are finished": the field is planted as far as they went,
    and the rest of the result is asked."""
    item = planted_as_far(text, known)
    bed = known.nursery(item.nursery_id) if item else None
    if item is None or bed is None:
        return None
    event = Done(on=known.today, by=By.FARMER, task=TaskCode.TRANSPLANT)
    planted = after(bed, event)
    changes = (AnswerItem(item, "done"), Happened(bed.id, event), SaveNursery(planted))
    others = tuple(planted if each.id == bed.id else each for each in known.nurseries)
    known = replace(known, nurseries=others)
    part = re.split(r"[,;.]", text)[0]
    share = read_germination(part, known.lexicon).value  # of the field: half, three quarters
    told = f"{share:g}" if share in _SHARES else None
    return result_of(planted, lasting(known.session), known, "short", changes, planted=told)


_SHARES = (25, 50, 75)  # that the talk of the result offers


def _in_work(bed: Nursery, sows: bool, known: Known) -> TaskCode | None:
    """The work of which a part may be done; of sowing (`sows`) a day or two before it is asked
    too."""
    asked = {item.task for item in known.items if item.nursery_id == bed.id}
    planted = bed.transplanted_on
    if planted is not None:
        still = (known.today - planted).days <= _STILL_PLANTS_D
        return TaskCode.TRANSPLANT if still else None
    planting = {TaskCode.TRANSPLANT, TaskCode.OVERDUE} & asked
    if planting and known.today < bed.latest:
        return next(iter(planting))
    if bed.sown or bed.held:
        return None
    soon = sows and abs(bed.day(known.today)) <= _SOON_D
    return TaskCode.SOW if TaskCode.SOW in asked or soon else None


def _rest(bed: Nursery, code: TaskCode, day: date, known: Known) -> Turn:
    item = next((i for i in known.items if (i.nursery_id, i.task) == (bed.id, code)), None)
    was = item.day if item else bed.transplanted_on or known.today
    event = PutOff(on=known.today, by=By.FARMER, task=code, was=was, until=day, why=Why.HANDS)
    begun, changes = part_begun(bed, code, known.today)
    # What follows on planting has begun with what is planted.
    moved = bed if bed.transplanted_on is not None else after(begun, event)
    changes = (*changes, Happened(bed.id, event))
    if item is not None:
        changes = (AnswerItem(item, "not_yet"), *changes)
    if moved is not bed:
        changes = (*changes, SaveNursery(moved))
    text = said(about(_noted(code, moved, known), moved, known.today, **_day(code, day)))
    passing = begin(talks.MENU, held=lasting(known.session))
    return ended(passing, known, text, changes=changes)


def _noted(code: TaskCode, moved: Nursery, known: Known) -> Message:
    """Sprouted seed does not keep until every day: then other seed is soaked for the rest."""
    soak = moved.sow_date - timedelta(days=moved.soak_before_d)
    keeps = code is not TaskCode.SOW or soak <= known.today
    return _REST[code] if keeps else again.HALF_SOWN_LONG


_REST: dict[TaskCode, Message] = {
    TaskCode.SOW: again.HALF_SOWN,
    TaskCode.TRANSPLANT: d.REST_PLANTED,
    TaskCode.OVERDUE: d.REST_PLANTED,
}


def _day(code: TaskCode, day: date) -> dict[str, date]:
    return {} if code is TaskCode.SOW else {"date": day}


# --- planted before it was asked -------------------------------------------------------------


def standing_told_done(text: str, beds: tuple[Nursery, ...], known: Known) -> Nursery | None:
    """The one bed that stands, where the words surely say that something is done there."""
    able = [bed for bed in beds if bed.sown and bed.transplanted_on is None]
    told = read_told(text, known.lexicon, digits=False)
    sure = told.value == "done" and told.outcome is Outcome.UNDERSTOOD
    return able[0] if sure and len(able) == 1 else None


def _planted(
    text: str, ideas: frozenset[Idea], beds: tuple[Nursery, ...], known: Known
) -> Turn | None:
    """The day is read back, and kept where it can be true."""
    bed = standing_told_done(text, beds, known)
    plants = TASKS[TaskCode.TRANSPLANT].deeds <= read_deeds(text, known.lexicon)
    if bed is None or not plants:
        return None
    if bed.judge_transplanting(known.today) is DayChoice.IMPOSSIBLE:
        return None
    held, day = lasting(known.session), known.today.isoformat()
    asked = begin(talks.PLANTED_THEN, held=held, nursery=bed.id, day=day)
    return opened(asked, known)


# --- what a plan stands on, given anew -------------------------------------------------------


def _field(
    text: str, ideas: frozenset[Idea], beds: tuple[Nursery, ...], known: Known
) -> Turn | None:
    """ "My field is 0.8 ha": read back, then the plan follows."""
    able = [bed for bed in beds if bed.transplanted_on is None]
    named = ideas - {Idea.CHANGE} == {Idea.PLOT} or (not ideas and _is_asked_what(known))
    if not named or len(able) != 1:
        return None
    if len(text.split()) > _MOST_WORDS or read_deeds(text, known.lexicon):
        return None
    reading = read_area(text, known.land_words, known.region)
    if reading.outcome is Outcome.AGAIN or reading.value is None:
        return None
    limits, now = LIMITS["field_area_m2"], able[0].inputs.field_area_m2
    if not limits.low <= reading.value <= limits.high or abs(reading.value - now) < 1:
        return None
    waiting: dict[str, Kept] = {"value1": reading.value, "words1": reading.words, "n": 0}
    begun = begin(talks.DATES, held=lasting(known.session), nursery=able[0].id)
    asked = replace(begun, step="area", waiting=waiting)
    return Turn(asked, (ask(asked, known, talks.TABLES),))


def _is_asked_what(known: Known) -> bool:
    """Whether it was just asked what of the plan is to be changed: a size of land says it."""
    session = known.session
    return session is not None and (session.conversation, session.step) == (
        talks.DATES.name,
        "which",
    )


def _other_bed(
    text: str, ideas: frozenset[Idea], beds: tuple[Nursery, ...], known: Known
) -> Turn | None:
    """ "A wet bed instead of mats": one of the kinds that are offered in the village; what is
    not, and what is sown, stays as it is, and that is said."""
    standing = [bed for bed in beds if bed.transplanted_on is None]
    able = [bed for bed in standing if not bed.sown] or standing
    if Idea.CHANGE not in ideas or len(able) != 1:
        return None
    named, bed = _named(text, known), able[0]
    wanted = [each for each in named if each.code != bed.practice.code]
    if len(wanted) > 1 or not (named or Idea.BED in ideas):
        return None
    if bed.sown:
        return _stays(p.BED_SOWN, text, bed, known)
    if not wanted:
        return _which_kind(text, bed, known) if not named else _stays(p.BED_IS, "", bed, known)
    if wanted[0] not in known.practices:
        return _stays(p.BED_NOT_HERE, text, bed, known)
    held = lasting(known.session)
    asked = begin(talks.DATES, held=held, nursery=bed.id, practice=wanted[0].code)
    return PLAN_ENDINGS["!amended"](asked, known)


def _which_kind(text: str, bed: Nursery, known: Known) -> Turn | None:
    """ "Change the bed": which kind it shall be is asked, where there are several."""
    if len(known.practices) < 2 or len(text.split()) > _MOST_WORDS:
        return None
    begun = begin(talks.DATES, held=lasting(known.session), nursery=bed.id)
    asked = replace(begun, step="practice")
    return Turn(asked, (ask(asked, known, talks.TABLES),))


def _stays(message: Message, words: str, bed: Nursery, known: Known) -> Turn:
    """Nothing of the plan moves; an officer has the words that ask for more."""
    passing = begin(talks.MENU, held=lasting(known.session), nursery=bed.id)
    changes = (call("question", words, passing, known),) if words else ()
    return ended(passing, known, said(about(message, bed, known.today)), changes=changes)


def _named(text: str, known: Known) -> list[Practice]:
    """The kinds of bed that a text names, in their language or by a longer name first: a wet
    bed is no bed of another kind."""
    words = " ".join(text.casefold().replace(",", " ").split())
    names = ((each, each.name(known.catalogue.language)) for each in known.every_practice)
    return [each for each, name in names if _stands(name.casefold(), words)]


def _stands(name: str, words: str) -> bool:
    return re.search(rf"(?<!\w){re.escape(name)}s?(?!\w)", words) is not None


# --- where the bed lies ----------------------------------------------------------------------


def _on_roof(
    text: str, ideas: frozenset[Idea], beds: tuple[Nursery, ...], known: Known
) -> Turn | None:
    """A bed on a roof: what it weighs there, and an officer who should look."""
    able = [bed for bed in beds if bed.transplanted_on is None]
    told = Idea.ROOF in ideas and bool({Idea.BED, Idea.MAT} & ideas)
    if not told or len(able) != 1 or len(text.split()) > _MOST_WORDS:
        return None
    return _stays(p.ON_ROOF, text, able[0], known)


PLAN_REPORTS: tuple[Report, ...] = (_planted, _field, _on_roof, _other_bed)
