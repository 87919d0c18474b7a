"""Segments put together as a phone does it."""

from datetime import UTC, datetime, timedelta

from gateway_sim.joining import KEPT, Joining

NOW = datetime(2026, 6, 1, 6, tzinfo=UTC)


def test_a_text_is_whole_once_all_its_segments_came_in_any_order() -> None:
    """One that was refused comes again; those before it wait."""
    joining: Joining[str] = Joining()
    assert joining.add("a", 2, 2, "end", NOW) is None
    assert joining.add("b", 1, 2, "another", NOW) is None
    joining.back("b", 1)
    assert joining.add("b", 2, 2, "text", NOW) is None
    assert joining.add("a", 1, 2, "begin", NOW) == ["begin", "end"]


def test_what_was_left_of_a_text_is_no_part_of_one_much_later() -> None:
    """A reference has one octet: another text has the same some day."""
    joining: Joining[str] = Joining()
    joining.add("a", 2, 2, "left over", NOW)
    later = NOW + KEPT + timedelta(seconds=1)
    assert joining.add("a", 1, 2, "begin", later) is None
    assert joining.add("a", 2, 2, "end", later) == ["begin", "end"]
