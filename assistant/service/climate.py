"""The warmth of a village: means of the months, a figure of late, and beds that follow."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.constants import LEAF_HOTTEST_C
from assistant.agronomy.growth.warmth import told_since
from assistant.agronomy.life.clock import MONTHS
from assistant.agronomy.nursery import Nursery
from assistant.dialogue.endings_soaking import in_time, sowing_moved
from assistant.dialogue.results import skipped
from assistant.dialogue.values import Kind
from assistant.people import Farmer, Village
from assistant.service.audit import Subject, TrailAct, note
from assistant.service.days import local_date, zone_of
from assistant.service.house import House
from assistant.service.replan import save_and_plan
from assistant.service.texts import REPLY_LASTS, Letter, after_quiet, post
from assistant.store import Work
from assistant.wording import messages_care as care
from assistant.wording.day import about
from assistant.wording.message import Say

COLDEST_MONTH_C = -20.0
TELLS_FROM_D = 2  # a window that moves by a day is not worth a text


def is_climate(months: Sequence[float]) -> bool:
    """Whether these can be the means of twelve months [C]."""
    return len(months) == MONTHS and all(
        math.isfinite(each) and COLDEST_MONTH_C <= each <= LEAF_HOTTEST_C.value
        for each in months
    )


def set_climate(
    work: Work,
    house: House,
    village: Village,
    months: tuple[float, ...] | None,
    now: datetime,
    officer_id: int | None = None,
) -> Village:
    """Keeps the means of the months of a village; its beds follow, and their farmers hear."""
    kept = work.people.set_climate(village.id, months)
    detail = ", ".join(f"{each:g}" for each in months) if months else "-"
    note(work, officer_id, TrailAct.CLIMATE_SET, now, Subject(village_id=village.id), detail)
    follow_warmth(work, house, kept, now)
    return kept


def warmed_here(
    work: Work, house: House, farmer: Farmer, bed: Nursery, now: datetime
) -> Nursery:
    """A bed by the warmth of its farmer's village as it is known now."""
    village = work.people.village(farmer.village_id) if farmer.village_id else None
    if village is None:
        return bed
    return _Here(work, village, local_date(now, village.zone)).warmed(bed)


def follow_warmth(work: Work, house: House, village: Village, now: datetime) -> None:
    """Moves the days of a village's beds that are not planted yet, and tells their farmers."""
    today = local_date(now, village.zone)
    here = _Here(work, village, today)
    for farmer, listed in work.nurseries.in_village(village.id):
        if not here.moves(listed):
            continue
        work.lock(farmer.phone)
        bed = work.nurseries.fresh(listed.id)
        if bed is None or bed.closed or not here.moves(bed):
            continue
        after = here.moved(bed)
        stays = after.sow_date == bed.sow_date  # what was asked this morning is still answered
        save_and_plan(work, house, farmer, after, now, asked_stays=stays)
        says = _news(bed, after, today)
        if says:
            _tell(work, house, farmer, after, says, now)


@dataclass(frozen=True)
class _Here:
    """A village on a day."""

    work: Work
    village: Village
    today: date

    def warmed(self, bed: Nursery) -> Nursery:
        """By the warmth as it is known now; what was asked is not taken back: the cover is
        looked at from then on, and a drained bed is planted."""
        warm = self._by_warmth(bed)
        if not bed.sown or warm.tasks == bed.tasks:
            return warm
        story = self.work.reminders.of_nursery(bed.id)
        asked = {each.task for each in story if each.asked and each.day >= bed.sow_date}
        if TaskCode.DRAIN_BED in asked:
            return bed
        day = bed.anchors.uncover_date
        looked_at = TaskCode.UNCOVER_FLOOD in asked and not bed.uncovered
        if looked_at and day <= self.today and warm.may_uncover_on(day):
            return warm.uncovering_on(day, uncovered=False)
        return warm

    def _by_warmth(self, bed: Nursery) -> Nursery:
        felt = self.work.warmth.latest(self.village.id, told_since(self.today))
        if felt is None:
            return bed.warmed(self.village.climate, bed.felt_c, bed.felt_on)
        return bed.warmed(self.village.climate, felt.mean_c, felt.day)

    def moved(self, bed: Nursery) -> Nursery:
        """The same; seed that is still to be soaked is sown once it can have sprouted."""
        warmed = self.warmed(bed)
        soaks = bed.sow_date - timedelta(days=bed.soak_before_d)
        if bed.sown or bed.held or soaks < self.today:
            return warmed
        return in_time(warmed, bed, self.today)

    def moves(self, bed: Nursery) -> bool:
        """Whether its days are others by the warmth; what is planted stays as it was."""
        return bed.transplanted_on is None and self.warmed(bed).tasks != bed.tasks


def _is_news(before: Nursery, after: Nursery) -> bool:
    """Whether its window has moved so far that its farmer should hear; nothing is said of
    seed that must not be sown."""
    if after.held:
        return False
    old, new = before.paced.window, after.paced.window
    pairs = ((old.first, new.first), (old.last, new.last))
    return any(abs(one.value - other.value) >= TELLS_FROM_D for one, other in pairs)


def _news(before: Nursery, after: Nursery, today: date) -> tuple[Say, ...]:
    """What its farmer hears of the new days."""
    moved = sowing_moved(before, after, today)
    if not moved and _is_news(before, after):
        uncovers = after.anchors.uncover_date > today
        news = care.WARMTH_MOVED if uncovers else care.WARMTH_MOVED_LATER
        moved = (about(news, after, today),)
    return (*moved, *skipped(before, after, today))


def _tell(
    work: Work,
    house: House,
    farmer: Farmer,
    bed: Nursery,
    says: tuple[Say, ...],
    now: datetime,
) -> None:
    due = after_quiet(house, zone_of(work, house, farmer.village_id), now)
    letter = Letter(
        phone=farmer.phone,
        language=farmer.language,
        says=says,
        kind=Kind.LETTER,
        due_at=due,
        not_after=due + REPLY_LASTS,
        nursery_id=bed.id,
    )
    post(work, house, letter, now)
