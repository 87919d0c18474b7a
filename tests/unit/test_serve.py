"""Ports of the web side."""

from collections.abc import Iterator
from dataclasses import replace
from typing import Any

import click
import pytest

from assistant.commands import serve
from assistant.service.house import House
from assistant.settings import Settings
from assistant.store import Store
from assistant.wiring.lines import open_lines
from tests.valley import house_of

TAKEN = 8499
SETTINGS = Settings(
    gateway_url="http://127.0.0.1:9", gateway_secret="s" * 32, port=8470, calls_port=8472
)


@pytest.fixture
def house(_copied_sqlite: str) -> Iterator[House]:
    store = Store(_copied_sqlite)
    yield house_of(store)
    store.close()


@pytest.fixture
def served(monkeypatch: pytest.MonkeyPatch) -> dict[int, Any]:
    """What is answered at each port."""
    apps: dict[int, Any] = {}

    class Server:
        def run(self) -> None: ...
        def close(self) -> None: ...

    def listen(app: Any, host: str, port: int, **more: Any) -> Server:
        if port == TAKEN:
            raise OSError("it is in use")
        apps[port] = app.test_client()
        return Server()

    monkeypatch.setattr(serve, "listen", listen)
    return apps


def test_operators_call_at_a_port_of_their_own_which_has_no_pages(
    house: House, served: dict[int, Any]
) -> None:
    """And at the old one too, so that an operator may change over when it likes."""
    lines = open_lines(SETTINGS, house)
    with serve._web(house, SETTINGS, lines, lambda: None):
        pages, calls = served[8470], served[8472]
    assert pages.get("/sign-in").status_code == 200
    assert calls.get("/health").status_code == 200
    for path in ("/sign-in", "/morning", "/"):
        assert calls.get(path).status_code == 404
    for each in (pages, calls):
        assert each.post("/gateway/ussd").status_code == 401


def test_a_port_that_is_taken_is_named_with_its_setting(
    house: House, served: dict[int, Any]
) -> None:
    """So that it is clear which of the two to change."""
    settings = replace(SETTINGS, calls_port=TAKEN)
    lines = open_lines(settings, house)
    with (
        pytest.raises(click.ClickException, match="NURSERY_CALLS_PORT"),
        serve._web(house, settings, lines, lambda: None),
    ):
        pass
