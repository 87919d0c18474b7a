"""A morning over a line of 50 a second: its rate is kept, nobody overtakes, danger is first."""

from assistant.dialogue.values import Kind
from tests.benchmarks.line_morning import morning


def test_a_morning_stays_in_order_and_danger_goes_first() -> None:
    """200 daily texts; after a second 30 phones are warned."""
    found = morning(200, 30, warned_after_s=1.0)
    assert found.overtaken() == 0
    assert found.most_in_a_second() <= 50
    assert abs(found.seconds - 230 / 50) < 0.1
    warned = [at for at, _ in found.of(Kind.WARNING)]
    # What was claimed before goes out first: a batch, which takes its time at this rate.
    assert len(warned) == 30 and warned[-1] < 1.0 + 2.0 + 30 / 50 + 0.1
    assert not [at for at, _ in found.of(Kind.PROMPT) if warned[0] < at < warned[-1]]
