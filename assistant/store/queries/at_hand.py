"""What every text of a phone needs to know, in one statement."""

from collections.abc import Iterator
from dataclasses import fields
from datetime import datetime
from typing import Any

from sqlalchemy import (
    ColumnElement,
    Row,
    ScalarSelect,
    Select,
    String,
    and_,
    bindparam,
    exists,
    func,
    select,
)
from sqlalchemy.orm import Session

from assistant.agronomy.growth.warmth import Warmth
from assistant.dialogue.values import Standing
from assistant.people import Farmer
from assistant.store import memo
from assistant.store.columns import UtcMoment
from assistant.store.core import table_of
from assistant.store.tables import (
    CallRow,
    FarmerRow,
    OfficerRow,
    OfficerVillageRow,
    TalkRow,
    UnreadRow,
    WarningPhoneRow,
    WarningRow,
)
from assistant.store.tables_alarms import AlarmRow
from assistant.store.tables_people import EnrolmentRow
from assistant.store.tables_seasons import SeasonRow
from assistant.store.tables_warmth import WarmthRow
from assistant.store.values_people import AtHand, Talk


class AtHands:
    def __init__(self, session: Session) -> None:
        self._session = session

    def of(self, phone: str, now: datetime, unread_since: datetime) -> AtHand:
        """All of it for one phone. Lock the phone first.

        `unread_since`: from when on replies count that could not be read.
        """
        read, key = memo.people(self._session), (memo.AT_HAND, phone)
        if key not in read:
            read[key] = self._read(phone, now, unread_since)
        here: AtHand = read[key]
        return here

    def _read(self, phone: str, now: datetime, unread_since: datetime) -> AtHand:
        given = {
            "phone": phone,
            "now": now,
            "unread_since": unread_since,
            "counter": memo.VILLAGES,
        }
        row = self._session.execute(_AT_HAND, given).one()
        farmer = Farmer(*row[: len(_OF_FARMER)]) if row.id is not None else None
        self._note(phone, farmer, row)
        return AtHand(
            farmer=farmer,
            talk=Talk(row.session, row.talked_at) if row.talked_at is not None else None,
            warning=_standing(row),
            warned=bool(row.warned),
            dangers=frozenset((row.dangers or "").split(",")) - {""},
            warmth=None if row.mean_c is None else Warmth(row.warm_on, row.mean_c),
            told_first=None if row.near_id is None else (row.near_name, row.near_phone),
            unread=row.unread,
            was_asked_if_hurt=row.cried,
            has_seasons=row.has_seasons,
        )

    def _note(self, phone: str, farmer: Farmer | None, row: Row[Any]) -> None:
        """Who else asks for them in this transaction need not look again."""
        read = memo.people(self._session)
        read[memo.FARMER, phone] = farmer
        read[memo.ENROLLED, phone] = row.enrolled
        if row.officer_id is None:
            read[memo.OFFICER, phone] = None
        memo.note_number(self._session, row.villages)


def _standing(row: Row[Any]) -> Standing | None:
    if row.warning_id is None:
        return None
    hours = row.starts_at, row.ends_at
    return Standing(row.warning_id, row.village_id, *hours, row.answer, row.danger)


_F, _T, _W, _WP = map(table_of, (FarmerRow, TalkRow, WarningRow, WarningPhoneRow))
_WARM, _OV = map(table_of, (WarmthRow, OfficerVillageRow))
_OFFICER = table_of(OfficerRow)
_O, _NEAR, _ONE = _OFFICER.alias("o"), _OFFICER.alias("near"), _OFFICER.alias("one")
_ASKED = select(bindparam("phone", type_=String).label("phone")).subquery("asked")
_OF_FARMER = tuple(_F.c[field.name] for field in fields(Farmer))


def _first(*terms: ColumnElement[bool], serves: bool = False) -> ScalarSelect[int]:
    """The officer who joined first of those that meet these terms; not the writer."""
    found = select(func.min(_ONE.c.id)).where(
        _ONE.c.closed_at.is_(None), _ONE.c.phone != _ASKED.c.phone, *terms
    )
    if serves:
        found = found.where(_OV.c.officer_id == _ONE.c.id, _OV.c.village_id == _F.c.village_id)
    return found.correlate(_ASKED, _F).scalar_subquery()


