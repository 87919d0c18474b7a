"""Where the talk of a season's result ends: kept, the nursery closed, something learned."""

from collections.abc import Mapping
from dataclasses import replace

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.constants_work import MAT_SIZE_M2
from assistant.agronomy.life.rows import TASKS
from assistant.agronomy.nursery import Nursery
from assistant.agronomy.practices import Practice
from assistant.agronomy.rounding import Measure, measured, nearest, whole_up
from assistant.agronomy.season.establishment import Establishment
from assistant.agronomy.season.outcome import SeasonOutcome, own_establishment
from assistant.dialogue import conversations as talks
from assistant.dialogue.endings import Ending, alive, chosen, ended, holds, opened, said
from assistant.dialogue.engine import arrive, ask, begin
from assistant.dialogue.results import own_rate
from assistant.dialogue.values import (
    AnswerItem,
    Change,
    KeepSeason,
    Kept,
    Known,
    SaveNursery,
    Session,
    Text,
    Turn,
)
from assistant.wording import messages_result as r
from assistant.wording.day import about
from assistant.wording.message import Say

WHOLE = 100


def result(session: Session | None, known: Known) -> Turn:
    """Tell how a season went: of the only nursery that is planted, or of the one chosen."""
    planted = [each for each in known.nurseries if each.transplanted_on is not None]
    if not planted:
        return ended(session, known, said(r.NOTHING_PLANTED()))
    if len(planted) == 1:
        return result_of(planted[0], holds(session), known)
    return opened(begin(talks.RESULT, held=holds(session)), known)


def result_of(
    nursery: Nursery,
    held: Session | None,
    known: Known,
    sufficed: str | None = None,
    changes: tuple[Change, ...] = (),
    planted: str | None = None,
) -> Turn:
    """The talk about one nursery, with what is known of it answered already."""
    answers: dict[str, str | int] = {"nursery": nursery.id}
    if sufficed:
        answers |= {"sufficed": sufficed}
    if planted:
        answers |= {"planted": planted}
    if nursery.resown:
        answers |= {"resown": "yes"}
    fresh = begin(talks.RESULT, held=held, **answers)
    step = arrive(fresh, known, talks.TABLES)
    if not step.ending:
        return opened(step.session, known, changes=changes)
    turn = _result(step.session, known)
    return replace(turn, changes=(*changes, *turn.changes))


def _result(session: Session, known: Known) -> Turn:
    nursery = chosen(session, known)
    if nursery.transplanted_on is None:
        return ended(session, known, said(about(r.NOT_PLANTED_YET, nursery, known.today)))
    outcome = _outcome(session, nursery, known)
    closed = replace(nursery, resown=outcome.resown, closed=True)
    changes = (*_answers(nursery, session, known), KeepSeason(outcome), SaveNursery(closed))
    own = own_establishment((*known.seasons, outcome), nursery.practice)
    says = (about(r.RESULT_KEPT, nursery, known.today), *_advice(outcome, nursery, known))
    texts = (said(*says), *map(said, _learned(own, nursery.practice)))
    if outcome.resown:  # what was sown twice teaches nothing of the seed of one bed
        return ended(session, known, *texts, changes=changes)
    return _ask_seed(session, nursery, known, texts, changes)


def _ask_seed(
    session: Session,
    nursery: Nursery,
    known: Known,
    texts: tuple[Text, ...],
    changes: tuple[Change, ...],
) -> Turn:
    """One question more, of a result that is kept by now: no answer is "as planned"."""
    fresh = begin(
        talks.SEED_USED,
        held=alive(session.held, known, {nursery.id}),
        season=nursery.id,
        label=nursery.called,
        practice=nursery.practice.code,
        seed=measured(_sown_kg(nursery), Measure.SEED_KG),
    )
    asked = ask(fresh, known, talks.TABLES)
    return Turn(fresh, (*texts, asked), changes)


