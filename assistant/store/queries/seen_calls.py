"""Which calls for help an officer may see: those of their villages, those they were told of
or given, and what is private only where they were told first or given it; a lead sees all."""

from collections.abc import Collection

from sqlalchemy import ColumnElement, and_, exists, func, or_, select

from assistant.people import Officer
from assistant.store import rows
from assistant.store.queries.handed import passed
from assistant.store.tables import CallRow, FarmerRow, NurseryRow
from assistant.store.tables_alarms import AlarmRow, AlarmToldRow
from assistant.store.values import Call
from assistant.store.values_alarms import PRIVATE


def call_of(row: CallRow, farmer: FarmerRow, nursery: NurseryRow | None) -> Call:
    """The value of a call."""
    return rows.value(
        Call,
        row,
        farmer=rows.farmer(farmer),
        nursery=rows.readable(nursery) if nursery else None,
    )


def in_sight(
    village_ids: Collection[int] | None, officer: Officer | None
) -> list[ColumnElement[bool]]:
    """What holds for the calls of some villages (None: of all) that this officer may see; no
    officer: the house itself asks, from which nothing is hidden.

    The statement joins farmers.
    """
    terms: list[ColumnElement[bool]] = []
    if village_ids is not None:
        here = or_(
            FarmerRow.village_id.in_(village_ids),
            exists().where(
                AlarmRow.call_id == CallRow.id, AlarmRow.village_id.in_(village_ids)
            ),
        )
        terms.append(here if officer is None else or_(here, _told(officer), passed(officer)))
    if officer is not None and not officer.is_lead:
        terms.append(or_(CallRow.about != PRIVATE, _told_first(officer), passed(officer)))
    return terms


def _told(officer: Officer) -> ColumnElement[bool]:
    return exists().where(
        AlarmToldRow.call_id == CallRow.id, AlarmToldRow.officer_id == officer.id
    )


def _told_first(officer: Officer) -> ColumnElement[bool]:
    first = (
        select(func.min(AlarmToldRow.id))
        .where(AlarmToldRow.call_id == CallRow.id)
        .correlate(CallRow)
        .scalar_subquery()
    )
    return exists().where(and_(AlarmToldRow.id == first, AlarmToldRow.officer_id == officer.id))
