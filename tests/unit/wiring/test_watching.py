"""Figures for who watches: numbers of this moment, on this machine only."""

import socket
import urllib.error
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace

import click
import pytest

from assistant.channel import Fate, Receipt
from assistant.people import Village
from assistant.service.dispatch import take_receipts
from assistant.service.pulse import SENDING, Beat
from assistant.wiring.watching import ProcessCounts, watched
from tests.stages import furnish, staged, stages
from tests.valley import AMINA, KIJANI, Staged, Valley, settle

__all__ = ["furnish", "staged", "stages"]


@pytest.fixture
def valley(staged: Staged) -> Valley:
    """A valley whose work is counted."""
    found = staged(settle)
    found.house = replace(found.house, meter=ProcessCounts())
    return found


@pytest.fixture
def kijani() -> Village:
    """The first village by name."""
    return KIJANI


@pytest.fixture
def port() -> int:
    """One that is free."""
    with socket.create_server(("127.0.0.1", 0)) as found:
        number: int = found.getsockname()[1]
        return number


_BEAT = 'nursery_beat_timestamp_seconds{part="sending"}'


@contextmanager
def _read(valley: Valley, port: int) -> Iterator[str]:
    with (
        watched(valley.house, port, lambda: valley.now),
        urllib.request.urlopen(f"http://127.0.0.1:{port}/metrics") as answer,
    ):
        yield answer.read().decode()


def test_what_waits_and_what_lives_stands_in_it(valley: Valley, port: int) -> None:
    """By lane; of who lives no phone."""
    valley.post(AMINA, "START")
    Beat(valley.house, SENDING)(valley.now)
    with _read(valley, port) as told:
        lines = told.splitlines()
    assert 'nursery_texts_waiting{lane="answer"} 1.0' in lines
    assert 'nursery_texts_waiting{lane="danger"} 0.0' in lines
    (beat,) = (each for each in lines if each.startswith(_BEAT))
    assert float(beat.split()[1]) == valley.now.timestamp()
    assert 'nursery_beat_timestamp_seconds{part="ticking"} 0.0' in lines
    assert 'nursery_fault{fault="ticking"} 1.0' in lines
    assert "nursery_set_aside 0.0" in lines and "nursery_database_up 1.0" in lines
    assert AMINA.lstrip("+") not in told


def test_turns_texts_and_receipts_are_counted(valley: Valley, port: int) -> None:
    """By what this process did."""
    valley.post(AMINA, "START")
    valley.send()
    with valley.house.store.look() as work:
        (text,) = work.outbox.of_phone(AMINA)
    take_receipts(
        valley.house, [Receipt(text.message_id, Fate.DELIVERED, valley.now)], valley.now
    )
    with _read(valley, port) as told:
        lines = told.splitlines()
    assert 'nursery_turn_seconds_count{channel="sms"} 1.0' in lines
    assert 'nursery_texts_handed_total{fate="accepted"} 1.0' in lines
    assert 'nursery_texts_handed_total{fate="failed"} 0.0' in lines
    assert any(each.startswith("nursery_receipts_total ") for each in lines)


def test_a_database_that_is_away_is_told_beside_the_rest(
    valley: Valley, port: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The figures of the process are wanted just then."""

    def away() -> None:
        raise OSError("gone")

    monkeypatch.setattr(valley.house.store, "look", away)
    with _read(valley, port) as told:
        assert "nursery_database_up 0.0" in told and "nursery_texts_waiting" not in told


def test_a_port_that_is_taken_is_told_with_what_to_do(valley: Valley, port: int) -> None:
    """Each process has its own."""
    with (
        socket.create_server(("127.0.0.1", port)),
        pytest.raises(click.ClickException, match="NURSERY_METRICS_PORT"),
        watched(valley.house, port, lambda: valley.now),
    ):
        pass


def test_without_a_port_nothing_listens(valley: Valley) -> None:
    """That is how it comes."""
    with watched(valley.house, 0, lambda: valley.now):
        pass


def test_the_port_is_closed_with_the_process(valley: Valley, port: int) -> None:
    """So that the next one can have it."""
    with _read(valley, port):
        pass
    with pytest.raises(urllib.error.URLError):
        urllib.request.urlopen(f"http://127.0.0.1:{port}/metrics")
