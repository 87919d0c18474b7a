"""Taking one person out of every table.

What becomes of each column that can hold a number, a name or words stands in the tables below;
a test walks all columns of all tables, so that a new one cannot be forgotten.
"""

import json
from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from sqlalchemy import (
    JSON,
    ColumnElement,
    LargeBinary,
    String,
    Table,
    and_,
    cast,
    delete,
    false,
    or_,
    select,
    update,
)
from sqlalchemy.orm import Session

from assistant.store import memo
from assistant.store.queries.enrolments import Enrolments
from assistant.store.tables import Base, IncomingRow, NurseryRow, OfficerRow, OutboxRow
from assistant.store.tables_people import PastPhoneRow
from assistant.store.values import TextState

LEAST_NAME = 4  # letters; a shorter one is a part of too many words
LONGEST_NAME = 17  # notices cut longer ones (`dialogue.callers`)

# Rows that are theirs by one of these columns, and go.
GONE: Mapping[str, Collection[str]] = {
    "broadcast_phone": ("phone",),
    "desk_mark": ("farmer_id",),
    "enrolment": ("farmer_id",),
    "heard_by": ("phone",),
    "nursery": ("farmer_id",),
    "nursery_event": ("nursery_id",),
    "one_time_code": ("phone",),
    "own_group_member": ("farmer_id",),
    "past_phone": ("farmer_id",),
    "piece": ("phone",),
    "reminder": ("nursery_id",),
    "season_result": ("farmer_id", "nursery_id"),
    "set_aside": ("nursery_id",),
    "sign_in_try": ("who",),
    "talk": ("phone",),
    "unread_reply": ("phone", "farmer_id"),
    "ussd_talk": ("phone",),
    "visit": ("nursery_id",),
    "warning_phone": ("phone",),
}
# Rows that are theirs by the first column and stay, since counts or others need them; the other
# columns are emptied.
EMPTIED: Mapping[str, tuple[str, Mapping[str, object]]] = {
    "alarm": ("call_id", {"note": "", "said": None}),
    "audit": ("farmer_id", {"detail": ""}),
    "call_for_help": ("farmer_id", {"words": ""}),
    "incoming": ("phone", {"phone": "", "text": "", "answer_text": None, "session_id": None}),
    "officer_text": ("farmer_id", {"words": ""}),
    "outbox": ("phone", {"phone": "", "text": "", "detail": "", "focus": None}),
}
# Rows of others: emptied where they name the number, or the person.
NAMING: Mapping[str, Mapping[str, object]] = {
    "audit": {"detail": ""},
    "brake": {"why": ""},
    "desk_deed": {"before": {}},
    "incoming": {"text": "", "answer_text": None},
    "line": {"said": "", "held_why": ""},
    "office_question": {"ways": [], "answer": ""},  # then it is used no more
    "outbox": {"text": ""},
    "part": {"detail": ""},
    "set_aside": {"why": ""},
    "talk": {"session": {}},
    "ussd_talk": {"pages": []},
    "village_handover": {"note": ""},
    "visit": {"note": ""},
}
# Columns of letters that hold nothing of a farmer: codes, hashes, ids, an officer's own words
# to all, what a weather service said.
OF_NOBODY = frozenset(
    """
    alert.source alert.digest alert.raw alert.sender alert.identifier alert.status
    alert.kind alert.scope alert.sealed_by alert.told alert_source.name alert_source.etag
    alert_source.modified alert_source.trouble counter.name kept_secret.name
    kept_secret.value line.name line_owner.name line_owner.owner officer.phone
    officer.name officer.code_hash officer.language officer.password_hash
    officer.totp_salt officer.next_code_hash part.line part.part part.message_id part.fate
    pulse.part trail_seal.digest village.name village.zone village.practices
    village.climate village.emergency village.health_post village.vet village.units
    warning.danger warning_draft.danger
    alert_reference.sender alert_reference.identifier brake.what brake.which
    broadcast.words broadcast.village_ids broadcast.stage broadcast.practice
    calendar_day.names desk_deed.kind desk_note.key erasure.phone incoming.gateway_id
    known_browser.key office_list.counts office_list.state village_geocode.name
    village_geocode.value warning_draft.hazard warning_draft.words web_session.key
    web_session.browser agreement.channel agreement.language agreement.words audit.act
    audit.detail_digest call_for_help.about outbox.message_id outbox.encoding outbox.line
    officer_text.message_id alarm_told.message_id setting.name setting.value
    office_question.language question_count.code own_group.name
    """.split()
)
# A list that an office sent in cannot be searched: whoever sends one in keeps it a week.
LISTS = {"office_list": ("name", "content", "choices", "rejects")}
# The farmer's own row stays bare: `forget` makes it so.
BARE = {"farmer": ("phone", "name", "language")}


@dataclass(frozen=True)
class ForgottenPerson:
    """Whom to look for: the row, the number, the name as notices have it."""

    farmer_id: int
    phone: str
    name: str | None = None


