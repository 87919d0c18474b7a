"""A farmer's own establishment is learned, slowly, from what each season showed."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import beta

from assistant.agronomy import constants as c
from assistant.agronomy import constants_work as w
from assistant.agronomy.errors import AgronomyError
from assistant.agronomy.season.beta import beta_cdf, beta_point
from assistant.agronomy.season.establishment import Establishment, SeasonSeen, believed, learned

sides = st.floats(0.5, 500)
shares = st.floats(0, 1)
seasons = st.lists(st.builds(SeasonSeen, share=shares, mats=st.floats(0.1, 5000)), max_size=6)


@given(sides, sides, shares)
def test_the_chance_below_a_share_is_scipys(stood, lost, share):
    """scipy.stats.beta.cdf."""
    assert beta_cdf(share, stood, lost) == pytest.approx(beta.cdf(share, stood, lost), abs=1e-9)


@given(sides, sides, st.floats(0.001, 0.999))
def test_the_point_of_a_chance_is_scipys(stood, lost, chance):
    """scipy.stats.beta.ppf."""
    expected = beta.ppf(chance, stood, lost)
    assert beta_point(chance, stood, lost) == pytest.approx(expected, abs=1e-7)


def test_before_any_season_the_field_reports_are_believed():
    """Mean 0.65, standard deviation 0.075: scipy gives 0.50 (Arkansas, FSA2157; Mississippi,
    2013: the low end of the reports) as the lower end of what is likely."""
    usual = believed()
    known = beta(usual.stood, usual.lost)
    assert known.mean() == pytest.approx(0.65) == usual.mean
    assert known.std() == pytest.approx(w.ESTABLISHMENT_SPREAD.value)
    assert usual.likely == pytest.approx(known.interval(0.95), abs=1e-6)
    assert usual.likely.low == pytest.approx(c.ESTABLISHMENT.low, abs=0.01)


@given(st.integers(0, 20), st.integers(1, 20))
def test_a_season_of_whole_mats_is_the_conjugate_update(stood, mats):
    """Counting mats that stood and mats that were lost is the textbook update of a Beta
    belief; its density is the old one times the binomial chance, by scipy, up to a factor."""
    stood = min(stood, mats)
    before = believed()
    after = before.after(SeasonSeen(stood / mats, mats))
    ratio = [
        beta.pdf(x, after.stood, after.lost)
        / (beta.pdf(x, before.stood, before.lost) * x**stood * (1 - x) ** (mats - stood))
        for x in (0.4, 0.6, 0.8)
    ]
    assert ratio == pytest.approx([ratio[0]] * 3)


@given(shares)
def test_a_handful_of_mats_hardly_moves_what_is_usual(share):
    """One mat, whatever stood on it, moves the figure by less than two points of a hundred."""
    assert abs(learned([SeasonSeen(share, 1)]).mean - 0.65) < 0.02


@given(shares, st.floats(20, 100_000))
def test_no_single_season_counts_as_more_than_twenty_mats(share, mats):
    """A large field in one season weighs half of what was believed, and no more."""
    once = learned([SeasonSeen(share, mats)])
    assert once == learned([SeasonSeen(share, 20)])
    assert once.weight - believed().weight == pytest.approx(20)


@given(seasons)
def test_what_is_learned_lies_between_what_was_believed_and_seen(seen):
    """Never outside the usual share and the seasons."""
    shares_seen = [0.65, *(season.share for season in seen)]
    mean = learned(seen).mean
    assert min(shares_seen) - 1e-9 <= mean <= max(shares_seen) + 1e-9


@given(seasons, shares, shares, st.floats(1, 1000))
def test_a_better_season_never_teaches_less(seen, one, other, mats):
    """More seedlings standing in the last season give a higher figure."""
    worse, better = sorted((one, other))
    low = learned([*seen, SeasonSeen(worse, mats)]).mean
    high = learned([*seen, SeasonSeen(better, mats)]).mean
    assert low <= high + 1e-12


@given(seasons)
def test_the_order_of_seasons_is_no_matter(seen):
    """What a village learns does not depend on who is asked first."""
    forward, backward = learned(seen), learned(reversed(seen))
    assert forward.mean == pytest.approx(backward.mean)
    assert forward.weight == pytest.approx(backward.weight)


def test_the_same_season_again_makes_it_surer():
    """Five seasons at 0.8 come near 0.8, with a narrower range each time."""
    learning = [learned([SeasonSeen(0.8, 267)] * years) for years in range(6)]
    means = [each.mean for each in learning]
    widths = [each.likely.high - each.likely.low for each in learning]
    assert means == sorted(means) and means[-1] > 0.75
    assert widths == sorted(widths, reverse=True)


@pytest.mark.parametrize(
    "seen", [SeasonSeen(1.2, 10), SeasonSeen(-0.1, 10), SeasonSeen(0.5, 0)]
)
def test_a_season_that_cannot_be_teaches_nothing(seen):
    """More seedlings than germinated seeds, or no mats, are asked about first."""
    with pytest.raises(AgronomyError):
        believed().after(seen)


def test_no_belief_is_certain():
    """Nothing on one side is no distribution; nor can 0.999 be spread so far."""
    with pytest.raises(AgronomyError):
        Establishment(1, 0)
    with pytest.raises(AgronomyError):
        believed(0.999)
