"""What every text of a phone needs is read at once, and what was read is never stale."""

from dataclasses import replace
from datetime import date, datetime, timedelta

import pytest

from assistant.agronomy.growth.warmth import Warmth
from assistant.dialogue.values import Session
from assistant.people import Farmer, Officer, Village
from assistant.store import Store, going_on

_DAY = timedelta(days=1)


def test_of_a_stranger_there_is_only_whom_to_tell(
    store: Store, officer: Officer, now: datetime
) -> None:
    """Not the stranger, who may be that officer."""
    with store.work() as work:
        here = work.at_hand.of("+447700900199", now, now)
        assert here.told_first == (officer.name, officer.phone)
        assert (here.farmer, here.talk, here.warning, here.warmth) == (None,) * 4
        assert (here.unread, here.was_asked_if_hurt, here.has_seasons) == (0, False, False)
        assert work.at_hand.of(officer.phone, now, now).told_first is None


def test_of_a_farmer_it_is_what_the_statements_for_each_say(
    store: Store, farmer: Farmer, village: Village, officer: Officer, now: datetime
) -> None:
    """Talk, warning, warmth and the farmer."""
    talk = Session("plan", 1, "area", {}, ())
    warmth = Warmth(date(2026, 6, 9), 22.5)
    with store.work() as work:
        work.talks.keep_session(farmer.phone, talk, now)
        earlier = replace(warmth, day=warmth.day - _DAY, mean_c=19.0)
        for each in (warmth, earlier):
            work.warmth.save(village.id, each, officer.id, now)
        rain = work.warnings.add(village.id, officer.id, now, now + _DAY, now)
    with store.work() as work:
        here = work.at_hand.of(farmer.phone, now, now)
        assert here.farmer == farmer
        assert here.talk is not None
        assert going_on(here.talk) == talk == work.talks.session(farmer.phone)
        assert here.warmth == warmth == work.warmth.latest(village.id, earlier.day)
        assert (here.warning, here.warned) == (rain, False)


def test_people_who_change_in_a_transaction_are_read_anew(
    store: Store, farmer: Farmer, officer: Officer, now: datetime
) -> None:
    """By whatever way they change."""
    with store.work() as work:
        work.at_hand.of(farmer.phone, now, now)
        work.people.save_farmer(replace(farmer, language="fr"))
        changed = work.people.farmer(farmer.phone)
        assert changed is not None and changed.language == "fr"
        assert work.people.officer(officer.phone) == officer
        work.accounts.close(officer.id, now)
        assert work.people.officer(officer.phone) is None
        work.enrolments.forget_person(farmer.id)
        gone = work.people.farmer(farmer.phone)
        assert gone is not None and gone.language is None


def test_villages_that_a_process_keeps_are_never_those_of_before(
    store: Store, database_url: str, village: Village
) -> None:
    """Another process added one; this one changed one."""
    beside = Store(database_url)
    with beside.work() as work:
        assert work.people.villages() == (village,)
    with store.work() as work:
        added = work.people.add_village("Abenda", "Africa/Nairobi")
        assert work.people.villages() == (added, village)
    with beside.work() as work:
        assert work.people.villages() == (added, village)
        placed = work.people.place_village(village.id, 1.0, 2.0)
        assert work.people.village(village.id) == placed
        assert work.people.villages() == (added, placed)
    with store.look() as work:
        assert work.people.villages() == (added, placed)
        assert work.people.village(village.id) == placed
    beside.close()


def test_a_village_that_was_taken_back_is_seen_by_nobody(
    store: Store, village: Village
) -> None:
    """Not by who comes next, under the same number of changes."""
    with pytest.raises(LookupError), store.work() as work:
        work.people.add_village("Zulu", "Africa/Nairobi")
        assert len(work.people.villages()) == 2
        raise LookupError
    with store.work() as work:
        added = work.people.add_village("Yanga", "Africa/Nairobi")
    with store.work() as work:
        assert work.people.villages() == (village, added)
