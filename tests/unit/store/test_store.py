"""Opening, transactions, locks and errors."""

from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from datetime import datetime
from pathlib import Path

import pytest

from assistant.people import Farmer, Village
from assistant.store import DatabaseFailedError, DatabaseUrlError, OutboxText, Store


@pytest.mark.parametrize(
    ("url", "says"),
    [
        ("", "one that cannot be read"),
        ("nursery.db", "one that cannot be read"),
        ("mysql://localhost/nursery", "got 'mysql'"),
        ("sqlite://", "in memory"),
        ("sqlite:///:memory:", "in memory"),
    ],
)
def test_a_database_we_cannot_use_is_refused_with_an_example(url: str, says: str) -> None:
    """Before anything is opened."""
    with pytest.raises(DatabaseUrlError, match=f"{says}.*give e.g. sqlite:////"):
        Store(url)


def test_a_postgresql_address_needs_no_driver_in_it(postgres_url: str) -> None:
    """People write it as they know it."""
    store = Store(postgres_url.replace("postgresql+psycopg:", "postgresql:"))
    store.migrate()
    store.close()


def test_a_file_that_cannot_be_opened_is_our_error(tmp_path: Path) -> None:
    """Nothing of the database library reaches the rooms above."""
    store = Store(f"sqlite:///{tmp_path / 'no' / 'such' / 'folder.db'}")
    with pytest.raises(DatabaseFailedError, match="see that it can be reached"):
        store.migrate()
    store.close()


def test_an_exception_undoes_the_whole_transaction(store: Store) -> None:
    """The exception itself comes through as it was."""
    with pytest.raises(RuntimeError, match="half way"):
        with store.work() as work:
            work.people.add_village("Mto Mdogo", "Africa/Nairobi")
            raise RuntimeError("half way")
    with store.work() as work:
        assert work.people.villages() == ()


def test_what_people_typed_is_not_in_the_text_of_an_error(
    store: Store, now: datetime, make_text: Callable[..., OutboxText]
) -> None:
    """Errors end in logs; phone numbers and codes must not."""
    with pytest.raises(DatabaseFailedError) as of_a_column, store.work() as work:
        work.outbox.add(make_text("+447700900101", text="my code is 1234"))
        work.outbox.add(make_text("+447700900101", text="my code is 1234"))
    with pytest.raises(DatabaseFailedError) as of_a_reference, store.work() as work:
        work.calls.add(404, None, "officer", "my code is 1234", now)
    for caught in (of_a_column, of_a_reference):
        assert "1234" not in str(caught.value) and "+44" not in str(caught.value)
        assert "my code" not in str(caught.value.__cause__)


def test_turns_of_one_phone_come_one_after_the_other(store: Store, village: Village) -> None:
    """Each reads what the one before wrote: no label is given twice."""

    def turn(_: int) -> None:
        with store.work() as work:
            work.lock("+447700900101")
            number = len(work.people.farmers())
            work.people.save_farmer(
                Farmer(0, f"+44770090020{number}", "en", village.id, None, None)
            )

    with ThreadPoolExecutor(4) as pool:
        list(pool.map(turn, range(8)))
    with store.work() as work:
        assert len(work.people.farmers()) == 8


def test_what_was_read_before_the_lock_is_read_again_after_it(postgres_url: str) -> None:
    """While we waited for it, another turn of this phone may have changed things.

    On SQLite nothing can change under an open transaction.
    """
    store = Store(postgres_url)
    store.migrate()
    with store.work() as work:
        farmer = work.people.save_farmer(Farmer(0, "+447700900101", "sw", None, None, None))
    changed = replace(farmer, language="en")
    with store.work() as work:
        before = work.people.farmers()
        with store.work() as other:
            other.people.save_farmer(changed)
        work.lock(farmer.phone)
        after = work.people.farmers()
    store.close()
    assert (before, after) == ((farmer,), (changed,))
