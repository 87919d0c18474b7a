"""Which text goes by which line, at what rate, up to what quota, and what follows where a line
is down."""

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from datetime import UTC, datetime, timedelta

import pytest

from assistant.channel import Fate, Handover, Outgoing
from assistant.gateways.lines import Lines, Route, Terms, way
from assistant.gateways.pace import Pace

NOW = datetime(2026, 6, 1, 5, 30, tzinfo=UTC)
TEXT = Outgoing("t-1", "+447700900101", "Open the cover.", NOW + timedelta(hours=1), "prompt")
TAKEN = Handover(Fate.ACCEPTED)
BUSY = Handover(Fate.TRY_LATER, "busy", rest=timedelta(seconds=30))
SILENT = Handover(Fate.TRY_LATER, "no answer", answered=False)


@dataclass
class Says:
    """A line that says what it was told to say."""

    answer: Handover = TAKEN
    got: list[str] = field(default_factory=list)
    clock: datetime | None = None

    def send(self, outgoing: Outgoing, now: datetime) -> Handover:
        self.got.append(outgoing.message_id)
        return self.answer

    def time(self) -> datetime | None:
        return self.clock


ROUTES = {
    "by number": ((Route(("a",), ("+99900",)), Route(("b",))), TEXT, ("b",)),
    "by kind": ((Route(("a",), kinds=("warning",)), Route(("b", "a"))), TEXT, ("b", "a")),
    "the first that takes it": ((Route(("a",)), Route(("b",))), TEXT, ("a",)),
    "none": ((Route(("a",), ("+99900",)),), TEXT, ()),
    "the line written by goes first": (
        (Route(("a", "b")),),
        replace(TEXT, line="b"),
        ("b", "a"),
    ),
}


@pytest.mark.parametrize("case", ROUTES)
def test_a_route_is_chosen_by_number_kind_and_who_wrote(case: str) -> None:
    """The first route that takes the text."""
    routes, text, expected = ROUTES[case]
    assert way(routes, text) == expected


def test_a_text_goes_by_the_first_line_that_is_up() -> None:
    """A line that asks for a pause is left in peace for so long; the next takes its texts."""
    a, b = Says(BUSY), Says()
    lines = Lines({"a": a, "b": b}, (), {})
    assert lines.send(TEXT, NOW) == replace(TAKEN, line="b")
    assert lines.send(TEXT, NOW + timedelta(seconds=29)).line == "b"
    assert len(a.got) == 1
    a.answer = TAKEN
    assert lines.send(TEXT, NOW + timedelta(seconds=30)).line == "a"


@pytest.mark.parametrize(
    ("answer", "rest_s"),
    [(BUSY, 30), (SILENT, 2), (replace(BUSY, rest=timedelta(days=1)), 600)],
)
def test_a_text_that_no_line_takes_is_put_off(answer: Handover, rest_s: int) -> None:
    """Until the first of them is to be asked again, ten minutes at most."""
    lines = Lines({"a": Says(answer)}, (), {})
    until = NOW + timedelta(seconds=rest_s)
    for _ in range(2):
        handover = lines.send(TEXT, NOW)
        assert (handover.fate, handover.put_off_until) == (Fate.TRY_LATER, until)


@pytest.mark.parametrize(
    "answer", [Handover(Fate.FAILED, "barred"), Handover(Fate.TRY_LATER, "this text not now")]
)
def test_what_is_said_of_the_text_is_not_asked_of_the_next_line(answer: Handover) -> None:
    """Only a line that is down is passed over."""
    b = Says()
    assert Lines({"a": Says(answer), "b": b}, (), {}).send(TEXT, NOW).detail == answer.detail
    assert not b.got


def test_a_text_that_no_route_takes_fails_and_says_so() -> None:
    """Somebody must set a route; to try again would not help."""
    lines = Lines({"a": Says()}, (Route(("a",), ("+99900",)),), {})
    assert lines.send(TEXT, NOW).fate is Fate.FAILED


