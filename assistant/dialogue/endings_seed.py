"""Where talks about seed end: a test begun or counted, two lots weighed against each other."""

from collections.abc import Mapping
from dataclasses import replace

from assistant.agronomy.calendar import TaskCode, day_after
from assistant.agronomy.constants import WEAK_GERMINATION
from assistant.agronomy.life.changes import after, lifted, tested
from assistant.agronomy.life.events import By, NewSeed, SeedTestBegun, SeedTested
from assistant.agronomy.lot.germination import (
    LOT_SEEDS,
    OFFICIAL_LOTS,
    GerminationTest,
    good_seed,
    lots_agree,
    mixed_germination,
    tolerated_range,
)
from assistant.agronomy.nursery import Nursery
from assistant.agronomy.quantities import is_hopeless, is_weak
from assistant.agronomy.rounding import nearest
from assistant.dialogue import conversations as talks
from assistant.dialogue.endings import (
    Ending,
    chosen,
    ended,
    holds,
    no_nursery,
    opened,
    said,
)
from assistant.dialogue.engine import begin
from assistant.dialogue.lots import Lot, kept, unkept, whole_test
from assistant.dialogue.results import begin_test_by, due_before, quantity_texts, time_to_test
from assistant.dialogue.values import (
    AnswerItem,
    CallForHelp,
    Change,
    Happened,
    Known,
    SaveNursery,
    Session,
    Text,
    Turn,
)
from assistant.wording import messages_seed as seed
from assistant.wording import messages_talk as m
from assistant.wording.day import about
from assistant.wording.message import Say

PERCENT = 100
SHARES = {"quarter": 0.25, "half": 0.5, "three_quarters": 0.75}


def seed_test(session: Session | None, known: Known) -> Turn:
    """Test the seed: how, begun, counted."""
    if not known.nurseries:
        return no_nursery(session, known)
    return opened(begin(talks.SEED_TEST, held=holds(session)), known)


# --- begun -----------------------------------------------------------------------------------


def begun(nursery: Nursery, known: Known) -> tuple[tuple[Change, ...], tuple[Say, ...]]:
    """What a test that begins today changes, and what to say of it."""
    event = SeedTestBegun(on=known.today, by=By.FARMER)
    moved = after(nursery, event)
    counted = moved.count_on or known.today
    says: tuple[Say, ...] = (about(seed.TEST_NOTED, moved, known.today, date=counted),)
    late = counted > day_after(moved.sow_date, -moved.soak_before_d)
    if late and not (moved.sown or moved.held):
        says += (about(seed.TEST_AFTER_SOWING, moved, known.today),)
    return (Happened(nursery.id, event), SaveNursery(moved)), says


def later(nursery: Nursery, known: Known) -> Say:
    """What to say where the test is put off: by when it must begin."""
    return about(
        seed.TEST_LATER, nursery, known.today, date=max(begin_test_by(nursery), known.today)
    )


def _begun(session: Session, known: Known) -> Turn:
    changes, says = begun(chosen(session, known), known)
    return ended(session, known, said(*says), changes=changes)


def _later(session: Session, known: Known) -> Turn:
    return ended(session, known, said(later(chosen(session, known), known)))


# --- counted ---------------------------------------------------------------------------------


def _tested(session: Session, known: Known) -> Turn:
    answers = session.answers
    told = (answers.get(name) for name in ("tested_then", "tested_again", "tested"))
    lots = unkept(str(next(each for each in told if each)))
    nursery = chosen(session, known)
    noted = _count_noted(nursery, lots, known)
    if _is_official(lots) and not lots_agree([count for count, _ in lots]):
        fresh = begin(talks.SEED_TEST, held=session.held, nursery=nursery.id)
        again = replace(fresh, step="again", path=("nursery", "stage"))
        return opened(again, known, _disagree(nursery, lots, known), changes=noted)
    return _carried(session, nursery, lots, noted, known)


def _count_noted(nursery: Nursery, lots: tuple[Lot, ...], known: Known) -> tuple[Change, ...]:
    """The count answers the day's question for it, where that was asked."""
    asked = (i for i in known.items if i.task is TaskCode.SEED_COUNT)
    return tuple(AnswerItem(i, kept(lots)) for i in asked if i.nursery_id == nursery.id)


def _is_official(lots: tuple[Lot, ...]) -> bool:
    return len(lots) == OFFICIAL_LOTS and all(seeds == LOT_SEEDS for _, seeds in lots)


def _disagree(nursery: Nursery, lots: tuple[Lot, ...], known: Known) -> Say:
    counts = [count for count, _ in lots]
    return about(
        seed.LOTS_DISAGREE,
        nursery,
        known.today,
        spread=max(counts) - min(counts),
        most=tolerated_range(sum(counts) / len(counts)),
    )


