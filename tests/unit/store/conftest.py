"""A village with a farmer and a nursery, and texts to fill in: all invented."""

from collections.abc import Callable
from dataclasses import replace
from datetime import UTC, date, datetime, timedelta
from typing import Any

import pytest

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.field import FieldInputs
from assistant.agronomy.nursery import Nursery
from assistant.dialogue.values import Kind
from assistant.people import Farmer, Officer, Village
from assistant.reminders.values import Reminder
from assistant.store import OutboxText, Store

MakeText = Callable[..., OutboxText]
MakeReminder = Callable[..., Reminder]


@pytest.fixture
def now() -> datetime:
    """Six in the morning in the village, on the day of sowing."""
    return datetime(2026, 6, 10, 3, 0, tzinfo=UTC)


@pytest.fixture
def village(store: Store) -> Village:
    with store.work() as work:
        return work.people.add_village("Mto Mdogo", "Africa/Nairobi")


@pytest.fixture
def farmer(store: Store, village: Village, now: datetime) -> Farmer:
    with store.work() as work:
        return work.people.save_farmer(
            Farmer(0, "+447700900101", "sw", village.id, consent_at=now, stopped_at=None)
        )


@pytest.fixture
def officer(store: Store, village: Village) -> Officer:
    with store.work() as work:
        return work.people.add_officer("+447700900001", "Asha", "hash", "en", [village.id])


@pytest.fixture
def unsaved(farmer: Farmer) -> Nursery:
    """A nursery that is not kept yet."""
    return Nursery(
        id=0,
        farmer_id=farmer.id,
        label="A",
        name=None,
        inputs=FieldInputs(field_area_m2=4000.0, germination=0.85),
        area_typed="0.4 ha",
        germination_known=True,
        sow_date=date(2026, 6, 10),
        made_on=date(2026, 6, 1),
    )


@pytest.fixture
def nursery(store: Store, unsaved: Nursery, now: datetime) -> Nursery:
    with store.work() as work:
        return work.nurseries.save(unsaved, now)


@pytest.fixture
def make_text(now: datetime) -> MakeText:
    """A text that is due now and good for a day, but for what is given."""

    def made(message_id: str, **given: Any) -> OutboxText:
        plain = OutboxText(
            message_id=message_id,
            phone="+447700900101",
            text="Water the beds: half a pail, morning and evening.",
            kind=Kind.PROMPT,
            due_at=now,
            not_after=now + timedelta(days=1),
            created_at=now,
        )
        return replace(plain, **given)

    return made


@pytest.fixture
def make_reminder(nursery: Nursery, now: datetime) -> MakeReminder:
    """A reminder to water today, but for what is given."""

    def made(**given: Any) -> Reminder:
        plain = Reminder(
            nursery_id=nursery.id,
            task=TaskCode.WATER,
            day=date(2026, 6, 10),
            due_at=now,
            not_after=now + timedelta(hours=14),
        )
        return replace(plain, **given)

    return made
