"""Mats that are gone: the plan and the field know, and they are sown again where wished."""

from collections.abc import Mapping
from dataclasses import replace

from assistant.agronomy.life.again import sow_again_day
from assistant.agronomy.life.changes import after
from assistant.agronomy.life.events import By, Lost
from assistant.agronomy.nursery import Nursery
from assistant.dialogue import conversations as talks
from assistant.dialogue.endings import Ending, call, chosen, ended, opened, said
from assistant.dialogue.endings_again import apart, mix_for, sow_again
from assistant.dialogue.engine import begin
from assistant.dialogue.facts import chosen_nursery
from assistant.dialogue.outlook import field_share
from assistant.dialogue.values import Change, Happened, Known, SaveNursery, Session, Text, Turn
from assistant.wording import amounts
from assistant.wording import messages_again as again
from assistant.wording import messages_delay as d
from assistant.wording import messages_talk as m
from assistant.wording.day import about
from assistant.wording.day_practice import counts_mats
from assistant.wording.message import Say

ANIMALS = "animals"
_CALLS: Mapping[str, str] = {ANIMALS: ANIMALS, "washed": "flood", "dried": "water"}
_CAUSES: Mapping[str, str] = {ANIMALS: "eaten", "washed": "washed", "dried": "unsure"}


def animals(session: Session, known: Known) -> Turn:
    """What to do against them; of mats that lie there, how many they took."""
    nursery = chosen_nursery(session, known)
    change = call("animals", "", session, known)
    if nursery is None or not may_lose(nursery):
        planted = nursery is not None and nursery.transplanted_on is not None
        message = m.FIELD_ANIMALS if planted else m.ANIMALS_ADVICE
        says = about(message, nursery, known.today) if nursery else m.ANIMALS_ADVICE()
        return ended(session, known, said(says), changes=(change,))
    asked = begin(talks.LOST, held=session.held, nursery=nursery.id)
    advice = about(m.ANIMALS_ADVICE, nursery, known.today)
    return opened(asked, known, advice, changes=(change,))


def may_lose(nursery: Nursery) -> bool:
    waits = nursery.sown and nursery.transplanted_on is None
    return waits and counts_mats(nursery.practice) and nursery.mats_left > 0


def _none(session: Session, known: Known) -> Turn:
    return ended(session, known, said(m.ALL_RIGHT()))


def _lost(session: Session, known: Known) -> Turn:
    """So many are gone: told to the officer too, and whether they are sown again is asked."""
    nursery, mats = chosen(session, known), int(str(session.answers["lost"]))
    by = str(session.answers.get("by", ANIMALS))
    change = call(_CALLS[by], str(mats), session, known)
    return lost(nursery, mats, by, session.held, known, changes=(change,))


def lost(
    nursery: Nursery,
    mats: int,
    by: str,
    held: Session | None,
    known: Known,
    *before: Say,
    changes: tuple[Change, ...] = (),
) -> Turn:
    """So many mats are gone, by animals or water or for want of it: said back."""
    event = Lost(on=known.today, by=By.FARMER, mats=mats, cause=by)
    moved = after(nursery, event)
    noted = d.LOST_NOTED(
        label=nursery.called,
        lost=mats,
        mats=nursery.mats_sown,
        share=field_share(moved, nursery.inputs.seedlings_per_hill),
    )
    changes = (*changes, Happened(nursery.id, event), SaveNursery(moved))
    asked = begin(talks.LOST_FILL, held=held, nursery=nursery.id, lost=mats, by=by)
    return opened(asked, known, *before, noted, changes=changes)


def _fill(session: Session, known: Known) -> Turn:
    """The mats that are gone are sown again, with all that they ask for; where all are gone
    the bed begins anew."""
    nursery, mats = chosen(session, known), int(str(session.answers["lost"]))
    part, sowing = mats / nursery.quantities.mats, sow_again_day(known.today, nursery)
    q = nursery.quantities
    seed = d.FILL_SEED(
        label=nursery.called, seed=amounts.seed_weight(q.seed_kg * part), sowing=sowing
    )
    texts: tuple[Text, ...] = (
        Text((seed, mix_for(mats, nursery), *apart(nursery)), keep=True),
    )
    if not nursery.mats_left:
        cause = _CAUSES[str(session.answers.get("by", ANIMALS))]
        return sow_again(nursery, session.held, known, cause=cause)
    waits = nursery.more_on is not None and nursery.more_on >= known.today
    texts += (said(again.TOGETHER()),) if waits else ()
    more = (nursery.more_mats or 0) + mats
    added = replace(nursery, resown=True, more_on=sowing, more_mats=more)
    return ended(session, known, *texts, changes=(SaveNursery(added),))


def _keep(session: Session, known: Known) -> Turn:
    return ended(session, known, said(d.NO_FILL()))


def _some_again(session: Session, known: Known) -> Turn:
    """Some mats were sown again: how many were gone."""
    nursery = chosen(session, known)
    return opened(begin(talks.LOST, held=session.held, nursery=nursery.id), known)


LOST_ENDINGS: Mapping[str, Ending] = {
    "!some_again": _some_again,
    "!animals": animals,
    "!mats_none": _none,
    "!mats_gone": _lost,
    "!mats_fill": _fill,
    "!mats_keep": _keep,
}
