"""Planting that is put off: water goes back, the new day is told, and what waiting costs."""

from collections.abc import Mapping
from dataclasses import replace
from datetime import date, timedelta

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.life.changes import after
from assistant.agronomy.life.events import By, Done, PutOff, SowAgain, Why
from assistant.agronomy.nursery import Nursery
from assistant.dialogue import conversations as talks
from assistant.dialogue.endings import Ending, chosen, ended, holds, opened, said
from assistant.dialogue.endings_again import again_texts
from assistant.dialogue.endings_result import result_of
from assistant.dialogue.engine import begin
from assistant.dialogue.outlook import cost_of_waiting
from assistant.dialogue.told_of_bed import day_in, is_late, why_in
from assistant.dialogue.values import (
    AnswerItem,
    Change,
    Happened,
    Item,
    Known,
    SaveNursery,
    Session,
    Turn,
)
from assistant.wording import messages_delay as d
from assistant.wording.day import about, too_old
from assistant.wording.message import Say

WAITS_D = 4  # until the farmer names a day: water for two days, and two to drain for it again
ONE_DAY = timedelta(days=1)
WHY_CODE = "why_"  # begins the code of a reason, where other talks have a code of the same name


def planting_waits(
    item: Item,
    nursery: Nursery,
    known: Known,
    held: Session | None,
    text: str = "",
    told: date | None = None,
) -> Turn:
    """The field is not planted yet: the mats get their water back at once. Why, and until
    when, is asked the first time, as far as the text does not say it.

    Args:
        told: the day that was read out of the text by who called; None: the text may be one
    """
    answered: tuple[Change, ...] = (AnswerItem(item, "not_yet"),)
    if known.today >= nursery.latest:
        return _too_old(nursery, known, held, answered)
    why = why_in(text, known) or nursery.delay_why
    day = told or day_in(text, known)
    if day is not None and (why is not None or day > nursery.latest):
        because = replace(nursery, delay_why=why or Why.UNSAID)
        return _until(day, because, known, held, answered)
    until = day or min(known.today + WAITS_D * ONE_DAY, nursery.latest)
    was = item.day if item.task is not TaskCode.DRAIN_BED else nursery.anchors.transplant_date
    changes, moved = _put_off(nursery, was, until, why or Why.UNSAID, known)
    asked_before = nursery.delay_why is not None  # so that the day stands, with what it costs
    planted = moved.anchors.transplant_date if asked_before else known.today
    says = (*_water(moved, known.today), *_cost(moved, planted))
    if asked_before:
        beside = begin(talks.WHICH, held=held) if held else None
        return ended(beside, known, said(*says), changes=answered + changes)
    known_why = {} if why is None else {"why": WHY_CODE + why}
    asked = begin(talks.DELAY, held=holds(held), nursery=nursery.id, **known_why)
    return opened(asked, known, *says, changes=answered + changes)


def is_put_off(text: str, known: Known) -> bool:
    """Whether a text says why a field that should be planted is not, in no other words; or
    that it is late, and no more: "we are late"."""
    return why_in(text, known) is not None or is_late(text, known)


def _too_old(
    nursery: Nursery, known: Known, held: Session | None, changes: tuple[Change, ...]
) -> Turn:
    """Past the last day: sown again, or given up."""
    asked = begin(talks.TOO_OLD, held=holds(held), nursery=nursery.id)
    old = about(too_old(nursery), nursery, known.today)
    return opened(asked, known, old, changes=changes)


def planted_before(item: Item, when: date | None, known: Known, held: Session | None) -> Turn:
    """A bed of which nobody told in its days was planted then: on the day that is told, else
    on the one that was meant. What follows on planting is over, so the result is asked."""
    nursery = known.nursery(item.nursery_id)
    if nursery is None:
        raise LookupError(f"the item {item} is of a nursery that is not open")
    day = min(when or nursery.anchors.transplant_date, nursery.latest)
    event = Done(on=day, by=By.FARMER, task=TaskCode.TRANSPLANT)
    moved = after(nursery, event)
    changes: tuple[Change, ...] = (
        AnswerItem(item, "done"),
        Happened(nursery.id, event),
        SaveNursery(moved),
    )
    return result_of(moved, holds(held), known, changes=changes)


