"""A bed that is sown anew: when, and what it keeps of the first sowing."""

from dataclasses import replace
from datetime import date, timedelta

from assistant.agronomy import constants_work as w
from assistant.agronomy.life.nursery import Nursery


def sow_again_day(today: date, nursery: Nursery) -> date:
    """The day of sowing for seed that is soaked today, in as many days as for this bed."""
    return today + timedelta(days=nursery.soak_before_d)


def sown_again(nursery: Nursery, today: date, *, checked: bool = False) -> Nursery:
    """The whole bed sown anew: all its days count from the new sowing, which waits for the
    check of its seed where that is `checked`."""
    waits = timedelta(days=w.SEED_CHECK_D.value if checked else 0)
    fresh = nursery.sown_on(sow_again_day(today, nursery) + waits, sown=False)
    return replace(
        fresh,
        urea_on=None,
        hill_seedlings=None,
        more_on=None,
        more_mats=None,
        lost_mats=0,
        flooded_on=None,
        part_sown_on=None,
        delay_why=None,
        transplanted_on=None,
        test_begun=today if checked else None,
        test_counted=False,
        germination_known=nursery.germination_known and not checked,
    )
