"""What a count of open leaves says."""

import pytest

from assistant.agronomy.errors import AgronomyError
from assistant.agronomy.growth.leaves import LeafAdvice, leaf_advice, leaves_on


@pytest.mark.parametrize(
    ("open_leaves", "day", "advice"),
    [
        (2, 12, LeafAdvice.WAIT),
        (3, 12, LeafAdvice.READY),
        (4, 20, LeafAdvice.READY),
        (5, 18, LeafAdvice.SOON),
        (3, 21, LeafAdvice.SOON),
        (2, 21, LeafAdvice.SLOW),
    ],
)
def test_three_or_four_leaves_in_time_are_ready(open_leaves, day, advice):
    """Fewer wait, more or later hurry, fewer and later are asked about."""
    assert leaf_advice(open_leaves, day) is advice


def test_leaves_come_no_faster_in_great_heat():
    """Above the cap a day counts no more."""
    assert leaves_on(15, 35) == leaves_on(15, 26)


def test_no_leaf_grows_in_the_cold():
    """At the base temperature there is no leaf to foretell."""
    with pytest.raises(AgronomyError):
        leaves_on(12, 9)