def test_a_quota_ends_a_lines_day_and_the_next_line_goes_on() -> None:
    """Segments are counted, of today; the count is asked for anew now and then."""
    a, b = Says(), Says()
    used, noted = [3], []
    lines = Lines(
        {"a": a, "b": b},
        (),
        {"a": Terms(a_day=5)},
        used=lambda line, now: used[0],
        note=lambda line, said, now: noted.append((line, said.rest, said.detail)),
    )
    assert [lines.send(TEXT, NOW).line for _ in range(3)] == ["a", "a", "b"]
    lines.send(TEXT, NOW + timedelta(seconds=11))
    full = ("a", timedelta(minutes=1), "a has sent what its day allows")
    assert full in noted  # for people to see
    used[0] = 0  # midnight
    assert lines.send(TEXT, NOW + timedelta(minutes=2)).line == "a"


def test_no_quota_keeps_a_danger() -> None:
    """It is counted, and what is not urgent goes on by the next line."""
    lines = Lines(
        {"a": Says(), "b": Says()}, (), {"a": Terms(a_day=1)}, used=lambda line, now: 1
    )
    assert lines.send(replace(TEXT, urgent=True), NOW).line == "a"
    assert lines.send(TEXT, NOW).line == "b"


def test_a_rate_is_waited_for_in_turn() -> None:
    """Two a second: each has its turn half a second after the one before."""
    at = [100.0]
    pace = Pace(2, lambda: at[0])
    assert [pace.take(1.0) for _ in range(3)] == [0.0, 0.5, 1.0]
    assert pace.take(1.0) == 1.5  # no turn is taken
    at[0] += 1.0
    assert pace.take(1.0) == 0.5


def test_a_text_above_the_rate_is_put_off() -> None:
    """Where it would have to wait for long."""
    lines = Lines({"a": Says()}, (), {"a": Terms(a_second=0.1)}, wait=lambda s: None)
    assert lines.send(TEXT, NOW).fate is Fate.ACCEPTED
    put_off = lines.send(TEXT, NOW).put_off_until
    assert put_off is not None
    assert timedelta(seconds=9) < put_off - NOW <= timedelta(seconds=10)


def test_a_text_that_may_have_left_stays_in_doubt_where_no_line_takes_it() -> None:
    """Whichever of the lines it may have left by."""
    lost = replace(SILENT, in_doubt=True, put_off_until=NOW + timedelta(seconds=20))
    lines = Lines({"a": Says(lost), "b": Says(BUSY)}, (), {})
    handover = lines.send(TEXT, NOW)
    assert handover.in_doubt and handover.put_off_until == NOW + timedelta(seconds=20)
    assert not Lines({"b": Says(BUSY)}, (), {}).send(TEXT, NOW).in_doubt


def test_how_a_line_fares_is_noted_when_it_changes() -> None:
    """Not for each text: that would be a row for each."""
    noted: list[tuple[str, Fate]] = []

    def note(line: str, said: Handover, now: datetime) -> None:
        noted.append((line, said.fate))

    a = Says()
    lines = Lines({"a": a}, (), {}, note=note)
    for _ in range(5):
        lines.send(TEXT, NOW)
    a.answer = BUSY
    lines.send(TEXT, NOW)
    assert noted == [("a", Fate.ACCEPTED), ("a", Fate.TRY_LATER)]


def test_the_time_is_of_the_first_operator_that_tells_one() -> None:
    """A modem tells none."""
    assert Lines({"a": Says(), "b": Says(clock=NOW)}, (), {}).time() == NOW


# --- lists ------------------------------------------------------------------------------------


@dataclass
class SaysInLists(Says):
    """The same, of whole lists."""

    at_once = 20
    lists: int = 0

    def in_lists(self, outgoing: Outgoing, now: datetime) -> bool:
        return True

    def send_all(self, texts: Sequence[Outgoing], now: datetime) -> list[Handover | None]:
        self.lists += 1
        if self.answer.answered and self.answer.rest is None:
            return [self.send(each, now) for each in texts]
        return [self.send(texts[0], now), *([None] * (len(texts) - 1))]


