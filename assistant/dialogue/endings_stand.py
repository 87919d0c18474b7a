"""Where the count of shoots ends: enough, wait, fill with more mats, or sow all again."""

from collections.abc import Mapping
from dataclasses import replace
from datetime import date, timedelta

from assistant.agronomy.calendar import day_after
from assistant.agronomy.constants_work import MAT_SIZE_M2
from assistant.agronomy.growth.stand import (
    Filling,
    filling,
    hill_of_thin_stand,
    planted_share,
)
from assistant.agronomy.life.again import sow_again_day
from assistant.agronomy.nursery import Nursery
from assistant.agronomy.rounding import Measure, measured, whole_up
from assistant.dialogue.endings import Ending, call, chosen, ended, said
from assistant.dialogue.endings_again import apart, mix_for, sow_again
from assistant.dialogue.values import Change, Known, SaveNursery, Session, Text, Turn
from assistant.wording import amounts
from assistant.wording import messages_care as care
from assistant.wording import messages_planting as g
from assistant.wording.day import about
from assistant.wording.day_practice import counts_mats
from assistant.wording.message import Message, Say, Slot

LOOK_AGAIN_D = 2  # a count tomorrow would hardly differ


def _counted(message: Message, nursery: Nursery, session: Session, known: Known) -> Say:
    shoots = int(str(session.answers["shoots"]))
    return about(message, nursery, known.today, shoots=shoots)


def _told(session: Session, known: Known) -> tuple[Change, ...]:
    """The officer hears the count and what the farmer decided."""
    shoots, decided = session.answers["shoots"], session.answers.get("decided", "")
    return (call("not_up", f"{shoots} {decided}".strip(), session, known),)


def _look_again(known: Known) -> date:
    return known.today + timedelta(days=LOOK_AGAIN_D)


def _good(session: Session, known: Known) -> Turn:
    nursery = chosen(session, known)
    return ended(session, known, said(_counted(care.STAND_GOOD, nursery, session, known)))


def _wait(session: Session, known: Known) -> Turn:
    """The uncovering waits too, where the bed is still covered."""
    nursery, on = chosen(session, known), _look_again(known)
    changes = _told(session, known)
    if not nursery.uncovered and nursery.may_uncover_on(on):
        changes += (SaveNursery(nursery.uncovering_on(on, uncovered=False)),)
    text = said(about(care.WAIT_NOTED, nursery, known.today, date=on))
    return ended(session, known, text, changes=changes)


def _keep(session: Session, known: Known) -> Turn:
    nursery = chosen(session, known)
    share = planted_share(float(str(session.answers["shoots"])), nursery.quantities)
    usual = nursery.inputs.seedlings_per_hill
    thin = replace(nursery, hill_seedlings=hill_of_thin_stand(usual, share))
    on = _look_again(known)
    text = said(about(care.THIN_NOTED, thin, known.today, usual=usual, date=on))
    changes = (*_told(session, known), SaveNursery(thin))
    return ended(session, known, text, changes=changes)


def _fill(session: Session, known: Known) -> Turn:
    nursery = chosen(session, known)
    more = filling(float(str(session.answers["shoots"])), nursery.quantities)
    sowing = sow_again_day(known.today, nursery)
    told = about(
        g.FILL_LONG if nursery.sprouting else care.FILL_NOTED,
        nursery,
        known.today,
        seed=amounts.seed_weight(more.seed_kg),
        **_more_bed(nursery, more, known.today),
        sowing=sowing,
        first=day_after(sowing, nursery.practice.window.first.value),
    )
    mats = more.mats or whole_up(more.bed_m2 / MAT_SIZE_M2.value)
    added = replace(nursery, resown=True, more_on=sowing, more_mats=mats)
    changes = (*_told(session, known), SaveNursery(added))
    texts = (Text((told,), keep=True), *_mix_for(more.mats, nursery))
    return ended(session, known, *texts, changes=changes)


def _mix_for(mats: int, nursery: Nursery) -> tuple[Text, ...]:
    """What mats that are added ask for beside seed."""
    if not counts_mats(nursery.practice) or not nursery.quantities.mats:
        return ()
    return (Text((mix_for(mats, nursery), *apart(nursery)), keep=True),)


def _more_bed(nursery: Nursery, more: Filling, today: date) -> dict[str, Slot]:
    """What is added: mats, or where they are not counted the bed [m2]; and for seed that is
    soaked longer the day on which it is drained."""
    bed = measured(more.bed_m2, Measure.AREA_M2)
    if nursery.sprouting:
        return {"bed": bed, "drained": day_after(today, nursery.sprouting.soak_d)}
    if counts_mats(nursery.practice):
        return {"mats": amounts.more_mats(more.mats)}
    return {"bed": bed}


def _again(session: Session, known: Known) -> Turn:
    """Why it failed is asked before more seed goes into it."""
    nursery = chosen(session, known)
    return sow_again(nursery, session.held, known, changes=_told(session, known))


STAND_ENDINGS: Mapping[str, Ending] = {
    "!stand_good": _good,
    "!stand_wait": _wait,
    "!stand_keep": _keep,
    "!stand_fill": _fill,
    "!stand_again": _again,
}