def _carried(
    session: Session,
    nursery: Nursery,
    lots: tuple[Lot, ...],
    noted: tuple[Change, ...],
    known: Known,
) -> Turn:
    """The count becomes the plan's germination, and the quantities follow."""
    test = _whole(lots)
    event = SeedTested(on=known.today, by=By.FARMER, sprouted=test.sprouted, seeds=test.sown)
    moved = after(nursery, event)
    says = [result_say(moved, test, known)]
    if _is_official(lots):
        says.append(seed.LOTS_AGREE())
    changes: tuple[Change, ...] = (*noted, Happened(nursery.id, event), SaveNursery(moved))
    if is_hopeless(test.germination):
        says += _forbidden(test)
        changes += (CallForHelp("seed", f"{test.sprouted}/{test.sown}", nursery.id),)
        held = (seed.HELD(label=moved.called),) if moved.held else ()
        wait = said(*held, *time_to_test(moved, known.today))
        return ended(session, known, said(*says), wait, changes=changes)
    lift = said(*lift_says(nursery, moved, known))
    texts: tuple[Text, ...] = (said(*says), lift, *_changed(nursery, moved, known))
    if is_weak(test.germination, good_seed(known.region)):
        texts += (said(*time_to_test(moved, known.today)),)
    return ended(session, known, *(text for text in texts if text.says), changes=changes)


def _forbidden(test: GerminationTest) -> tuple[Say, ...]:
    """That a seed must not be sown; a test so small that the seed may be good is made again."""
    says: tuple[Say, ...] = (m.DO_NOT_SOW(percent=_percent(test.germination)),)
    if is_hopeless(test.likely.high):
        return says
    return (*says, seed.FEW_SEEDS(seeds=test.sown))


def lift_says(before: Nursery, after: Nursery, known: Known) -> tuple[Say, ...]:
    """That a plan which was held goes on, and on which days."""
    lifted = before.held and not after.held and not after.sown
    if not lifted:
        return ()
    return (about(seed.LIFTED, after, known.today), *due_before(after, known.today))


def new_seed(nursery: Nursery, known: Known) -> tuple[tuple[Change, ...], tuple[Text, ...]]:
    """What other seed changes that nobody tested, and what to say of it."""
    event = NewSeed(on=known.today, by=By.FARMER)
    moved = after(nursery, event)
    noted = said(seed.NEW_SEED_NOTED(label=moved.called), *lift_says(nursery, moved, known))
    texts = (noted, *quantity_texts(moved, known.today, known.region))
    return (Happened(nursery.id, event), SaveNursery(moved)), texts


def _changed(before: Nursery, after: Nursery, known: Known) -> tuple[Text, ...]:
    """The quantities that germination changed: the seed, and the mix where the bed grew."""
    texts = quantity_texts(after, known.today, known.region)
    if before.held:  # nothing was collected yet
        return texts
    bed = before.quantities.nursery_area_m2
    return texts if after.quantities.nursery_area_m2 != bed else texts[:1]


def _whole(lots: tuple[Lot, ...]) -> GerminationTest:
    test = whole_test(lots)
    if test is None:
        raise ValueError(f"expected lots that the reader took, got {lots}")
    return test


def _percent(germination: float) -> float:
    return round(germination * PERCENT, 1)


def result_say(nursery: Nursery, test: GerminationTest, known: Known) -> Say:
    """The percentage with its honest range."""
    return about(
        seed.TESTED,
        nursery,
        known.today,
        percent=_percent(test.germination),
        seeds=test.sown,
        low=nearest(test.likely.low * PERCENT),
        high=nearest(test.likely.high * PERCENT),
    )


# --- two lots --------------------------------------------------------------------------------


def _two_lots(session: Session, known: Known) -> Turn:
    answers, nursery = session.answers, chosen(session, known)
    first, second = (_whole(unkept(str(answers[name]))).germination for name in _NAMES)
    if is_hopeless(first) or is_hopeless(second):
        text = said(seed.MIXED_BAD(least=WEAK_GERMINATION.value * PERCENT))
        return ended(session, known, text)
    share = SHARES[str(answers["share"])]
    mixed = tested(nursery, mixed_germination(((share, first), (1 - share, second))))
    moved = lifted(nursery, mixed, known.today)
    mats = moved.quantities.mats
    of_first = min(max(nearest(mats * share), 1), mats - 1) if mats > 1 else mats
    told = about(
        seed.MIXED,
        moved,
        known.today,
        percent=_percent(moved.inputs.germination),
        first=of_first,
        second=mats - of_first,
    )
    texts = (
        said(told, *lift_says(nursery, moved, known)),
        *_changed(nursery, moved, known),
    )
    return ended(session, known, *texts, changes=(SaveNursery(moved),))


_NAMES = ("first", "second")

SEED_ENDINGS: Mapping[str, Ending] = {
    "!seed_test": seed_test,
    "!test_begun": _begun,
    "!test_later": _later,
    "!tested": _tested,
    "!two_lots": _two_lots,
}
