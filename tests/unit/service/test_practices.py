"""An officer turns on what a village is offered beside the mat."""

from collections.abc import Iterator

import pytest

from assistant.service.enrol import add_village, offer_practices
from assistant.service.house import House
from assistant.store import Store
from assistant.wiring.practices import open_practices
from tests.valley import house_of


@pytest.fixture
def practised(_copied_sqlite: str) -> Iterator[House]:
    """A house that knows the practices of its files."""
    store = Store(_copied_sqlite, open_practices())
    yield house_of(store)
    store.close()


def test_a_village_is_offered_what_was_turned_on(practised: House) -> None:
    """The mat stays; what is not named goes."""
    add_village(practised, "Mto Mdogo", "Africa/Nairobi")
    turned_on = offer_practices(practised, "mto mdogo", ("wet_bed", "tray"))
    assert turned_on.practices == ("mat", "wet_bed", "tray")
    assert offer_practices(practised, "Mto Mdogo", ()).practices == ("mat",)


def test_what_is_not_there_is_named(practised: House) -> None:
    """A village or a practice that nobody knows changes nothing."""
    add_village(practised, "Mto Mdogo", "Africa/Nairobi")
    with pytest.raises(LookupError, match="no practice floating; there are: mat"):
        offer_practices(practised, "Mto Mdogo", ("floating",))
    with pytest.raises(LookupError, match="no village Mtoni; there are: .*Mto Mdogo"):
        offer_practices(practised, "Mtoni", ("wet_bed",))
