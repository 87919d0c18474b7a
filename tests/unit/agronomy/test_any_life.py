"""Any order of events leaves a nursery that can be worked by: one window, tasks in an order
that can be done, nothing forbidden prescribed, nothing asked that was answered, and an end.
"""

from collections.abc import Callable
from datetime import date, timedelta

from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.field import FieldInputs
from assistant.agronomy.life.changes import after
from assistant.agronomy.life.days import due
from assistant.agronomy.life.events import (
    Assumed,
    By,
    Counted,
    Done,
    Event,
    Flooded,
    Found,
    Lost,
    NewSeed,
    PartDone,
    PutOff,
    SeedTestBegun,
    SeedTested,
    SowAgain,
)
from assistant.agronomy.life.rows import TASKS, Origin, tasks_of
from assistant.agronomy.nursery import Nursery
from assistant.reminders.plan import Hours, planned
from assistant.wiring.practices import open_practices
from assistant.wording import messages_delay as d
from assistant.wording import messages_tasks as t
from assistant.wording.day import DayWork, work_says

SOW = date(2026, 12, 1)
HALF = 0.5
DAY = timedelta(days=1)
PRACTICES = open_practices()
HOURS = Hours()
CLIMATES = (None, (26.0,) * 12, (15.0,) * 12, (18, 21, 25, 28, 29, 29, 29, 29, 28, 27, 23, 19))

# What a day may bring, as told by whoever tells it; each takes the day, the bed and a number.
Happening = Callable[[Nursery, date, int], Event]


def _asked(bed: Nursery, today: date) -> list[TaskCode]:
    return [code for code in due(bed, today) if TASKS[code].is_asked] or [TaskCode.SOW]


def _done(bed: Nursery, today: date, n: int) -> Event:
    codes = _asked(bed, today)
    return Done(on=today, by=By.FARMER, task=codes[n % len(codes)])


def _put_off(bed: Nursery, today: date, n: int) -> Event:
    codes = _asked(bed, today)
    code = codes[n % len(codes)]
    until = today + (1 + n % 12) * DAY
    return PutOff(on=today, by=By.FARMER, task=code, was=today, until=until)


def _assumed(bed: Nursery, today: date, n: int) -> Event:
    return Assumed(on=bed.sow_date, by=By.CLOCK)


def _begun(bed: Nursery, today: date, n: int) -> Event:
    return SeedTestBegun(on=today, by=By.FARMER)


def _tested(bed: Nursery, today: date, n: int) -> Event:
    return SeedTested(on=today, by=By.OFFICER, sprouted=n % 101, seeds=100)


def _new_seed(bed: Nursery, today: date, n: int) -> Event:
    return NewSeed(on=today, by=By.FARMER)


def _counted(bed: Nursery, today: date, n: int) -> Event:
    return Counted(on=today, by=By.FARMER, leaves=(n % 17) / 2)


def _lost(bed: Nursery, today: date, n: int) -> Event:
    return Lost(on=today, by=By.FARMER, mats=n, cause="animals")


def _flooded(bed: Nursery, today: date, n: int) -> Event:
    return Flooded(on=today, by=By.FARMER)


def _found(bed: Nursery, today: date, n: int) -> Event:
    return Found(on=today, by=By.FARMER, state=("stands", "part", "gone")[n % 3])


def _part_sown(bed: Nursery, today: date, n: int) -> Event:
    return PartDone(on=today, by=By.FARMER, task=TaskCode.SOW)


def _soaked(bed: Nursery, today: date, n: int) -> Event:
    return Done(on=today - (n % 3) * DAY, by=By.FARMER, task=TaskCode.SOAK)


def _uncovered_late(bed: Nursery, today: date, n: int) -> Event:
    return Done(on=today, by=By.FARMER, task=TaskCode.UNCOVER_FLOOD)


def _sow_again(bed: Nursery, today: date, n: int) -> Event:
    """A bed that failed: with other seed, seed that is checked, or sown by now."""
    return SowAgain(
        on=today,
        by=By.FARMER,
        cause="dead",
        other=n % 3 == 0,
        checked=n % 3 == 1,
        sown=n % 5 == 0,
    )