def _statement() -> Select[Any]:
    now, since = (bindparam(name, type_=UtcMoment) for name in ("now", "unread_since"))
    later, warmer = _W.alias("later"), _WARM.alias("warmer")
    stands = (
        later.c.village_id == _F.c.village_id,
        later.c.cleared_at.is_(None),
        later.c.ends_at > now,
    )
    told, newer = _WP.alias("told"), _W.alias("newer")
    overtaken = exists().where(
        newer.c.village_id == later.c.village_id,
        newer.c.danger == later.c.danger,
        newer.c.cleared_at.is_(None),
        newer.c.ends_at > now,
        newer.c.id > later.c.id,
    )
    is_told = and_(told.c.warning_id == later.c.id, told.c.phone == _F.c.phone)
    warning = (  # of several dangers one that this phone was told of
        select(later.c.id)
        .select_from(later.outerjoin(told, is_told))
        .where(*stands, ~overtaken.correlate(later))
        .order_by(told.c.phone.is_(None), later.c.issued_at.desc(), later.c.id.desc())
        .limit(1)
        .correlate(_F)
        .scalar_subquery()
    )
    dangers = (
        select(func.aggregate_strings(later.c.danger, ","))
        .where(*stands)
        .correlate(_F)
        .scalar_subquery()
    )
    warmth = (
        select(warmer.c.id)
        .where(warmer.c.village_id == _F.c.village_id)
        .order_by(warmer.c.day.desc())
        .limit(1)
        .correlate(_F)
        .scalar_subquery()
    )
    nearest = func.coalesce(  # who serves the village, else a lead, else anybody
        _first(_ONE.c.is_lead.is_(False), serves=True),
        _first(serves=True),
        _first(_ONE.c.is_lead.is_(True)),
        _first(),
    )
    joined = (
        _ASKED.outerjoin(_F, _F.c.phone == _ASKED.c.phone)
        .outerjoin(_O, and_(_O.c.phone == _ASKED.c.phone, _O.c.closed_at.is_(None)))
        .outerjoin(_T, _T.c.phone == _ASKED.c.phone)
        .outerjoin(_W, _W.c.id == warning)
        .outerjoin(_WP, and_(_WP.c.warning_id == _W.c.id, _WP.c.phone == _ASKED.c.phone))
        .outerjoin(_WARM, _WARM.c.id == warmth)
        .outerjoin(_NEAR, _NEAR.c.id == nearest)
    )
    return select(
        *_OF_FARMER,
        _O.c.id.label("officer_id"),
        _T.c.session,
        _T.c.changed_at.label("talked_at"),
        _W.c.id.label("warning_id"),
        _W.c.starts_at,
        _W.c.ends_at,
        _W.c.danger,
        dangers.label("dangers"),
        _WP.c.phone.is_not(None).label("warned"),
        _WP.c.answer,
        _WARM.c.day.label("warm_on"),
        _WARM.c.mean_c,
        _NEAR.c.id.label("near_id"),
        _NEAR.c.name.label("near_name"),
        _NEAR.c.phone.label("near_phone"),
        *_marks(since),
    ).select_from(joined)


def _marks(since: ColumnElement[datetime]) -> Iterator[ColumnElement[Any]]:
    """What is rare: whether there is any of it to be read by a statement of its own."""
    unread, enrolment, season = map(table_of, (UnreadRow, EnrolmentRow, SeasonRow))
    alarm, call = map(table_of, (AlarmRow, CallRow))
    yield (
        select(func.count())
        .select_from(unread)
        .where(unread.c.phone == _ASKED.c.phone, unread.c.lately, unread.c.at > since)
        .correlate(_ASKED)
        .scalar_subquery()
        .label("unread")
    )
    of_farmer = {
        "enrolled": exists().where(enrolment.c.farmer_id == _F.c.id),
        "has_seasons": exists().where(season.c.farmer_id == _F.c.id),
        "cried": exists().where(
            call.c.farmer_id == _F.c.id,
            call.c.handled_at.is_(None),
            alarm.c.call_id == call.c.id,
            alarm.c.sure.is_(False),
            alarm.c.said.is_(None),
        ),
    }
    for name, found in of_farmer.items():
        yield found.correlate(_F).label(name)
    yield memo.NUMBER.scalar_subquery().label("villages")


_AT_HAND = _statement()
