"""What an event changes in a nursery: the one place where what happened makes another of it.

A day that cannot be leaves the nursery as it is: what was said is kept all the same, and the
plan stands on what can be true.
"""

from collections.abc import Callable, Mapping
from dataclasses import replace
from datetime import date, timedelta
from typing import Any

from assistant.agronomy import constants as c
from assistant.agronomy.calendar import DayChoice, day_after
from assistant.agronomy.field import LIMITS
from assistant.agronomy.life.again import sown_again
from assistant.agronomy.life.events import (
    Assumed,
    By,
    Counted,
    Done,
    Event,
    Flooded,
    Found,
    Looked,
    Lost,
    NewSeed,
    PartDone,
    PutOff,
    SeedTestBegun,
    SeedTested,
    SowAgain,
)
from assistant.agronomy.life.nursery import Nursery
from assistant.agronomy.life.rows import TASKS, Delay, Doing
from assistant.agronomy.lot.germination import GerminationTest
from assistant.agronomy.tasks import TaskCode

GREEN, GONE = "green", "gone"
_AT_THE_BED = frozenset({Doing.UNCOVERS, Doing.PLANTS})
_ONE_DAY = timedelta(days=1)
_SOAKED_NEAR_D = 7  # a soaking farther from its day is of other seed, or told by a slip


def after(nursery: Nursery, event: Event) -> Nursery:
    """The nursery after something happened.

    Raises:
        KeyError: a kind of event of which nobody said what it changes.
    """
    changed = _CHANGES[type(event)](nursery, event)
    return replace(changed, flooded_on=None) if _has_seen(event, changed) else changed


def _has_seen(event: Event, nursery: Nursery) -> bool:
    """Whether who tells this has seen, after a flood, that a bed is there."""
    if nursery.flooded_on is None or event.on < nursery.flooded_on or event.by is By.CLOCK:
        return False
    if isinstance(event, Done):
        return TASKS[event.task].doing in _AT_THE_BED or event.task is TaskCode.DRAIN_BED
    return isinstance(event, Looked | Counted | Lost)


def tested(nursery: Nursery, germination: float) -> Nursery:
    """The same nursery whose seed is known to sprout so well [fraction], by a count or by
    several; shares so low that no plan holds them count as the lowest that does."""
    inputs = replace(nursery.inputs, germination=max(germination, LIMITS["germination"].low))
    return replace(nursery, inputs=inputs, germination_known=True, test_counted=True)


def lifted(before: Nursery, after: Nursery, on: date) -> Nursery:
    """A plan whose seed may be sown now, on days that can still be kept: the planned ones while
    its seed can still be soaked, else a week for collecting and mixing, as any plan has."""
    if after.held or not before.held:
        return after
    if day_after(after.sow_date, -after.soak_before_d) >= on:
        return after
    return after.sown_on(day_after(on, -c.COLLECT_DAY.value), sown=False)


def _as_it_is(nursery: Nursery, event: Event) -> Nursery:
    return nursery


def _done(nursery: Nursery, event: Done) -> Nursery:
    return _DOING[TASKS[event.task].doing](nursery, event)


def _sown(nursery: Nursery, event: Done) -> Nursery:
    if event.on == nursery.sow_date:  # what happened since stands
        return replace(nursery, sown=True, sow_assumed=False)
    return nursery.sown_on(event.on)


def _soaked(nursery: Nursery, event: Done) -> Nursery:
    """Seed that was soaked on another day is ready as many days sooner or later."""
    sow = day_after(event.on, nursery.soak_before_d)
    moved = abs((sow - nursery.sow_date).days)
    if nursery.sown or not 0 < moved <= _SOAKED_NEAR_D:
        return nursery
    return nursery.sown_on(sow, sown=False)


def _uncovered(nursery: Nursery, event: Done) -> Nursery:
    """On the day it was told for, else on the last one before it that is possible, else on the
    planned one, which always is."""
    planned = nursery.anchors.uncover_date
    days = (event.on - n * _ONE_DAY for n in range(max((event.on - planned).days, 1)))
    day = next((each for each in days if nursery.may_uncover_on(each)), planned)
    return nursery.uncovering_on(day, uncovered=True)


def _planted(nursery: Nursery, event: Done) -> Nursery:
    return replace(nursery, transplanted_on=event.on)


def _part_done(nursery: Nursery, event: PartDone) -> Nursery:
    """A bed sown in parts keeps the day of the first; its days count from the last."""
    if TASKS[event.task].doing is not Doing.SOWS or nursery.sown:
        return nursery
    return replace(nursery, part_sown_on=nursery.part_sown_on or event.on)


def _assumed(nursery: Nursery, event: Assumed) -> Nursery:
    return nursery.sown_on(nursery.sow_date, sown=True, assumed=True)


def _put_off(nursery: Nursery, event: PutOff) -> Nursery:
    return _DELAY[TASKS[event.task].delay](nursery, event)


