"""An officer away from the page: whom TELL and SEEN name, and what they change.

The words go as those of the page do: kept with the calls that they answer, in the quiet hours
at once only where a call of that farmer is urgent and the house allows it.
"""

from datetime import datetime, timedelta

from assistant.dialogue.officer import after_code
from assistant.dialogue.officer_tell import LEAST_DIGITS, numbers_in
from assistant.dialogue.values_tell import Addressee, SeeTo, SeveralCalled, TellFarmer
from assistant.people import Farmer, Officer, read_phone
from assistant.service.alarm_kinds import CLIMBS
from assistant.service.alarms.ladder import seen_to
from assistant.service.audit import Subject, TrailAct, note
from assistant.service.calls import UNHEARD_FOR, by_urgency
from assistant.service.house import House
from assistant.service.letters import Manner, Pen, why_not
from assistant.service.sight import Sight, sight_of
from assistant.service.texts import hush
from assistant.service.told import URGENT
from assistant.store import PRIVATE, Call, Work

CLOSED_FOR = timedelta(days=7)


def addressee(
    work: Work, house: House, officer: Officer, text: str, now: datetime
) -> Addressee | SeveralCalled | None:
    """The farmer whom an officer's text names, by whole number or by the end of one who
    called; None where none is in sight."""
    sight = sight_of(work, officer)
    called = _called(work, sight, now)
    for number, words in numbers_in(after_code(text)):
        whole = _by_number(work, house, sight, called, number)
        found = whole or _by_end(called, number) or _by_end(_closed(work, sight, now), number)
        if isinstance(found, Farmer):
            return _addressee(house, sight, found, _calls_of(called, found), words, now)
        if found:
            return found
    return None


def _by_number(
    work: Work, house: House, sight: Sight, called: tuple[Call, ...], number: str
) -> Farmer | None:
    phone = read_phone(number, house.region[:2] if house.region else None)
    farmer = work.people.farmer(phone) if phone else None
    if farmer is None or not (sight.sees(farmer.village_id) or _calls_of(called, farmer)):
        return None
    return farmer


def _by_end(called: tuple[Call, ...], number: str) -> Farmer | SeveralCalled | None:
    """Whoever called from a number that ends so; a leading 0 may be the one before an area."""
    digits = "".join(ch for ch in number if ch.isdecimal())
    for end in (digits, digits.lstrip("0")):
        ending = {each.farmer.id: each.farmer for each in called if _ends(each.farmer, end)}
        if len(ending) > 1:
            return SeveralCalled(digits)
        if ending:
            return next(iter(ending.values()))
    return None


def _ends(farmer: Farmer, digits: str) -> bool:
    return len(digits) >= LEAST_DIGITS and farmer.phone.endswith(digits)


def _called(work: Work, sight: Sight, now: datetime) -> tuple[Call, ...]:
    """Open calls, and those whose answer was lost or waits."""
    scope, officer = sight.scope(), sight.officer
    unheard = work.calls.unheard(now - UNHEARD_FOR, scope, officer)
    return (*work.calls.open(scope, officer), *(each.call for each in unheard))


def _closed(work: Work, sight: Sight, now: datetime) -> tuple[Call, ...]:
    """Calls seen to of late: who names one of them hears that it is closed."""
    found = work.calls.closed(now - CLOSED_FOR, sight.scope(), sight.officer)
    return tuple(call for call, _ in found)


def _calls_of(called: tuple[Call, ...], farmer: Farmer) -> tuple[Call, ...]:
    return tuple(call for call in called if call.farmer.id == farmer.id)


def _addressee(
    house: House,
    sight: Sight,
    farmer: Farmer,
    calls: tuple[Call, ...],
    words: str,
    now: datetime,
) -> Addressee:
    quiet = hush(house, sight.zone(farmer.village_id, house.zone), now)
    breaks = _is_hurt(calls) or (quiet and quiet.may_break and _is_urgent(calls))
    waits = quiet is not None and not breaks
    return Addressee(
        farmer_id=farmer.id,
        name=farmer.name or "",
        phone=farmer.phone,
        words=words,
        may=why_not(farmer) is None,
        calls=len(calls),
        leaves_at=quiet.until if quiet and waits else None,
    )


def _is_urgent(calls: tuple[Call, ...]) -> bool:
    return any(call.about in URGENT for call in calls)


def _is_hurt(calls: tuple[Call, ...]) -> bool:
    """Whether somebody is: then no setting holds an answer back."""
    return any(call.about in CLIMBS for call in calls)


# --- changes ---------------------------------------------------------------------------------


def tell_farmer(
    work: Work, house: House, phone: str, change: TellFarmer, now: datetime
) -> None:
    """Sends the officer's words, as the answer to the farmer's most urgent call where one is
    open; the others are seen to by it."""
    sight, farmer = _looks(work, phone, change.farmer_id, now)
    if sight is None or farmer is None:
        return
    calls = _calls_of(_called(work, sight, now), farmer)
    first = by_urgency(calls)[0] if calls else None
    nursery_id = first.nursery.id if first and first.nursery else None
    private = any(call.about == PRIVATE for call in calls)
    about = Subject(farmer.id, nursery_id, None if private else farmer.village_id)
    act = TrailAct.CALL_ANSWERED if first else TrailAct.WROTE
    how = Manner(_is_urgent(calls), _is_hurt(calls), private)
    pen, call_id = Pen(work, house, sight, now), first.id if first else None
    pen.write(act, farmer, change.words, about, how, call_id)
    for call in calls:
        seen_to(work, call.id, now, sight.officer.id)
        if call is not first:
            _noted(work, sight, call, now)


def see_to(work: Work, phone: str, change: SeeTo, now: datetime) -> None:
    """Marks the farmer's calls as seen to."""
    sight, farmer = _looks(work, phone, change.farmer_id, now)
    if sight is None or farmer is None:
        return
    for call in _calls_of(_called(work, sight, now), farmer):
        seen_to(work, call.id, now, sight.officer.id)
        work.calls.seen_after_all(call.id, now)
        _noted(work, sight, call, now)


def _looks(
    work: Work, phone: str, farmer_id: int, now: datetime
) -> tuple[Sight | None, Farmer | None]:
    """What the officer of a phone sees now, and the farmer in it: a village may have been
    handed over since it was asked. Also one of whose alarm they were told."""
    officer = work.people.officer(phone)
    sight = sight_of(work, officer) if officer else None
    farmer = work.people.farmer_by_id(farmer_id)
    if sight is None or farmer is None:
        return None, None
    if sight.sees(farmer.village_id) or _calls_of(_called(work, sight, now), farmer):
        return sight, farmer
    return None, None


def _noted(work: Work, sight: Sight, call: Call, now: datetime) -> None:
    about = Subject(call.farmer.id)
    if call.about != PRIVATE:  # all officers of a village read its story
        nursery_id = call.nursery.id if call.nursery else None
        about = Subject(call.farmer.id, nursery_id, call.farmer.village_id)
    note(work, sight.officer.id, TrailAct.CALL_HANDLED, now, about)