def _put_off(
    nursery: Nursery, was: date, until: date, why: Why, known: Known
) -> tuple[tuple[Change, ...], Nursery]:
    event = PutOff(
        on=known.today, by=By.FARMER, task=TaskCode.TRANSPLANT, was=was, until=until, why=why
    )
    moved = after(nursery, event)
    return (Happened(nursery.id, event), SaveNursery(moved)), moved


def _water(nursery: Nursery, today: date) -> tuple[Say, ...]:
    """Whether a bed that is drained gets water again, or is kept wet by hand for so short."""
    if not nursery.is_drained:
        return (d.WAITS(label=nursery.called, date=nursery.anchors.transplant_date),)
    if nursery.anchors.drain_date > today:
        return (about(d.WATER_BACK, nursery, today),)
    return (d.KEEP_WET(label=nursery.called),)


def _cost(nursery: Nursery, on: date) -> tuple[Say, ...]:
    """What seedlings ask for that are past their days."""
    return (cost_of_waiting(nursery, on),) if on > _window_ends(nursery) else ()


def _window_ends(nursery: Nursery) -> date:
    return nursery.sow_date + int(nursery.paced.window.last.value) * ONE_DAY


def _delayed(session: Session, known: Known) -> Turn:
    """The farmer's own day, with what it means for the seedlings, and the ways left."""
    why = Why(str(session.answers["why"]).removeprefix(WHY_CODE))
    nursery = replace(chosen(session, known), delay_why=why)
    day = date.fromisoformat(str(session.answers["until"]))
    return _until(day, nursery, known, session, ())


def _until(
    day: date,
    nursery: Nursery,
    known: Known,
    held: Session | None,
    answered: tuple[Change, ...],
) -> Turn:
    why = nursery.delay_why or Why.UNSAID
    if not known.today <= day <= nursery.latest:
        asked = begin(talks.DELAY, held=holds(held), nursery=nursery.id, why=WHY_CODE + why)
        late = about(d.TOO_LATE, nursery, known.today, date=day)
        kept = (*answered, SaveNursery(nursery)) if answered else ()
        return opened(asked, known, late, changes=kept)
    session = begin(talks.WHICH, held=held.held if held else None)
    was = nursery.anchors.transplant_date
    changes, moved = _put_off(nursery, was, day, why, known)
    changes = answered + changes
    new = about(d.SET, moved, known.today, date=day, day=moved.day(day))
    tip = (d.TIPS[why](),) if why in d.TIPS else ()
    texts = [said(new, *_water(moved, known.today)), said(*tip)]
    if cost := _cost(moved, day):
        texts.append(said(*cost, about(d.WAYS, moved, known.today)))
    told = (text for text in texts if text.says)
    return ended(session, known, *told, changes=changes)


def _sow_anew(session: Session, known: Known) -> Turn:
    """Other seedlings from seed that is soaked today; the old ones stay where they are."""
    nursery = chosen(session, known)
    event = SowAgain(on=known.today, by=By.FARMER, cause="old")
    moved = after(nursery, event)
    changes = (Happened(nursery.id, event), SaveNursery(moved))
    return ended(session, known, *again_texts(moved, known), changes=changes)


def _give_up(session: Session, known: Known) -> Turn:
    nursery = chosen(session, known)
    return opened(begin(talks.CLOSE, held=session.held, nursery=nursery.id), known)


DELAY_ENDINGS: Mapping[str, Ending] = {
    "!delayed": _delayed,
    "!sow_anew": _sow_anew,
    "!give_up": _give_up,
}
