"""Incoming messages, each kept once under the gateway's own id."""

from datetime import datetime

from sqlalchemy import bindparam, func, select, update
from sqlalchemy.orm import Session

from assistant.channel import Channel, Incoming, Screen
from assistant.store.core import table_of
from assistant.store.inserts import insert_missing
from assistant.store.queries.counted import village_of
from assistant.store.tables import IncomingRow
from assistant.store.values import Seen


class Inbox:
    def __init__(self, session: Session) -> None:
        self._session = session

    def take(self, incoming: Incoming, kept_text: str, now: datetime) -> Seen:
        """Keeps a message, unless it came before: then it gives the answer of that time.

        `kept_text` is what is written down, with codes blanked. A repeat that comes while the
        first is still being answered waits for it.
        """
        row = {
            "gateway_id": incoming.gateway_id,
            "phone": incoming.phone,
            "text": kept_text,
            "channel": incoming.channel,
            "step": incoming.step,
            "session_id": incoming.session_id,
            "at": incoming.at,
            "taken_at": now,
            "failed": False,
            "village_id": village_of(self._session, incoming.phone),
        }
        if insert_missing(self._session, IncomingRow, [row], [IncomingRow.gateway_id]):
            return Seen(new=True)
        return Seen(new=False, answer=self._answer(incoming.gateway_id))

    def _answer(self, gateway_id: str) -> Screen | None:
        row = self._session.get(IncomingRow, gateway_id)
        if row is None or row.answer_text is None:
            return None
        return Screen(row.answer_text, bool(row.answer_more))

    def keep_answer(self, gateway_id: str, screen: Screen) -> None:
        """The screen that a repeat of this message will get."""
        self._change(gateway_id, answer_text=screen.text, answer_more=screen.more)

    def mark_failed(self, gateway_id: str) -> None:
        """The talk failed on this message; it is kept to be looked at."""
        self._change(gateway_id, failed=True)

    def hide(self, gateway_id: str) -> None:
        """Pages no longer show the words of this message, nor the screen that answered it."""
        self._change(gateway_id, private=True)

    def forget(self, phone: str) -> None:
        """Takes the number and the words off all that came from a phone. The gateway's ids
        stay, so that a repeat is still known as one."""
        theirs = update(IncomingRow).where(IncomingRow.phone == phone)
        self._session.execute(theirs.values(phone="", text=""))

    def last_text_at(self, phone: str) -> datetime | None:
        """When this phone sent its latest SMS, by the gateway's time."""
        return self._session.scalar(
            select(func.max(IncomingRow.at)).where(
                IncomingRow.phone == phone, IncomingRow.channel == Channel.SMS
            )
        )

    def _change(self, gateway_id: str, **columns: object) -> None:
        self._session.execute(_OF_ID, {"of": gateway_id} | columns)


_INCOMING = table_of(IncomingRow)
_OF_ID = update(_INCOMING).where(_INCOMING.c.gateway_id == bindparam("of"))
