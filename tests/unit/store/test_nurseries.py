"""Nurseries come back whole."""

from dataclasses import replace
from datetime import date, datetime

import pytest
from sqlalchemy import create_engine, text

from assistant.agronomy.field import FieldInputs
from assistant.agronomy.nursery import Nursery
from assistant.people import Farmer, Village
from assistant.store import BadRowError, NotThereError, Store


def test_a_nursery_comes_back_with_every_field(
    store: Store, nursery: Nursery, now: datetime
) -> None:
    """None of the values is a default, so that a forgotten field would show."""
    full = Nursery(
        id=nursery.id,
        farmer_id=nursery.farmer_id,
        label="B",
        name="bonde la juu",
        inputs=FieldInputs(1234.5678, 0.8125, 22.5, 17.5, 3, 27.1, 12.5, 0.6),
        area_typed="3 mia",
        germination_known=False,
        sow_date=date(2026, 6, 12),
        made_on=date(2026, 6, 2),
        sown=True,
        sow_assumed=True,
        uncover_date=date(2026, 6, 18),
        uncovered=True,
        transplant_date=date(2026, 6, 29),
        transplanted_on=date(2026, 6, 30),
        closed=True,
    )
    with store.work() as work:
        assert work.nurseries.save(full, now) == full
    with store.work() as work:
        assert work.nurseries.get(full.id) == full


def test_open_nurseries_are_listed_by_label_with_aa_after_z(
    store: Store, unsaved: Nursery, now: datetime
) -> None:
    """Closed ones only on request."""
    with store.work() as work:
        for label in ("AA", "B", "Z", "A"):
            work.nurseries.save(replace(unsaved, label=label, closed=label == "B"), now)
        listed = work.nurseries.of_farmer(unsaved.farmer_id)
        every = work.nurseries.of_farmer(unsaved.farmer_id, open_only=False)
        counts = work.nurseries.count(), work.nurseries.count(unsaved.farmer_id + 1)
    assert [each.label for each in listed] == ["A", "Z", "AA"]
    assert [each.label for each in every] == ["A", "B", "Z", "AA"]
    assert counts == (4, 0)


def test_a_village_shows_open_nurseries_of_farmers_who_did_not_stop(
    store: Store, farmer: Farmer, nursery: Nursery, village: Village, now: datetime
) -> None:
    """A warning for the village goes to these."""
    with store.work() as work:
        work.nurseries.save(replace(nursery, id=0, label="B", closed=True), now)
        assert work.nurseries.in_village(village.id) == ((farmer, nursery),)
        assert work.nurseries.in_village(village.id + 1) == ()
        work.people.save_farmer(replace(farmer, stopped_at=now))
        assert work.nurseries.in_village(village.id) == ()


def test_a_nursery_that_is_not_kept_cannot_be_changed(
    store: Store, nursery: Nursery, now: datetime
) -> None:
    """The text says how to make a new one."""
    with pytest.raises(NotThereError, match="give 0 for a new one"), store.work() as work:
        work.nurseries.save(replace(nursery, id=nursery.id + 1), now)


def test_a_row_that_the_core_refuses_is_named(
    store: Store, nursery: Nursery, database_url: str
) -> None:
    """Someone must be able to find and correct it."""
    engine = create_engine(database_url)
    with engine.begin() as connection:
        connection.execute(text("UPDATE nursery SET germination = 85"))
    engine.dispose()
    with pytest.raises(BadRowError, match=f"nursery {nursery.id}: germination"):
        with store.work() as work:
            work.nurseries.get(nursery.id)
