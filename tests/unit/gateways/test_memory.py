"""What a line remembers of what phones wrote: when twice is once."""

from datetime import UTC, datetime, timedelta

import pytest

from assistant.gateways.memory import Repeats

NOON = datetime(2026, 6, 1, 12, 0, tzinfo=UTC)

# seconds to the second; whether our answer to the first was given; whether they are one message
TWICE = {
    "at once": (1, True, True),
    "a question later": (20, True, False),
    "brought again since nobody answered": (60, False, True),
    "long after that": (3600, False, False),
    "a clock put back": (-30, True, False),
}


@pytest.mark.parametrize("case", TWICE)
def test_the_same_words_are_one_message_or_two(case: str) -> None:
    """By the time between them, and by whether the operator missed our answer."""
    again, answered, is_one = TWICE[case]
    repeats = Repeats()
    first = repeats.id_of(NOON, "+447700900101", b"1")
    if not answered:
        repeats.unanswered(NOON, first)
    second = repeats.id_of(NOON + timedelta(seconds=again), "+447700900101", b"1")
    assert (first == second) is is_one


def test_other_words_and_other_phones_are_other_messages() -> None:
    """And a missed answer excuses one repeat, not every later one."""
    repeats = Repeats()
    ids = {repeats.id_of(NOON, phone, words) for phone in "ab" for words in (b"1", b"2")}
    assert len(ids) == 4
    repeats.unanswered(NOON, repeats.id_of(NOON, "a", b"1"))
    once = repeats.id_of(NOON + timedelta(minutes=1), "a", b"1")
    assert once in ids
    assert repeats.id_of(NOON + timedelta(minutes=2), "a", b"1") not in ids


def test_a_repeat_does_not_put_off_the_next_answer() -> None:
    """The operator brings 1 twice; the answer to the question that came meanwhile is new."""
    repeats = Repeats()
    first = repeats.id_of(NOON, "a", b"1")
    assert repeats.id_of(NOON + timedelta(seconds=2), "a", b"1") == first
    assert repeats.id_of(NOON + timedelta(seconds=4), "a", b"1") != first
