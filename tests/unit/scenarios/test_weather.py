"""The network's weather: lines of a season, and what becomes of messages under them."""

from datetime import UTC, datetime, timedelta

import pytest

from gateway_sim.handlers import Answer, Fates, InTransit, Way, ask
from scenarios.season import NetworkChange, Person
from scenarios.weather import handler, read_network

PEOPLE = {"Amani": Person("Amani", "+447700900101")}
NOW = datetime(2026, 6, 1, 6, 0, tzinfo=UTC)
AT_ONCE, LATER = timedelta(0), timedelta(minutes=10)


def delays(line: str, way: Way, phone: str = "+447700900101") -> tuple[timedelta, ...]:
    """When the copies of a message arrive under what a line says."""
    fault = read_network(line, PEOPLE).fault
    assert fault is not None
    return ask(handler([fault]), way, InTransit("m", way, phone, "x", NOW), Fates()).delays


@pytest.mark.parametrize(
    ("line", "way", "expected"),
    [
        ("loses texts to Amani", "to_phone", ()),
        ("loses texts to Amani", "to_assistant", (AT_ONCE,)),
        ("repeats texts from everybody", "to_assistant", (AT_ONCE, AT_ONCE)),
        ("delays receipts of Amani by 10 minutes", "receipt", (LATER,)),
        ("swaps texts to Amani by 10 minutes", "to_phone", (LATER,)),
        ("loses screens of Amani", "ussd", ()),
    ],
)
def test_a_line_touches_the_way_that_it_names(
    line: str, way: Way, expected: tuple[timedelta, ...]
) -> None:
    """Texts to and from, receipts and screens are each their own."""
    assert delays(line, way) == expected


def test_a_line_touches_nobody_but_whom_it_names() -> None:
    """Another phone's texts arrive."""
    assert delays("loses texts to Amani", "to_phone", "+447700900102") == (AT_ONCE,)


def test_only_so_many_are_touched_where_a_number_is_said() -> None:
    """The second one arrives."""
    fault = read_network("loses the first 1 texts to Amani", PEOPLE).fault
    assert fault is not None
    weather = handler([fault])
    message = InTransit("m", "to_phone", "+447700900101", "x", NOW)
    assert [len(ask(weather, "to_phone", message, Fates()).delays) for _ in "12"] == [0, 1]


def test_a_busy_operator_takes_nothing_and_fair_weather_takes_all() -> None:
    """503 asks the assistant to try later; well again, there is no fault at all."""
    busy = read_network("is busy", PEOPLE).fault
    assert busy is not None
    message = InTransit("m", "to_phone", "+447700900101", "x", NOW)
    assert handler([busy]).submission(message, Answer()).code == 503
    assert handler([]).submission(message, Answer()).code == 202
    assert read_network("is well", PEOPLE) == NetworkChange(None)
