"""The moves of a text on what the operator says, without a database."""

from datetime import UTC, datetime, timedelta
from itertools import permutations

import pytest

from assistant.channel import Fate
from assistant.store import TextState
from assistant.store.fates import settle
from assistant.store.tables import OutboxRow

_NOW = datetime(2026, 6, 10, 3, 0, tzinfo=UTC)
_MINUTE = timedelta(minutes=1)


def _told(start: TextState, *fates: Fate) -> OutboxRow:
    """A text in a state, after the operator said these, one a minute."""
    row = OutboxRow(message_id="m1", state=start, attempts=0)
    for minute, fate in enumerate(fates):
        at = _NOW + minute * _MINUTE
        settle(row, fate, at, retry_at=at + _MINUTE)
    return row


@pytest.mark.parametrize("order", list(permutations(Fate)), ids=" ".join)
def test_delivered_stands_whatever_else_was_said_before_or_after(order: list[Fate]) -> None:
    """Every order of all that an operator can say."""
    row = _told(TextState.CLAIMED, *order)
    assert row.state is TextState.DELIVERED
    assert row.delivered_at == _NOW + order.index(Fate.DELIVERED) * _MINUTE
    assert row.accepted_at is not None and row.accepted_at <= row.delivered_at
    assert row.ended_at is None and row.lease_until is None


@pytest.mark.parametrize("start", TextState)
@pytest.mark.parametrize("fate", Fate)
def test_the_same_word_twice_moves_a_text_once(start: TextState, fate: Fate) -> None:
    """All but "try later", which is a new try each time."""
    once, twice = _told(start, fate), _told(start, fate, fate)
    assert twice.state == once.state
    assert twice.delivered_at == once.delivered_at
    assert twice.accepted_at == once.accepted_at


@pytest.mark.parametrize("end", [TextState.FAILED, TextState.EXPIRED, TextState.DELIVERED])
@pytest.mark.parametrize("fate", [fate for fate in Fate if fate is not Fate.DELIVERED])
def test_an_ended_text_is_never_sent_again(end: TextState, fate: Fate) -> None:
    """Only a delivery can still correct what was believed."""
    assert _told(end, fate).state is end
