"""How a text moves on what the operator says of it.

Receipts come late, twice, out of order, and before the hand-over was written down. So each
fate names the states it can move a text from, and in any other it changes nothing: DELIVERED
is from every state and to no other.
"""

from datetime import datetime
from typing import Any, Protocol

from sqlalchemy import ColumnElement, case, or_

from assistant.channel import Fate
from assistant.store.core import table_of
from assistant.store.tables import OutboxRow
from assistant.store.values import TextState

_UNSENT = {TextState.WAITING, TextState.CLAIMED}
_OPEN = _UNSENT | {TextState.ACCEPTED}

_MOVES: dict[Fate, tuple[set[TextState], TextState]] = {
    Fate.TRY_LATER: (_UNSENT, TextState.WAITING),
    Fate.ACCEPTED: (_UNSENT | {TextState.WITHDRAWN}, TextState.ACCEPTED),
    Fate.FAILED: (_OPEN, TextState.FAILED),
    Fate.EXPIRED: (_OPEN, TextState.EXPIRED),
    Fate.DELIVERED: (set(TextState) - {TextState.DELIVERED}, TextState.DELIVERED),
}
_ENDS = {TextState.FAILED, TextState.EXPIRED}


class Moves(Protocol):
    """The columns of a text that a fate may change."""

    state: TextState
    attempts: int
    due_at: datetime
    lease_until: datetime | None
    accepted_at: datetime | None
    delivered_at: datetime | None
    ended_at: datetime | None


def taken(at: ColumnElement[datetime]) -> dict[str, Any]:
    """What ACCEPTED makes of the columns of any number of texts, as `settle` has it for one."""
    row = table_of(OutboxRow).c
    starts, state = _MOVES[Fate.ACCEPTED]
    moves, later = row.state.in_(starts), row.accepted_at > at
    return {
        "accepted_at": case((or_(row.accepted_at.is_(None), later), at), else_=row.accepted_at),
        "state": case((moves, state), else_=row.state),
        "lease_until": case((moves, None), else_=row.lease_until),
        "ended_at": case((moves, None), else_=row.ended_at),
    }


def settle(row: Moves, fate: Fate, at: datetime, retry_at: datetime) -> bool:
    """Moves a text, and says whether it moved."""
    if fate in (Fate.ACCEPTED, Fate.DELIVERED):
        row.accepted_at = min(row.accepted_at or at, at)
    starts, state = _MOVES[fate]
    if row.state not in starts:
        return False
    row.state, row.lease_until = state, None
    row.ended_at = at if state in _ENDS else None
    if fate is Fate.TRY_LATER:
        row.attempts, row.due_at = row.attempts + 1, retry_at
    if fate is Fate.DELIVERED:
        row.delivered_at = at
    return True
