"""What stops texts: a person, or a limit on what is spent in a day or a month.

Nothing stops a danger: warnings, all-clears, answers to a cry, to STOP and to an officer's
word leave whatever stands (`Lane.DANGER`). What is stopped waits, and leaves when it is let go
and still makes sense.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from assistant.dialogue.values import Kind
from assistant.service.audit import Subject, TrailAct, note
from assistant.service.house import House
from assistant.service.limits import Spent, spent_villages
from assistant.service.sight import Sight
from assistant.service.texts import Letter, post
from assistant.store import Brake, Lane, OutboxText, Stops, Work
from assistant.wording import messages_web_brakes as web_brakes
from assistant.wording.message import Say

ALL, KIND, VILLAGE, DAY, MONTH = "all", "kind", "village", "day", "month"
VILLAGE_DAY, VILLAGE_MONTH = "village_day", "village_month"  # the limits of one village
STRANGERS = "strangers"  # answers to unknown numbers, see `strangers_are_answered`
_OF_VILLAGE = (VILLAGE, VILLAGE_DAY, VILLAGE_MONTH)
# What can be stopped by itself. A warning is called back, never stopped.
KINDS = (Kind.PROMPT, Kind.SECOND, Kind.CONSENT, Kind.LETTER, Kind.NOTICE, Kind.REPLY)


def stops(work: Work, house: House, now: datetime) -> Stops:
    """What may not leave now; a limit that is reached stops at this moment, and says so."""
    _look_at_limits(work, house, now)
    standing = work.brakes.standing(now)
    kinds = (Kind(each.which) for each in standing if each.what == KIND)
    villages = (each.village_id for each in standing if each.what in _OF_VILLAGE)
    return Stops(
        everything=any(each.what in (ALL, DAY, MONTH) for each in standing),
        kinds=frozenset(kinds),
        villages=frozenset(each for each in villages if each is not None),
        held_at=work.running.line().held_at,
    )


def count_spent(work: Work, house: House, texts: Iterable[OutboxText], now: datetime) -> None:
    """Counts texts that the operator took; a village that has had its day or its month
    stops."""
    taken = tuple(texts)
    segments = sum(text.segments for text in taken)
    if segments:
        work.brakes.spend(_today(house, now), segments)
    ids = [text.message_id for text in taken]
    for spent in spent_villages(work, house, ids, now):
        _stop_village(work, house, spent, now)


def _stop_village(work: Work, house: House, spent: Spent, now: datetime) -> None:
    today, village_id, count = _today(house, now), spent.village_id, spent.count
    what, until, words = (
        (VILLAGE_MONTH, _end(house, MONTH, today), web_brakes.VILLAGE_MONTH_TEXT)
        if spent.month
        else (VILLAGE_DAY, _end(house, DAY, today), web_brakes.VILLAGE_LIMIT_TEXT)
    )
    period = f"{today:%Y-%m}" if spent.month else today.isoformat()
    which, village = f"{period} {village_id}", work.people.village(village_id)
    if village is None or work.brakes.was_reached(what, which):
        return
    work.brakes.put_on(Brake(0, what, which, village_id, f"{count}", None, now, until, None))
    note(
        work, None, TrailAct.BRAKE_ON, now, Subject(village_id=village_id), f"{which}: {count}"
    )
    says = words(village=village.name, count=count)
    for officer in work.people.officers():
        if officer.is_lead or village_id in officer.village_ids:
            _tell(work, house, officer.phone, officer.language, says, now)


def left_to_spend(work: Work, house: House, now: datetime) -> int | None:
    """Segments until a limit is reached; None where there is none."""
    today = _today(house, now)
    room = [
        most - work.brakes.spent(first, today) for _, _, first, most in _limits(house, today)
    ]
    return max(0, min(room)) if room else None


def strangers_are_answered(work: Work, house: House, now: datetime) -> bool:
    """Whether one more unknown number has an answer. Each new number looks like a farmer's
    first text, so all of them together have so many answers an hour. The first time on a day
    that these are gone the leads are told; one of them may let answers go until midnight."""
    most, which = house.strangers_hour_answers, _today(house, now).isoformat()
    if not most or work.brakes.strangers_answered(now - timedelta(hours=1)) < most:
        return True
    if work.brakes.was_let_go(STRANGERS, which):
        return True
    work.lock(STRANGERS)  # two such numbers at one moment tell the leads once
    if not work.brakes.was_reached(STRANGERS, which):
        _strangers_stop(work, house, which, now)
    return False


def _strangers_stop(work: Work, house: House, which: str, now: datetime) -> None:
    most, until = house.strangers_hour_answers, _end(house, DAY, _today(house, now))
    work.brakes.put_on(Brake(0, STRANGERS, which, None, f"{most}", None, now, until, None))
    note(work, None, TrailAct.BRAKE_ON, now, detail=f"{STRANGERS} {which}: {most}")
    for officer in work.people.officers():
        if officer.is_lead:
            says = web_brakes.STRANGERS_TEXT(count=most)
            _tell(work, house, officer.phone, officer.language, says, now)


def _today(house: House, now: datetime) -> date:
    return now.astimezone(ZoneInfo(house.zone)).date()


def _limits(house: House, today: date) -> list[tuple[str, str, date, int]]:
    """Each limit that is set: its name, its period, that period's first day, and segments."""
    found = []
    if house.day_segments:
        found.append((DAY, today.isoformat(), today, house.day_segments))
    if house.month_money and house.tariff:
        most = int(house.month_money / house.tariff.per_segment)
        found.append((MONTH, f"{today:%Y-%m}", today.replace(day=1), most))
    return found


