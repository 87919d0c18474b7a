"""Who is on the roll: rows of farmers are also kept for a cry for help from a phone that nobody
enrolled, and those are counted and listed nowhere."""

from sqlalchemy import exists, or_

from assistant.store.tables import FarmerRow
from assistant.store.tables_people import EnrolmentRow

IS_ENROLLED = or_(
    FarmerRow.consent_at.is_not(None),
    FarmerRow.stopped_at.is_not(None),
    FarmerRow.village_id.is_not(None),
    exists().where(EnrolmentRow.farmer_id == FarmerRow.id).correlate(FarmerRow),
)
"""They agreed, were asked by somebody, stopped texts, or an office gave their village."""
