"""What an officer is told of an alarm: who, from where, the writer's own words, what to do."""

from collections.abc import Callable

from assistant.alphabet import cost
from assistant.dialogue.callers import caller
from assistant.dialogue.readers import shortened
from assistant.people import Officer
from assistant.service.alarm_kinds import BED, UNSAFE
from assistant.service.house import House
from assistant.service.texts import worded
from assistant.service.told import ABOUT
from assistant.store import PRIVATE, Alarm, Work
from assistant.wording import messages_alarms as alarms
from assistant.wording import messages_officer as o
from assistant.wording.message import Message, Say, Slot

END_DIGITS = 4  # of the number, for SEEN
MOST_SEGMENTS = 4  # about two of them the words
STEP = 10  # letters by which words are cut until the notice fits
LEAST_WORDS = 60

Says = tuple[Say, ...]


def notice(work: Work, house: House, alarm: Alarm, officer: Officer, *, goes_on: bool) -> Says:
    """The text to one officer. The words stand whole where there is room; the rest is on the
    page. `goes_on`: somebody else is told next."""
    after = (*_care(alarm), *_what_to_do(house, alarm, goes_on))
    words = alarm.call.words
    if not words:
        return (_bare(work, alarm), *after)
    return _fitting(house, officer, words, lambda cut: (_said(work, alarm, cut), *after))


def _fitting(house: House, officer: Officer, words: str, make: Callable[[str], Says]) -> Says:
    most = len(words)
    says = make(words)
    while _too_long(house, officer, says) and most > LEAST_WORDS:
        most -= STEP
        says = make(shortened(words, most))
    return says


def _too_long(house: House, officer: Officer, says: Says) -> bool:
    return cost(worded(house, says, officer.language)).segments > MOST_SEGMENTS


def _slots(work: Work, alarm: Alarm) -> dict[str, Slot]:
    farmer = alarm.call.farmer
    village = work.people.village(alarm.village_id) if alarm.village_id else None
    return {
        "phone": caller(farmer.name, farmer.phone),
        "village": village.name if village else "-",
        "about": ABOUT[alarm.call.about](),
    }


def _label(alarm: Alarm) -> dict[str, Slot]:
    nursery = alarm.call.nursery
    return {"label": nursery.called if nursery else "-"}


def _said(work: Work, alarm: Alarm, words: str) -> Say:
    slots = {**_slots(work, alarm), "words": words}
    if alarm.call.about in BED:
        return alarms.BED(**slots, **_label(alarm))
    return _first(alarm)(**slots)


def _first(alarm: Alarm) -> Message:
    if alarm.call.about == PRIVATE:
        return alarms.PRIVATE
    return alarms.HURT if alarm.sure else alarms.HURT_UNSURE


def _bare(work: Work, alarm: Alarm) -> Say:
    """The same of a writer who chose it from a list, without words."""
    slots = _slots(work, alarm)
    if alarm.call.about in BED:
        return alarms.BED_BARE(**slots, **_label(alarm))
    return alarms.HURT_BARE(**slots)


def _care(alarm: Alarm) -> Says:
    return (o.GO_SAFELY(),) if alarm.call.about in UNSAFE else ()


def _what_to_do(house: House, alarm: Alarm, goes_on: bool) -> Says:
    if alarm.call.about in BED:
        return ()
    digits = alarm.call.farmer.phone[-END_DIGITS:]
    if not goes_on:
        return (alarms.SEND_SEEN(digits=digits),)
    minutes = round(house.alarm_next.total_seconds() / 60)
    return (alarms.SEEN_OR_NEXT(digits=digits, n=minutes),)
