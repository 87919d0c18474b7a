"""Times and typed words come back as they went in, on both databases."""

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest

from assistant.people import Farmer
from assistant.store import NaiveTimeError, Store


def test_a_time_without_a_zone_is_refused_and_nothing_is_kept(store: Store) -> None:
    """A naive time would be read as another hour somewhere else."""
    naive = datetime(2026, 6, 10, 6, 0)
    with pytest.raises(NaiveTimeError, match="expected an aware time"):
        with store.work() as work:
            work.people.save_farmer(Farmer(0, "+447700900101", "en", None, naive, None))
    with store.work() as work:
        assert work.people.farmers() == ()


def test_a_naive_time_is_refused_in_a_question_too(store: Store) -> None:
    """Not only what is written must have a zone."""
    with pytest.raises(NaiveTimeError), store.work() as work:
        work.outbox.claim(datetime(2026, 6, 10, 6, 0), 1, timedelta(minutes=1))


def test_a_time_in_a_village_zone_comes_back_as_the_same_moment_in_utc(store: Store) -> None:
    """To the microsecond: Nairobi is three hours ahead of UTC (IANA tz, no summer time)."""
    there = datetime(2026, 6, 10, 6, 0, 0, 123456, tzinfo=ZoneInfo("Africa/Nairobi"))
    with store.work() as work:
        work.people.save_farmer(Farmer(0, "+447700900101", "en", None, there, None))
    with store.work() as work:
        (kept,) = work.people.farmers()
    assert kept.consent_at == datetime(2026, 6, 10, 3, 0, 0, 123456, tzinfo=UTC)
    assert kept.consent_at.tzinfo is UTC


@pytest.mark.parametrize(
    ("typed", "kept"),
    [
        ("mpunga 🌾 shambani", "mpunga 🌾 shambani"),
        ("धान की नर्सरी", "धान की नर्सरी"),
        ("half \ud83c of a pair", "half \ufffd of a pair"),
        ("a \0 nul", "a \ufffd nul"),
        ("", ""),
        ("'; DROP TABLE farmer; --", "'; DROP TABLE farmer; --"),
    ],
)
def test_whatever_was_typed_is_kept(store: Store, now: datetime, typed: str, kept: str) -> None:
    """What no database can hold becomes U+FFFD; the rest of the message is not lost."""
    with store.work() as work:
        work.calls.unread("en", "plan.area", typed, now)
    with store.work() as work:
        (unread,) = work.calls.unread_list()
    assert unread.text == kept
