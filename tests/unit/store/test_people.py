"""Villages, farmers and officers."""

from dataclasses import replace
from datetime import datetime

import pytest

from assistant.people import Farmer, Officer, Village
from assistant.store import AlreadyThereError, NotThereError, Store


def test_villages_are_listed_by_name(store: Store) -> None:
    """A farmer picks one by its number in this list; an accent does not put it last."""
    with store.work() as work:
        later = work.people.add_village("Zawadi", "Africa/Nairobi")
        first = work.people.add_village("Bonde", "Africa/Dar_es_Salaam")
        accented = work.people.add_village("Água Boa", "Africa/Maputo")
        assert work.people.villages() == (accented, first, later)
        assert work.people.village(later.id) == Village(later.id, "Zawadi", "Africa/Nairobi")


def test_a_village_of_the_same_name_is_refused_with_what_to_do(
    store: Store, village: Village
) -> None:
    """The text names the village and the way out."""
    with pytest.raises(AlreadyThereError, match="'Mto Mdogo'.*use it as it is"):
        with store.work() as work:
            work.people.add_village("Mto Mdogo", "Africa/Nairobi")


def test_a_farmer_is_found_by_phone_and_by_id(store: Store, farmer: Farmer) -> None:
    """One phone is one farmer."""
    with store.work() as work:
        assert work.people.farmer(farmer.phone) == farmer
        assert work.people.farmer_by_id(farmer.id) == farmer
        assert work.people.farmer("+447700900199") is None


def test_a_farmer_is_kept_as_changed(store: Store, farmer: Farmer, now: datetime) -> None:
    """Stopping keeps the farmer and says since when."""
    stopped = replace(farmer, language="en", stopped_at=now)
    with store.work() as work:
        work.people.save_farmer(stopped)
    with store.work() as work:
        assert work.people.farmers() == (stopped,)


def test_a_second_farmer_on_one_phone_is_refused(store: Store, farmer: Farmer) -> None:
    """Id 0 says new, and this one is not."""
    with pytest.raises(AlreadyThereError), store.work() as work:
        work.people.save_farmer(replace(farmer, id=0))


def test_a_farmer_that_is_not_kept_cannot_be_changed(store: Store, farmer: Farmer) -> None:
    """An id of another database would otherwise make a farmer."""
    with pytest.raises(NotThereError), store.work() as work:
        work.people.save_farmer(replace(farmer, id=farmer.id + 1, phone="+447700900102"))


def test_farmers_can_be_asked_for_by_village(
    store: Store, farmer: Farmer, village: Village
) -> None:
    """In the order of their phones."""
    with store.work() as work:
        other = work.people.save_farmer(Farmer(0, "+447700900100", None, None, None, None))
        assert work.people.farmers() == (other, farmer)
        assert work.people.farmers(village.id) == (farmer,)


def test_a_known_officer_gets_villages_added_and_a_new_code(
    store: Store, officer: Officer, village: Village
) -> None:
    """The old code stops working; no village is lost."""
    with store.work() as work:
        other = work.people.add_village("Bonde", "Africa/Nairobi")
        again = work.people.add_officer(officer.phone, "Asha", "new", "sw", [other.id])
    expected = Officer(
        officer.id, officer.phone, "Asha", "new", "sw", (village.id, other.id), False
    )
    with store.work() as work:
        assert again == work.people.officer(officer.phone) == expected


def test_a_village_is_served_by_its_officers_and_by_the_leads(
    store: Store, officer: Officer, village: Village
) -> None:
    """A lead serves all villages."""
    with store.work() as work:
        lead = work.people.add_officer("+447700900002", "Juma", "h", "en", [], is_lead=True)
        elsewhere = work.people.add_village("Bonde", "Africa/Nairobi")
        work.people.add_officer("+447700900003", "Neema", "h", "en", [elsewhere.id])
        assert work.people.officers_of(village.id) == (officer, lead)
        assert work.people.officer_by_id(lead.id) == lead


def test_an_officer_of_a_village_that_is_not_kept_is_refused(store: Store) -> None:
    """And nothing of the officer is kept."""
    with pytest.raises(NotThereError, match="add the village first"), store.work() as work:
        work.people.add_officer("+447700900001", "Asha", "h", "en", [404])
    with store.work() as work:
        assert work.people.officer("+447700900001") is None
