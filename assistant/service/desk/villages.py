"""Villages: who serves them, what happened there, and passing one on with its story."""

from dataclasses import dataclass, replace
from datetime import datetime
from enum import StrEnum
from zoneinfo import ZoneInfo

from assistant.dialogue.values import Kind
from assistant.people import Officer, Village
from assistant.places import Geocode
from assistant.service.audit import Subject, TrailAct, in_zone, note
from assistant.service.house import House
from assistant.service.sight import Sight
from assistant.service.texts import REPLY_LASTS, Letter, after_quiet, post
from assistant.store import TrailEntry, VillageHandover, Work
from assistant.wording import messages_officer as o

STORY_LINES = 50


@dataclass(frozen=True)
class VillageLine:
    """One village in the list."""

    village: Village
    officers: tuple[Officer, ...]
    farmers: int
    beds: int
    calls: int


@dataclass(frozen=True)
class VillageStory:
    """What the next officer should know of a village; times are local to it."""

    line: VillageLine
    handovers: tuple[VillageHandover, ...]
    done: tuple[TrailEntry, ...]
    others: tuple[Officer, ...]
    codes: tuple[Geocode, ...] = ()  # by which official alerts name it


class Stays(StrEnum):
    """Why a village was not handed over."""

    NO_TAKER = "no_taker"
    SAME = "same"
    NO_NOTE = "no_note"


def list_villages(house: House, sight: Sight) -> tuple[VillageLine, ...]:
    """The villages of an officer, with who serves them and how much there is to do."""
    with house.store.look() as work:
        return _lines(work, sight, sight.villages)


def village_story(house: House, sight: Sight, village_id: int) -> VillageStory | None:
    """The story of a village; None for one that is not in sight."""
    village = sight.village(village_id)
    if village is None:
        return None
    zone = ZoneInfo(village.zone)
    with house.store.look() as work:
        line = _lines(work, sight, (village,))[0]
        handovers = tuple(_local(each, zone) for each in work.story.handovers(village.id))
        latest = work.audit.latest(STORY_LINES, village_id=village.id)
        done = tuple(in_zone(line, village.zone) for line in latest)
        others = work.people.officers() if sight.officer.is_lead else ()
        codes = work.alerts.geocodes().get(village.id, ())
    return VillageStory(line, handovers, done, others, codes)


def _local(handover: VillageHandover, zone: ZoneInfo) -> VillageHandover:
    return replace(handover, at=handover.at.astimezone(zone))


def _lines(work: Work, sight: Sight, villages: tuple[Village, ...]) -> tuple[VillageLine, ...]:
    farmers, beds = work.roll.counts_by_village(), work.roll.beds_by_village()
    officers = work.people.officers()
    calls: dict[int | None, int] = {}
    for call in work.calls.open([each.id for each in villages], sight.officer):
        village_id = call.farmer.village_id
        calls[village_id] = calls.get(village_id, 0) + 1
    return tuple(
        VillageLine(
            village=village,
            officers=tuple(each for each in officers if village.id in each.village_ids),
            farmers=farmers.get(village.id, 0),
            beds=beds.get(village.id, 0),
            calls=calls.get(village.id, 0),
        )
        for village in villages
    )


def hand_over(
    house: House,
    sight: Sight,
    village_id: int,
    *,
    giver_id: int | None,
    taker_id: int | None,
    words: str,
    now: datetime,
) -> VillageHandover | Stays | None:
    """A lead passes a village from one officer to another, who is told by text.

    Everything that was kept of the village stays with it: farmers, nurseries, open calls,
    visits. `words` are what the next one should know.

    Args:
        giver_id: who no longer serves it; None where it only gets one more officer.
    """
    village = sight.village(village_id)
    if village is None or not sight.officer.is_lead:
        return None
    with house.store.work() as work:
        taker = work.people.officer_by_id(taker_id) if taker_id is not None else None
        giver = work.people.officer_by_id(giver_id) if giver_id is not None else None
        if taker is None:
            return Stays.NO_TAKER
        if taker == giver or village.id in taker.village_ids:
            return Stays.SAME
        if not words:
            return Stays.NO_NOTE
        line = _lines(work, sight, (village,))[0]
        gone = giver.id if giver and village.id in giver.village_ids else None
        work.story.hand_over(village.id, gone, taker.id, sight.officer.id, words, now)
        detail = f"{giver.name if giver else '-'} -> {taker.name}"
        subject = Subject(village_id=village.id)
        note(work, sight.officer.id, TrailAct.VILLAGE_HANDED_OVER, now, subject, detail)
        _tell(work, house, taker, line, now)
        return work.story.handovers(village.id)[0]


def _tell(work: Work, house: House, taker: Officer, line: VillageLine, now: datetime) -> None:
    due = after_quiet(house, line.village.zone, now)
    says = o.VILLAGE_YOURS(village=line.village.name, farmers=line.farmers, calls=line.calls)
    letter = Letter(
        phone=taker.phone,
        language=taker.language,
        says=(says,),
        kind=Kind.NOTICE,
        due_at=due,
        not_after=due + REPLY_LASTS,
    )
    post(work, house, letter, now)
