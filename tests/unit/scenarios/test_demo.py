"""The demo: a filled valley whose clock is pushed, and a door that opens once."""

from collections.abc import Iterator
from datetime import timedelta
from threading import Event, Thread

import pytest
import requests

from scenarios.clock import RunningClock
from scenarios.demo import Valley, open_valley
from tests.valley import at

AMINA, JUMA = "+447700900151", "+447700900156"


@pytest.fixture(scope="module")
def valley() -> Iterator[Valley]:
    """Open on free ports, and served."""
    ended = Event()
    with open_valley(0, 0) as found:
        thread = Thread(target=found.serve, args=(ended.is_set,))
        thread.start()
        yield found
        ended.set()
        thread.join()


def test_the_valley_is_filled(valley: Valley) -> None:
    """Mid-season: beds, a call for help in its own words, nothing that went wrong."""
    assert valley.local().startswith("Wednesday 17 June")
    phone = valley.stage.operator.phone(JUMA)
    assert any("chickens are in my seedbed" in text for text in phone.texts)
    assert not valley.stage.trouble and not valley.stage.operator.faults


def test_the_door_opens_once(valley: Valley) -> None:
    """Who has the link is the lead; the second time it is no page at all."""
    browser, other = requests.Session(), requests.Session()
    assert "sign-in" not in browser.get(valley.link, timeout=60).url
    assert "chickens are in my seedbed" in browser.get(valley.stage.url, timeout=60).text
    assert "/sign-in" in other.get(valley.link, timeout=60).url or other.get(
        valley.link, timeout=60
    ).status_code in (403, 404)


def test_a_push_brings_the_texts_of_the_next_morning(valley: Valley) -> None:
    """From the phone page; the phone hears what is due."""
    phone = valley.stage.operator.phone(AMINA)
    heard = len(phone.texts)
    url = f"{valley.stage.operator.url}/clock"
    assert requests.post(url, json={"push": "morning"}, timeout=60).status_code == 202
    assert phone.wait_for(heard + 1, 60)
    assert requests.post(url, json={"push": "yesterday"}, timeout=60).status_code == 400


def test_a_clock_that_runs_goes_with_its_people() -> None:
    """It stands until it runs, can be moved on at any time, and never goes back."""
    steady = [100.0]
    clock = RunningClock(at("1 Jun 08:00"), lambda: steady[0])
    steady[0] += 60
    assert clock.now == at("1 Jun 08:00")
    clock.run()
    steady[0] += 60
    assert clock.now == at("1 Jun 08:01")
    clock.to(at("2 Jun 06:00"))
    clock.to(at("1 Jun 12:00"))
    steady[0] += 1
    assert clock() - at("2 Jun 06:00") == timedelta(seconds=1)
