"""A bed that is sown again: why it failed is asked and acted on, then seed, mix and days told.

Seed that may be dead is checked for three days before more work goes into it.
"""

from collections.abc import Mapping
from datetime import timedelta

from assistant.agronomy import constants_work as w
from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.life.changes import after
from assistant.agronomy.life.events import By, Done, NewSeed, PutOff, SowAgain
from assistant.agronomy.nursery import Nursery
from assistant.agronomy.rounding import Measure, measured
from assistant.dialogue import conversations as talks
from assistant.dialogue.endings import Ending, call, chosen, ended, opened, said
from assistant.dialogue.endings_seed import new_seed
from assistant.dialogue.engine import begin
from assistant.dialogue.values import Change, Happened, Known, SaveNursery, Session, Text, Turn
from assistant.wording import messages_again as again
from assistant.wording import messages_answers as answers
from assistant.wording import messages_care as care
from assistant.wording import messages_delay as d
from assistant.wording import messages_planting as g
from assistant.wording import messages_talk as m
from assistant.wording.day import about, what_of
from assistant.wording.day_practice import batch_of, counts_mats, depth_cm
from assistant.wording.message import Say

LITRES = 1000
CAUSE, SEED = "cause_", "seed_"  # begin the codes of the choices
_DOUBTFUL = frozenset({"dead", "rotten", "unsure"})  # the seed itself may be bad


def sow_again(
    nursery: Nursery,
    held: Session | None,
    known: Known,
    *before: Say,
    cause: str | None = None,
    changes: tuple[Change, ...] = (),
) -> Turn:
    """The talk about a bed that failed, with its cause where it is known."""
    told = {} if cause is None else {"cause": CAUSE + cause}
    asked = begin(talks.AGAIN, held=held, nursery=nursery.id, **told)
    return opened(asked, known, *before, changes=changes)


def _again(session: Session, known: Known) -> Turn:
    nursery = chosen(session, known)
    cause = str(session.answers["cause"]).removeprefix(CAUSE)
    seed = str(session.answers["seed"]).removeprefix(SEED)
    if seed == "none":
        change = call("not_up", "", session, known)
        return ended(session, known, said(again.NO_SEED()), changes=(change,))
    checked = seed == "same" and cause in _DOUBTFUL
    event = SowAgain(
        on=known.today, by=By.FARMER, cause=cause, other=seed == "other", checked=checked
    )
    moved = after(nursery, event)
    tip = (said(_tip(cause, moved, known)),) if cause in again.TIPS else ()
    texts = (*tip, *(_checked(moved, known) if checked else again_texts(moved, known)))
    changes = (Happened(nursery.id, event), SaveNursery(moved))
    return ended(session, known, *texts, changes=changes)


def _tip(cause: str, nursery: Nursery, known: Known) -> Say:
    return about(again.TIPS[cause], nursery, known.today)


def _checked(nursery: Nursery, known: Known) -> tuple[Text, ...]:
    """The check of what is left, and the days that hold if it sprouts."""
    check = again.CHECK_FIRST(
        label=nursery.called,
        seeds=w.SEED_CHECK_SEEDS.value,
        days=w.SEED_CHECK_D.value,
        date=nursery.count_on or known.today,
    )
    dates = about(care.AGAIN_DATES, nursery, known.today)
    return Text((check,), keep=True), *_new_mats(nursery), Text((dates,), keep=True)


def _new_mats(nursery: Nursery) -> tuple[Text, ...]:
    """The mix and the sheet of a bed that is made anew, where it is of mats."""
    mats = nursery.quantities.mats
    if not counts_mats(nursery.practice) or not mats:
        return ()
    return (Text((mix_for(mats, nursery),), keep=True),)


def mix_for(mats: int, nursery: Nursery) -> Say:
    """The mix and the sheet that so many more mats ask for."""
    q = nursery.quantities
    part = mats / q.mats
    return d.FILL_MIX(
        mix=measured(q.soil_mix_m3 * LITRES * part, Measure.MIX_L),
        sheet=measured(q.sheet_m2 * part, Measure.AREA_M2),
        parts=batch_of(nursery.practice),
    )


def apart(nursery: Nursery) -> tuple[Say, ...]:
    """Where mats that are added lie, while the others stand in water."""
    return (d.FILL_APART(),) if depth_cm(nursery.practice) else ()


def again_texts(nursery: Nursery, known: Known) -> tuple[Text, ...]:
    """The seed to soak today, the mix of mats that are made anew, and the new days."""
    noted = g.AGAIN_LONG if nursery.sprouting else care.AGAIN_NOTED
    seed = Text((about(noted, nursery, known.today),), keep=True)
    dates = Text((about(care.AGAIN_DATES, nursery, known.today),), keep=True)
    return seed, *_new_mats(nursery), dates


def _seed_now(session: Session, known: Known) -> Turn:
    """Seed that is not sown yet is gone: with what is left or with other seed the plan goes on
    while there is time to soak it; with none the sowing waits a week, and longer by word."""
    bed = chosen(session, known)
    seed = str(session.answers["seed"]).removeprefix(SEED)
    changes, texts = new_seed(bed, known) if seed == "other" else ((), ())
    waits = timedelta(days=w.NO_SEED_WAITS_D.value if seed == "none" else 0)
    sow = max(bed.sow_date, known.today + waits + timedelta(days=bed.soak_before_d))
    event = PutOff(on=known.today, by=By.FARMER, task=TaskCode.SOW, was=bed.sow_date, until=sow)
    before = after(bed, NewSeed(on=known.today, by=By.FARMER)) if seed == "other" else bed
    moved = after(before, event)
    if moved != before:
        changes = (*changes, Happened(bed.id, event), SaveNursery(moved))
    says = about(again.NO_SEED_YET if seed == "none" else answers.SOW_ON, moved, known.today)
    return ended(session, known, said(says), *texts, changes=changes)


def _sown_already(session: Session, known: Known) -> Turn:
    """The farmer has sown the bed again: its days count from today."""
    nursery = chosen(session, known)
    event = SowAgain(on=known.today, by=By.FARMER, cause="unsure", sown=True)
    moved = after(nursery, event)
    text = said(about(m.SOWN_NOTED, moved, known.today))
    changes = (Happened(nursery.id, event), SaveNursery(moved))
    return ended(session, known, text, changes=changes)


def _up_early(session: Session, known: Known) -> Turn:
    """Uncovered before its day, and the shoots bear it: the rest follows from today."""
    nursery = chosen(session, known)
    event = Done(on=known.today, by=By.FARMER, task=TaskCode.UNCOVER_FLOOD)
    moved = after(nursery, event)
    what = what_of(TaskCode.UNCOVER_FLOOD, nursery.practice)
    text = said(m.DONE_NOTED(label=nursery.called, what=what))
    changes = (Happened(nursery.id, event), SaveNursery(moved))
    return ended(session, known, text, changes=changes)


def _cover_again(session: Session, known: Known) -> Turn:
    nursery = chosen(session, known)
    return ended(session, known, said(about(again.COVER_AGAIN, nursery, known.today)))


AGAIN_ENDINGS: Mapping[str, Ending] = {
    "!again": _again,
    "!seed_now": _seed_now,
    "!sown_again": _sown_already,
    "!up_early": _up_early,
    "!cover_again": _cover_again,
}
