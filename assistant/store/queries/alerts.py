"""Official alerts: kept as they came, found by what names them, and the places they name."""

from collections.abc import Collection, Iterable, Sequence
from dataclasses import asdict, fields
from datetime import datetime

from sqlalchemy import ColumnElement, Select, delete, func, select, update
from sqlalchemy.orm import Session

from assistant.alert_terms import MessageType, Reference, Scope, Status
from assistant.places import Geocode, Point, VillagePlace, as_code
from assistant.store import rows
from assistant.store.tables import VillageRow
from assistant.store.tables_alerts import (
    AlertReferenceRow,
    AlertRow,
    AlertVillageRow,
    VillageGeocodeRow,
)
from assistant.store.values_alerts import AlertWords, Became, KeptAlert

# What an alert may have come to without a warning, a draft, or a fault to look into.
NOTHING = frozenset(
    {
        Became.NOT_ACTUAL,
        Became.NOT_PUBLIC,
        Became.NO_WARNING,
        Became.EXPIRED,
        Became.ALL_CLEAR,
        Became.OTHER_HAZARD,
        Became.BELOW,
        Became.ELSEWHERE,
    }
)
_AT_ONCE = 500  # ids in one statement
_APART = ("id", "told", "village_ids")  # what is not simply a column of the same name
_KEPT = [field.name for field in fields(KeptAlert) if field.name not in _APART]


