"""Gathers what a turn of the dialogue may know of a phone."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import date, datetime, timedelta

from assistant.agronomy.dangers.rows import DANGERS, RAIN
from assistant.agronomy.growth.warmth import Warmth, told_since
from assistant.agronomy.life.rows import TASKS, asked_tasks
from assistant.agronomy.nursery import Nursery
from assistant.agronomy.practices import MAT, Practice
from assistant.agronomy.season.followups import morning_after
from assistant.agronomy.tasks import TaskCode
from assistant.channel import Channel
from assistant.dialogue.officer import after_code, code_in, verb_of
from assistant.dialogue.officer_add import read_add
from assistant.dialogue.values import (
    Focus,
    Item,
    Known,
    OfficeDesk,
    OfficerScope,
    OnRoll,
    Reach,
    Tally,
)
from assistant.people import Officer, Village
from assistant.reminders.values import State
from assistant.service.alarms.raising import asked
from assistant.service.codes import check_text_code
from assistant.service.consent import invited
from assistant.service.days import local_date as local_date
from assistant.service.days import zone_of as zone_of
from assistant.service.house import House
from assistant.service.storms.danger import reach
from assistant.service.storms.warnings import latest_of_each
from assistant.service.tell import addressee
from assistant.service.who import to_visit
from assistant.store import AtHand, Work, going_on

TALK_LASTS = timedelta(hours=20)  # a question that nobody answered by the next morning
WET_BED = "wet_bed"  # what a cost is compared with, where its file is there
ONE_DAY = timedelta(days=1)
TARDY = timedelta(days=5)  # how long an unanswered task can still be answered
SHOWN_FOR = timedelta(days=7)  # how long a call or a silence stays on the officer's list


def know(
    work: Work,
    house: House,
    phone: str,
    text: str,
    channel: Channel,
    focuses: tuple[Focus, ...],
    now: datetime,
) -> Known:
    """All that the dialogue may know for one text of one phone."""
    here = at_hand(work, phone, now)
    farmer = work.people.on_roll(phone)
    officer = work.people.officer(phone)
    session = going_on(here.talk, now - TALK_LASTS) if here.talk else None
    village_id = farmer.village_id if farmer else None
    village = work.people.village(village_id) if village_id is not None else None
    zone = village.zone if village else house.zone
    nurseries = work.nurseries.of_farmer(farmer.id) if farmer else ()
    spoken = session.answers.get("language") if session else None
    agreed = farmer is not None and farmer.consent_at is not None
    kept = farmer.language if farmer else None
    # Before somebody has agreed, the language they ask for goes before one that others gave.
    language = (kept or spoken) if agreed else (spoken or kept)
    language = language or (officer.language if officer else None)
    today = local_date(now, zone)
    return Known(
        now=now,
        today=today,
        zone=zone,
        phone=phone,
        channel=channel,
        catalogue=house.catalogue(str(language) if language else None),
        lexicons=house.lexicons,
        ears=house.ears,
        languages=house.languages,
        villages=work.people.villages(),
        region=house.region,
        farmer=farmer,
        nurseries=nurseries,
        session=session,
        items=_items(work, nurseries, today),
        focuses=focuses,
        warning=here.warning if here.warned else None,
        raining=RAIN in here.dangers,
        stormy=any(DANGERS[each].storm for each in here.dangers - {RAIN}),
        held=any(DANGERS[each].waits for each in here.dangers - {RAIN}),
        seasons=work.seasons.of_farmer(farmer.id) if farmer and here.has_seasons else (),
        practices=_practices(house, village),
        every_practice=tuple(house.store.practices.values()),
        warmth=_warmth(here, today),
        prices=house.prices,
        varieties=house.varieties,
        wet_bed=house.store.practices.get(WET_BED),
        desk=_desk(work, house, officer, text, now) if officer else None,
        invited=invited(work, house, farmer),
        nearby=house.phonebook.of(village, " ".join(here.told_first or ())),
        unread=here.unread,
        office=_office(work, house, village_id),
        units=(village.units or ()) if village else (),
        asked_if_hurt=here.was_asked_if_hurt and asked(work, phone, now) is not None,
    )


def _office(work: Work, house: House, village_id: int | None) -> OfficeDesk:
    """What the programme's office answers in a village."""
    here = (None, village_id)
    questions = (each for each in work.questions.in_use() if each.village_id in here)
    return OfficeDesk(house.programme, tuple(questions))


def at_hand(work: Work, phone: str, now: datetime) -> AtHand:
    """What every text of a phone needs; asked for again in a transaction it costs nothing."""
    return work.at_hand.of(phone, now, now - ONE_DAY)


def _practices(house: House, village: Village | None) -> tuple[Practice, ...]:
    """The practices that a village offers, of those that are known here; else the mat."""
    known = house.store.practices
    codes = village.practices if village else ()
    return tuple(known[code] for code in codes if code in known) or (MAT,)


