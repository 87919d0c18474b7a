"""The watch for official alerts: what it takes, and what it does when a source fails."""

from collections.abc import Iterator
from datetime import timedelta
from pathlib import Path
from threading import Event

import pytest

from assistant.alert_watch import AlertWatch
from assistant.alerts.sources import Look, Stamp
from assistant.gateways.alert_files import AlertFiles
from assistant.places import Geocode
from assistant.service.alerts import watch as alert_watch
from assistant.service.alerts.taking import take_alert
from assistant.store import Became, DatabaseFailedError, SourceLook, Store
from tests.cap import area, cap, code, info
from tests.valley import KIJANI, OFFICER, Valley, at, house_of, settle

ALERT = cap(info=info(area=area(polygon=None, geocode=code("WARD", "1"))))
EVERY = timedelta(minutes=5)


@pytest.fixture
def valley(_copied_sqlite: str) -> Iterator[Valley]:
    """Two villages, of which the first has an officer and a code."""
    store = Store(_copied_sqlite)
    valley = Valley(house_of(store), at("12 Jun 08:00"))
    settle(valley)
    valley.add_officer(KIJANI)
    with store.work() as work:
        work.alerts.set_geocodes(KIJANI.id, [Geocode("WARD", "1")])
    yield valley
    store.close()


class Broken:
    """A source whose look fails in a way that nobody thought of."""

    name = "broken"

    def look(self, before: Stamp) -> Look:
        """Fails."""
        raise RuntimeError("nobody thought of this")

    def done(self, key: str) -> None:
        """Never."""


def sources(valley: Valley) -> dict[str, SourceLook]:
    with valley.house.store.look() as work:
        return {each.name: each for each in work.alert_sources.all()}


def test_what_a_folder_holds_is_taken_once(valley: Valley, tmp_path: Path) -> None:
    """And not more often than it is time for; the officer is told."""
    (tmp_path / "a.xml").write_bytes(ALERT)
    folder = AlertFiles(tmp_path)
    (kept,) = alert_watch.look_at(valley.house, folder, valley.now, EVERY)
    assert kept.became is Became.DRAFTED and kept.source == str(tmp_path)
    (tmp_path / "b.xml").write_bytes(ALERT)
    assert alert_watch.look_at(valley.house, folder, valley.now, EVERY) == ()
    assert alert_watch.look_at(valley.house, folder, valley.now + EVERY, EVERY) == ()
    valley.send()
    assert len(valley.heard(OFFICER)) == 1


def test_how_a_look_went_is_kept(valley: Valley, tmp_path: Path) -> None:
    """Also when all was well for the last time."""
    gone = AlertFiles(tmp_path / "gone")
    alert_watch.look_at(valley.house, gone, valley.now, EVERY)
    assert "gone" in sources(valley)[gone.name].trouble
    (tmp_path / "gone").mkdir()
    later = valley.now + EVERY
    alert_watch.look_at(valley.house, gone, later, EVERY)
    kept = sources(valley)[gone.name]
    assert (kept.trouble, kept.well_at, kept.looked_at) == ("", later, later)


def test_a_message_that_could_not_be_kept_is_taken_at_the_next_look(
    valley: Valley, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A database that was away loses no alert."""
    (tmp_path / "a.xml").write_bytes(ALERT)
    folder = AlertFiles(tmp_path)

    def away(*_: object) -> None:
        raise DatabaseFailedError("away")

    with monkeypatch.context() as broken:
        broken.setattr(alert_watch, "take_alert", away)
        with pytest.raises(DatabaseFailedError):
            alert_watch.look_at(valley.house, folder, valley.now, EVERY)
    assert len(alert_watch.look_at(valley.house, folder, valley.now + EVERY, EVERY)) == 1


def test_the_watch_goes_on_past_a_source_that_fails(valley: Valley, tmp_path: Path) -> None:
    """In a thread of its own; who sends texts is woken."""
    (tmp_path / "a.xml").write_bytes(ALERT)
    woken = Event()
    watch = AlertWatch(
        valley.house,
        [Broken(), AlertFiles(tmp_path)],
        every_s=300.0,
        wake=woken.set,
        clock=lambda: valley.now,
    )
    watch.start()
    assert woken.wait(10)
    watch.stop()


def test_what_led_to_nothing_is_forgotten_in_time(valley: Valley) -> None:
    """After three months, looked for once a day."""
    take_alert(valley.house, cap(status="Test"), "a", valley.now)
    watch = AlertWatch(
        valley.house, [], every_s=300.0, wake=lambda: None, clock=lambda: valley.now
    )
    for days, left in ((89, 1), (2, 0)):
        valley.now += timedelta(days=days)
        watch.round()
        with valley.house.store.look() as work:
            assert len(work.alerts.latest(5)) == left


def test_a_village_that_is_placed_later_is_found(valley: Valley, tmp_path: Path) -> None:
    """At the round after; no message has to come again."""
    (tmp_path / "a.xml").write_bytes(ALERT.replace(b">1</value>", b">2</value>"))
    watch = AlertWatch(
        valley.house,
        [AlertFiles(tmp_path)],
        every_s=300.0,
        wake=lambda: None,
        clock=lambda: valley.now,
    )
    watch.round()
    with valley.house.store.work() as work:
        assert work.alerts.latest(1)[0].became is Became.ELSEWHERE
        work.alerts.set_geocodes(KIJANI.id, [Geocode("WARD", "2")])
    watch.round()
    with valley.house.store.look() as work:
        assert work.alerts.latest(1)[0].became is Became.DRAFTED


def test_without_a_source_nothing_runs(valley: Valley) -> None:
    """Starting and stopping it does no harm."""
    watch = AlertWatch(
        valley.house, [], every_s=300.0, wake=lambda: None, clock=lambda: valley.now
    )
    watch.start()
    watch.stop()
