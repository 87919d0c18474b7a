"""Germination tests against the federal table and scipy; sources beside each."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import binomtest, studentized_range

from assistant.agronomy.errors import AgronomyError
from assistant.agronomy.lot.germination import (
    GerminationTest,
    lots_agree,
    minimum_germination,
    mixed_germination,
    tolerated_range,
)
from tests.reference.sourced import ARITHMETIC, INDEPENDENT, source

# 7 CFR 201.55(a), Federal Seed Act Regulations: mean -> largest range, the rows seen in print.
SEEN = {
    99: 5, 98: 6, 97: 7, 96: 8, 95: 9, 94: 10, 93: 10, 92: 11, 91: 11, 90: 12, 89: 12, 88: 13,
    87: 13, 86: 14, 85: 14, 84: 14, 83: 15, 82: 15, 81: 15, 80: 16, 79: 16, 78: 16, 77: 17,
    76: 17, 75: 17, 74: 17, 73: 17, 72: 18, 71: 18, 70: 18,
}  # fmt: skip


@source("CFR-201")
@pytest.mark.parametrize("mean", SEEN)
def test_the_table_is_the_published_one(mean):
    """On both of its columns: a mean of 2 is tolerated as one of 99."""
    assert tolerated_range(mean) == SEEN[mean]
    assert tolerated_range(101 - mean) == SEEN[mean]


@source("CFR-201", "scipy", kind=INDEPENDENT)
@pytest.mark.parametrize("mean", range(70, 100))
def test_the_table_follows_the_studentised_range(mean):
    """scipy: the 97.5 % point for four lots times the binomial deviation, within 1."""
    deviation = math.sqrt(mean * (100 - mean) / 100)
    rounded = round(studentized_range.ppf(0.975, 4, math.inf) * deviation)
    assert abs(rounded - tolerated_range(mean)) <= 1


@source("CFR-201", kind=ARITHMETIC)
@pytest.mark.parametrize(
    ("counts", "agree"),
    [
        ((88, 84, 92, 80), True),  # mean 86, range 12 of 14
        ((70, 85, 90, 95), False),  # mean 85, range 25 of 14
        ((100, 100, 100, 98), True),  # mean 99.5 stands for 99
    ],
)
def test_lots_are_kept_or_tested_again(counts, agree):
    """Worked from 7 CFR 201.55(a)."""
    assert lots_agree(counts) is agree


@pytest.mark.parametrize("counts", [(88, 84, 92), (88, 84, 92, 101), ()])
def test_other_tests_are_not_judged_by_this_table(counts):
    """It is for four lots of 100."""
    with pytest.raises(AgronomyError):
        lots_agree(counts)


@source("arithmetic", kind=ARITHMETIC)
@pytest.mark.parametrize(
    ("sprouted", "sown", "low", "high"),
    [(340, 400, 81.2, 88.2), (80, 100, 71.1, 86.7), (40, 50, 67.0, 88.8)],
)
def test_a_small_test_carries_a_wide_range(sprouted, sown, low, high):
    """Wilson 95 % intervals in percent, as any statistics library gives them."""
    likely = GerminationTest(sprouted, sown).likely
    assert (likely.low * 100, likely.high * 100) == pytest.approx((low, high), abs=0.05)


@source("scipy", kind=INDEPENDENT)
@given(st.integers(1, 1000).flatmap(lambda n: st.tuples(st.integers(0, n), st.just(n))))
def test_the_range_is_wilsons(counted):
    """scipy, binomtest(...).proportion_ci(method="wilson")."""
    sprouted, sown = counted
    expected = binomtest(sprouted, sown).proportion_ci(method="wilson")
    assert GerminationTest(sprouted, sown).likely == pytest.approx(
        (expected.low, expected.high), abs=1e-9
    )


@source("ICAR-germination", kind=INDEPENDENT)
def test_a_growers_test_counts_as_the_handbook_says():
    """ICAR, seed germination testing: 170 normal seedlings of 200 are 85 %, a home test."""
    test = GerminationTest(170, 200)
    assert test.germination == pytest.approx(0.85)
    assert not test.is_official_size


@source("CFR-201")
def test_an_official_test_has_four_hundred_seeds():
    """7 CFR 201.54: at least 400."""
    assert GerminationTest(340, 400).is_official_size


@pytest.mark.parametrize("counted", [(5, 0), (11, 10), (-1, 10)])
def test_no_test_has_more_sprouts_than_seeds(counted):
    """Nor no seeds at all."""
    with pytest.raises(AgronomyError):
        GerminationTest(*counted)


@source("Bogura", "PhilRice-RCEF")
def test_the_good_mark_differs_by_country():
    """82 % passes the 80 of Bangladesh's advice and fails the 85 of the Philippines (RCEF)."""
    here, there = minimum_germination("BD-13"), minimum_germination("PH")
    assert here is not None and there is not None and here <= 0.82 < there
    assert minimum_germination("KE") is None
    assert minimum_germination(None) is None


@source("arithmetic", kind=ARITHMETIC)
def test_mixed_lots_germinate_between_their_own():
    """3 kg at 90 % with 1 kg at 70 % are 85 %, by plain arithmetic."""
    assert mixed_germination([(3, 0.9), (1, 0.7)]) == pytest.approx(0.85)
    with pytest.raises(AgronomyError):
        mixed_germination([])
