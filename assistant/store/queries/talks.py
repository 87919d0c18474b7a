"""Half-finished talks by SMS and open USSD sessions."""

from datetime import datetime

from sqlalchemy import delete, select
from sqlalchemy.orm import Session as Transaction

from assistant.dialogue.conversations import PLAN, SIGNUP
from assistant.dialogue.values import Session
from assistant.store import rows
from assistant.store.codec import focus_json, read_session, session_json
from assistant.store.tables import TalkRow, UssdTalkRow
from assistant.store.values import UssdTalk

KEPT_FOR_LONG = frozenset({SIGNUP.name, PLAN.name})


class Talks:
    def __init__(self, session: Transaction) -> None:
        self._session = session

    def session(self, phone: str, since: datetime | None = None) -> Session | None:
        """The half-finished talk of a phone, or None where there is none to go on with.

        `since`: a passing talk last changed before it is over; what a plan or a sign-up has
        of answers is kept however long it rests.
        """
        row = self._session.get(TalkRow, phone)
        session = read_session(row.session) if row else None
        if row is None or since is None or row.changed_at >= since:
            return session
        while session is not None and session.conversation not in KEPT_FOR_LONG:
            session = session.held
        return session

    def keep_session(self, phone: str, session: Session | None, now: datetime) -> None:
        """Keeps a talk in place of the last; None ends it."""
        if session is None:
            self._session.execute(delete(TalkRow).where(TalkRow.phone == phone))
            return
        row = self._session.get(TalkRow, phone) or TalkRow(phone=phone)
        row.session, row.changed_at = session_json(session), now
        self._session.add(row)
        self._session.flush()

    def ussd(self, session_id: str) -> UssdTalk | None:
        row = self._session.get(UssdTalkRow, session_id)
        return rows.ussd_talk(row) if row else None

    def ussd_of(self, phone: str) -> tuple[UssdTalk, ...]:
        """The sessions of a phone that nobody ended, the latest first."""
        found = self._session.scalars(
            select(UssdTalkRow)
            .where(UssdTalkRow.phone == phone)
            .order_by(UssdTalkRow.changed_at.desc())
        )
        return tuple(map(rows.ussd_talk, found))

    def keep_ussd(self, talk: UssdTalk, now: datetime) -> None:
        row = self._session.get(UssdTalkRow, talk.session_id)
        row = row or UssdTalkRow(session_id=talk.session_id)
        row.phone, row.pages, row.page = talk.phone, list(talk.pages), talk.page
        row.focus, row.changed_at = focus_json(talk.focus), now
        self._session.add(row)
        self._session.flush()

    def end_ussd(self, session_id: str) -> None:
        self._session.execute(delete(UssdTalkRow).where(UssdTalkRow.session_id == session_id))
