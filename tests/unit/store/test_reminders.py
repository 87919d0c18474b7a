"""Reminders are planned once, whatever happens to the plan."""

from collections.abc import Callable
from dataclasses import replace
from datetime import date, datetime, timedelta

import pytest

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.nursery import Nursery
from assistant.channel import Fate
from assistant.people import Farmer, Officer, Village
from assistant.reminders.values import Reminder, State
from assistant.store import DatabaseFailedError, OutboxText, Store

MakeReminder = Callable[..., Reminder]
MakeText = Callable[..., OutboxText]

_DAY = timedelta(days=1)
_HOUR = timedelta(hours=1)


@pytest.fixture
def days(make_reminder: MakeReminder, now: datetime) -> list[Reminder]:
    """To water on three days."""
    plain = make_reminder(not_after=now + _HOUR)
    return [
        replace(
            plain,
            day=plain.day + n * _DAY,
            due_at=plain.due_at + n * _DAY,
            not_after=plain.not_after + n * _DAY,
        )
        for n in range(3)
    ]


def _states(store: Store, nursery: Nursery) -> list[State]:
    with store.work() as work:
        return [each.state for each in work.reminders.of_nursery(nursery.id)]


def test_planning_twice_adds_nothing(
    store: Store, nursery: Nursery, days: list[Reminder]
) -> None:
    """Unique by nursery, task and day."""
    with store.work() as work:
        assert work.reminders.plan(days[:2]) == 2
        assert work.reminders.plan(days) == 1
        assert work.reminders.plan(days) == 0
        assert work.reminders.plan([]) == 0
    with store.work() as work:
        kept = work.reminders.of_nursery(nursery.id)
    assert [replace(each, id=0) for each in kept] == days


def test_nurseries_that_are_alike_get_the_reminders_of_one(
    store: Store, nursery: Nursery, days: list[Reminder], now: datetime
) -> None:
    """Copied by the database, as if each had been planned by itself."""
    with store.work() as work:
        others = work.enrolments.add_beds(
            [replace(nursery, id=0, label=label) for label in ("B", "C", "D")], now
        )
        work.reminders.plan_new(days)
        work.reminders.plan_alike(nursery.id, [each.id for each in others[:2]])
        work.reminders.plan_alike(nursery.id, [])
    with store.work() as work:
        for other in others[:2]:
            kept = work.reminders.of_nursery(other.id)
            assert [replace(each, id=0, nursery_id=nursery.id) for each in kept] == days
        assert work.reminders.of_nursery(others[2].id) == ()
        assert len(work.reminders.of_nursery(nursery.id)) == len(days)


def test_a_reminder_comes_back_with_every_field(
    store: Store, make_reminder: MakeReminder
) -> None:
    """None of the values is a default, so that a forgotten field would show."""
    full = make_reminder(state=State.NOT_YET, asked=2, message_id="m1")
    with store.work() as work:
        work.reminders.plan([full])
    with store.work() as work:
        kept = work.reminders.by_item(full.nursery_id, full.task, full.day)
        assert kept == replace(full, id=kept.id if kept else 0)
        assert work.reminders.of_message("m1") == (kept,)
        assert work.reminders.by_item(full.nursery_id, TaskCode.SOW, full.day) is None


def test_a_reminder_of_a_nursery_that_is_not_kept_is_refused(
    store: Store, make_reminder: MakeReminder
) -> None:
    """On SQLite too, which checks such things only when told."""
    with pytest.raises(DatabaseFailedError), store.work() as work:
        work.reminders.plan([make_reminder(nursery_id=404)])


def test_what_is_planned_beside_the_story_moves_only_what_differs(
    store: Store, nursery: Nursery, days: list[Reminder]
) -> None:
    """As `plan` has it, for one nursery whose story is known: new days are added, withdrawn
    ones come back as new, moved ones take the new times, what was asked stays."""
    first, second, third = days[:3]
    moved = replace(third, due_at=third.due_at + _HOUR)
    with store.work() as work:
        work.reminders.plan([first, second, third])
        story = work.reminders.of_nursery(nursery.id)
        sent, gone, _ = story
        work.reminders.set_state([sent.id], State.SENT, message_id="m1", asked=1)
        work.reminders.set_state([gone.id], State.WITHDRAWN, message_id="m2", asked=2)
        story = work.reminders.of_nursery(nursery.id)
        again = replace(second, day=second.day + timedelta(days=9))
        work.reminders.plan_beside(story, [first, second, moved, again])
        found = {(each.task, each.day): each for each in work.reminders.of_nursery(nursery.id)}
    assert len(found) == 4
    assert found[first.task, first.day].state is State.SENT
    back = found[second.task, second.day]
    assert (back.state, back.asked, back.message_id) == (State.PLANNED, 0, None)
    assert found[third.task, third.day].due_at == moved.due_at
    assert found[again.task, again.day].state is State.PLANNED


