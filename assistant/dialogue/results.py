"""The answers to a plan: quantities, shopping list and dates, in texts of their own."""

from datetime import date

from assistant.agronomy.calendar import TaskCode, day_after
from assistant.agronomy.constants import SEED_TEST_COUNT_D
from assistant.agronomy.life.clock import WARM_C
from assistant.agronomy.life.days import coming, due
from assistant.agronomy.lot.germination import Good, good_seed
from assistant.agronomy.nursery import Nursery
from assistant.agronomy.practices import Practice
from assistant.agronomy.quantities import WarningCode, is_weak
from assistant.agronomy.rounding import Measure, measured, nearest
from assistant.agronomy.season.followups import retest_sow_day
from assistant.agronomy.season.outcome import own_establishment
from assistant.dialogue.values import Known, Text
from assistant.dialogue.warned import day_work
from assistant.wording import messages_again as again
from assistant.wording import messages_care as care
from assistant.wording import messages_planting as g
from assistant.wording import messages_result as r
from assistant.wording import messages_seed as seed_texts
from assistant.wording import messages_talk as m
from assistant.wording import messages_tasks as t
from assistant.wording.amounts import weight
from assistant.wording.day import about, day_says, said, small_mix, too_old, what_of
from assistant.wording.message import Country, Listed, Say
from assistant.wording.plan_costs import amount, priced


def urea(nursery: Nursery) -> Say:
    """The urea for one spray of this bed, in grams or kilograms."""
    return weight(measured(nursery.quantities.urea_g, Measure.UREA_G))


def own_rate(establishment: float) -> int:
    """Seedlings to plant out of 100 sprouted seeds, as a text says it."""
    return nearest(establishment * 100)


def own_text(known: Known, practice: Practice) -> tuple[Text, ...]:
    """That a new plan counts with the farmer's own seasons, where it does."""
    own = own_establishment(known.seasons, practice)
    usual = own_rate(practice.planting.establishment.value)
    if own is None or own_rate(own.mean) == usual:
        return ()
    seasons = sum(each.practice == practice.code for each in known.seasons)
    if seasons == 1:
        return (Text((r.OWN_RATE(own=own_rate(own.mean), usual=usual),)),)
    return (Text((r.OWN_RATE_SEASONS(own=own_rate(own.mean), usual=usual, n=seasons),)),)


def seed_text(nursery: Nursery, today: date, region: str | None = None) -> Text:
    """What was understood, with seed, bed and mats for it, and what is doubtful about it;
    seed is held against what the region's country calls good."""
    if nursery.held:
        forbidden = m.DO_NOT_SOW(percent=_percent(nursery))
        return Text((forbidden, seed_texts.HELD(label=nursery.called)), keep=True)
    says = (about(m.RESULT_SEED, nursery, today), *_doubts(nursery, region))
    return Text(says, keep=True)


def _percent(nursery: Nursery) -> float:
    return round(nursery.inputs.germination * 100, 1)


def _doubts(nursery: Nursery, region: str | None) -> tuple[Say, ...]:
    """What is not sure, or not good, about the seed."""
    if not nursery.germination_known:
        return (m.ASSUMED_80(),)
    if WarningCode.DO_NOT_SOW in nursery.quantities.warnings:
        return (m.DO_NOT_SOW(percent=_percent(nursery)),)
    if is_weak(nursery.inputs.germination, good := good_seed(region)):
        return (_weak(_percent(nursery), good),)
    return ()


def plan_texts(nursery: Nursery, known: Known) -> tuple[Text, ...]:
    """What is said of a new plan: what to do first and its day, and what is doubtful. The
    amounts come one text at a time, by NEXT (`plan_pages`)."""
    first = _first(nursery, known.today)
    if nursery.sown and known.today > nursery.latest:
        return (Text((about(too_old(nursery), nursery, known.today),), keep=True),)
    if nursery.held or first is None:
        quantities = quantity_texts(nursery, known.today, known.region)
        return (*quantities, dates_text(nursery, known.today))
    what, on = first
    says: tuple[Say, ...] = (m.PLANNED(label=nursery.called, what=what, date=on),)
    if nursery.sown:
        says += _past_window(nursery, known.today)
    else:
        says += _late(nursery, known.today)
    return (Text((*says, *_doubts(nursery, known.region)), keep=True),)


