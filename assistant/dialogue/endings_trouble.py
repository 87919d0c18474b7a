"""Where a trouble talk ends: a spray, advice, or the officer with what the farmer answered."""

from collections.abc import Mapping
from dataclasses import replace
from datetime import timedelta

from assistant.agronomy.calendar import TaskCode, day_after
from assistant.agronomy.constants import PALE_AFTER_UNCOVERING_D, UREA_PERCENT
from assistant.agronomy.constants_work import BY_HAND_MOST_L
from assistant.agronomy.life.changes import after
from assistant.agronomy.life.events import By, PutOff
from assistant.agronomy.mat import dissolved_g
from assistant.agronomy.nursery import Nursery
from assistant.agronomy.rounding import Measure, measured
from assistant.dialogue import conversations as talks
from assistant.dialogue.endings import Ending, call, chosen, ended, opened, said, stage_of
from assistant.dialogue.endings_again import sow_again
from assistant.dialogue.engine import begin
from assistant.dialogue.facts import chosen_nursery
from assistant.dialogue.flooding import flooded
from assistant.dialogue.results import urea
from assistant.dialogue.values import (
    AnswerItem,
    CallForHelp,
    Happened,
    Known,
    SaveNursery,
    Session,
    Text,
    Turn,
)
from assistant.wording import messages_care as care
from assistant.wording import messages_talk as m
from assistant.wording.day import about, watering_water
from assistant.wording.message import Message, Say

# What else a sign may mean, in a sentence that is safe to follow at once.
_MAY_BE: Mapping[str, Message] = {
    "spots": care.M_SPOTS,
    "young_leaves": care.M_NEW,
    "cold": care.M_COLD,
    "salt": care.M_SALT,
    "water": care.M_WATER,
    "base": care.M_BASE,
    "all": care.M_ALL,
    "new": care.M_NEW,
    "patches": care.M_ROT,
    "smell": care.M_ROT,
}
_ASKED = ("signs", "leaves", "place")


# --- yellow leaves ---------------------------------------------------------------------------


def _too_early(session: Session, known: Known) -> Turn:
    nursery = chosen_nursery(session, known)
    change = call("yellow", "", session, known)
    if nursery is None or nursery.day(known.today) < 0:
        return ended(session, known, said(m.TOLD_OFFICER()), changes=(change,))
    look_again = next(t.date for t in nursery.tasks if t.code is TaskCode.COLOUR_CHECK)
    is_pale = known.today >= nursery.anchors.uncover_date
    message = care.M_PALE if is_pale else m.UREA_EARLY
    text = said(about(message, nursery, known.today, date=look_again))
    return ended(session, known, text, changes=(change,))


def _just_uncovered(session: Session, known: Known) -> Turn:
    """Shoots are pale under the cover, and for days after it."""
    nursery = chosen(session, known)
    again = day_after(known.today, PALE_AFTER_UNCOVERING_D.value)
    says = about(care.UNCOVER_FIRST, nursery, known.today, date=again)
    return ended(session, known, said(says))


def _urea(session: Session, known: Known) -> Turn:
    """The spray for this bed and this can; a bed smaller than one can is told in litres."""
    nursery = chosen(session, known)
    if nursery.urea_on is not None and nursery.urea_on < known.today:
        return _urea_again(session, known)
    if nursery.quantities.spray_water_l > BY_HAND_MOST_L.value:
        return _look_alike(session, known)  # nobody carries that: an officer knows another way
    litres = float(str(session.answers["can"]))
    if litres > nursery.quantities.spray_water_l:
        advice = about(m.UREA_ADVICE, nursery, known.today, urea=urea(nursery))
    else:
        grams = measured(dissolved_g(litres, UREA_PERCENT.value), Measure.UREA_G)
        advice = about(
            care.UREA_CAN, nursery, known.today, urea=urea(nursery), grams=grams, litres=litres
        )
    bed = nursery
    if not bed.uncovered:  # as was asked before the can was
        bed = bed.uncovering_on(bed.anchors.uncover_date, uncovered=True)
    noted = SaveNursery(replace(bed, urea_on=known.today))
    return ended(session, known, Text((advice,), keep=True), changes=(noted,))


def _urea_again(session: Session, known: Known) -> Turn:
    """Once only: a second spray is the officer's to decide."""
    nursery = chosen(session, known)
    text = said(
        about(care.UREA_ONCE, nursery, known.today, date=nursery.urea_on or known.today)
    )
    return ended(session, known, text, changes=(_seen_call(session, known),))


def _light(session: Session, known: Known) -> Turn:
    """Light green is looked at again before anything is given."""
    nursery = chosen(session, known)
    again = day_after(known.today, PALE_AFTER_UNCOVERING_D.value)
    return ended(session, known, said(about(care.M_LIGHT, nursery, known.today, date=again)))


def _codes(session: Session) -> list[str]:
    """What was seen, by the codes of the talk's choices."""
    codes = [str(session.answers[name]) for name in _ASKED if name in session.answers]
    return [code for code in codes if code != "none"]


def _seen_call(session: Session, known: Known) -> CallForHelp:
    return call("yellow", ",".join(_codes(session)), session, known)


