"""Soaking: how long, from which day in cool water or for slow seed, and what may go wrong."""

from collections.abc import Mapping
from dataclasses import replace
from datetime import date, timedelta

from assistant.agronomy.life.rows import Fact
from assistant.agronomy.lot.soaking import is_cool, sprouting
from assistant.agronomy.nursery import Nursery
from assistant.dialogue import conversations as talks
from assistant.dialogue.endings import Ending, chosen, ended, holds, opened, said
from assistant.dialogue.engine import begin
from assistant.dialogue.results import skipped
from assistant.dialogue.values import Known, SaveNursery, Session, Turn
from assistant.wording import messages_care as care
from assistant.wording import messages_planting as g
from assistant.wording import messages_talk as m
from assistant.wording.day import about
from assistant.wording.message import Say


def _soaking(session: Session, known: Known) -> Turn:
    """The tips, then whether this seed needs longer, where none is sown yet."""
    tips = tuple(
        map(said, (care.SOAK_LONGER(), *_cool(known), care.ROOTS_LONG(), care.NONE_SPROUT()))
    )
    unsown = [each for each in known.nurseries if not each.sown]
    if not unsown:
        return ended(session, known, *tips)
    only = {"nursery": unsown[0].id} if len(unsown) == 1 else {}
    asked = opened(begin(talks.SOAKING, held=holds(session), **only), known)
    return replace(asked, texts=(*tips, *asked.texts))


def _cool(known: Known) -> tuple[Say, ...]:
    """By the officer's temperature: so long in cool water, and from which day."""
    warmth = known.warmth
    if warmth is None or not is_cool(warmth.mean_c):
        return ()
    unsown = (each for each in known.nurseries if not (each.sown or each.held))
    return tuple(cool_say(each, warmth.mean_c, known) for each in unsown)


def cool_say(nursery: Nursery, mean_c: float, known: Known) -> Say:
    """How long seed takes in water of that warmth [C]."""
    days = sprouting(mean_c, slow=nursery.slow_seed)
    begins = nursery.sow_date - timedelta(days=sum(days))
    return about(
        g.SOAK_COOL,
        nursery,
        known.today,
        degrees=mean_c,
        days=days.soak_d,
        moist=days.incubate_d,
        date=begins,
    )


def _soak_so(session: Session, known: Known) -> Turn:
    """Soaking moves to where the seed is ready for the day of sowing; where there is no time
    for that, sowing moves too. All new days are shown back."""
    nursery = chosen(session, known)
    if nursery.sown or nursery.held:
        return ended(session, known, said(m.KEPT_OPEN()))
    how = str(session.answers["how"])
    moved = in_time(_of(nursery, how, known), nursery, known.today)
    says = (
        about(g.SOAK_SET, moved, known.today),
        *sowing_moved(nursery, moved, known.today),
        *skipped(nursery, moved, known.today),
    )
    return ended(session, known, *map(said, says), changes=(SaveNursery(moved),))


def _of(nursery: Nursery, how: str, known: Known) -> Nursery:
    cool, slow = how in ("cool", "both"), how in ("slow", "both")
    warmth = known.warmth
    water_c = warmth.mean_c if cool and warmth and is_cool(warmth.mean_c) else None
    return replace(nursery, cool_water=cool, slow_seed=slow, water_c=water_c)


def in_time(moved: Nursery, before: Nursery, today: date) -> Nursery:
    """A nursery whose seed can still be soaked as long as it needs: from today on, or since
    the day on which it was to be soaked; after the count of a test that runs, which says how
    much of it, or whether any."""
    soaked = before.sow_date - timedelta(days=before.soak_before_d)
    takes = timedelta(days=moved.soak_before_d)
    ready = min(soaked, today) + takes
    if moved.count_on is not None and Fact.TEST_RUNS in moved.facts:
        ready = max(ready, moved.count_on + takes)
    return moved.sown_on(ready, sown=False) if ready > moved.sow_date else moved


def sowing_moved(before: Nursery, moved: Nursery, today: date) -> tuple[Say, ...]:
    """The new days, where the sowing could not stay on its own."""
    if moved.sow_date == before.sow_date:
        return ()
    return (about(m.SOWING_MOVED, moved, today),)


def warmed(nursery: Nursery, known: Known) -> Nursery:
    """A nursery by what is known of the warmth in its farmer's village; its soaking by the
    officer's temperature of late."""
    warmth = known.warmth
    felt = (warmth.mean_c, warmth.day) if warmth else (nursery.felt_c, nursery.felt_on)
    nursery = nursery.warmed(_climate(nursery, known), *felt)
    if nursery.sown or warmth is None:
        return nursery
    return replace(nursery, water_c=warmth.mean_c if is_cool(warmth.mean_c) else None)


def _climate(nursery: Nursery, known: Known) -> tuple[float, ...] | None:
    here = known.farmer.village_id if known.farmer else None
    village = next((each for each in known.villages if each.id == here), None)
    return village.climate if village else nursery.climate


SOAKING_ENDINGS: Mapping[str, Ending] = {"!soaking": _soaking, "!soak_so": _soak_so}