def plan_pages(nursery: Nursery, known: Known) -> tuple[Text, ...]:
    """All of a plan, in the order in which NEXT tells it."""
    return (
        *quantity_texts(nursery, known.today, known.region),
        *cost_text(nursery, known),
        dates_text(nursery, known.today, begins=False),
    )


def _first(nursery: Nursery, today: date) -> tuple[Say, date] | None:
    """The first work there is and its day: what is behind, today's, else the next."""
    missed = () if nursery.sown else _already_due(nursery, today)
    tasks = said(due(nursery, today))
    if missed or tasks:
        return (*missed, *(what_of(code, nursery.practice) for code in tasks))[0], today
    ahead = coming(nursery, today)
    if ahead is not None and ahead.code is TaskCode.SEED_TEST and nursery.germination_known:
        ahead = coming(nursery, ahead.date)  # a count is known: only asked after, on its day
    return (what_of(ahead.code, nursery.practice), ahead.date) if ahead else None


def _weak(percent: float, good: Good) -> Say:
    if good.country is None:
        return m.WEAK_SEED(percent=percent)
    least = round(good.share * 100)
    return m.WEAK_SEED_IN(percent=percent, least=least, country=Country(good.country))


def mix_text(nursery: Nursery, today: date) -> Text:
    """The shopping list for the bed."""
    message = m.RESULT_MIX_SMALL if small_mix(nursery) else m.RESULT_MIX
    return Text((about(message, nursery, today, urea=urea(nursery)),), keep=True)


def quantity_texts(
    nursery: Nursery, today: date, region: str | None = None
) -> tuple[Text, ...]:
    """All quantities of one nursery; none where its seed must not be sown."""
    if nursery.held:
        return (seed_text(nursery, today, region),)
    return seed_text(nursery, today, region), mix_text(nursery, today)


def cost_text(nursery: Nursery, known: Known) -> tuple[Text, ...]:
    """What it costs by the programme's price list, beside a wet bed; nothing without a list."""
    if known.prices is None or nursery.held:
        return ()
    money = priced(nursery.inputs, nursery.practice, known.prices, known.wet_bed)
    own, other = money.cost, money.beside
    says: tuple[Say, ...] = (
        g.COSTS(
            label=nursery.called,
            currency=money.currency,
            total=amount(own.total),
            seed=amount(own.seed),
            labour=amount(own.labour),
        ),
    )
    if other is not None:
        kg = measured(other.quantities.seed_kg, Measure.SEED_KG)
        total = amount(other.cost.total)
        says += (g.COSTS_BESIDE(currency=money.currency, total=total, kg=kg),)
    return (Text(says, keep=True),)


def dates_text(nursery: Nursery, today: date, *, begins: bool = True) -> Text:
    """The main dates; those already past when the plan `begins` are said to be so, never
    shifted."""
    if nursery.held:
        return Text(
            (seed_texts.HELD(label=nursery.called), *time_to_test(nursery, today)), keep=True
        )
    warm = _how_warm(nursery)
    if nursery.sown:
        sown = about(m.RESULT_DATES_SOWN, nursery, today)
        return Text((sown, *_past_window(nursery, today), *warm), keep=True)
    says = (about(m.RESULT_DATES, nursery, today, drain=seed_drain_date(nursery)),)
    late = _late(nursery, today) if begins else ()
    return Text((*says, *late, *warm), keep=True)


def _how_warm(nursery: Nursery) -> tuple[Say, ...]:
    """For which warmth the dates hold, where nobody gave the means of the months."""
    clock = nursery.clock
    if clock.months is not None:
        return ()
    until = clock.felt_until
    if until is None or until < nursery.sow_date:
        return (care.DAYS_WARM(degrees=round(WARM_C)),)
    felt = clock.felt_c or WARM_C
    return (care.DAYS_FELT(date=until, felt=felt, degrees=round(WARM_C)),)