class Alerts:
    def __init__(self, session: Session) -> None:
        self._session = session

    def add(
        self, alert: KeptAlert, raw: bytes, digest: str, replaces: Iterable[Reference] = ()
    ) -> KeptAlert:
        """Keeps a new alert, and which earlier ones it takes the place of.

        Args:
            digest: tells `raw` from every other; no two alerts have the same.
        """
        row = AlertRow(
            raw=raw,
            digest=digest,
            told=[asdict(told) for told in alert.told],
            **{name: getattr(alert, name) for name in _KEPT},
        )
        self._session.add(row)
        self._session.flush()
        for reference in dict.fromkeys(replaces):
            self._session.add(AlertReferenceRow(alert_id=row.id, **asdict(reference)))
        for village_id in alert.village_ids:
            self._session.add(AlertVillageRow(alert_id=row.id, village_id=village_id))
        self._session.flush()
        return self._values([row])[0]

    def get(self, alert_id: int) -> KeptAlert | None:
        row = self._session.get(AlertRow, alert_id)
        return self._values([row])[0] if row else None

    def raw(self, alert_id: int) -> bytes | None:
        """The message as it came."""
        return self._session.scalar(select(AlertRow.raw).where(AlertRow.id == alert_id))

    def has_digest(self, digest: str) -> bool:
        """Whether the very same message is kept."""
        return self._session.scalar(_id().where(AlertRow.digest == digest)) is not None

    def of(self, key: Reference) -> KeptAlert | None:
        """The message of that name, where it was as the standard has it and not forged."""
        wanted = select(AlertRow).where(*_named(AlertRow, key)).order_by(AlertRow.id)
        wanted = wanted.where(func.coalesce(AlertRow.sealed_by, "-") != "")
        row = self._session.scalar(wanted.where(AlertRow.became != Became.FAULTY).limit(1))
        return self._values([row])[0] if row else None

    def replacing(self, key: Reference) -> int | None:
        """The id of a message that takes the place of the one of that name, if it came already:
        an actual, public update or cancel of the same sender."""
        wanted = (
            _id()
            .join(AlertReferenceRow, AlertReferenceRow.alert_id == AlertRow.id)
            .where(*_named(AlertReferenceRow, key))
            .where(AlertRow.kind.in_([MessageType.UPDATE, MessageType.CANCEL]))
            .where(AlertRow.status == Status.ACTUAL, AlertRow.scope == Scope.PUBLIC)
            .order_by(AlertRow.sent.desc(), AlertRow.id.desc())
        )
        return self._session.scalar(wanted.limit(1))

    def replace(self, alert_id: int, by: int) -> None:
        """Keeps that another message took the place of one; the first to do so counts."""
        self._session.execute(
            update(AlertRow)
            .where(AlertRow.id == alert_id, AlertRow.replaced_by.is_(None))
            .values(replaced_by=by)
        )

    def became(self, alert_id: int, what: Became) -> None:
        """Keeps what an alert led to."""
        self._session.execute(
            update(AlertRow).where(AlertRow.id == alert_id).values(became=what)
        )

    def replaced(self, alert_id: int) -> tuple[KeptAlert, ...]:
        """The messages whose place this one took."""
        wanted = select(AlertRow).where(AlertRow.replaced_by == alert_id).order_by(AlertRow.id)
        return self._values(self._session.scalars(wanted).all())

    def latest(
        self,
        count: int,
        *,
        before_id: int | None = None,
        became: Collection[Became] | None = None,
    ) -> tuple[KeptAlert, ...]:
        """What came last, the latest first."""
        key: ColumnElement[int] = AlertRow.id.expression
        ids = _id().limit(count)
        if became is not None:
            ids = ids.where(AlertRow.became.in_(became))
            # Not the bare id: going by it SQLite would read each message on the way, for what
            # it became, where the index of that holds all that is asked.
            key = key + 0
        if before_id is not None:
            ids = ids.where(key < before_id)
        return self._listed(ids.order_by(key.desc()))

    def _listed(self, ids: Select[int]) -> tuple[KeptAlert, ...]:
        """These alerts, the latest first. Their ids come from an index: rows are as long as the
        messages in them."""
        found = self._session.scalars(ids).all()
        wanted = select(AlertRow).where(AlertRow.id.in_(found)).order_by(AlertRow.id.desc())
        return self._values(self._session.scalars(wanted).all())

    def since(self, moment: datetime, became: Collection[Became]) -> tuple[KeptAlert, ...]:
        """What came since a moment, came to one of these, and was not replaced."""
        wanted = (
            select(AlertRow)
            .where(AlertRow.received_at >= moment, AlertRow.became.in_(became))
            .where(AlertRow.replaced_by.is_(None))
            .order_by(AlertRow.received_at, AlertRow.id)
        )
        return self._values(self._session.scalars(wanted).all())

    def widen(
        self,
        alert_id: int,
        village_ids: Collection[int],
        starts_at: datetime,
        ends_at: datetime,
    ) -> KeptAlert:
        """Adds villages to an alert, and keeps its hours."""
        row = self._session.get_one(AlertRow, alert_id, populate_existing=True)
        row.starts_at, row.ends_at = starts_at, ends_at
        for village_id in village_ids:
            self._session.add(AlertVillageRow(alert_id=alert_id, village_id=village_id))
        self._session.flush()
        return self._values([row])[0]

    def prune(self, before: datetime) -> int:
        """Forgets what came before a moment and led to nothing; how many those were.

        A country's service sends hundreds a day, most of them about other places.
        """
        replacing = select(AlertRow.replaced_by).where(AlertRow.replaced_by.is_not(None))
        old = self._session.scalars(
            _id()
            .where(AlertRow.received_at < before, AlertRow.became.in_(NOTHING))
            .where(AlertRow.replaced_by.is_(None), AlertRow.id.not_in(replacing))
        ).all()
        for start in range(0, len(old), _AT_ONCE):
            some = old[start : start + _AT_ONCE]
            for row in (AlertReferenceRow, AlertVillageRow):
                self._session.execute(delete(row).where(row.alert_id.in_(some)))
            self._session.execute(delete(AlertRow).where(AlertRow.id.in_(some)))
        return len(old)

    def _values(self, found: Sequence[AlertRow]) -> tuple[KeptAlert, ...]:
        ids = [row.id for row in found]
        link = AlertVillageRow
        inside: dict[int, list[int]] = {}
        pairs = select(link.alert_id, link.village_id).where(link.alert_id.in_(ids))
        for alert_id, village_id in self._session.execute(pairs.order_by(link.village_id)):
            inside.setdefault(alert_id, []).append(village_id)
        return tuple(
            rows.value(
                KeptAlert,
                row,
                told=tuple(AlertWords(**told) for told in row.told),
                village_ids=tuple(inside.get(row.id, ())),
            )
            for row in found
        )

    # --- where villages are ------------------------------------------------------------------

    def places(self) -> dict[int, VillagePlace]:
        """All villages as alerts see them, by their ids."""
        codes = self.geocodes()
        village = VillageRow
        marks = self._session.execute(
            select(village.id, village.latitude, village.longitude).order_by(village.id)
        )
        return {
            key: VillagePlace(
                Point(latitude, longitude)
                if latitude is not None and longitude is not None
                else None,
                frozenset(codes.get(key, ())),
            )
            for key, latitude, longitude in marks
        }

    def geocodes(self) -> dict[int, tuple[Geocode, ...]]:
        """The codes of villages, by the villages' ids."""
        row = VillageGeocodeRow
        found: dict[int, list[Geocode]] = {}
        for each in self._session.scalars(select(row).order_by(row.name, row.value)):
            found.setdefault(each.village_id, []).append(Geocode(each.name, each.value))
        return {key: tuple(codes) for key, codes in found.items()}

    def set_point(self, village_id: int, point: Point | None) -> None:
        """Says where a village lies."""
        latitude, longitude = (point.latitude, point.longitude) if point else (None, None)
        self._session.execute(
            update(VillageRow)
            .where(VillageRow.id == village_id)
            .values(latitude=latitude, longitude=longitude)
        )

    def set_geocodes(self, village_id: int, codes: Iterable[Geocode]) -> None:
        """Gives a village these codes and no others."""
        row = VillageGeocodeRow
        self._session.execute(delete(row).where(row.village_id == village_id))
        for code in dict.fromkeys(map(as_code, codes)):
            self._session.add(row(village_id=village_id, name=code.name, value=code.value))
        self._session.flush()


def _id() -> Select[int]:
    return select(AlertRow.id)


def _named(
    table: type[AlertRow] | type[AlertReferenceRow], key: Reference
) -> tuple[ColumnElement[bool], ...]:
    return (
        table.sender == key.sender,
        table.identifier == key.identifier,
        table.sent == key.sent,
    )