HAPPENINGS: tuple[Happening, ...] = (
    _done,
    _put_off,
    _assumed,
    _begun,
    _tested,
    _new_seed,
    _counted,
    _lost,
    _flooded,
    _found,
    _part_sown,
    _sow_again,
    _soaked,
    _uncovered_late,
)
stories = st.lists(
    st.tuples(st.integers(0, 6), st.sampled_from(HAPPENINGS), st.integers(0, 200)), max_size=14
)


@settings(max_examples=150, deadline=None)
@given(st.sampled_from(sorted(PRACTICES)), st.sampled_from(CLIMATES), stories)
def test_any_order_of_events_leaves_a_bed_that_can_be_worked_by(
    code: str, climate: tuple[float, ...] | None, story: list[tuple[int, Happening, int]]
) -> None:
    """Looked at after each event, on its day."""
    inputs = FieldInputs(4000.0, 0.85)
    today = SOW - 20 * DAY
    bed = Nursery(
        1,
        1,
        "A",
        None,
        inputs,
        "0.4 ha",
        True,
        SOW,
        today,
        practice=PRACTICES[code],
        climate=climate,
    )
    for wait, happening, n in story:
        today += wait * DAY
        bed = after(bed, happening(bed, today, n))
        one_window(bed)
        follows_the_leaves(bed, today)
        in_order(bed)
        nothing_forbidden(bed)
        nothing_answered(bed)
        no_two_that_disagree(bed, today)
        no_dry_mats(bed, today)
        no_work_on_what_is_gone(bed)
        an_end(bed)


def one_window(bed: Nursery) -> None:
    """One span in which it is planted, with its chosen day inside, and one day to be late."""
    windows = [task for task in bed.tasks if task.code is TaskCode.TRANSPLANT]
    assert len(windows) == 1
    until = windows[0].until or windows[0].date
    assert windows[0].date <= bed.anchors.transplant_date <= until <= bed.latest
    assert [task.code for task in bed.tasks].count(TaskCode.OVERDUE) == 1


def follows_the_leaves(bed: Nursery, today: date) -> None:
    """Leaves that are too few for planting today leave no window that is open already, unless
    such a bed bears no later day; and one that was slow was not ready weeks before. A count
    says how many are open, and the next may be half out: 2.5 may be three."""
    if bed.leaves is None or bed.leaves_on != today or not bed.sown:
        return
    window = bed.paced.window
    first, few = bed.sow_date + int(window.first.value) * DAY, window.leaves_first.value
    if 0 < bed.leaves < few - HALF and first + 5 * DAY < bed.latest:
        assert first > today
    slow = bed.day(today) * few / max(bed.leaves, 0.5) > bed.practice.window.last.value
    if bed.leaves >= few and slow and bed.climate is None and bed.felt_on is None:
        assert bed.anchors.transplant_date > today - 14 * DAY


def in_order(bed: Nursery) -> None:
    """What a task needs comes before it."""
    days = {task.code: task.date for task in bed.tasks}
    orders = (
        (TaskCode.SEED_TEST, TaskCode.SOAK),
        (TaskCode.COLLECT, TaskCode.SOAK),
        (TaskCode.SOAK, TaskCode.DRAIN_SEED),
        (TaskCode.DRAIN_SEED, TaskCode.SOW),
        (TaskCode.SOW, TaskCode.UNCOVER_FLOOD),
        (TaskCode.UNCOVER_FLOOD, TaskCode.COLOUR_CHECK),
        (TaskCode.UNCOVER_FLOOD, TaskCode.DRAIN_BED),
        (TaskCode.FIELD_PLOUGH, TaskCode.FIELD_PUDDLE),
        (TaskCode.FIELD_PUDDLE, TaskCode.FIELD_LEVEL),
    )
    for first, then in orders:
        if first in days and then in days:
            assert days[first] <= days[then], (first, then)
    assert days.get(TaskCode.DRAIN_BED, date.min) <= bed.anchors.transplant_date