def _past_window(nursery: Nursery, today: date) -> tuple[Say, ...]:
    """That a bed is past its usual days for planting."""
    if nursery.day(today) <= nursery.paced.window.last.value:
        return ()
    if today > nursery.latest:
        return (about(too_old(nursery), nursery, today),)
    return (about(m.PAST_WINDOW, nursery, today, days=nursery.day(today)),)


def _late(nursery: Nursery, today: date) -> tuple[Say, ...]:
    """What a plan that is made late has no day for any more."""
    is_past = _date_of(nursery, TaskCode.SOAK) < today
    says: tuple[Say, ...] = (about(m.DATES_PAST, nursery, today),) if is_past else ()
    return (*says, *due_before(nursery, today))


def due_before(nursery: Nursery, today: date) -> tuple[Say, ...]:
    """That work was to be done before today, of which no text has spoken."""
    missed = _already_due(nursery, today)
    return (t.DUE_BEFORE(label=nursery.called, tasks=Listed(missed)),) if missed else ()


_BEFORE_SOWING = (TaskCode.COLLECT, TaskCode.MIX, TaskCode.MAKE_BED, TaskCode.FIELD_PLOUGH)


def _already_due(nursery: Nursery, today: date) -> tuple[Say, ...]:
    """What was to be done before today, in the order of work."""
    return tuple(
        what_of(task.code, nursery.practice)
        for task in nursery.tasks
        if task.code in _BEFORE_SOWING and task.date < today
    )


def skipped(before: Nursery, after: Nursery, today: date) -> tuple[Say, ...]:
    """What no text will tell any more, since a plan moved past its day: still to be done."""
    if after.sown or after.held:
        return ()
    untold = {task.code for task in before.tasks if task.date > today}
    ahead = {task.code for task in after.tasks if task.date >= today}
    gone = tuple(
        what_of(code, after.practice) for code in _BEFORE_SOWING if code in untold - ahead
    )
    return (t.DUE_BEFORE(label=after.called, tasks=Listed(gone)),) if gone else ()


def _date_of(nursery: Nursery, code: TaskCode) -> date:
    return next(task.date for task in nursery.tasks if task.code is code)


def begin_test_by(nursery: Nursery) -> date:
    """The last day to begin a test whose count comes before the seed is soaked."""
    before = SEED_TEST_COUNT_D.value + nursery.soak_before_d
    return day_after(nursery.sow_date, -before)


def time_to_test(nursery: Nursery, today: date) -> tuple[Say, ...]:
    """Whether other seed can still be tested before the day of sowing."""
    if nursery.sown:
        return ()
    by = begin_test_by(nursery)
    if by > today:
        return (seed_texts.TIME_TO_RETEST(date=by),)
    return (seed_texts.NO_TIME_TO_RETEST(date=retest_sow_day(today, -nursery.soak_before_d)),)


def seed_drain_date(nursery: Nursery) -> date:
    """The day on which the soaked seed is drained."""
    return _date_of(nursery, TaskCode.DRAIN_SEED)


def today_text(nursery: Nursery, known: Known) -> Text:
    """Today's work of one nursery, or what comes next."""
    if nursery.held:
        return Text(
            (seed_texts.HELD(label=nursery.called), *time_to_test(nursery, known.today))
        )
    if nursery.is_gone:
        return Text((again.BED_GONE(label=nursery.called),))
    tasks = due(nursery, known.today)
    if said(tasks):
        return Text(day_says(day_work(nursery, tasks, known)))
    nearest = coming(nursery, known.today)
    if nearest is None:
        return Text((m.NOTHING_LEFT(label=nursery.called),))
    what = what_of(nearest.code, nursery.practice)
    return Text((m.NOTHING_TODAY(label=nursery.called, what=what, date=nearest.date),))
