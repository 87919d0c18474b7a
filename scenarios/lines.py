"""The lines that a season can be played over: the operator's side of each, and ours."""

import json
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path

from assistant.channel import Clock, News, Screen
from assistant.service.arrivals import take
from assistant.service.house import House
from assistant.settings import Settings
from assistant.wiring.lines import Opened
from gateway_sim import OperatorController
from gateway_sim.provider import Provider
from gateway_sim.smpp import Centre
from scenarios.clock import VirtualClock

SECRET = "a season's own"
WIRE = "wire"
_FOLDER = Path(__file__).parent / "district" / "lines"


class OwnWire:
    """Our own wire."""

    def operator(self, clock: VirtualClock) -> OperatorController:
        """The simulated operator, as this line has it."""
        return OperatorController(secret=SECRET, clock=clock)

    def settings(
        self, settings: Settings, operator: OperatorController, folder: Path
    ) -> Settings:
        """The settings that have the assistant work over this line; files go into `folder`."""
        return settings

    def callback(self, url: str) -> str:
        """What the operator calls, where it does."""
        return url

    @contextmanager
    def kept(self, house: House, opened: Opened, clock: VirtualClock) -> Iterator[None]:
        """Keeps the connection of a line that has one, until the block ends."""
        yield


class Mapped(OwnWire):
    """An invented provider by its mapping file."""

    def __init__(self, name: str) -> None:
        self._name = name
        self._mapping = _FOLDER / f"{name}.toml"

    def operator(self, clock: VirtualClock) -> OperatorController:
        secrets = {"token": SECRET, "user": "u", "password": SECRET, "secret": SECRET}
        return OperatorController(
            side=lambda now: Provider(self._mapping, "", secrets, now, 10), clock=clock
        )

    def settings(
        self, settings: Settings, operator: OperatorController, folder: Path
    ) -> Settings:
        return _with_lines(
            settings,
            folder,
            name=self._name,
            kind="http",
            mapping=str(self._mapping),
            address=operator.url,
            sender=settings.sender,
            token=SECRET,
            user="u",
            password=SECRET,
        )

    def callback(self, url: str) -> str:
        return f"{url}/gateway/{self._name}"


class Smpp(OwnWire):
    """An SMPP account at a message centre."""

    def __init__(self) -> None:
        self._centres: list[Centre] = []

    def operator(self, clock: VirtualClock) -> OperatorController:
        def centre(now: Clock) -> Centre:
            self._centres = [Centre(now)]
            return self._centres[0]

        return OperatorController(side=centre, clock=clock)

    def settings(
        self, settings: Settings, operator: OperatorController, folder: Path
    ) -> Settings:
        account = self._centres[0].account
        return _with_lines(
            settings,
            folder,
            name="smpp",
            kind="smpp",
            host="127.0.0.1",
            port=self._centres[0].port,
            system_id=account.system_id,
            password=account.password,
            sender=settings.sender,
            ussd_code=settings.ussd_code,
        )

    @contextmanager
    def kept(self, house: House, opened: Opened, clock: VirtualClock) -> Iterator[None]:
        assert opened.lines is not None

        def heard(news: News) -> Screen | None:
            return take(house, news, clock())

        opened.lines.open(heard, clock)
        try:
            if not self._centres[0].wait_bound():
                raise RuntimeError("the assistant did not bind to the message centre")
            yield
        finally:
            opened.lines.close()


def _with_lines(settings: Settings, folder: Path, **terms: str | int) -> Settings:
    """Settings with a file of one line in a folder."""
    path = folder / "lines.toml"
    words = "".join(f"{name} = {json.dumps(value)}\n" for name, value in terms.items())
    path.touch(mode=0o600)
    path.write_text("[[line]]\n" + words)
    return replace(settings, lines_file=str(path))


LINES: dict[str, OwnWire] = {
    WIRE: OwnWire(),
    "hill": Mapped("hill"),
    "river": Mapped("river"),
    "smpp": Smpp(),
}
"""By name, as `scenarios play --line` has it."""
