"""Whom rain would harm: the phones of nurseries on days 0 to 5 and of those about to sow."""

from collections.abc import Iterable, Iterator
from datetime import date, datetime, timedelta
from itertools import groupby
from typing import NamedTuple
from zoneinfo import ZoneInfo

from assistant.agronomy.constants import RAIN_WATCH_LAST_DAY
from assistant.dialogue.values import Reach
from assistant.people import Village
from assistant.service.house import House
from assistant.store import BedInDanger, Work

SOWS_SOON_D = 2  # seed is soaked two days before it is sown
_WATCHED = timedelta(days=int(RAIN_WATCH_LAST_DAY.value))


class InDanger(NamedTuple):
    """One phone, with what its nurseries are called: those to be covered now, and those whose
    sowing must wait."""

    farmer_id: int
    phone: str
    farmer: str | None
    language: str | None
    may_be_texted: bool
    young: tuple[str, ...]
    soon: tuple[str, ...]


def in_danger(work: Work, village: Village, now: datetime) -> tuple[InDanger, ...]:
    """The phones of a village that rain would harm, by number; also those that may not be
    texted. Who sows later is told to wait by the text of that day."""
    today = now.astimezone(ZoneInfo(village.zone)).date()
    beds = work.danger.beds(village.id, *sowing_days(today))
    by_phone = groupby(beds, key=lambda bed: bed.phone)
    found = (_phone(tuple(own), today) for _, own in by_phone)
    return tuple(each for each in found if each.young or each.soon)


def sowing_days(today: date) -> tuple[date, date]:
    """The first and last sowing day of beds in danger."""
    return today - _WATCHED, today + timedelta(days=SOWS_SOON_D)


def _phone(beds: tuple[BedInDanger, ...], today: date) -> InDanger:
    first = beds[0]
    return InDanger(
        farmer_id=first.farmer_id,
        phone=first.phone,
        farmer=first.farmer,
        language=first.language,
        may_be_texted=first.may_be_texted,
        young=tuple(bed.called for bed in beds if _in_bed(bed, today)),
        soon=tuple(bed.called for bed in beds if not _in_bed(bed, today)),
    )


def _in_bed(bed: BedInDanger, today: date) -> bool:
    """Whether the seed lies on the bed: on day 0 it may still be in the pail."""
    return bed.sown or bed.sow_date < today


def texted(found: Iterable[InDanger]) -> Iterator[InDanger]:
    """Those who may be texted."""
    return (each for each in found if each.may_be_texted)


def reach(work: Work, house: House, village: Village, now: datetime) -> Reach:
    """Whom a warning for a village would find."""
    found = tuple(texted(in_danger(work, village, now)))
    return Reach(
        village=village,
        phones=len(found),
        nurseries=sum(len(each.young) for each in found),
        about_to_sow=sum(len(each.soon) for each in found),
    )
