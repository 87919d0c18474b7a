"""The date and the zone of a place."""

from datetime import UTC, date, datetime, time
from zoneinfo import ZoneInfo

from assistant.service.house import House
from assistant.store import Work


def zone_of(work: Work, house: House, village_id: int | None) -> str:
    """The time zone of a village, or of the programme."""
    village = work.people.village(village_id) if village_id is not None else None
    return village.zone if village else house.zone


def local_date(now: datetime, zone: str) -> date:
    """The date that it is in a zone."""
    return now.astimezone(ZoneInfo(zone)).date()


def day_start(now: datetime, zone: str) -> datetime:
    """When the day of a moment began in a zone, in UTC."""
    midnight = datetime.combine(local_date(now, zone), time(), ZoneInfo(zone))
    return midnight.astimezone(UTC)
