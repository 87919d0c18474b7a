"""Shoots in a square, and what becomes of a thin bed; seedlings that are late; seasons seen."""

from dataclasses import replace
from datetime import date
from typing import Any

import pytest

from assistant.agronomy.errors import AgronomyError
from assistant.agronomy.field import FieldInputs
from assistant.agronomy.growth.leaf_pace import forecast_by_pace
from assistant.agronomy.growth.leaves import days_per_leaf
from assistant.agronomy.growth.overdue import seedlings_when_late
from assistant.agronomy.growth.stand import StandAdvice, filling, needed_shoots, stand_advice
from assistant.agronomy.quantities import quantities
from assistant.agronomy.season.followups import count_day, retest_sow_day
from assistant.agronomy.season.outcome import SeasonOutcome, own_establishment

FIELD = quantities(FieldInputs(field_area_m2=4000.0, germination=0.85))


def test_the_shoots_that_are_needed_follow_from_hills_and_bed() -> None:
    """PhilRice: 250,000 hills a hectare at 20 x 20 cm; two a hill from 100 m2 of bed are 0.5 on
    each cm2, 50 in a square of 10 x 10 cm, whatever the field's size. 65 of 100 that sprout are
    planted: 77 should come up."""
    assert needed_shoots(FIELD) == pytest.approx(50 / 0.65)
    assert needed_shoots(quantities(FieldInputs(100.0, 0.85))) == pytest.approx(76.92, abs=0.01)


@pytest.mark.parametrize(
    ("shoots", "day", "advice"),
    [
        (62, 5, StandAdvice.ENOUGH),
        (61, 7, StandAdvice.WAIT),
        (0, 5, StandAdvice.WAIT),
        (50, 8, StandAdvice.FILL),
        (31, 8, StandAdvice.FILL),
        (30, 8, StandAdvice.AGAIN),
        (0, 14, StandAdvice.AGAIN),
    ],
)
def test_a_count_is_judged_by_the_day(shoots: int, day: int, advice: StandAdvice) -> None:
    """Judgements: four fifths of 77 are enough, and leave a fifth to lose in lifting; from half
    of that on one a hill plants the field."""
    assert stand_advice(shoots, FIELD, day) is advice


def test_filling_makes_up_for_what_is_missing() -> None:
    """Half of 267 mats begun whole, half of the seed."""
    more = filling(0.4 * 50 / 0.65, FIELD)
    assert (more.mats, more.seed_kg) == pytest.approx((134, FIELD.seed_kg / 2))


def test_no_shoots_at_all_need_the_whole_bed_again() -> None:
    """All seed, all mats."""
    more = filling(0, FIELD)
    assert (more.mats, more.seed_kg) == pytest.approx((FIELD.mats, FIELD.seed_kg))


@pytest.mark.parametrize(("day", "seedlings"), [(20, 2), (21, 3), (27, 3), (28, 4), (60, 6)])
def test_late_seedlings_are_planted_more_to_a_hill(day: int, seedlings: int) -> None:
    """PhilRice, How to transplant rice: 21 days 2-3, 28 days 3-4; ICAR: up to 5-6 when old."""
    assert seedlings_when_late(2, day) == seedlings


def test_the_pace_of_a_count_holds_the_published_leaf_rate_at_26_degrees() -> None:
    """CERES-Rice: 83 degree-days a leaf above 9 C, 4.88 days at 26 C, so 2.46 leaves on day 12,
    counted as 2, and the fourth leaf on day 19.5."""
    seen = forecast_by_pace(4, 2, 12)
    assert seen.earliest <= 4 * days_per_leaf(26) <= seen.latest
    assert seen == (19, 16, 24)


def test_a_leaf_that_is_there_is_no_forecast() -> None:
    """And a count that says nothing is refused."""
    assert forecast_by_pace(4, 4.5, 14) == (14, 14, 14)
    for leaves, day in ((0, 12), (2, 0)):
        with pytest.raises(AgronomyError):
            forecast_by_pace(4, leaves, day)


def test_a_test_takes_a_week_and_other_seed_ten_days() -> None:
    """Begun on 1 June it is counted on the 8th. Bought on the 1st, laid out on the 2nd, counted
    on the 9th, soaked, sown on the 11th."""
    today = date(2026, 6, 1)
    assert count_day(today) == date(2026, 6, 8)
    assert retest_sow_day(today) == date(2026, 6, 11)


SEASON = SeasonOutcome(1, 1, date(2026, 6, 27), 4000.0, 4000.0, 200, 0.0, False, 0.65)


@pytest.mark.parametrize(
    ("planted", "left", "seen"),
    [
        (4000.0, 0.0, 0.65),  # the plan came true
        (3000.0, 0.0, 0.4875),  # three quarters planted: 0.65 x 0.75
        (4000.0, 20.0, 0.7222),  # a tenth of the mats over: 0.65 / 0.9
        (3600.0, 0.0, 0.585),
    ],
)
def test_what_was_planted_from_how_many_mats_shows_the_establishment(
    planted: float, left: float, seen: float
) -> None:
    """Worked by hand from the seed formula, solved for establishment."""
    told = replace(SEASON, planted_area_m2=planted, mats_left=left)
    assert told.observed_establishment == pytest.approx(seen, abs=1e-4)


def test_an_establishment_that_cannot_be_is_held_in_its_limits() -> None:
    """Half of the mats over: 1.3 of each seed, taken as all."""
    assert replace(SEASON, mats_left=100.0).observed_establishment == 1.0


def test_a_season_without_mats_or_field_is_refused() -> None:
    """The talk asks again before."""
    amiss: list[dict[str, Any]]
    amiss = [{"planted_area_m2": 0.0}, {"mats_left": 200.0}, {"mats_left": -1.0}]
    for wrong in amiss:
        with pytest.raises(AgronomyError):
            replace(SEASON, **wrong)


def test_nothing_is_learned_from_no_season() -> None:
    """And each season more draws nearer to what is seen."""
    assert own_establishment(()) is None
    poor = replace(SEASON, planted_area_m2=2000.0)
    means = [own_establishment((poor,) * n) for n in (1, 2, 5)]
    found = [each.mean for each in means if each is not None]
    assert 0.65 > found[0] > found[1] > found[2] > 0.325
