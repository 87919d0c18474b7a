"""When a text is offered to the operator again."""

from datetime import UTC, datetime, timedelta

import pytest

from assistant.reminders.retry import next_try

NOW = datetime(2026, 6, 10, 6, tzinfo=UTC)
EVENING = NOW + timedelta(hours=14)

# tries so far: seconds until the next
WAITS = {1: 30, 2: 60, 3: 120, 4: 240, 5: 480, 6: 900, 7: 900, 1000: 900}


@pytest.mark.parametrize(("attempts", "seconds"), WAITS.items())
def test_the_wait_doubles_up_to_a_quarter_of_an_hour(attempts: int, seconds: int) -> None:
    """However often it was tried."""
    assert next_try(attempts, NOW, EVENING) == NOW + timedelta(seconds=seconds)


def test_a_text_whose_time_is_up_is_given_up() -> None:
    """One that would leave at the very end is too late."""
    assert next_try(1, NOW, NOW + timedelta(seconds=31)) is not None
    assert next_try(1, NOW, NOW + timedelta(seconds=30)) is None
    assert next_try(1, NOW, NOW - timedelta(days=1)) is None
