"""Two lines to the same phones, a modem first and an operator's account beside it: a text goes
by the first that is up; what phones write comes by the one that they text."""

import json
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any, cast

from flask import Flask

from assistant.channel import News, Screen
from assistant.gateways.lines import Lines
from assistant.service.arrivals import take
from assistant.service.house import House
from assistant.settings import Settings
from assistant.wiring.lines import Opened
from gateway_sim import OperatorController
from gateway_sim.callbacks import Reply, Side
from gateway_sim.modem import Modem
from gateway_sim.record import EntryKind
from gateway_sim.smpp import Centre
from gateway_sim.wire import HandedIn
from scenarios.clock import VirtualClock
from scenarios.lines import OwnWire

if TYPE_CHECKING:
    from gateway_sim.network import Network

ROUTES = """
[[route]]
kinds = ["warning"]
lines = ["north", "desk"]
[[route]]
lines = ["desk", "north"]
"""


class Beside:
    """Two sides of one network. `texted` is the one whose number phones text."""

    url = ""

    def __init__(self, modem: Modem, centre: Centre) -> None:
        self.modem, self.centre = modem, centre
        self.texted: Side = modem
        self.took: dict[str, Side] = {}

    def serve(self, app: Flask, network: "Network") -> None:
        """Both take texts."""
        for side in (self.modem, self.centre):
            side.serve(app, cast("Network", _Noting(network, side, self.took)))

    def call(self, path: str, fields: Mapping[str, Any]) -> Reply:
        """A receipt comes from the side that took the text."""
        if path == "/gateway/receipt":
            return self.took[fields["id"]].call(path, fields)
        return self.texted.call(path, fields)

    def close(self) -> None:
        """Both end."""
        self.modem.close()
        self.centre.close()


class _Noting:
    """The network, as one side has it: what that side hands in is known to be its own."""

    def __init__(self, network: "Network", side: Side, took: dict[str, Side]) -> None:
        self._network, self._side, self._took = network, side, took

    def hand_in(self, text: HandedIn) -> Any:
        self._took[text.id] = self._side
        return self._network.hand_in(text)

    def __getattr__(self, name: str) -> Any:
        return getattr(self._network, name)


class TwoLines(OwnWire):
    """A modem, `desk`, and an account, `north`, which takes warnings first."""

    sides: Beside
    lines: Lines

    def operator(self, clock: VirtualClock) -> OperatorController:
        """Both at one network."""

        def side(now: VirtualClock) -> Side:
            self.sides = Beside(Modem(now), Centre(now))
            return self.sides

        return OperatorController(side=cast(Any, side), clock=clock)

    def settings(
        self, settings: Settings, operator: OperatorController, folder: Path
    ) -> Settings:
        """A file of two lines, and of what goes by which."""
        centre = self.sides.centre
        desk = {"name": "desk", "kind": "modem", "port": self.sides.modem.port, "send_s": 60}
        desk |= {"poll_s": 0.3}
        north = {"name": "north", "kind": "smpp", "host": "127.0.0.1", "port": centre.port}
        north |= {"system_id": "nursery", "password": "secret", "sender": settings.sender}
        north |= {"ussd_code": settings.ussd_code, "answer_s": 60}
        path = folder / "lines.toml"
        path.touch(mode=0o600)
        path.write_text("".join(map(_line, (desk, north))) + ROUTES)
        return replace(settings, lines_file=str(path))

    def went_by(self, operator: OperatorController) -> list[str]:
        """The lines by which texts reached phones, the latest last."""
        delivered = operator.recorded(EntryKind.DELIVERED)
        names: dict[Side, str] = {self.sides.modem: "desk", self.sides.centre: "north"}
        return [names[self.sides.took[each.id]] for each in delivered]

    def trouble(self, faults: Sequence[str]) -> None:
        """What goes wrong is done to the sides themselves."""

    @contextmanager
    def kept(self, house: House, opened: Opened, clock: VirtualClock) -> Iterator[None]:
        """Both connections."""
        assert opened.lines is not None
        lines = self.lines = opened.lines

        def heard(news: News) -> Screen | None:
            return take(house, news, clock())

        lines.open(heard, clock)
        try:
            assert lines.wait_up(60), lines.why
            yield
        finally:
            lines.close()


def _line(terms: Mapping[str, object]) -> str:
    said = "".join(f"{name} = {json.dumps(value)}\n" for name, value in terms.items())
    return f"[[line]]\n{said}"