def _sow_later(nursery: Nursery, event: PutOff) -> Nursery:
    """What was only taken as sown was not, where its farmer says so."""
    known = nursery.sown and not nursery.sow_assumed
    return nursery if known else nursery.sown_on(event.until, sown=False)


def _soak_later(nursery: Nursery, event: PutOff) -> Nursery:
    moved = nursery.sow_date + (event.until - event.was)
    return nursery if nursery.sown else nursery.sown_on(moved, sown=False)


def _more_later(nursery: Nursery, event: PutOff) -> Nursery:
    return replace(nursery, more_on=event.until)


def _uncover_later(nursery: Nursery, event: PutOff) -> Nursery:
    if not nursery.may_uncover_on(event.until):
        return nursery
    return nursery.uncovering_on(event.until, uncovered=False)


def _plant_later(nursery: Nursery, event: PutOff) -> Nursery:
    """Planted on a later day; beyond the last one that such seedlings bear, no day is set."""
    waits = replace(nursery, delay_why=event.why)
    if nursery.judge_transplanting(event.until) is DayChoice.IMPOSSIBLE:
        return waits
    return waits.transplanting_on(event.until)


def _test_begun(nursery: Nursery, event: SeedTestBegun) -> Nursery:
    return replace(nursery, test_begun=event.on, test_counted=False)


def _tested(nursery: Nursery, event: SeedTested) -> Nursery:
    found = tested(nursery, GerminationTest(event.sprouted, event.seeds).germination)
    return lifted(nursery, found, event.on)


def _found(nursery: Nursery, event: Found) -> Nursery:
    """Where nothing is left all is lost; of a bed without mats that counts as one."""
    seen = replace(nursery, flooded_on=None)
    return replace(seen, lost_mats=max(seen.mats_sown, 1)) if event.state == GONE else seen


def _lost(nursery: Nursery, event: Lost) -> Nursery:
    """No more mats are gone than there were."""
    lost = min(nursery.lost_mats + event.mats, nursery.mats_sown)
    return replace(nursery, lost_mats=lost)


def _looked(nursery: Nursery, event: Looked) -> Nursery:
    """Green leaves are seen where the cover is off, and were so since the bed's day for it."""
    day = nursery.anchors.uncover_date
    if nursery.uncovered or event.colour != GREEN or event.on <= day:
        return nursery
    return nursery.uncovering_on(day, uncovered=True)


def _flooded(nursery: Nursery, event: Flooded) -> Nursery:
    """What stands of a bed is asked the morning after; nothing stands where none is sown."""
    if not nursery.sown or nursery.transplanted_on is not None:
        return nursery
    return replace(nursery, flooded_on=event.on)


def _counted(nursery: Nursery, event: Counted) -> Nursery:
    """Leaves cannot be counted under the cover: such a count says nothing of the days."""
    if event.on <= nursery.anchors.uncover_date:
        return nursery
    return nursery.counted(event.leaves, event.on)


def _new_seed(nursery: Nursery, event: NewSeed) -> Nursery:
    """Planned as any seed that nobody tested."""
    if nursery.sown:
        return nursery
    inputs = replace(nursery.inputs, germination=c.GOOD_GERMINATION.value)
    fresh = replace(
        nursery, inputs=inputs, germination_known=False, test_begun=None, test_counted=False
    )
    return lifted(nursery, fresh, event.on)


def _sow_again(nursery: Nursery, event: SowAgain) -> Nursery:
    """All its days count from the new sowing. Seed that is checked waits for its count; other
    seed is planned as any that nobody tested."""
    fresh = replace(sown_again(nursery, event.on, checked=event.checked), resown=True)
    if event.other:
        inputs = replace(fresh.inputs, germination=c.GOOD_GERMINATION.value)
        fresh = replace(fresh, inputs=inputs, germination_known=False)
    return fresh.sown_on(event.on) if event.sown else fresh


_CHANGES: Mapping[type[Event], Callable[[Nursery, Any], Nursery]] = {
    Done: _done,
    PartDone: _part_done,
    Assumed: _assumed,
    PutOff: _put_off,
    SeedTestBegun: _test_begun,
    SeedTested: _tested,
    NewSeed: _new_seed,
    Counted: _counted,
    Looked: _looked,
    Flooded: _flooded,
    Found: _found,
    Lost: _lost,
    SowAgain: _sow_again,
}
_DOING: Mapping[Doing, Callable[[Nursery, Done], Nursery]] = {
    Doing.NOTHING: _as_it_is,
    Doing.SOAKS: _soaked,
    Doing.SOWS: _sown,
    Doing.UNCOVERS: _uncovered,
    Doing.PLANTS: _planted,
}
_DELAY: Mapping[Delay, Callable[[Nursery, PutOff], Nursery]] = {
    Delay.NOTHING: _as_it_is,
    Delay.SOWING: _sow_later,
    Delay.SOAKING: _soak_later,
    Delay.ADDED: _more_later,
    Delay.UNCOVERING: _uncover_later,
    Delay.PLANTING: _plant_later,
}
