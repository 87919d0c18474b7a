"""People's own data: agreements, wishes to be forgotten, what is kept of a phone, what is kept
too long; and the seals of the trail."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from sqlalchemy import CursorResult, String, Table, cast, delete, or_, select, update
from sqlalchemy.orm import Session

from assistant.store import rows
from assistant.store.queries.forgetting import Forgetting, ForgottenPerson
from assistant.store.tables import (
    Base,
    FarmerRow,
    IncomingRow,
    NurseryRow,
    OutboxRow,
    TalkRow,
    UnreadRow,
    UssdTalkRow,
)
from assistant.store.tables_desk import DeedRow
from assistant.store.tables_officers import AuditRow, OfficerTextRow
from assistant.store.tables_people import OfficeListRow
from assistant.store.tables_privacy import AgreementRow, ErasureRow, SealRow

AT_ONCE = 1000  # rows of one transaction; texts wait for no longer than that


@dataclass(frozen=True)
class Erasure:
    """Who wants to be forgotten; `due_at` once it was confirmed."""

    phone: str
    asked_at: datetime
    due_at: datetime | None
    officer_id: int | None


@dataclass(frozen=True)
class Seal:
    """A sealed part of the trail: up to a line, how many lines, and their digest."""

    last_id: int
    at: datetime
    count: int
    digest: str


@dataclass(frozen=True)
class TrailLine:
    """A line of the trail as it is sealed; `detail_digest` outlives the detail."""

    id: int
    at: datetime
    officer_id: int | None
    act: str
    farmer_id: int | None
    nursery_id: int | None
    village_id: int | None
    detail: str
    detail_digest: str | None


class Privacy:
    def __init__(self, session: Session) -> None:
        self._session = session

    # --- agreements --------------------------------------------------------------------------

    def agreed(
        self, farmer_id: int, at: datetime, channel: str, language: str, words: str
    ) -> None:
        """Keeps to what a farmer agreed."""
        self._session.add(
            AgreementRow(
                farmer_id=farmer_id, at=at, channel=channel, language=language, words=words
            )
        )
        self._session.flush()

    # --- wishes to be forgotten --------------------------------------------------------------

    def erasure(self, phone: str) -> Erasure | None:
        """The wish of a phone."""
        row = self._session.get(ErasureRow, phone)
        return rows.value(Erasure, row) if row else None

    def keep_erasure(self, wish: Erasure) -> None:
        """In place of an earlier one."""
        self._session.merge(ErasureRow(**vars(wish)))
        self._session.flush()

    def end_erasure(self, phone: str) -> None:
        """It was carried out, or taken back."""
        self._session.execute(delete(ErasureRow).where(ErasureRow.phone == phone))
        self._session.expire_all()

    def due(self, now: datetime) -> tuple[Erasure, ...]:
        """Those that are to be carried out."""
        found = self._session.scalars(select(ErasureRow).where(ErasureRow.due_at <= now))
        return tuple(rows.value(Erasure, row) for row in found)

    # --- what is kept of somebody ------------------------------------------------------------

    def kept_of(self, farmer_id: int, phone: str) -> dict[str, list[dict[str, Any]]]:
        """Every row that belongs to a farmer or names their number, by table."""
        theirs = select(NurseryRow.id).where(NurseryRow.farmer_id == farmer_id)
        beds, found = list(self._session.scalars(theirs)), {}
        for table in Base.metadata.sorted_tables:
            which = _of_person(table, farmer_id, phone, beds)
            if which is not None:
                lines = self._session.execute(select(table).where(which)).mappings()
                found[table.name] = [dict(line) for line in lines]
        return {name: lines for name, lines in found.items() if lines}

    def forget(self, who: ForgottenPerson, now: datetime) -> None:
        """Takes away name, number, words and nurseries of a farmer, everywhere. The row
        stays, bare, since counts and the trail name it by its id."""
        Forgetting(self._session).person(who, now)
        bare = update(FarmerRow).where(FarmerRow.id == who.farmer_id)
        nobody = f"{rows.NO_PHONE}{who.farmer_id}"
        self._session.execute(bare.values(phone=nobody, consent_at=None, paused_at=None))
        self._session.expire_all()

    def forget_phone(self, phone: str) -> None:
        """Takes a number, and what was written to and from it, away."""
        Forgetting(self._session).phone(phone)
        self._session.expire_all()

    # --- what is kept too long ---------------------------------------------------------------

    def thin_out(self, kind: str, before: datetime) -> int:
        """Takes away what is older, a part at a time; how many rows that were."""
        return _THIN[kind](self._session, before)

    # --- the trail ---------------------------------------------------------------------------

    def last_seal(self) -> Seal | None:
        """The newest seal."""
        row = self._session.scalar(select(SealRow).order_by(SealRow.last_id.desc()).limit(1))
        return rows.value(Seal, row) if row else None

    def seals(self) -> tuple[Seal, ...]:
        """All, the first first."""
        found = self._session.scalars(select(SealRow).order_by(SealRow.last_id))
        return tuple(rows.value(Seal, row) for row in found)

    def seal(self, seal: Seal, digests: Sequence[tuple[int, str]]) -> None:
        """Keeps a seal, and the digest of each line's detail."""
        for line_id, digest in digests:
            line = update(AuditRow).where(AuditRow.id == line_id)
            self._session.execute(line.values(detail_digest=digest))
        self._session.add(SealRow(**vars(seal)))
        self._session.flush()

    def trail_lines(self, after: int, until: int | None, limit: int) -> tuple[TrailLine, ...]:
        """Lines of the trail in their order."""
        wanted = select(AuditRow).where(AuditRow.id > after)
        if until is not None:
            wanted = wanted.where(AuditRow.id <= until)
        found = self._session.scalars(wanted.order_by(AuditRow.id).limit(limit))
        return tuple(rows.value(TrailLine, row) for row in found)


