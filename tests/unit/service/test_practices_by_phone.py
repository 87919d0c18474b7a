"""From the officer's choice to the farmer's screen, on the valley's clock."""

from collections.abc import Iterator

import pytest

from assistant.service.enrol import add_village, offer_practices
from assistant.store import Store
from assistant.wiring.practices import open_practices
from tests.valley import AMINA, KIJANI, Valley, at, house_of


@pytest.fixture
def wet(_copied_sqlite: str) -> Iterator[Valley]:
    """A valley whose Kijani also offers the wet bed."""
    store = Store(_copied_sqlite, open_practices())
    valley = Valley(house_of(store), at("1 Jun 08:00"))
    add_village(valley.house, KIJANI.name)
    offer_practices(valley.house, KIJANI.name, ("wet_bed",))
    yield valley
    store.close()


def test_a_season_on_a_wet_bed_is_kept_and_prompted_as_one(wet: Valley) -> None:
    """Asked by SMS, kept as a wet bed, and its seed is soaked three days ahead."""
    for text in ("hello", "1", "Kijani", "yes"):
        wet.text(AMINA, text)
    assert "2 wet bed" in wet.text(AMINA, "0.4 ha")[-1]
    for text in ("2", "85", "10 L", "10 June"):
        wet.text(AMINA, text)
    assert "make the bed" in " ".join(wet.text(AMINA, "yes"))
    assert "wet bed" in " ".join(wet.text(AMINA, "next"))
    wet.go("7 Jun 06:00")
    assert "Soak 12.5 kg" in wet.heard(AMINA)[-1]
