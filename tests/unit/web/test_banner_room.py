"""A full disk stands on every page, and in the answer to who watches."""

import pytest

from assistant.service import pulse as pulses
from assistant.service.pulse import SENDING, TICKING, Beat
from assistant.web.app import create_app
from tests.unit.web.conftest import PASSWORD, NewBrowser, give_password
from tests.valley import KIJANI, OFFICER, Valley, settle


def way(valley: Valley) -> None:
    """An officer with a password."""
    settle(valley)
    valley.add_officer(KIJANI)
    give_password(valley)


def test_a_full_disk_is_on_the_page_and_in_the_ready_check(
    valley: Valley, new_browser: NewBrowser, monkeypatch: pytest.MonkeyPatch
) -> None:
    """And gone from both once there is room."""
    app = create_app(valley.house, secret="wire", wake=valley.send, clock=lambda: valley.now)
    for part in (SENDING, TICKING):
        Beat(valley.house, part)(valley.now)
    browser = new_browser()
    browser.sign_in(OFFICER, PASSWORD)
    for least, faults in ((10**18, ["room"]), (0, [])):
        monkeypatch.setattr(pulses, "LEAST_FREE", least)
        answer = app.test_client().get("/health/ready")
        assert (answer.status_code, answer.json) == (503 if faults else 200, {"faults": faults})
        assert ("disk is full or nearly" in browser.open("/morning")) == bool(faults)
