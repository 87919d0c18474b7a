"""Whom a danger would harm: the phones of nurseries that stand in a stage that it concerns."""

from collections.abc import Iterable, Iterator
from datetime import date, datetime, timedelta
from itertools import groupby
from typing import NamedTuple
from zoneinfo import ZoneInfo

from assistant.agronomy.constants import RAIN_WATCH_LAST_DAY
from assistant.agronomy.dangers.rows import DANGERS, RAIN, BedStage, DangerRow
from assistant.agronomy.nursery import Nursery
from assistant.agronomy.stages import Stage, course_of
from assistant.dialogue.values import Reach
from assistant.people import Village
from assistant.service.house import House
from assistant.store import AlertCertainty, BedInDanger, Given, Work

SOWS_SOON_D = 2  # seed is soaked two days before it is sown
OLDEST_D = 120  # days from sowing after which a bed that is still open is no nursery any more
_WATCHED = timedelta(days=int(RAIN_WATCH_LAST_DAY.value))
_BY_DAYS_ALONE = frozenset({BedStage.COVERED, BedStage.SOON})
_STAGES = {
    Stage.PLANNED: BedStage.SOON,
    Stage.COVERED: BedStage.COVERED,
    Stage.GROWING: BedStage.UNCOVERED,
    Stage.READY: BedStage.UNCOVERED,
    Stage.OLD: BedStage.UNCOVERED,
    Stage.DRAINED: BedStage.DRAINED,
}

Beds = tuple[tuple[BedStage, tuple[str, ...]], ...]


class InDanger(NamedTuple):
    """One phone, with what its nurseries are called by their stage, in the order of stages."""

    farmer_id: int
    phone: str
    farmer: str | None
    language: str | None
    may_be_texted: bool
    beds: Beds

    def of(self, stage: BedStage) -> tuple[str, ...]:
        """What its nurseries of a stage are called."""
        return dict(self.beds).get(stage, ())

    @property
    def young(self) -> tuple[str, ...]:
        """Those that are to be covered now."""
        return self.of(BedStage.COVERED)

    @property
    def soon(self) -> tuple[str, ...]:
        """Those whose sowing must wait."""
        return self.of(BedStage.SOON)

    @property
    def called(self) -> tuple[str, ...]:
        """What all of them are called."""
        return tuple(name for _, names in self.beds for name in names)


def in_danger(
    work: Work, village: Village, now: datetime, code: str = RAIN
) -> tuple[InDanger, ...]:
    """The phones of a village that a danger would harm, by number; also those that may not be
    texted. Who sows later is told to wait by the text of that day."""
    today, danger = now.astimezone(ZoneInfo(village.zone)).date(), DANGERS[code]
    beds = _beds(work, village, today, danger)
    by_phone = groupby(beds, key=lambda bed: bed[0].phone)
    return tuple(_phone(tuple(own)) for _, own in by_phone)


def sowing_days(today: date) -> tuple[date, date]:
    """The first and last sowing day of beds that rain would harm."""
    return today - _WATCHED, today + timedelta(days=SOWS_SOON_D)


def _beds(
    work: Work, village: Village, today: date, danger: DangerRow
) -> Iterator[tuple[BedInDanger, BedStage]]:
    """The beds in a stage that a danger concerns, by phone. Where the day of sowing alone tells
    it, the nurseries are not read: a storm may be over thousands."""
    if danger.stages <= _BY_DAYS_ALONE:
        for bed in work.danger.beds(village.id, *sowing_days(today)):
            stage = BedStage.COVERED if _in_bed(bed, today) else BedStage.SOON
            if stage in danger.stages:
                yield bed, stage
        return
    first, last = today - timedelta(days=OLDEST_D), today + timedelta(days=SOWS_SOON_D)
    for bed, nursery in work.danger.nurseries(village.id, first, last):
        found = stage_of(nursery, today)
        if found in danger.stages:
            yield bed, found


def stage_of(nursery: Nursery, today: date) -> BedStage | None:
    """The stage of a bed; None for one that is held, planted or not sown for days to come."""
    if nursery.held:
        return None
    if nursery.added and 0 <= nursery.youngest_day(today) <= RAIN_WATCH_LAST_DAY.value:
        return BedStage.COVERED  # seed that was added to a thin bed lies open as the first did
    found = _STAGES.get(course_of(nursery).at(nursery.day(today)))
    stands_dry = nursery.practice.bed.flood_depth_m.value == 0
    return BedStage.DRAINED if found is BedStage.UNCOVERED and stands_dry else found


def _phone(own: tuple[tuple[BedInDanger, BedStage], ...]) -> InDanger:
    first, _ = own[0]
    by_stage = {
        stage: tuple(bed.called for bed, at in own if at is stage)
        for stage in BedStage
        if any(at is stage for _, at in own)
    }
    return InDanger(
        farmer_id=first.farmer_id,
        phone=first.phone,
        farmer=first.farmer,
        language=first.language,
        may_be_texted=first.may_be_texted,
        beds=tuple(by_stage.items()),
    )


def _in_bed(bed: BedInDanger, today: date) -> bool:
    """Whether the seed lies on the bed: on day 0 it may still be in the pail."""
    return bed.sown or bed.sow_date < today


def people_in(work: Work, village: Village, now: datetime) -> bool:
    """Whether a danger in which nobody is sent out has come to a village: its hours have begun,
    or it was seen there when it was warned of."""
    return any(
        DANGERS[given.danger].indoors
        and given.stands(now)
        and (given.starts_at <= now or _was_seen(work, given))
        for given in work.drafts.given((village.id,), ends_after=now)
    )


def _was_seen(work: Work, given: Given) -> bool:
    draft = work.drafts.get(given.draft_id)
    return draft is not None and draft.certainty is AlertCertainty.OBSERVED


def texted(found: Iterable[InDanger]) -> Iterator[InDanger]:
    """Those who may be texted."""
    return (each for each in found if each.may_be_texted)


def reach(work: Work, house: House, village: Village, now: datetime, code: str = RAIN) -> Reach:
    """Whom a warning for a village would find."""
    found = tuple(texted(in_danger(work, village, now, code)))
    return Reach(
        village=village,
        phones=len(found),
        nurseries=sum(len(each.called) - len(each.soon) for each in found),
        about_to_sow=sum(len(each.soon) for each in found),
    )
