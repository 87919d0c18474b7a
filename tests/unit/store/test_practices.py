"""A nursery keeps the code of its practice, and a village those that it is offered."""

from dataclasses import replace
from datetime import datetime

import pytest
from sqlalchemy import create_engine, text

from assistant.agronomy.nursery import Nursery
from assistant.agronomy.practices import MAT
from assistant.people import Village
from assistant.store import NotThereError, Store

# No other practice is known to the core; what a store is given it does not read.
WET = replace(MAT, code="wet_bed")


def test_a_nursery_comes_back_with_its_practice(
    database_url: str, unsaved: Nursery, now: datetime
) -> None:
    """The value itself, as the store was given it."""
    store = Store(database_url, {"mat": MAT, "wet_bed": WET})
    inputs = replace(unsaved.inputs, gap_filling=0.1)
    with store.work() as work:
        kept = work.nurseries.save(replace(unsaved, practice=WET, inputs=inputs), now)
    with store.work() as work:
        found = work.nurseries.get(kept.id)
    store.close()
    assert found == kept
    assert found is not None
    assert (found.practice, found.inputs.gap_filling) == (WET, 0.1)


def test_a_practice_whose_file_is_gone_is_named(
    store: Store, nursery: Nursery, database_url: str
) -> None:
    """The error says which, and what to do."""
    engine = create_engine(database_url.replace("postgresql:", "postgresql+psycopg:"))
    with engine.begin() as connection:
        connection.execute(text("UPDATE nursery SET practice = 'floating'"))
    engine.dispose()
    with store.work() as work:
        assert work.nurseries.get(nursery.id) is None
        assert "'floating'; put its file back" in work.unreadable[nursery.id]


def test_a_village_is_offered_the_mat_until_somebody_offers_more(
    store: Store, village: Village
) -> None:
    """What is offered is kept in its order."""
    assert village.practices == ("mat",)
    with store.work() as work:
        offered = work.people.offer_practices(village.id, ("mat", "wet_bed"))
    with store.work() as work:
        assert work.people.village(village.id) == offered
    assert offered.practices == ("mat", "wet_bed")


def test_nothing_is_offered_in_a_village_that_is_not_kept(store: Store) -> None:
    """The error says what to do."""
    with pytest.raises(NotThereError, match="add it first"):
        with store.work() as work:
            work.people.offer_practices(99, ("mat",))
