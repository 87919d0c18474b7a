"""What happens where a plan ends, or what it stands on is given anew: the nursery is kept."""

from collections.abc import Mapping
from dataclasses import replace
from datetime import date
from itertools import chain

from assistant.agronomy.calendar import DayChoice, TaskCode
from assistant.agronomy.constants import GOOD_GERMINATION
from assistant.agronomy.field import FieldInputs
from assistant.agronomy.life.changes import lifted
from assistant.agronomy.lot.varieties import variety_key
from assistant.agronomy.nursery import Nursery
from assistant.agronomy.practices import Practice
from assistant.agronomy.season.outcome import own_establishment
from assistant.dialogue.endings import Ending, chosen, ended, opened, said, sown_weak
from assistant.dialogue.endings_seed import lift_says
from assistant.dialogue.endings_soaking import warmed
from assistant.dialogue.endings_steps import with_next
from assistant.dialogue.outlook import field_share
from assistant.dialogue.results import own_text, plan_texts, quantity_texts, skipped
from assistant.dialogue.values import (
    CallForHelp,
    Change,
    Known,
    SaveNursery,
    Session,
    Text,
    Turn,
)
from assistant.wording import messages_answers as a
from assistant.wording import messages_delay as d
from assistant.wording import messages_planting as g
from assistant.wording import messages_seed as seed
from assistant.wording import messages_talk as m
from assistant.wording.day import TASK_TEXTS, about
from assistant.wording.message import Say

_LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"  # I and O look like digits


def _label(known: Known) -> str:
    taken = {nursery.label for nursery in known.nurseries}
    twice = (first + second for first in _LETTERS for second in _LETTERS)
    return next(label for label in chain(_LETTERS, twice) if label not in taken)


def _said_sown(session: Session, known: Known) -> bool:
    """Whether the farmer said yes to having sown, and the day was not moved ahead since."""
    sowing = date.fromisoformat(str(session.answers["sowing"]))
    return session.answers.get("sown") == "yes" and sowing <= known.today


def planted_by(practice: Practice, known: Known, inputs: FieldInputs) -> FieldInputs:
    """The inputs with what a practice usually has, and the farmer's own establishment by it."""
    usual = practice.planting
    own = own_establishment(known.seasons, practice)
    return replace(
        inputs,
        spacing_row_cm=usual.row_cm.value,
        spacing_hill_cm=usual.hill_cm.value,
        seedlings_per_hill=int(usual.seedlings_per_hill.value),
        establishment=own.mean if own else usual.establishment.value,
    )


def _day_went_by(session: Session, known: Known) -> bool:
    """Whether the day of sowing came and went while the plan lay open, and nobody said that it
    is sown."""
    sowing = date.fromisoformat(str(session.answers["sowing"]))
    return sowing < known.today and session.answers.get("sown") != "yes"


def _open(session: Session, known: Known) -> Turn:
    if _day_went_by(session, known):
        return opened(replace(session, step="sown"), known)
    answers = session.answers
    percent = answers.get("germination")
    germination = float(percent) / 100 if isinstance(percent, int | float) else None
    practice = known.practice(answers.get("practice"))
    nursery = Nursery(
        id=0,
        farmer_id=known.farmer.id if known.farmer else 0,
        label=_label(known),
        name=str(answers["name"])[:LONGEST_NAME] if answers.get("name") else None,
        inputs=planted_by(
            practice,
            known,
            FieldInputs(
                field_area_m2=float(str(answers["area"])),
                germination=germination or GOOD_GERMINATION.value,
                pail_litres=float(str(answers["pail"])),
            ),
        ),
        practice=practice,
        area_typed=str(answers["area_words"]),
        germination_known=germination is not None,
        sow_date=date.fromisoformat(str(answers["sowing"])),
        sown=_said_sown(session, known),
        made_on=known.today,
        test_begun=known.today if answers.get("germination") == "begun" else None,
        tin_litres=next((n.tin_litres for n in known.nurseries if n.tin_litres), None),
    )
    nursery = warmed(_of_variety(nursery, session, known), known)
    texts = (*own_text(known, practice), *plan_texts(nursery, known))
    made = ended(session, known, *texts, changes=(SaveNursery(nursery), *_told(nursery)))
    return made if nursery.held or made.session else with_next(made, known)


def _of_variety(nursery: Nursery, session: Session, known: Known) -> Nursery:
    """A plan whose day was chosen by a variety is of it."""
    named = variety_key(str(session.answers.get("variety", "")))
    found = (each for each in known.varieties if named and variety_key(each.name) == named)
    variety = next(found, None)
    if variety is not None:
        return nursery.of_variety(variety)
    days = session.answers.get("ripens")
    return replace(nursery, ripens_d=days) if isinstance(days, int) else nursery


def _told(nursery: Nursery) -> tuple[Change, ...]:
    """The officer hears of seed that must not be sown."""
    if not nursery.held:
        return ()
    percent = f"{round(nursery.inputs.germination * 100, 1):g}%"
    return (CallForHelp("seed", percent, nursery.id or None),)


# --- dates -----------------------------------------------------------------------------------