def _warmth(here: AtHand, today: date) -> Warmth | None:
    """The mean temperature that an officer entered of late."""
    warmth = here.warmth
    return warmth if warmth is not None and warmth.day >= told_since(today) else None


def _items(work: Work, nurseries: tuple[Nursery, ...], today: date) -> tuple[Item, ...]:
    """What was asked and is not answered yet, lately enough for a tardy answer; and what an
    early riser does before today's text.

    Not where something is open since yesterday: "done" after midnight is about that.
    """
    ids = [nursery.id for nursery in nurseries]
    if not ids:
        return ()
    both = work.reminders.to_answer(ids, asked_tasks(), today - TARDY, today)
    found = [each for each in both if each.state is not State.PLANNED]
    if all(each.day < today - ONE_DAY for each in found):
        found = list(both)
    by_day = sorted(found, key=lambda each: (each.day, ids.index(each.nursery_id)))
    latest = {(each.nursery_id, each.task): each for each in by_day}
    asked = tuple(
        Item(each.nursery_id, each.task, each.day)
        for each in latest.values()
        if (each.nursery_id, TASKS[each.task].replaced_by) not in latest
    )
    return (*_of_doubt(nurseries, asked, today), *asked)


def _of_doubt(
    nurseries: tuple[Nursery, ...], asked: tuple[Item, ...], today: date
) -> Iterator[Item]:
    """What stands of a bed that may be gone can be told for as long as nobody has."""
    known = {each.nursery_id for each in asked if each.task is TaskCode.AFTER_FLOOD}
    for bed in nurseries:
        if bed.in_doubt and bed.flooded_on and bed.id not in known:
            day = morning_after(bed.sow_date, bed.flooded_on).date
            if day <= today:
                yield Item(bed.id, TaskCode.AFTER_FLOOD, day)


# --- the officer's desk ----------------------------------------------------------------------


def villages_of(work: Work, officer: Officer) -> tuple[Village, ...]:
    """The villages that an officer serves; a lead serves all."""
    return tuple(
        village
        for village in work.people.villages()
        if officer.is_lead or village.id in officer.village_ids
    )


def _desk(work: Work, house: House, officer: Officer, text: str, now: datetime) -> OfficerScope:
    """What an officer's text may be about; gathered only where a right code came with it."""
    check = check_text_code(work, house, officer, code_in(text), now)
    villages = villages_of(work, officer)
    bare = tuple(Reach(each, 0, 0, 0) for each in villages)
    desk = OfficerScope(
        officer,
        check.right,
        bare,
        locked_until=check.locked_until,
        one_time=check.one_time,
        next_code=check.next_code,
    )
    if not check.right:
        return desk
    danger = DANGERS.of_word(verb_of(text) or "")
    if danger is not None:
        reaches = (reach(work, house, each, now, danger.code) for each in villages)
        return replace(desk, reaches=tuple(reaches))
    if verb_of(text) in ("COUNT", "CLEAR"):
        return replace(desk, tallies=_tallies(work, house, villages, now))
    if verb_of(text) == "ADD":
        return replace(desk, on_roll=_on_roll(work, house, officer, text))
    if verb_of(text) in ("TELL", "SEEN"):
        return replace(desk, addressee=addressee(work, house, officer, text, now))
    if verb_of(text) == "WHO":
        return replace(desk, visits=to_visit(work, house, officer, now))
    return desk


def _on_roll(work: Work, house: House, officer: Officer, text: str) -> OnRoll | None:
    """What is known already of the number that an officer would enrol."""
    phone = read_add(after_code(text), house.region).phone
    farmer = work.people.on_roll(phone) if phone else None
    if farmer is None:
        return None
    enrolment = work.enrolments.get(farmer.id)
    village = work.people.village(farmer.village_id) if farmer.village_id else None
    theirs = officer.is_lead or farmer.village_id in officer.village_ids
    enrolled_by_them = enrolment is not None and enrolment.officer_id == officer.id
    said = enrolment.answer if enrolment and not farmer.consent_at else None
    standing = "agreed" if farmer.consent_at else said or "asked"
    asked_at = enrolment.asked_at if enrolment else None
    zone = village.zone if village else house.zone
    return OnRoll(
        name=farmer.name or "",
        village=village.name if village else "-",
        seen=theirs or enrolled_by_them,
        standing=standing,
        since=local_date(asked_at, zone) if asked_at else None,
    )


def _tallies(
    work: Work, house: House, villages: tuple[Village, ...], now: datetime
) -> tuple[Tally, ...]:
    found = []
    for village in villages:
        for standing in latest_of_each(work, village.id, now):
            counts = work.warnings.tally(standing.id)
            # An answer shows that the text arrived, whatever became of its receipt.
            reached = max(counts.delivered, counts.covered + counts.need_help)
            counts = counts._replace(delivered=reached)
            found.append(Tally(standing, village, *counts))
    return tuple(found)