class Forgetting:
    """In one transaction; nothing of it is said to anybody here."""

    def __init__(self, session: Session) -> None:
        self._session = session

    def person(self, who: ForgottenPerson, now: datetime) -> None:
        """Takes away number, name, words and nurseries; earlier numbers, as long as they were
        theirs, too."""
        past = select(PastPhoneRow).where(PastPhoneRow.farmer_id == who.farmer_id)
        earlier = [(row.phone, row.until) for row in self._session.scalars(past)]
        beds = self._ids(NurseryRow.id, NurseryRow.farmer_id == who.farmer_id)
        self._take_back(who.phone, now)
        self._empty(who.farmer_id, beds)
        Enrolments(self._session).forget_person(who.farmer_id)
        self._remove("farmer_id", [who.farmer_id])
        self.phone(who.phone)
        for phone, until in earlier:
            self._earlier(phone, until)
        self._names(_said(who))
        self._lists()
        self._session.expire_all()

    def phone(self, phone: str) -> None:
        """Takes away a number, and what was written to and from it."""
        for column in ("phone", "who"):
            self._remove(column, [phone])
        for name in ("incoming", "outbox"):
            table = _table(name)
            self._session.execute(
                update(table).where(table.c.phone == phone).values(**EMPTIED[name][1])
            )
        self._names(_Said((phone,), ()))

    def _ids(self, column: Any, which: ColumnElement[bool]) -> list[int]:
        return list(self._session.scalars(select(column).where(which)))

    def _remove(self, column: str, values: Collection[object]) -> None:
        for name, columns in GONE.items():
            table = _table(name)
            if column in columns and name != "nursery":  # `forget_person` unlinks those first
                self._session.execute(delete(table).where(table.c[column].in_(values)))

    def _empty(self, farmer_id: int, beds: Collection[int]) -> None:
        calls = _table("call_for_help")
        theirs = select(calls.c.id).where(calls.c.farmer_id == farmer_id)
        for name in ("audit", "officer_text", "call_for_help", "alarm"):
            table, (column, empty) = _table(name), EMPTIED[name]
            which: ColumnElement[bool] = table.c[column].in_(
                theirs if column == "call_id" else [farmer_id]
            )
            if "nursery_id" in table.c and beds:
                which = or_(which, table.c.nursery_id.in_(beds))
            self._session.execute(update(table).where(which).values(**empty))

    def _take_back(self, phone: str, now: datetime) -> None:
        """Texts to others that name the number and have not left: they would be empty."""
        waits = OutboxRow.state.in_((TextState.WAITING, TextState.CLAIMED))
        named = OutboxRow.text.contains(phone, autoescape=True)
        gone = {"state": TextState.WITHDRAWN, "ended_at": now, "text": ""}
        self._session.execute(update(OutboxRow).where(waits, named).values(**gone))

    def _earlier(self, phone: str, until: datetime) -> None:
        """What passed over a number before it was another's."""
        came = and_(IncomingRow.phone == phone, IncomingRow.at < until)
        went = and_(OutboxRow.phone == phone, OutboxRow.created_at < until)
        self._session.execute(update(IncomingRow).where(came).values(**EMPTIED["incoming"][1]))
        self._session.execute(update(OutboxRow).where(went).values(**EMPTIED["outbox"][1]))

    def _names(self, said: "_Said") -> None:
        for name, empty in NAMING.items():
            table = _table(name)
            named = [_holds(table, column, said) for column in empty]
            self._session.execute(update(table).where(or_(*named)).values(**empty))
        memo.shelved_changed(self._session)  # an office's question may have named them

    def _lists(self) -> None:
        table = _table("office_list")
        idle = table.c.state != "working"
        gone: dict[str, object] = {"name": "-", "content": None, "rejects": None, "choices": {}}
        self._session.execute(update(table).where(idle).values(**gone))


@dataclass(frozen=True)
class _Said:
    """The number as it may be written, and the name."""

    phones: tuple[str, ...]
    names: tuple[str, ...]


def _said(who: ForgottenPerson) -> _Said:
    digits = who.phone[-9:] if who.phone.startswith("+") and len(who.phone) > 9 else who.phone
    name = (who.name or "")[:LONGEST_NAME].strip()
    return _Said((who.phone, digits), (name,) if len(name) >= LEAST_NAME else ())


def _holds(table: Table, column: str, said: _Said) -> ColumnElement[bool]:
    """Whether a column names the number; or the name, where the row is about farmers at all:
    an officer may be called the same."""
    number = _any(table, column, said.phones)
    if not said.names:
        return number
    if table.name == "office_question":
        return number  # of a shop or an office, and in use
    named = _any(table, column, said.names)
    if table.name == "audit":
        named = and_(named, table.c.farmer_id.is_not(None))
    if table.name in ("incoming", "outbox", "talk", "ussd_talk"):
        named = and_(named, table.c.phone.in_(select(OfficerRow.phone)))
    if table.name == "outbox":
        waits = table.c.state.in_((TextState.WAITING, TextState.CLAIMED))
        named = and_(named, ~waits)
    return or_(number, named)


def _any(table: Table, column: str, parts: Iterable[str]) -> ColumnElement[bool]:
    kind = table.c[column].type
    as_text = cast(table.c[column], String) if isinstance(kind, JSON) else table.c[column]
    found: list[ColumnElement[bool]] = [false()]
    for part in parts:
        kept = json.dumps(part)[1:-1] if isinstance(kind, JSON) else part
        found.append(as_text.contains(kept, autoescape=True))
    return or_(*found)


def _table(name: str) -> Table:
    return Base.metadata.tables[name]


def untold() -> tuple[str, ...]:
    """Columns that can hold letters or bytes, of which nothing here says what becomes of
    them."""
    found = []
    for table in Base.metadata.sorted_tables:
        told = _told_of(table.name)
        for column in table.columns:
            name = f"{table.name}.{column.name}"
            if _of_letters(column.type) and column.name not in told and name not in OF_NOBODY:
                found.append(name)
    return tuple(found)


def _told_of(table: str) -> frozenset[str]:
    if table in GONE:
        return frozenset(_table(table).c.keys())
    told = [*NAMING.get(table, ()), *LISTS.get(table, ()), *BARE.get(table, ())]
    return frozenset([*told, *(EMPTIED[table][1] if table in EMPTIED else ())])


def _of_letters(kind: Any) -> bool:
    plain = getattr(kind, "impl", kind)
    return isinstance(plain, String | JSON | LargeBinary) and not hasattr(kind, "enums")