def _moved(session: Session, known: Known) -> Turn:
    before = chosen(session, known)
    nursery = before.sown_on(
        date.fromisoformat(str(session.answers["sowing"])),
        sown=_said_sown(session, known),
    )
    nursery = warmed(nursery, known)
    texts = [said(about(m.SOWING_MOVED, nursery, known.today))]
    changes: tuple[Change, ...] = (SaveNursery(nursery),)
    if nursery.held:
        texts.append(said(seed.HELD(label=nursery.called)))
    elif before.held:
        texts.append(said(about(m.SOWN_WEAK, nursery, known.today)))
        changes += (sown_weak(before),)
    elif nursery.sprouting and not nursery.sown:
        texts.append(said(about(g.SOAK_SET, nursery, known.today)))
    if missed := skipped(before, nursery, known.today):
        texts.append(said(*missed))
    return ended(session, known, *texts, changes=changes)


def _amended(session: Session, known: Known) -> Turn:
    """Field, germination, pail or name given anew: the quantities follow, the days stay."""
    nursery = chosen(session, known)
    answers = session.answers
    if "name" in answers:
        named = replace(nursery, name=str(answers["name"])[:LONGEST_NAME])
        text = said(about(m.NAMED, named, known.today, old=nursery.label))
        return ended(session, known, text, changes=(SaveNursery(named),))
    inputs = nursery.inputs
    if "area" in answers:
        inputs = replace(inputs, field_area_m2=float(str(answers["area"])))
    if "pail" in answers:
        inputs = replace(inputs, pail_litres=float(str(answers["pail"])))
    germination = answers.get("germination")
    if isinstance(germination, int | float):
        inputs = replace(inputs, germination=germination / 100)
    practice = nursery.practice
    if "practice" in answers and not nursery.sown:
        practice = known.practice(answers["practice"])
        inputs = planted_by(practice, known, inputs)
        nursery = replace(nursery, uncover_date=None, transplant_date=None)
    amended = replace(
        nursery,
        practice=practice,
        inputs=inputs,
        area_typed=str(answers.get("area_words", nursery.area_typed)),
        germination_known=nursery.germination_known or germination is not None,
    )
    amended = lifted(nursery, _as_sown(nursery, amended), known.today)
    if "area" in answers and nursery.sown:
        return ended(
            session, known, _sown_field(amended, known), changes=(SaveNursery(amended),)
        )
    noted = said(m.AMENDED(), *lift_says(nursery, amended, known))
    texts = (noted, *quantity_texts(amended, known.today, known.region))
    told = () if nursery.held else _told(amended)
    return ended(session, known, *texts, changes=(SaveNursery(amended), *told))


def _as_sown(nursery: Nursery, amended: Nursery) -> Nursery:
    """As many mats as were sown lie there, whatever the plan now asks for: so many more than
    those of the plan, or fewer (below 0)."""
    if not nursery.sown or not nursery.quantities.mats:
        return amended
    more = nursery.mats_sown - amended.quantities.mats
    return replace(amended, more_mats=more or None)


def _sown_field(nursery: Nursery, known: Known) -> Text:
    """What a bed that is sown plants of another field."""
    share = field_share(nursery, nursery.inputs.seedlings_per_hill)
    return said(about(d.SOWN_FIELD, nursery, known.today, share=share))


LONGEST_NAME = 12


def _transplanting(session: Session, known: Known) -> Turn:
    nursery = chosen(session, known)
    day = date.fromisoformat(str(session.answers["transplanting"]))
    verdict = nursery.judge_transplanting(day)
    if verdict is DayChoice.IMPOSSIBLE:
        answers = {k: v for k, v in session.answers.items() if k != "transplanting"}
        asked = replace(session, step="transplanting", answers=answers)
        return opened(
            asked, known, about(m.NOT_A_TRANSPLANT_DAY, nursery, known.today, date=day)
        )
    nursery = nursery.transplanting_on(day)
    says = _day_set(nursery, known)
    if verdict is not DayChoice.GOOD and not _as_leaves_say(day, session):
        says += (_outside(nursery, day, known),)
    return ended(session, known, said(*says), changes=(SaveNursery(nursery),))


def _day_set(nursery: Nursery, known: Known) -> tuple[Say, ...]:
    """The day and when the bed is drained for it: now, where that should have been before."""
    if nursery.is_drained and nursery.anchors.drain_date < known.today:
        drain = TASK_TEXTS[TaskCode.DRAIN_BED].prompt
        return tuple(about(each, nursery, known.today) for each in (a.PLANT_ON, drain))
    return (about(m.TRANSPLANT_SET, nursery, known.today),)


def _as_leaves_say(day: date, session: Session) -> bool:
    """Whether a day is within the window that a leaf count has moved."""
    first, last = (session.answers.get(name) for name in ("best_first", "best_last"))
    return bool(first and last) and str(first) <= day.isoformat() <= str(last)


def _outside(nursery: Nursery, day: date, known: Known) -> Say:
    of_sowing = nursery.day(day)
    return about(m.TRANSPLANT_OUTSIDE, nursery, known.today, date=day, day=of_sowing)


PLAN_ENDINGS: Mapping[str, Ending] = {
    "!open": _open,
    "!moved": _moved,
    "!amended": _amended,
    "!chosen": _transplanting,
}