def _sown_kg(nursery: Nursery) -> float:
    """Dry seed by the plan [kg], with that of mats that were added."""
    mats = mats_of(nursery)
    return nursery.quantities.seed_kg * (mats + (nursery.more_mats or 0)) / mats


def _seed_used(session: Session, known: Known) -> Turn:
    """The seed that was really sown, beside the result; what is learned changes with it."""
    answers = session.answers
    season = next((s for s in known.seasons if s.nursery_id == answers["season"]), None)
    planned = float(str(answers["seed"]))
    kg = planned if answers["used"] == "planned" else float(str(answers["used"]))
    if season is None or kg == planned:
        return ended(session, known, said(r.SEED_USED_KEPT(seed=kg)))
    told = replace(season, seed_share=kg / planned)
    others = tuple(each for each in known.seasons if each != season)
    practice = known.practice(answers["practice"])
    learned: tuple[Say, ...] = ()
    if practice.code == told.practice:
        learned = _learned(own_establishment((*others, told), practice), practice)
    texts = (said(r.SEED_USED_KEPT(seed=kg)), *map(said, learned))
    return ended(session, known, *texts, changes=(KeepSeason(told),))


def _outcome(session: Session, nursery: Nursery, known: Known) -> SeasonOutcome:
    answers = session.answers
    is_short = answers["sufficed"] == "short"
    share = float(str(answers["planted"])) / WHOLE if is_short else 1.0
    left = _mats_left(answers, nursery) if answers["sufficed"] == "left" else 0.0
    sown = max(mats_of(nursery) + (nursery.more_mats or 0) - nursery.lost_mats, 1)
    return SeasonOutcome(
        nursery_id=nursery.id,
        farmer_id=nursery.farmer_id,
        ended_on=known.today,
        field_area_m2=nursery.inputs.field_area_m2,
        planted_area_m2=nursery.inputs.field_area_m2 * share,
        mats=sown,
        mats_left=left,
        resown=answers["resown"] == "yes",
        # What the plan counted on, over all mats that stood in the end.
        establishment=nursery.inputs.establishment * mats_of(nursery) / sown,
        practice=nursery.practice.code,
    )


def _mats_left(answers: Mapping[str, Kept], nursery: Nursery) -> float:
    """Mats left over; of a bed without mats the part that was told, in mats."""
    if "bed_left" in answers:
        return float(str(answers["bed_left"])) / WHOLE * mats_of(nursery)
    return float(str(answers["left"]))


def mats_of(nursery: Nursery) -> int:
    """The mats of a bed; where it has none, its area in mats."""
    area = nursery.quantities.nursery_area_m2
    return nursery.quantities.mats or max(whole_up(area / MAT_SIZE_M2.value), 1)


def _answers(nursery: Nursery, session: Session, known: Known) -> tuple[Change, ...]:
    """The result answers what was asked at the season's end."""
    result = TaskCode.SEASON_RESULT  # and what need not be answered once that is asked
    asked = (i for i in known.items if result in (i.task, TASKS[i.task].replaced_by))
    told = str(session.answers["sufficed"])
    return tuple(AnswerItem(item, told) for item in asked if item.nursery_id == nursery.id)


def _advice(outcome: SeasonOutcome, nursery: Nursery, known: Known) -> tuple[Say, ...]:
    if outcome.is_short:
        return (about(r.SHORT, nursery, known.today),)
    return (about(r.SURPLUS, nursery, known.today),) if outcome.mats_left else ()


def _learned(own: Establishment | None, practice: Practice) -> tuple[Say, ...]:
    usual_share = practice.planting.establishment.value
    if own is None or own_rate(own.mean) == own_rate(usual_share):
        return ()
    usual = nearest(usual_share * WHOLE)
    return (r.LEARNED(own=own_rate(own.mean), usual=usual),)


RESULT_ENDINGS: Mapping[str, Ending] = {
    "!result_of": result,
    "!result": _result,
    "!seed_used": _seed_used,
}
