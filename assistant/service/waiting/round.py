"""My round: the villages of today, whom to see there and why, and what they wrote last.

Notes come from a phone that may have had no line when they were written, and may be sent twice:
each bears a name of its own and is taken once.
"""

from collections import Counter
from collections.abc import Collection, Iterator
from dataclasses import dataclass
from datetime import date, datetime
from zoneinfo import ZoneInfo

from assistant.people import Farmer, Village
from assistant.service.calls import CallCard
from assistant.service.house import House
from assistant.service.morning import ToSee
from assistant.service.sight import Sight
from assistant.service.waiting.deeds import Noted, Outcome, close, visit
from assistant.service.waiting.page import Waiting, waiting_for
from assistant.wording.message import Say

LONGEST_KEY = 40
UNFOLDED = 20  # people
MOST = 300  # people of a round that nobody chose the villages of


@dataclass(frozen=True)
class Stop:
    """Somebody to see: the line's name, the bed and its day where it is of one, why, the words
    of a call, and the last words of the phone."""

    key: str
    farmer: Farmer
    label: str | None
    day: int | None
    why: tuple[Say, ...]
    words: str
    last: str
    urgent: bool


@dataclass(frozen=True)
class Leg:
    """One village of the round."""

    village: Village
    stops: tuple[Stop, ...]


@dataclass(frozen=True)
class Round:
    """The page: the legs that were chosen, all villages with how many wait there, and when it
    was looked up (local)."""

    today: date
    at: datetime
    legs: tuple[Leg, ...]
    choices: tuple[tuple[Village, int], ...]
    chosen: frozenset[int]

    @property
    def unfolded(self) -> bool:
        """Whether all of it stands open: one village, or few people."""
        return len(self.legs) == 1 or sum(len(leg.stops) for leg in self.legs) <= UNFOLDED


def my_round(house: House, sight: Sight, village_ids: Collection[int], now: datetime) -> Round:
    """The round through some villages; where none is chosen, through all that somebody waits
    in, unless those are more people than anybody sees in a day."""
    model = waiting_for(house, sight, now)
    lines: tuple[CallCard | ToSee, ...] = (*_calls(model), *_beds(model))
    counted = Counter(line.village.id for line in lines if line.village)
    found = {village.id: counted[village.id] for village in sight.villages}
    wanted = {each for each in village_ids if each in found}
    chosen = wanted or {each for each, count in found.items() if count}
    if not wanted and sum(found.values()) > MOST:
        chosen = set()
    last = _last_words(house, model, chosen)
    legs = tuple(
        Leg(village, tuple(_stops(model, village, last)))
        for village in sight.villages
        if village.id in chosen
    )
    choices = tuple((village, found[village.id]) for village in sight.villages)
    local = now.astimezone(ZoneInfo(house.zone))
    return Round(model.today, local, legs, choices, frozenset(chosen))


def _calls(model: Waiting) -> tuple[CallCard, ...]:
    """What may stand on a phone that lies about: nothing that is private."""
    found = (*model.calls.alarms, *model.calls.shown)
    return tuple(call for call in found if not call.private)


def _beds(model: Waiting) -> tuple[ToSee, ...]:
    return (*model.rain, *model.to_see)


def _last_words(house: House, model: Waiting, chosen: Collection[int]) -> dict[str, str]:
    lines: tuple[CallCard | ToSee, ...] = (*_calls(model), *_beds(model))
    phones = {line.farmer.phone for line in lines if line.farmer.village_id in chosen}
    with house.store.look() as work:
        return work.desk.last_heard(phones)


def _stops(model: Waiting, village: Village, last: dict[str, str]) -> Iterator[Stop]:
    for call in _calls(model):
        if call.village == village:
            yield Stop(
                key=f"call-{call.id}",
                farmer=call.farmer,
                label=call.label,
                day=call.day,
                why=tuple(each for each in (call.told.about, call.told.answer) if each),
                words=call.told.words,
                last="",  # the call says it
                urgent=call.urgent,
            )
    for bed in _beds(model):
        if bed.village == village:
            yield Stop(
                key=f"bed-{bed.nursery_id}",
                farmer=bed.farmer,
                label=bed.label,
                day=bed.day,
                why=tuple(reason.say for reason in bed.reasons),
                words="",
                last=last.get(bed.farmer.phone, ""),
                urgent=bed.reasons[0].why == 1,
            )


def take_note(
    house: House, sight: Sight, line: str, noted: Noted, note_key: str, now: datetime
) -> Outcome:
    """Keeps a note of the round: a visit, or what was done about a call."""
    once = note_key[:LONGEST_KEY]
    if line.startswith("call-"):
        return close(house, sight, line, noted.words, now, once=once)
    return visit(house, sight, [line], noted, now, once=once)
