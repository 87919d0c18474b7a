"""The clock of a season, and the next moment at which something may happen."""

from datetime import UTC, datetime, time, timedelta

from scenarios.clock import VirtualClock, next_mark

NOON = datetime(2026, 6, 1, 12, 0, tzinfo=UTC)


def test_the_clock_moves_on_and_never_back() -> None:
    """Going to a time that is past leaves it where it is."""
    clock = VirtualClock(NOON)
    clock.to(NOON + timedelta(hours=1))
    clock.to(NOON)
    assert clock() == NOON + timedelta(hours=1)


def test_the_next_mark_is_the_earliest_of_all_zones() -> None:
    """06:00 in Manila (UTC+8) comes at 22:00 UTC, five hours before Nairobi's (UTC+3)."""
    found = next_mark(NOON, [time(6, 0)], ["Africa/Nairobi", "Asia/Manila"])
    assert found == datetime(2026, 6, 1, 22, 0, tzinfo=UTC)


def test_a_mark_that_is_now_is_not_the_next_one() -> None:
    """The day after has it again."""
    found = next_mark(NOON, [time(15, 0)], ["Africa/Nairobi"])
    assert found == NOON + timedelta(days=1)