SOME = tuple(replace(TEXT, message_id=f"t-{n}", phone=f"+44770090010{n}") for n in range(3))


def test_a_line_without_a_rate_takes_lists_and_its_name_stands_on_each() -> None:
    """Beside a modem, which takes none."""
    a, b = SaysInLists(), Says()
    lines = Lines({"a": a, "b": b}, (), {"a": Terms()})
    assert lines.at_once == 20 and lines.in_lists(TEXT, NOW)
    assert lines.send_all(SOME, NOW) == [replace(TAKEN, line="a")] * 3
    assert a.lists == 1 and not b.got


@pytest.mark.parametrize("terms", [Terms(a_second=5.0), Terms(a_day=100)])
def test_a_rate_and_a_quota_are_kept_text_by_text(terms: Terms) -> None:
    """A list would be over them."""
    lines = Lines({"a": SaysInLists()}, (), {"a": terms})
    assert lines.at_once == 0 and not lines.in_lists(TEXT, NOW)


@pytest.mark.parametrize("answer", [BUSY, SILENT])
def test_what_a_line_that_is_down_was_offered_goes_on_to_the_next(answer: Handover) -> None:
    """The rest of the list was offered to nobody, and goes there by itself."""
    a, b = SaysInLists(answer), Says()
    lines = Lines({"a": a, "b": b}, (), {})
    assert lines.send_all(SOME, NOW) == [replace(TAKEN, line="b"), None, None]
    assert not lines.in_lists(SOME[1], NOW)
    assert lines.send(SOME[1], NOW).line == "b"


def test_after_a_rest_a_line_is_offered_few_and_then_all() -> None:
    """One by itself, then lists as long as went: who is starting meets no whole morning."""
    a = SaysInLists(SILENT)
    lines = Lines({"a": a}, (), {})
    many = tuple(replace(TEXT, message_id=f"m-{n}") for n in range(100))
    lines.send_all(many, NOW)
    a.answer, later = TAKEN, NOW + timedelta(seconds=2)
    assert not lines.in_lists(TEXT, later)
    assert lines.send(TEXT, later).fate is Fate.ACCEPTED
    assert lines.in_lists(TEXT, later)
    a.got, a.lists = [], 0
    assert lines.send_all(many, later) == [replace(TAKEN, line="a")] * 100
    assert (len(a.got), a.lists) == (100, 7)  # 1, 2, 4, 8, 16, 32, 37


def test_one_text_tries_a_line_and_the_others_keep_their_places_meanwhile() -> None:
    """Several hands would meet it with as many texts."""

    @dataclass
    class Asks(Says):
        lines: Lines | None = None
        others: list[Handover] = field(default_factory=list)

        def send(self, outgoing: Outgoing, now: datetime) -> Handover:
            if self.lines and outgoing == TEXT:
                self.others.append(self.lines.send(SOME[2], now))
            return super().send(outgoing, now)

    a = Asks(SILENT)
    a.lines = lines = Lines({"a": a}, (), {})
    lines.send(SOME[0], NOW)
    assert lines.send(SOME[2], NOW).in_place
    a.answer = TAKEN
    later = NOW + timedelta(seconds=2)
    assert lines.send(TEXT, later).fate is Fate.ACCEPTED
    assert [each.in_place for each in a.others] == [True]
    assert lines.send(SOME[2], later).fate is Fate.ACCEPTED


def test_it_is_told_which_routes_rest() -> None:
    """One rests where all its lines do."""
    north, south = Route(("a", "b"), ("+254",)), Route(("b",))
    a, b = Says(BUSY), Says()
    lines = Lines({"a": a, "b": b}, (north, south), {})
    there = replace(TEXT, phone="+254700900101")
    lines.send(there, NOW)
    assert [each.rests for each in lines.routes_stand(NOW)] == [False, False]
    b.answer = BUSY
    lines.send(there, NOW)
    assert [each.rests for each in lines.routes_stand(NOW)] == [True, True]
    assert lines.all_rest(NOW) and not lines.all_rest(NOW + timedelta(seconds=30))