def test_a_withdrawn_reminder_is_planned_again_as_if_it_were_new(
    store: Store, nursery: Nursery, days: list[Reminder]
) -> None:
    """The sowing moved away and came back; the hour may have changed meanwhile."""
    later = replace(days[0], due_at=days[0].due_at + _HOUR)
    with store.work() as work:
        work.reminders.plan(days[:1])
        (first,) = work.reminders.of_nursery(nursery.id)
        work.reminders.set_state([first.id], State.SENT, message_id="m1", asked=1)
        work.reminders.set_state([first.id], State.WITHDRAWN)
        assert work.reminders.plan([later]) == 0
        assert work.reminders.of_nursery(nursery.id) == (replace(later, id=first.id),)


@pytest.mark.parametrize(
    "state", [state for state in State if state not in (State.PLANNED, State.WITHDRAWN)]
)
def test_what_was_asked_or_answered_is_not_planned_again(
    store: Store, nursery: Nursery, days: list[Reminder], state: State
) -> None:
    """A farmer is not asked twice for the same day."""
    with store.work() as work:
        work.reminders.plan(days[:1])
        (first,) = work.reminders.of_nursery(nursery.id)
        work.reminders.set_state([first.id], state, message_id="m1", asked=1)
        work.reminders.plan(days[:1])
    assert _states(store, nursery) == [state]


def test_due_reminders_are_those_whose_time_came_by_phone(
    store: Store,
    nursery: Nursery,
    days: list[Reminder],
    farmer: Farmer,
    now: datetime,
) -> None:
    """Another phone's reminders stand together, so that one text can merge them."""
    with store.work() as work:
        first = work.people.save_farmer(replace(farmer, id=0, phone="+447700900100"))
        other = work.nurseries.save(replace(nursery, id=0, farmer_id=first.id), now)
        work.reminders.plan(days)
        work.reminders.plan([replace(each, nursery_id=other.id) for each in days])
        due = work.reminders.due(now + _DAY)
        assert [(each.nursery_id, each.day.day) for each in due] == [
            (other.id, 10),
            (other.id, 11),
            (nursery.id, 10),
            (nursery.id, 11),
        ]
        assert work.reminders.due(now + _DAY, nursery.id) == due[2:]
        assert work.reminders.phones_due(now + _DAY) == (first.phone, farmer.phone)
        assert work.reminders.phones_due(now - _HOUR) == ()


def test_nothing_is_due_for_a_farmer_who_stopped_or_a_nursery_that_closed(
    store: Store, nursery: Nursery, days: list[Reminder], farmer: Farmer, now: datetime
) -> None:
    """Stop is obeyed at once."""
    with store.work() as work:
        work.reminders.plan(days)
        work.people.save_farmer(replace(farmer, stopped_at=now))
        assert work.reminders.due(now) == () == work.reminders.phones_due(now)
        work.people.save_farmer(farmer)
        assert len(work.reminders.due(now)) == 1
        work.nurseries.save(replace(nursery, closed=True), now)
        assert work.reminders.due(now) == ()