def nothing_forbidden(bed: Nursery) -> None:
    """Seed that must not be sown is neither collected, soaked nor sown on any day to come."""
    if bed.held:
        told = {each.task for each in planned(bed, "UTC", HOURS, date.min)}
        assert told <= {TaskCode.SEED_TEST, TaskCode.SEED_COUNT, TaskCode.SEED_HELD}


def no_work_on_what_is_gone(bed: Nursery) -> None:
    """Of a bed that may be gone only what stands is asked, beside the field; of one that is
    gone nothing is said until it is sown again."""
    told = {each.task for each in planned(bed, "UTC", HOURS, date.min)}
    if bed.in_doubt:
        assert told <= {TaskCode.AFTER_FLOOD, *tasks_of(Origin.FIELD)}
    if bed.is_gone:
        assert not told


def nothing_answered(bed: Nursery) -> None:
    """What happened is not asked again."""
    told = {each.task for each in planned(bed, "UTC", HOURS, date.min)}
    if bed.sown:
        assert not told & {TaskCode.SOAK, TaskCode.SOW, TaskCode.COLLECT, TaskCode.SEED_HELD}
    if bed.uncovered:
        assert TaskCode.UNCOVER_FLOOD not in told
    if bed.transplanted_on is not None:
        assert not told & {TaskCode.TRANSPLANT, TaskCode.OVERDUE, TaskCode.DRAIN_BED}


NEVER_TOGETHER = (
    {TaskCode.KEEP_WATER, TaskCode.DRAIN_BED},
    {TaskCode.SOAK, TaskCode.DRAIN_SEED},
    {TaskCode.SOAK, TaskCode.SOW},
    {TaskCode.SOW, TaskCode.UNCOVER_FLOOD},
    {TaskCode.SEED_HELD, TaskCode.SOAK},
    {TaskCode.SEED_HELD, TaskCode.SOW},
    {TaskCode.COLOUR_CHECK, TaskCode.SOW},
)


def no_two_that_disagree(bed: Nursery, today: date) -> None:
    """A day neither keeps water and drains it, nor plants and forbids planting."""
    for ahead in (1, *range(0, 60, 3)):
        on = today + ahead * DAY
        codes = due(bed, on)
        assert not any(pair <= set(codes) for pair in NEVER_TOGETHER), (on, codes)
        if bed.practice.bed.flood_depth_m.value:  # a bed that is only watered goes on
            assert not {TaskCode.WATER, TaskCode.UNCOVER_FLOOD} <= set(codes)
        said = {say.message for say in work_says(DayWork(bed, codes, on))}
        if d.TOO_OLD in said:
            assert not said & {t.P_TRANSPLANT, t.P_OVERDUE, t.P_OVERDUE_OLD, t.P_WINDOW}
        if t.P_AFTER_FLOOD in said:  # what stands is not known yet
            assert not said & {t.P_KEEP_WATER, t.P_WATER}


def no_dry_mats(bed: Nursery, today: date) -> None:
    """Each text about planting of a bed that was drained days ago says how it is kept wet."""
    if not bed.is_drained or bed.transplanted_on is not None or not bed.sown:
        return
    for ahead in range(0, 30):
        on = today + ahead * DAY
        waits = (on - bed.anchors.transplant_date).days
        codes = due(bed, on)
        if waits < 1 or on > bed.latest or TaskCode.KEEP_WATER in codes:
            continue
        said = {say.message for say in work_says(DayWork(bed, codes, on))}
        if said & {t.P_TRANSPLANT, d.PLANT_LATE, t.P_OVERDUE, t.P_OVERDUE_OLD}:
            wet = {d.KEEP_WET, d.WATER_MEANWHILE, d.WAITS_WITHOUT_WATER, t.P_TRANSPLANT_WAIT}
            assert said & wet, (on, said)
            assert waits < 2 or d.WATER_MEANWHILE in said, (on, said)


def an_end(bed: Nursery) -> None:
    """Nothing is said for ever, and a bed that nobody tells of is forgotten some day."""
    told = planned(bed, "UTC", HOURS, date.min)
    last = max((each.day for each in told), default=bed.sow_date)
    assert last <= bed.sow_date + 400 * DAY
    assert bed.is_forgotten(bed.sow_date + 500 * DAY)
