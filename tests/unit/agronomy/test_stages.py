"""Stages of a bed by day from sowing.

The days of the mat: cover off and 1 cm of water held on day 5 (PhilRice, modified dapog: straw
over until day 5), drained two days before lifting (ICAR, mat nursery: 1-2 days). The window of
15 to 20 days is the trade's own rule, common practice, no independent source.
"""

from dataclasses import replace
from datetime import date, timedelta
from itertools import pairwise
from typing import Any

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from assistant.agronomy.calendar import fits
from assistant.agronomy.practices import Practice
from assistant.agronomy.stages import Stage, StageDays, course_of, shown_until
from assistant.wiring.practices import open_practices
from tests.talk import nursery

SOW = date(2026, 6, 10)


def stages(*days: int, **given: Any) -> list[Stage]:
    """The stage on each of these days."""
    course = course_of(nursery(sow=SOW, **given))
    return [course.at(day) for day in days]


def test_a_mat_goes_through_its_season_day_by_day() -> None:
    """The first five days are days 0 to 5; day 18 is taken until a day is chosen."""
    assert stages(-20, -1) == [Stage.PLANNED] * 2
    assert stages(*range(6), sown=True) == [Stage.COVERED] * 6
    assert stages(*range(6, 15)) == [Stage.GROWING] * 9
    assert stages(15, 16, 17, 18, 20) == [
        Stage.READY,
        Stage.DRAINED,
        Stage.DRAINED,
        Stage.READY,
        Stage.READY,
    ]
    assert stages(21, 60) == [Stage.OLD] * 2


def test_seed_is_not_in_the_bed_before_somebody_says_so_or_a_night_has_passed() -> None:
    """On the day of sowing it may still stand in the pail."""
    assert stages(0) == [Stage.PLANNED]
    assert stages(0, sown=True) == [Stage.COVERED]
    assert stages(1) == [Stage.COVERED]


def test_a_bed_is_flooded_from_the_day_it_is_uncovered() -> None:
    """Also where that was later than planned, or is not known yet."""
    on_day_7 = SOW + timedelta(days=7)
    assert stages(5, uncover_date=SOW + timedelta(days=5), uncovered=True) == [Stage.GROWING]
    assert stages(6, 7, uncover_date=on_day_7) == [Stage.COVERED] * 2
    assert stages(6, 7, uncover_date=on_day_7, uncovered=True) == [
        Stage.COVERED,
        Stage.GROWING,
    ]


def test_a_chosen_day_moves_the_drained_days_but_not_old_age() -> None:
    """Drained two days before lifting; leaves age all the same."""
    on_day_15 = SOW + timedelta(days=15)
    assert stages(12, 13, 14, 15, 21, transplant_date=on_day_15) == [
        Stage.GROWING,
        Stage.DRAINED,
        Stage.DRAINED,
        Stage.READY,
        Stage.OLD,
    ]


def test_a_planted_field_ends_the_bed() -> None:
    """From the day it happened, whatever was planned."""
    on_day_17 = SOW + timedelta(days=17)
    given: dict[str, Any] = {"transplanted_on": on_day_17}
    assert stages(16, 17, 40, **given) == [Stage.DRAINED, Stage.PLANTED, Stage.PLANTED]
    spans = course_of(nursery(sow=SOW, **given)).spans
    assert [span.stage for span in spans] == [
        "planned",
        "covered",
        "growing",
        "ready",
        "planted",
    ]
    assert spans[-1].first == 17


@pytest.mark.parametrize("uncovered", [True, False])
@pytest.mark.parametrize("planted", [None, 9, 17, 30])
def test_spans_follow_each_other_without_gaps(uncovered: bool, planted: int | None) -> None:
    """So that a time line has no holes, and each day is told once."""
    on = None if planted is None else SOW + timedelta(days=planted)
    course = course_of(nursery(sow=SOW, uncovered=uncovered, sown=True, transplanted_on=on))
    ends = [span.end for span in course.spans]
    assert [span.first for span in course.spans[1:]] == ends[:-1]
    for span in course.spans:
        assert course.at(span.first) in (span.stage, Stage.DRAINED)


def test_the_last_stage_is_drawn_until_today() -> None:
    """A bed that nobody planted grows old before one's eyes."""
    course = course_of(nursery(sow=SOW))
    assert list(shown_until(course, 40))[-1] == StageDays(Stage.OLD, 21, 41)
    assert list(shown_until(course, 3)) == list(course.spans)


def test_nothing_was_planned_before_the_plan() -> None:
    """Who joins with a sown bed has no days before sowing on the time line."""
    assert course_of(nursery(sow=SOW, made_on=SOW + timedelta(days=3))).spans[0] == StageDays(
        Stage.COVERED, 0, 6
    )
    assert course_of(nursery(sow=SOW, made_on=SOW - timedelta(days=4))).spans[0].first == -4


practices = st.sampled_from(tuple(open_practices().values()))


@given(practices, st.none() | st.integers(1, 20), st.none() | st.integers(5, 60), st.booleans())
def test_every_practice_and_every_moved_day_gives_a_whole_line(
    practice: Practice, uncover: int | None, transplant: int | None, uncovered: bool
) -> None:
    """No gaps, no overlaps, and what is drawn is what is said."""
    moved = [
        None if day is None else SOW + timedelta(days=day) for day in (uncover, transplant)
    ]
    assume(fits(SOW, moved[0], moved[1], practice))
    bed = nursery(sow=SOW, practice=practice, sown=True, uncovered=uncovered)
    course = course_of(replace(bed, uncover_date=moved[0], transplant_date=moved[1]))
    for before, after in pairwise(course.spans):
        assert before.end == after.first
    for span in course.spans:
        drawn = {course.at(day) for day in range(span.first, span.end)}
        assert drawn <= {span.stage, Stage.DRAINED}