def _look_at_limits(work: Work, house: House, now: datetime) -> None:
    today = _today(house, now)
    for what, which, first, most in _limits(house, today):
        spent = work.brakes.spent(first, today)
        if spent < most or work.brakes.was_reached(what, which):
            continue
        until = _end(house, what, today)
        work.brakes.put_on(Brake(0, what, which, None, "", None, now, until, None))
        note(work, None, TrailAct.BRAKE_ON, now, detail=f"{what} {which}: {spent}")
        says = web_brakes.LIMIT_TEXT(count=spent)
        for officer in work.people.officers():
            if officer.is_lead:
                _tell(work, house, officer.phone, officer.language, says, now)


def _end(house: House, what: str, today: date) -> datetime:
    """When the period of a limit is over."""
    last = today if what == DAY else (today.replace(day=28) + timedelta(days=4)).replace(day=1)
    end = last + timedelta(days=1) if what == DAY else last
    return datetime.combine(end, time(), ZoneInfo(house.zone))


def _tell(
    work: Work, house: House, phone: str, language: str, says: Say, now: datetime
) -> None:
    letter = Letter(
        phone=phone,
        language=language,
        says=(says,),
        kind=Kind.NOTICE,
        not_after=now + timedelta(days=1),
        lane=Lane.DANGER,
    )
    post(work, house, letter, now)


# --- the page --------------------------------------------------------------------------------


@dataclass(frozen=True)
class BrakesPage:
    """What stands, what was spent, and what leaves all the same."""

    standing: tuple[Brake, ...]
    villages: dict[int, str]
    today: int
    left: int | None
    dangers_waiting: int
    warnings: tuple[str, ...]  # villages under a warning


def brakes_page(house: House, sight: Sight, now: datetime) -> BrakesPage | None:
    """For a lead; None for anybody else."""
    if not sight.officer.is_lead:
        return None
    today = _today(house, now)
    with house.store.look() as work:
        villages = work.people.villages()
        return BrakesPage(
            standing=work.brakes.standing(now),
            villages={each.id: each.name for each in villages},
            today=work.brakes.spent(today, today),
            left=left_to_spend(work, house, now),
            dangers_waiting=work.brakes.dangers_waiting(now),
            warnings=tuple(
                each.name for each in villages if work.warnings.standing(each.id, now)
            ),
        )


def put_on(
    house: House,
    sight: Sight,
    what: str,
    which: str,
    village_id: int | None,
    why: str,
    now: datetime,
) -> bool:
    """Stops all, a kind, or a village; False for who is no lead, and for what is neither."""
    if not sight.officer.is_lead or what not in (ALL, KIND, VILLAGE):
        return False
    if what == KIND and which not in KINDS:
        return False
    if what == VILLAGE and village_id not in {each.id for each in sight.villages}:
        return False
    place = village_id if what == VILLAGE else None
    with house.store.work() as work:
        officer_id = sight.officer.id
        which = which if what == KIND else ""
        work.brakes.put_on(Brake(0, what, which, place, why, officer_id, now, None, None))
        detail = f"{what} {which} {why}"
        note(work, officer_id, TrailAct.BRAKE_ON, now, Subject(village_id=place), detail)
    return True


def let_go(house: House, sight: Sight, brake_id: int, now: datetime) -> bool:
    """Lets texts go again; False for who is no lead, and for what does not stand."""
    if not sight.officer.is_lead:
        return False
    with house.store.work() as work:
        if not work.brakes.let_go(brake_id, now):
            return False
        note(work, sight.officer.id, TrailAct.BRAKE_OFF, now, detail=str(brake_id))
    return True


def stopped_words(house: House, now: datetime) -> tuple[Say, ...]:
    """The line on every page while anything is stopped."""
    with house.store.look() as work:
        standing = [each for each in work.brakes.standing(now) if each.what != STRANGERS]
    if any(each.what in (DAY, MONTH) for each in standing):
        return (web_brakes.LIMIT_LINE(),)
    return (web_brakes.BRAKE_LINE(),) if standing else ()
