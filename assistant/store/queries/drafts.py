"""Drafts of warnings: made, decided once, and the warnings they became."""

from collections.abc import Collection, Iterable
from dataclasses import fields
from datetime import datetime

from sqlalchemy import Select, select, update
from sqlalchemy.orm import Session

from assistant.store import rows
from assistant.store.tables import VillageRow, WarningRow
from assistant.store.tables_warnings import WarningDraftRow, WarningDraftVillageRow
from assistant.store.values_warnings import Decision, Draft, Given

_KEPT = [field.name for field in fields(Draft) if field.name not in ("id", "village_ids")]
_LINK = WarningDraftVillageRow


class Drafts:
    def __init__(self, session: Session) -> None:
        self._session = session

    def add(self, draft: Draft) -> Draft:
        """Keeps a new draft; its id comes back with it."""
        row = WarningDraftRow(**{name: getattr(draft, name) for name in _KEPT})
        self._session.add(row)
        self._session.flush()
        for village_id in draft.village_ids:
            self._session.add(_LINK(draft_id=row.id, village_id=village_id))
        self._session.flush()
        return self._value(row)

    def get(self, draft_id: int) -> Draft | None:
        row = self._session.get(WarningDraftRow, draft_id, populate_existing=True)
        return self._value(row) if row else None

    def open(self, now: datetime) -> tuple[Draft, ...]:
        """Those that nobody decided on and whose hours are not over, the next storm first."""
        wanted = select(WarningDraftRow).where(
            WarningDraftRow.decided_at.is_(None), WarningDraftRow.ends_at > now
        )
        return self._values(wanted.order_by(WarningDraftRow.starts_at, WarningDraftRow.id))

    def of_alert(self, alert_id: int) -> tuple[Draft, ...]:
        """All drafts made from an official alert, in the order they were made."""
        wanted = select(WarningDraftRow).where(WarningDraftRow.alert_id == alert_id)
        return self._values(wanted.order_by(WarningDraftRow.id))

    def decided(
        self, alert_ids: Collection[int], village_ids: Collection[int]
    ) -> dict[int, tuple[Decision | None, datetime | None]]:
        """What was decided on the last draft of each of these alerts that is of one of these
        villages, and when."""
        row = WarningDraftRow
        wanted = (
            select(row.alert_id, row.decision, row.decided_at)
            .join(_LINK, _LINK.draft_id == row.id)
            .where(row.alert_id.in_(alert_ids), _LINK.village_id.in_(village_ids))
            .order_by(row.id)
        )
        found = self._session.execute(wanted)
        return {alert: (decision, at) for alert, decision, at in found if alert is not None}

    def decide(self, draft_id: int, decision: Decision, by: int | None, now: datetime) -> bool:
        """Decides on a draft; False where that was done before, also a moment ago by another.

        Args:
            by: the officer, None for the assistant itself.
        """
        decided = self._session.scalars(
            update(WarningDraftRow)
            .where(WarningDraftRow.id == draft_id, WarningDraftRow.decided_at.is_(None))
            .values(decided_at=now, decided_by=by, decision=decision)
            .returning(WarningDraftRow.id)
            .execution_options(synchronize_session=False)
        )
        return decided.one_or_none() is not None

    def narrow(self, draft_id: int, village_ids: Collection[int]) -> None:
        """Takes villages out of a draft that is to be sent without them."""
        for link in self._links(draft_id):
            if link.village_id in village_ids:
                self._session.delete(link)
        self._session.flush()

    def gave(self, draft_id: int, village_id: int, warning_id: int) -> None:
        """Keeps which warning a village was given by a draft."""
        link = self._session.get(_LINK, (draft_id, village_id))
        if link is not None:
            link.warning_id = warning_id
            self._session.flush()

    def warnings(self, draft_id: int) -> dict[int, int]:
        """The warnings that a draft became, by village."""
        return {
            link.village_id: link.warning_id
            for link in self._links(draft_id)
            if link.warning_id is not None
        }

    def given(
        self,
        village_ids: Collection[int],
        *,
        draft_id: int | None = None,
        ends_after: datetime | None = None,
    ) -> tuple[Given, ...]:
        """Warnings that these villages were given, the latest draft first, then by name."""
        wanted = (
            select(WarningRow, _LINK.draft_id)
            .join(_LINK, _LINK.warning_id == WarningRow.id)
            .join(VillageRow, VillageRow.id == WarningRow.village_id)
            .where(WarningRow.village_id.in_(village_ids))
            .order_by(_LINK.draft_id.desc(), VillageRow.name)
        )
        if draft_id is not None:
            wanted = wanted.where(_LINK.draft_id == draft_id)
        if ends_after is not None:
            wanted = wanted.where(WarningRow.ends_at > ends_after)
        return tuple(
            rows.value(Given, row, draft_id=of) for row, of in self._session.execute(wanted)
        )

    def of_warning(self, warning_id: int) -> int | None:
        """The draft that a warning was given by."""
        wanted = select(_LINK.draft_id).where(_LINK.warning_id == warning_id)
        return self._session.scalar(wanted)

    def _links(self, draft_id: int) -> tuple[WarningDraftVillageRow, ...]:
        wanted = select(_LINK).where(_LINK.draft_id == draft_id).order_by(_LINK.village_id)
        return tuple(self._session.scalars(wanted))

    def _values(self, wanted: Select[WarningDraftRow]) -> tuple[Draft, ...]:
        found: Iterable[WarningDraftRow] = self._session.scalars(wanted).all()
        return tuple(map(self._value, found))

    def _value(self, row: WarningDraftRow) -> Draft:
        villages = tuple(link.village_id for link in self._links(row.id))
        return rows.value(Draft, row, village_ids=villages)
