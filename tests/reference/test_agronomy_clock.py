"""The ages at which seedlings are planted, by warmth, against ages that others print."""

from datetime import date

import pytest

from assistant.agronomy.life.clock import Clock, Paced
from assistant.wiring.practices import open_practices
from tests.reference.sourced import RANGE, source

PRACTICES = open_practices()


def ages(practice: str, mean_c: float) -> tuple[int, int]:
    """The first and last good day where every month has one mean [C]."""
    clock = Clock(date(2026, 1, 1), (mean_c,) * 12)
    window = Paced(PRACTICES[practice], clock).now.window
    return int(window.first.value), int(window.last.value)


def overlap(found: tuple[int, int], printed: tuple[int, int]) -> bool:
    """Whether two spans of days have a day in common."""
    return found[0] <= printed[1] and printed[0] <= found[1]


@source("AAU-mat")
@pytest.mark.parametrize(
    ("mean_c", "printed"), [(28, (15, 20)), (26, (15, 20)), (22, (20, 25)), (21, (20, 25))]
)
def test_mats_are_planted_at_the_ages_of_a_warm_and_a_cool_season(mean_c, printed):
    """15-20 days in the warm season, 20-25 in the cool one; the latter set nothing here."""
    assert overlap(ages("mat", mean_c), printed)


@source("SCIRP-113057")
@pytest.mark.parametrize("mean_c", [18, 19, 20])
def test_trays_of_a_cool_season_are_planted_at_thirty_days(mean_c):
    """25-30 days for trays in the cool season of Bangladesh, whose months have 18 to 20 C."""
    assert overlap(ages("tray", mean_c), (25, 30))


@source("Amanat", "teachers-bd", kind=RANGE)
@pytest.mark.parametrize("mean_c", [16, 17])
def test_seedlings_of_the_cold_months_are_as_old_as_bangladesh_has_them(mean_c):
    """35-40 days for seed of late November; up to 45 by season and variety. Which means those
    weeks have, the pages do not say: 16 to 17 C is the cold end."""
    assert overlap(ages("mat", mean_c), (35, 45))


@source("ICAR-boro", kind=RANGE)
@pytest.mark.parametrize("mean_c", [18, 19, 20])
def test_four_leaves_take_a_month_in_the_cool_season(mean_c):
    """30-35 days old, in the 4-leaf stage, in boro; 22-25 in the warm season, where ours are
    planted from 3 leaves on. Its means are not printed."""
    first, last = ages("mat", mean_c)
    assert first <= 35 and last >= 30
