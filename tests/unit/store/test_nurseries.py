"""Nurseries come back whole."""

from dataclasses import replace
from datetime import date, datetime, timedelta

import pytest
from sqlalchemy import create_engine, text

from assistant.agronomy.field import FieldInputs
from assistant.agronomy.nursery import Nursery
from assistant.people import Farmer, Village
from assistant.store import NotThereError, Store


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


def test_a_village_can_be_asked_for_the_beds_of_some_sowing_days(
    store: Store, farmer: Farmer, nursery: Nursery, village: Village
) -> None:
    """Both days count; the bed was sown on 10 June."""
    first, last = date(2026, 6, 10), date(2026, 6, 11)
    one = timedelta(days=1)
    with store.work() as work:
        for days in ((first, last), (first - one, first)):
            assert work.nurseries.in_village(village.id, *days) == ((farmer, nursery),)
        for days in ((first + one, last), (first - one, first - one)):
            assert work.nurseries.in_village(village.id, *days) == ()


def test_who_was_warned_comes_with_each_open_nursery_or_none(
    store: Store, farmer: Farmer, nursery: Nursery, village: Village, now: datetime
) -> None:
    """Farmers who stopped meanwhile are left out, those whose beds are closed are not."""
    with store.work() as work:
        officer = work.people.add_officer("+447700900001", "Asha", "hash", "en", [village.id])
        warning = work.warnings.add(village.id, officer.id, now, now, now)
        second = work.nurseries.save(replace(nursery, id=0, label="B"), now)
        later = work.people.save_farmer(replace(farmer, id=0, phone="+447700900102"))
        gone = replace(farmer, id=0, phone="+447700900103", stopped_at=now)
        work.people.save_farmer(gone)
        work.warnings.ask(warning.id, [farmer.phone, later.phone, gone.phone])
        assert work.nurseries.warned(warning.id) == (
            (farmer, nursery),
            (farmer, second),
            (later, None),
        )
        assert work.nurseries.warned(warning.id + 1) == ()


def test_a_nursery_that_is_not_kept_cannot_be_changed(
    store: Store, nursery: Nursery, now: datetime
) -> None:
    """The text says how to make a new one."""
    with pytest.raises(NotThereError, match="give 0 for a new one"), store.work() as work:
        work.nurseries.save(replace(nursery, id=nursery.id + 1), now)


def test_a_row_that_the_core_refuses_is_named(
    store: Store, nursery: Nursery, database_url: str
) -> None:
    """Someone must be able to find and correct it; everybody else goes on."""
    engine = create_engine(database_url)
    with engine.begin() as connection:
        connection.execute(text("UPDATE nursery SET germination = 85"))
    engine.dispose()
    with store.work() as work:
        assert work.nurseries.get(nursery.id) is None
        assert work.nurseries.of_farmer(nursery.farmer_id) == ()
        assert f"nursery {nursery.id}: germination" in work.unreadable[nursery.id]


@pytest.mark.parametrize(("sown_before", "found"), [(10, 0), (11, 1)])
def test_only_open_nurseries_sown_before_a_day_are_looked_at(
    store: Store, nursery: Nursery, sown_before: int, found: int
) -> None:
    """On both databases; the nursery was sown on 10 June."""
    with store.look() as work:
        day = nursery.sow_date.replace(day=sown_before)
        assert len(work.nurseries.open_since(day)) == found
