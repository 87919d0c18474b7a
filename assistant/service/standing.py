"""How a farmer stands: agreed, asked, silent, said no, stopped, without a number."""

from datetime import datetime, timedelta
from enum import StrEnum
from zoneinfo import ZoneInfo

from assistant.people import Farmer
from assistant.service.consent import SILENT_AFTER
from assistant.service.pausing import UNSURE
from assistant.store import Enrolment, Work
from assistant.wording import messages_web as web
from assistant.wording import messages_web_people as web_people
from assistant.wording.message import Say

DEAD_FOR = timedelta(days=7)  # how long the texts are looked at that a number refused


class RollFilter(StrEnum):
    """What the list of farmers can be held to."""

    AGREED = "agreed"
    ASKED = "asked"
    SILENT = "silent"
    NO = "no"
    STOPPED = "stopped"
    UNANSWERED = "unanswered"  # tasks of the last days
    DEAD = "dead"  # numbers that texts do not reach


def standing_says(farmer: Farmer, enrolment: Enrolment | None, zone: str) -> Say | None:
    """How a farmer stands, in words; None for one who has simply agreed and gets all texts."""
    here = ZoneInfo(zone)
    if not farmer.phone:
        return web_people.NO_NUMBER()
    if enrolment and enrolment.answer == "no" and farmer.consent_at is None:
        at = enrolment.answered_at or enrolment.asked_at
        return web_people.SAID_NO_ON(date=at.astimezone(here).date())
    if enrolment and enrolment.answer == UNSURE and farmer.consent_at is None:
        at = enrolment.answered_at or enrolment.asked_at
        return web_people.UNSURE_SINCE(date=at.astimezone(here).date())
    if farmer.stopped_at is not None:
        return web.STOPPED_SINCE(date=farmer.stopped_at.astimezone(here).date())
    if farmer.paused_at is not None:
        return web_people.PAUSED_SINCE(date=farmer.paused_at.astimezone(here).date())
    if farmer.consent_at is not None:
        return None
    if enrolment is None:
        return web.CONSENT_NONE()
    asked = web_people.ASKED_TWICE if enrolment.asked > 1 else web_people.ASKED_ON
    return asked(date=enrolment.asked_at.astimezone(here).date())


def roots(work: Work, farmer: Farmer, zone: str) -> tuple[Say, ...]:
    """How a farmer came onto the roll, and the numbers they had before."""
    here = ZoneInfo(zone)
    enrolment = work.enrolments.get(farmer.id)
    says: list[Say] = []
    if enrolment is not None:
        on = enrolment.at.astimezone(here).date()
        officer = (
            work.people.officer_by_id(enrolment.officer_id) if enrolment.officer_id else None
        )
        says.append(
            web_people.ENROLLED_BY(officer=officer.name, date=on)
            if officer
            else web_people.ENROLLED_AT_DESK(date=on)
        )
        standing = standing_says(farmer, enrolment, zone)
        if standing is not None and farmer.consent_at is None:
            says.append(standing)
    past = work.phones.past_of(farmer.id)
    says += [
        web_people.HAD_NUMBER(phone=each.phone, date=each.until.astimezone(here).date())
        for each in past
    ]
    return tuple(says)


def fields_known(work: Work, farmer_id: int) -> tuple[str, ...]:
    """Sizes of fields, as written, that an office knew before any nursery could be planned."""
    enrolment = work.enrolments.get(farmer_id)
    wishes = enrolment.wishes if enrolment else ()
    return tuple(str(wish["area_words"]) for wish in wishes if wish.get("area_words"))


def silent_before(now: datetime) -> datetime:
    """A second asking from before this time was never answered."""
    return now - SILENT_AFTER
