"""`nursery alert` and `nursery village codes`: typed at a desk, told in words."""

from pathlib import Path

import pytest
from click.testing import CliRunner, Result
from freezegun import freeze_time

from assistant.__main__ import main
from assistant.places import Point
from assistant.store import Store
from tests.cap import area, cap, code, info

NOON = "2026-06-12T12:00+03:00"


@pytest.fixture
def store(_copied_sqlite: str) -> Store:
    """Two villages, nobody in them."""
    store = Store(_copied_sqlite)
    with store.work() as work:
        for name in ("Kijani", "Mto Mwanga"):
            work.people.add_village(name, "Africa/Nairobi")
    return store


@pytest.fixture(autouse=True)
def deployment(store: Store, _copied_sqlite: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """Its settings, in the environment; a gateway, so that it is no demo."""
    monkeypatch.setenv("NURSERY_DATABASE_URL", _copied_sqlite)
    monkeypatch.setenv("NURSERY_ZONE", "Africa/Nairobi")
    monkeypatch.setenv("NURSERY_GATEWAY_URL", "http://127.0.0.1:9")


def nursery(*words: str) -> Result:
    """The command with these words; a fault is told and is no traceback."""
    result = CliRunner().invoke(main, words)
    assert result.exception is None or isinstance(result.exception, SystemExit)
    return result


def place(store: Store) -> None:
    """Kijani lies in the area of the alert; nobody knows where Mto Mwanga is."""
    with store.work() as work:
        work.alerts.set_point(1, Point(-1.0, 37.0))


def message(folder: Path, raw: bytes) -> str:
    path = folder / "alert.xml"
    path.write_bytes(raw)
    return str(path)


def test_trying_a_message_tells_what_would_follow_and_keeps_nothing(
    tmp_path: Path, store: Store
) -> None:
    """In the service's own words, with its hours here."""
    place(store)
    result = nursery("alert", message(tmp_path, cap()), "--at", NOON)
    assert result.exit_code == 0
    assert result.output.splitlines() == [
        "LWS-1 of weather@lindara.example.org, sent 2026-06-12 06:00, not signed",
        "Actual Alert, Public",
        "en: Orange: heavy rain in the Lindara valley",
        "  Heavy rain (Met): Severe, Expected, Likely",
        "  Lindara valley: 1 polygons, 0 circles, 0 codes",
        "No alert can find these yet: Mto Mwanga (nursery village place, or codes)",
        "A draft would wait: heavy rain: Kijani, 2026-06-12 14:00 to 2026-06-12 20:00, likely",
    ]
    with store.look() as work:
        assert work.alerts.latest(5) == ()


def test_what_leads_to_nothing_says_why(tmp_path: Path) -> None:
    """With the words of the page."""
    path = message(tmp_path, cap(status="Test"))
    assert "A test, exercise or draft; nothing was done." in nursery("alert", path).output


def test_a_faulty_message_lists_its_faults(tmp_path: Path) -> None:
    """And the status of the command says so; signs that move a terminal are not shown."""
    result = nursery("alert", message(tmp_path, cap(sent="now\u202e\x9b")))
    assert result.exit_code == 1
    assert "alert/sent: not a time with its zone in digits" in result.output
    assert "\x9b" not in result.output and "\u202e" not in result.output


@freeze_time("2026-06-12T09:00:00+00:00")
def test_a_message_can_be_taken_by_hand(tmp_path: Path, store: Store) -> None:
    """Once; it is kept as from any source."""
    nursery("village", "codes", "kijani", "ward=3")
    held = area(polygon=None, geocode=code("WARD", "3"))
    path = message(tmp_path, cap(info=info(area=held)))
    assert "Taken: Drafted for the officer." in nursery("alert", path, "--take").output
    assert "Taken before" in nursery("alert", path, "--take").output
    with store.look() as work:
        (kept,) = work.alerts.latest(5)
        assert kept.source == path and work.drafts.of_alert(kept.id)


REFUSED: tuple[tuple[str, ...], ...] = (
    ("alert", "nowhere.xml"),
    ("alert", "FILE", "--at", "2026-06-12T06:00"),
    ("alert", "FILE", "--at", "noon"),
    ("alert", "FILE", "--take", "--at", NOON),
    ("village", "codes", "Kijani", "ward"),
    ("village", "codes", "Nowhere", "ward=3"),
)


@pytest.mark.parametrize("words", REFUSED, ids=" ".join)
def test_what_cannot_be_done_is_refused(tmp_path: Path, words: tuple[str, ...]) -> None:
    """In a line that says what to write."""
    path = message(tmp_path, cap())
    result = nursery(*(path if word == "FILE" else word for word in words))
    assert result.exit_code in (1, 2) and "Error" in result.output
