"""The texts of rain warnings on their way: how far they are, and taking them back."""

from collections.abc import Collection
from datetime import datetime

from sqlalchemy import ColumnElement, and_, func, select, update
from sqlalchemy.orm import Session

from assistant.dialogue.values import Kind
from assistant.store.tables import OutboxRow, WarningPhoneRow
from assistant.store.values import TextState
from assistant.store.values_warnings import Progress

_WITH_THEM = (TextState.CLAIMED, TextState.ACCEPTED, TextState.DELIVERED)
_COUNTED: dict[TextState, str] = {
    TextState.WAITING: "queued",
    TextState.CLAIMED: "queued",
    TextState.ACCEPTED: "sent",
    TextState.DELIVERED: "received",
    TextState.FAILED: "failed",
    TextState.EXPIRED: "failed",
    TextState.WITHDRAWN: "taken_back",
}


class Sending:
    def __init__(self, session: Session) -> None:
        self._session = session

    def take_back(self, warning_id: int, now: datetime) -> int:
        """Takes back the texts of a warning that have not left; how many were still queued.

        The time of one that a dispatcher has already is made to be over, which the dispatcher
        looks at before it hands the text over, and which keeps it from being tried again.
        """
        of_it = and_(OutboxRow.warning_id == warning_id, OutboxRow.kind == Kind.WARNING)
        waiting = self._update(
            and_(of_it, OutboxRow.state == TextState.WAITING),
            state=TextState.WITHDRAWN,
            ended_at=now,
        )
        claimed = and_(of_it, OutboxRow.state == TextState.CLAIMED)
        self._update(claimed, not_after=OutboxRow.created_at)  # before any dispatcher's "now"
        return waiting

    def may_leave(self, message_ids: Collection[str], now: datetime) -> frozenset[str]:
        """Those of claimed texts that may still be handed over."""
        wanted = select(OutboxRow.message_id).where(
            OutboxRow.message_id.in_(message_ids), OutboxRow.not_after > now
        )
        return frozenset(self._session.scalars(wanted))

    def let_go(self, message_ids: Collection[str], now: datetime) -> None:
        """Claimed texts that were taken back before they were handed over."""
        held = OutboxRow.state == TextState.CLAIMED
        these = and_(OutboxRow.message_id.in_(message_ids), held)
        self._update(these, state=TextState.WITHDRAWN, lease_until=None, ended_at=now)

    def told(self, warning_id: int) -> dict[str, TextState | None]:
        """The phones that have a warning or may have it, with the state of its last text; None
        for one that answered though no text of it arrived (on a screen)."""
        phones: dict[str, TextState | None] = {
            phone: None
            for phone in self._session.scalars(
                select(WarningPhoneRow.phone).where(
                    WarningPhoneRow.warning_id == warning_id,
                    WarningPhoneRow.answer.is_not(None),
                )
            )
        }
        sent = (
            select(OutboxRow.phone, OutboxRow.state)
            .where(OutboxRow.warning_id == warning_id, OutboxRow.kind == Kind.WARNING)
            .where(OutboxRow.state.in_(_WITH_THEM))
            .order_by(OutboxRow.id)
        )
        return phones | {phone: state for phone, state in self._session.execute(sent)}

    def progress(self, warning_ids: Collection[int]) -> Progress:
        """How far the texts of these warnings are, first and second ones together."""
        found = self._session.execute(
            select(OutboxRow.state, func.count())
            .where(OutboxRow.warning_id.in_(warning_ids), OutboxRow.kind == Kind.WARNING)
            .group_by(OutboxRow.state)
        )
        counts = dict.fromkeys(_COUNTED.values(), 0)
        for state, count in found:
            counts[_COUNTED[state]] += count
        return Progress(**counts)

    def _update(self, which: ColumnElement[bool], **columns: object) -> int:
        changed = self._session.scalars(
            update(OutboxRow)
            .where(which)
            .values(**columns)
            .returning(OutboxRow.id)
            .execution_options(synchronize_session=False)
        )
        return len(changed.all())