def _look_alike(session: Session, known: Known) -> Turn:
    """Not surely nitrogen: what it may be, and the officer is told all that was answered."""
    seen = _codes(session)
    messages = (_MAY_BE[code] for code in seen if code in _MAY_BE)
    nursery = chosen(session, known)
    may_be = tuple(about(message, nursery, known.today) for message in messages)
    change = _seen_call(session, known)
    return ended(session, known, said(*may_be, m.TOLD_OFFICER()), changes=(change,))


# --- other trouble ---------------------------------------------------------------------------


def _advice(kind: str, message: Message) -> Ending:
    def ending(session: Session, known: Known) -> Turn:
        text = said(_fits(message, chosen_nursery(session, known), known))
        return ended(session, known, text, changes=(call(kind, "", session, known),))

    return ending


_wait_for_shoots = _advice("not_up", m.NOT_UP_ADVICE)
_wait_for_roots = _advice("seed", m.SEED_ADVICE)


def _seed(session: Session, known: Known) -> Turn:
    """Of seed that is sown, shoots are counted; none is kept moist in a pail any more."""
    nursery = chosen_nursery(session, known)
    if nursery is not None and nursery.sown:
        return _not_up(session, known)
    turn = _wait_for_roots(session, known)
    if nursery is None or nursery.held or known.today < nursery.sow_date:
        return turn
    return _sown_tomorrow(turn, nursery, known)


def _sown_tomorrow(turn: Turn, nursery: Nursery, known: Known) -> Turn:
    """Sowing waits as long as the seed does, so that nobody is taken to have sown it today."""
    was, until = nursery.sow_date, known.today + timedelta(days=1)
    event = PutOff(on=known.today, by=By.FARMER, task=TaskCode.SOW, was=was, until=until)
    moved = after(nursery, event)
    asked = (i for i in known.items if (i.nursery_id, i.task) == (nursery.id, TaskCode.SOW))
    told = tuple(AnswerItem(item, "not_yet") for item in asked)
    changes = (*turn.changes, *told, Happened(nursery.id, event), SaveNursery(moved))
    noted = said(about(m.SOW_LATER_NOTED, moved, known.today))
    return replace(turn, texts=(*turn.texts, noted), changes=changes)


def _not_up(session: Session, known: Known) -> Turn:
    """Before sowing it is about seed; before day 5 there is only waiting; then shoots count."""
    nursery = chosen_nursery(session, known)
    if nursery is not None and nursery.is_gone:
        return sow_again(nursery, session.held, known)
    if nursery is None or nursery.day(known.today) < 0:
        return _wait_for_roots(session, known)
    if nursery.day(known.today) < nursery.paced.days.uncover.value:
        return _wait_for_shoots(session, known)
    counting = begin(talks.EMERGENCE, held=session.held, nursery=nursery.id)
    return opened(counting, known)


# --- weather ---------------------------------------------------------------------------------


def _stage(nursery: Nursery | None, known: Known) -> str:
    return stage_of(nursery, known.today) if nursery else "early"


def _fits(message: Message, nursery: Nursery | None, known: Known) -> Say:
    """An advice in the words that fit the bed; those for mats where there is none yet."""
    return about(message, nursery, known.today) if nursery else message()


_IN_FLOOD = {"before": care.FLOOD_BEFORE, "early": care.FLOOD_EARLY, "later": care.FLOOD_LATER}
_IN_DROUGHT = {"before": care.DRY_BEFORE, "early": care.DRY_EARLY, "later": care.DRY_LATER}
_IN_COLD = {"before": care.COLD_BEFORE, "early": care.COLD_EARLY, "later": care.COLD_LATER}


def _flood(session: Session, known: Known) -> Turn:
    """What to do now; in the morning it is asked what stands."""
    turn = flood_advice(session, known)
    return replace(turn, changes=(*turn.changes, *flooded(known)))


def flood_advice(session: Session, known: Known) -> Turn:
    """People first, then the bed; the officer is told."""
    nursery = chosen_nursery(session, known)
    text = said(_fits(_IN_FLOOD[_stage(nursery, known)], nursery, known))
    return ended(session, known, text, changes=(call("flood", "", session, known),))


def _dry(session: Session, known: Known) -> Turn:
    nursery = chosen_nursery(session, known)
    change = call("water", "", session, known)
    if nursery is None:
        return ended(session, known, said(m.TOLD_OFFICER()), changes=(change,))
    message = _IN_DROUGHT[_stage(nursery, known)]
    text = said(about(message, nursery, known.today, pails=watering_water(nursery)))
    return ended(session, known, text, changes=(change,))


def _cold(session: Session, known: Known) -> Turn:
    nursery = chosen_nursery(session, known)
    message = _IN_COLD[_stage(nursery, known)]
    return ended(session, known, said(_fits(message, nursery, known)))


TROUBLE_ENDINGS: Mapping[str, Ending] = {
    "!too_early": _too_early,
    "!just_uncovered": _just_uncovered,
    "!urea": _urea,
    "!light": _light,
    "!look_alike": _look_alike,
    "!not_up": _not_up,
    "!seed": _seed,
    "!flood": _flood,
    "!dry": _dry,
    "!cold": _cold,
}
