"""Mean temperatures of villages, as officers entered them."""

from datetime import date, datetime

from sqlalchemy import select
from sqlalchemy.orm import Session

from assistant.agronomy.growth.warmth import Warmth
from assistant.store import rows
from assistant.store.tables_warmth import WarmthRow


class Warmths:
    def __init__(self, session: Session) -> None:
        self._session = session

    def save(self, village_id: int, warmth: Warmth, officer_id: int, now: datetime) -> None:
        """Keeps a mean temperature; entered anew for a day it replaces the one before."""
        wanted = select(WarmthRow).where(
            WarmthRow.village_id == village_id, WarmthRow.day == warmth.day
        )
        row = self._session.scalar(wanted) or WarmthRow()
        row.village_id, row.day, row.mean_c = village_id, warmth.day, warmth.mean_c
        row.officer_id, row.at = officer_id, now
        self._session.add(row)
        self._session.flush()

    def latest(self, village_id: int, since: date) -> Warmth | None:
        """The latest mean temperature of a village, of a day or later."""
        wanted = (
            select(WarmthRow)
            .where(WarmthRow.village_id == village_id, WarmthRow.day >= since)
            .order_by(WarmthRow.day.desc())
            .limit(1)
        )
        row = self._session.scalar(wanted)
        return rows.value(Warmth, row) if row else None