def _of_person(table: Table, farmer_id: int, phone: str, beds: Sequence[int]) -> Any:
    terms = []
    if table.name == "farmer":
        terms.append(table.c.id == farmer_id)
    if "farmer_id" in table.c:
        terms.append(table.c.farmer_id == farmer_id)
    if "phone" in table.c and table.name not in ("farmer", "officer"):
        terms.append(table.c.phone == phone)
    if "nursery_id" in table.c and beds:
        terms.append(table.c.nursery_id.in_(beds))
    return or_(*terms) if terms else None


def _some(session: Session, row: Any, key: Any, which: Any, **blank: object) -> int:
    ids = list(session.scalars(select(key).where(which).limit(AT_ONCE)))
    theirs = key.in_(ids)
    change = update(row).where(theirs).values(**blank) if blank else delete(row).where(theirs)
    result = session.execute(change)
    return result.rowcount if isinstance(result, CursorResult) else 0


def _strangers(session: Session, before: datetime) -> int:
    known = select(FarmerRow.phone)
    which = (TalkRow.changed_at < before) & TalkRow.phone.not_in(known)
    return _some(session, TalkRow, TalkRow.phone, which)


_UNDOABLE = cast(DeedRow.before, String) != "{}"

_THIN: Mapping[str, Callable[[Session, datetime], int]] = {
    "screens": lambda s, at: _some(
        s, UssdTalkRow, UssdTalkRow.session_id, UssdTalkRow.changed_at < at
    ),
    "talks of strangers": _strangers,
    "words not understood": lambda s, at: _some(s, UnreadRow, UnreadRow.id, UnreadRow.at < at),
    "words that came": lambda s, at: _some(
        s,
        IncomingRow,
        IncomingRow.gateway_id,
        (IncomingRow.at < at) & ((IncomingRow.text != "") | (IncomingRow.phone != "")),
        text="",
        phone="",
        answer_text=None,
    ),
    "words that were sent": lambda s, at: _some(
        s,
        OutboxRow,
        OutboxRow.id,
        (OutboxRow.due_at < at) & ((OutboxRow.text != "") | (OutboxRow.phone != "")),
        text="",
        phone="",
    ),
    "lists that were sent in": lambda s, at: _some(
        s, OfficeListRow, OfficeListRow.id, OfficeListRow.changed_at < at
    ),
    "what undoes a deed": lambda s, at: _some(
        s, DeedRow, DeedRow.id, (DeedRow.at < at) & _UNDOABLE, before={}
    ),
    "words of officers": lambda s, at: _some(
        s,
        OfficerTextRow,
        OfficerTextRow.id,
        (OfficerTextRow.at < at) & (OfficerTextRow.words != ""),
        words="",
    ),
}
