"""A warning that went out: who answered, who is silent, how far its texts are; what to do."""

from collections.abc import Callable, Collection
from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal
from typing import TypeVar
from zoneinfo import ZoneInfo

from assistant.dialogue.values import Standing
from assistant.people import Village
from assistant.service.house import House
from assistant.service.sight import Sight
from assistant.service.storms.danger import in_danger, texted
from assistant.service.storms.danger_words import asked_again
from assistant.service.storms.warnings import ask_silent, call_back, give_all_clear
from assistant.service.texts import Pricing
from assistant.store import Draft, Given, Progress, Silent, Work

T = TypeVar("T")

MOST_SILENT = 100  # names in the list; the counts are of all


@dataclass(frozen=True)
class Answers:
    """Of the phones that a warning asked."""

    asked: int
    covered: int
    need_help: int

    @property
    def silent(self) -> int:
        """Phones that were asked and have not answered."""
        return self.asked - self.covered - self.need_help


@dataclass(frozen=True)
class VillageTally(Answers):
    """What came back from one village; hours are local. A phone that answered is reached."""

    village: Village
    given: Given
    starts_at: datetime
    ends_at: datetime
    stands: bool
    reached: int


@dataclass(frozen=True)
class Storm:
    """The page; `clear_at` (local) is when an all-clear given now would leave."""

    draft: Draft
    villages: tuple[VillageTally, ...]
    progress: Progress
    silent: tuple[Silent, ...]
    silent_in_all: int
    askable: int  # silent ones that would get a second text now
    segments: int  # of those texts
    cost: Decimal | None  # of those texts; None where no price is known
    stands: bool

    def total(self, name: str) -> int:
        """The sum of one count over the villages."""
        return sum(getattr(each, name) for each in self.villages)

    @property
    def standing(self) -> tuple[Village, ...]:
        """Where it has not ended."""
        return tuple(each.village for each in self.villages if each.stands)

    def silent_of(self, village: Village) -> tuple[Silent, ...]:
        """The silent ones of a village, as many as are shown."""
        return tuple(each for each in self.silent if each.village_id == village.id)


def storm(house: House, sight: Sight, draft_id: int, now: datetime) -> Storm | None:
    """How a warning stands; None for one that was not sent or is not in sight."""
    with house.store.look() as work:
        draft = work.drafts.get(draft_id)
        given = work.drafts.given(sight.village_ids, draft_id=draft_id)
        if draft is None or not given:
            return None
        ids = [each.id for each in given]
        silent = work.warnings.silent(ids)
        progress = work.sending.progress(ids)
        tallies = tuple(_tally(work, sight, each, now) for each in given)
        segments = _second_texts(work, house, tallies, silent, now)
    standing: set[int | None] = {each.village.id for each in tallies if each.stands}
    return Storm(
        draft=draft,
        villages=tallies,
        progress=progress,
        silent=silent[:MOST_SILENT],
        silent_in_all=len(silent),
        askable=sum(_askable(each, standing) for each in silent),
        segments=segments,
        cost=house.tariff.cost(segments) if house.tariff else None,
        stands=bool(standing),
    )


def _askable(phone: Silent, standing: Collection[int | None]) -> bool:
    return phone.village_id in standing and not phone.asked_again and not phone.unsent


def _second_texts(
    work: Work,
    house: House,
    tallies: Collection[VillageTally],
    silent: Collection[Silent],
    now: datetime,
) -> int:
    """How many segments the second texts would take that can be sent now."""
    pricing, segments = Pricing(house), 0
    for each in tallies:
        standing = {each.village.id} if each.stands else set()
        phones = {one.phone for one in silent if _askable(one, standing)}
        found = texted(in_danger(work, each.village, now, each.given.danger)) if phones else ()
        for phone in found:
            if phone.phone in phones:
                says = asked_again(each.village, _asked(each.given), phone)
                segments += pricing.of(says, phone.language).segments
    return segments


def _asked(given: Given) -> Standing:
    span = given.starts_at, given.ends_at
    return Standing(given.id, given.village_id, *span, danger=given.danger)


def _tally(work: Work, sight: Sight, given: Given, now: datetime) -> VillageTally:
    village = sight.village(given.village_id)
    assert village is not None  # the query was held to what is in sight
    counts = work.warnings.tally(given.id)
    zone = ZoneInfo(village.zone)
    return VillageTally(
        village=village,
        given=given,
        starts_at=given.starts_at.astimezone(zone),
        ends_at=given.ends_at.astimezone(zone),
        stands=given.stands(now),
        asked=counts.asked,
        reached=max(counts.delivered, counts.covered + counts.need_help),
        covered=counts.covered,
        need_help=counts.need_help,
    )


# --- what can be done -------------------------------------------------------------------------


@dataclass(frozen=True)
class Recalled:
    """What calling back did, in phones."""

    taken_back: int
    corrected: int


def ask_again(house: House, sight: Sight, draft_id: int, now: datetime) -> int | None:
    """A second text to the silent of the villages in sight; how many. None as in `storm`."""
    done = _each(
        house,
        sight,
        draft_id,
        now,
        lambda work, given: ask_silent(work, house, given.id, now, sight.officer.id),
    )
    return None if done is None else sum(done)


def all_clear(
    house: House,
    sight: Sight,
    draft_id: int,
    now: datetime,
    only: Collection[int] | None = None,
) -> bool | None:
    """The all-clear for the villages in sight; False where none stood any more.

    Args:
        only: ids of villages; the others stay warned.
    """

    def clear(work: Work, given: Given) -> bool:
        give_all_clear(work, house, given.id, now, sight.officer.id)
        return True

    done = _each(house, sight, draft_id, now, clear, only)
    return None if done is None else bool(done)


def recall(
    house: House,
    sight: Sight,
    draft_id: int,
    now: datetime,
    only: Collection[int] | None = None,
) -> Recalled | None | bool:
    """Calls a warning back in the villages in sight; False where none stood any more; `only`
    as above."""
    done = _each(
        house,
        sight,
        draft_id,
        now,
        lambda work, given: call_back(work, house, given.id, now, sight.officer.id),
        only,
    )
    if done is None:
        return None
    counts = [each for each in done if each is not None]
    if not counts:
        return False
    return Recalled(sum(each[0] for each in counts), sum(each[1] for each in counts))


def _each(
    house: House,
    sight: Sight,
    draft_id: int,
    now: datetime,
    do: Callable[[Work, Given], T],
    only: Collection[int] | None = None,
) -> list[T] | None:
    """Does something for each warning of a draft that is in sight and stands, in all of its
    villages or in some."""
    with house.store.work() as work:
        given = work.drafts.given(sight.village_ids, draft_id=draft_id)
        if not given:
            return None
        wanted = (each for each in given if only is None or each.village_id in only)
        return [do(work, each) for each in wanted if each.stands(now)]
