"""A bed that is sown anew: when, and what it keeps of the first sowing."""

from dataclasses import replace
from datetime import date, timedelta

from assistant.agronomy.life.nursery import Nursery


def sow_again_day(today: date, nursery: Nursery) -> date:
    """The day of sowing for seed that is soaked today, in as many days as for this bed."""
    return today + timedelta(days=nursery.soak_before_d)


def sown_again(nursery: Nursery, today: date) -> Nursery:
    """The whole bed sown anew: all its days count from the new sowing."""
    fresh = nursery.sown_on(sow_again_day(today, nursery), sown=False)
    return replace(
        fresh,
        urea_on=None,
        hill_seedlings=None,
        more_on=None,
        more_mats=None,
        lost_mats=0,
        delay_why=None,
    )
