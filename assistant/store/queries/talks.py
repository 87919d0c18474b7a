"""Half-finished talks by SMS and open USSD sessions."""

from datetime import datetime

from sqlalchemy import bindparam, delete, select
from sqlalchemy.orm import Session as Transaction

from assistant.dialogue.conversations import PLAN, SIGNUP
from assistant.dialogue.values import Session
from assistant.store import rows
from assistant.store.codec import focus_json, read_session, session_json
from assistant.store.core import table_of
from assistant.store.inserts import put
from assistant.store.tables import TalkRow, UssdTalkRow
from assistant.store.values import UssdTalk
from assistant.store.values_people import Talk

KEPT_FOR_LONG = frozenset({SIGNUP.name, PLAN.name})


class Talks:
    def __init__(self, session: Transaction) -> None:
        self._session = session

    def session(self, phone: str, since: datetime | None = None) -> Session | None:
        """The half-finished talk of a phone, or None where there is none to go on with.

        `since`: a passing talk last changed before it is over; what a plan or a sign-up has
        of answers is kept however long it rests.
        """
        row = self._session.execute(_TALK, {"of": phone}).first()
        return going_on(Talk(*row), since) if row else None

    def keep_session(self, phone: str, session: Session | None, now: datetime) -> None:
        """Keeps a talk in place of the last; None ends it."""
        if session is None:
            self.end(phone)
            return
        row = {"phone": phone, "session": session_json(session), "changed_at": now}
        put(self._session, TalkRow, row)

    def end(self, phone: str) -> None:
        """There is nothing to go on with."""
        self._session.execute(_END, {"of": phone})

    def resting(self, conversation: str, since: datetime, until: datetime) -> tuple[str, ...]:
        """The phones whose talk is of this conversation and was last changed between two
        times."""
        found = self._session.execute(_RESTING, {"since": since, "until": until})
        talks = ((phone, read_session(kept)) for phone, kept in found)
        return tuple(
            phone for phone, talk in talks if talk and talk.conversation == conversation
        )

    def ussd(self, session_id: str) -> UssdTalk | None:
        row = self._session.execute(_USSD, {"of": session_id}).first()
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
        row = {
            "session_id": talk.session_id,
            "phone": talk.phone,
            "pages": list(talk.pages),
            "page": talk.page,
            "focus": focus_json(talk.focus),
            "changed_at": now,
        }
        put(self._session, UssdTalkRow, row)

    def end_ussd(self, session_id: str) -> None:
        self._session.execute(delete(UssdTalkRow).where(UssdTalkRow.session_id == session_id))


def going_on(talk: Talk, since: datetime | None = None) -> Session | None:
    """The talk that can be gone on with; `since` as for `Talks.session`."""
    session = read_session(talk.session)
    if since is None or talk.changed_at >= since:
        return session
    while session is not None and session.conversation not in KEPT_FOR_LONG:
        session = session.held
    return session


_KEPT, _SCREENS = table_of(TalkRow), table_of(UssdTalkRow)
_TALK = select(_KEPT.c.session, _KEPT.c.changed_at).where(_KEPT.c.phone == bindparam("of"))
_RESTING = (
    select(_KEPT.c.phone, _KEPT.c.session)
    .where(_KEPT.c.changed_at >= bindparam("since"), _KEPT.c.changed_at <= bindparam("until"))
    .order_by(_KEPT.c.phone)
)
_END = delete(_KEPT).where(_KEPT.c.phone == bindparam("of"))
_USSD = select(_SCREENS).where(_SCREENS.c.session_id == bindparam("of"))
