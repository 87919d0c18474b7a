"""A deployment in a file of its own, with two villages and nobody in them."""

from collections.abc import Iterator

import pytest

from assistant.people import Village
from assistant.store import Store
from tests.valley import Valley, at, house_of


@pytest.fixture
def valley(_copied_sqlite: str) -> Iterator[Valley]:
    """The first of June, eight in the morning."""
    store = Store(_copied_sqlite)
    yield Valley(house_of(store), at("1 Jun 08:00"))
    store.close()


@pytest.fixture
def kijani(valley: Valley) -> Village:
    """The first village by name."""
    return valley.add_village("Kijani")


@pytest.fixture
def mwanga(valley: Valley) -> Village:
    """The second village by name."""
    return valley.add_village("Mto Mwanga")