def test_a_second_asking_is_for_what_was_asked_once_and_went_out_long_ago(
    store: Store,
    nursery: Nursery,
    make_reminder: MakeReminder,
    make_text: MakeText,
    now: datetime,
) -> None:
    """A text that never went out was never asked."""
    tasks = [TaskCode.UNCOVER_FLOOD, TaskCode.DRAIN_BED, TaskCode.SOW, TaskCode.MIX]
    with store.work() as work:
        work.reminders.plan([make_reminder(task=task) for task in tasks])
        for task in tasks:
            work.outbox.add(make_text(task.value))
            each = work.reminders.by_item(nursery.id, task, date(2026, 6, 10))
            assert each is not None
            asked = 2 if task is TaskCode.SOW else 1
            work.reminders.set_state([each.id], State.SENT, message_id=task.value, asked=asked)
            if task is not TaskCode.DRAIN_BED:
                work.outbox.record(task.value, Fate.ACCEPTED, now)
        found = work.reminders.to_ask_again(tasks[:3], now + _HOUR, due_until=now)
        assert [each.task for each in found] == [TaskCode.UNCOVER_FLOOD]
        again = work.reminders.to_ask_again
        assert again(tasks[:3], now, due_until=now) == ()
        assert again(tasks[:3], now + _HOUR, due_until=now - _HOUR) == ()
        assert again(tasks[:3], found[0].not_after, due_until=now) == ()
        opened = work.reminders.sent_open([nursery.id])
        assert {each.task for each in opened} == set(tasks)
        assert work.reminders.sent_open([]) == ()


def test_under_a_rain_warning_only_what_can_be_done_in_the_wet_is_asked_again(
    store: Store,
    nursery: Nursery,
    village: Village,
    officer: Officer,
    make_reminder: MakeReminder,
    make_text: MakeText,
    now: datetime,
) -> None:
    """Until the all-clear; another village's warning is no matter."""
    later, tasks = now + _HOUR, (TaskCode.UNCOVER_FLOOD, TaskCode.DRAIN_BED)

    def asked_again() -> list[TaskCode]:
        found = work.reminders.to_ask_again(tasks, later, now, tasks[:1])
        return [each.task for each in found]

    with store.work() as work:
        work.outbox.add(make_text("m1"))
        work.outbox.record("m1", Fate.ACCEPTED, now)
        work.reminders.plan([make_reminder(task=task) for task in tasks])
        ids = [each.id for each in work.reminders.of_nursery(nursery.id)]
        work.reminders.set_state(ids, State.SENT, "m1", asked=1)
        elsewhere = work.people.add_village("Kijani", "Africa/Nairobi")
        work.warnings.add(elsewhere.id, officer.id, now, later + _HOUR, now)
        assert asked_again() == sorted(tasks)
        rain = work.warnings.add(village.id, officer.id, now, later + _HOUR, now)
        assert asked_again() == [TaskCode.DRAIN_BED]
        work.warnings.clear(rain.id, now)
        assert asked_again() == sorted(tasks)


def test_what_is_unsettled_was_asked_lately_and_never_answered(
    store: Store, nursery: Nursery, make_reminder: MakeReminder
) -> None:
    """A tardy answer still counts for these."""
    states = {
        TaskCode.SOAK: State.UNANSWERED,
        TaskCode.SOW: State.SENT,
        TaskCode.LEAF_COUNT: State.DONE,
        TaskCode.WATER: State.SENT,
        TaskCode.DRAIN_BED: State.PLANNED,
    }
    today, asked = date(2026, 6, 10), [task for task in states if task is not TaskCode.WATER]
    with store.work() as work:
        work.reminders.plan([make_reminder(task=task) for task in states])
        for each in work.reminders.of_nursery(nursery.id):
            work.reminders.set_state([each.id], states[each.task])
        never = today - _DAY  # on which nothing is planned
        found = work.reminders.to_answer([nursery.id], asked, today, never)
        assert {each.task for each in found} == {TaskCode.SOAK, TaskCode.SOW}
        assert work.reminders.to_answer([nursery.id], asked, today + _DAY, never) == ()
        assert work.reminders.to_answer([nursery.id + 1], asked, today, today) == ()
        early = work.reminders.to_answer([nursery.id], asked, today + _DAY, today)
        assert [each.task for each in early] == [TaskCode.DRAIN_BED]


def test_an_officer_sees_what_was_never_answered_the_latest_first(
    store: Store,
    nursery: Nursery,
    farmer: Farmer,
    village: Village,
    days: list[Reminder],
) -> None:
    """In their own villages."""
    with store.work() as work:
        work.reminders.plan(days)
        first, second, third = work.reminders.of_nursery(nursery.id)
        work.reminders.set_state([first.id, second.id], State.UNANSWERED)
        seen = work.reminders.open_for_officer([village.id])
        assert seen == (
            (farmer, nursery, replace(second, state=State.UNANSWERED)),
            (farmer, nursery, replace(first, state=State.UNANSWERED)),
        )
        assert work.reminders.open_for_officer([village.id + 1]) == ()
