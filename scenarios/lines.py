"""The lines that a season can be played over: the operator's side of each, and ours."""

import json
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path

from assistant.channel import Clock, News, Screen
from assistant.gateways.modem import ModemGateway
from assistant.gateways.smpp import SmppGateway
from assistant.service.arrivals import take
from assistant.service.house import House
from assistant.settings import Settings
from assistant.wiring.lines import Opened
from gateway_sim import OperatorController
from gateway_sim.callbacks import Side
from gateway_sim.modem import Modem
from gateway_sim.provider import SimulatedProvider
from gateway_sim.smpp import Centre
from scenarios.clock import VirtualClock

SECRET = "a season's own"
WIRE = "wire"
UP_WITHIN_S = 60.0
ANSWERS_WITHIN_S = 60  # these sides answer at once, but where the machine is at work
NEVER_WITHIN_S = 2  # or never, where a fault has it so, which is waited for in real time
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

    def ready(self) -> None:
        """Waits, in real time, until a connection that broke is there again."""

    def patience(self, faults: Sequence[str]) -> None:
        """Says what will go wrong, so that nobody waits long for what never comes."""

    def trouble(self, faults: Sequence[str]) -> None:
        """What goes wrong on the connection, text by text; a line without one has none."""

    @contextmanager
    def kept(self, house: House, opened: Opened, clock: VirtualClock) -> Iterator[None]:
        """Keeps the connection of a line that has one, until the block ends."""
        yield


class Mapped(OwnWire):
    """An invented provider by its mapping file."""

    def __init__(self, name: str) -> None:
        self._name = name
        self._mapping = _FOLDER / f"{name}.toml"
        self._sides: list[SimulatedProvider] = []

    def operator(self, clock: VirtualClock) -> OperatorController:
        secrets = {"token": SECRET, "user": "u", "password": SECRET, "secret": SECRET}

        def side(now: Clock) -> Side:
            self._sides = [SimulatedProvider(self._mapping, "", secrets, now, 10)]
            return self._sides[0]

        return OperatorController(side=side, clock=clock)

    def trouble(self, faults: Sequence[str]) -> None:
        self._sides[0].faults.extend(faults)

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
            secret=SECRET,
        )

    def callback(self, url: str) -> str:
        return f"{url}/gateway/{self._name}"


class _Kept(OwnWire):
    """A line whose connection the assistant keeps. `unanswered` are the faults after which no
    answer comes, and nothing else tells so."""

    unanswered: frozenset[str]

    def __init__(self) -> None:
        self._sides: list[Centre | Modem] = []
        self._gateways: list[SmppGateway | ModemGateway] = []
        self._answers_s = ANSWERS_WITHIN_S

    def operator(self, clock: VirtualClock) -> OperatorController:
        def side(now: Clock) -> Side:
            self._sides = [self._side(now)]
            return self._sides[0]

        return OperatorController(side=side, clock=clock)

    def ready(self) -> None:
        for gateway in self._gateways:
            if not gateway.wait_up(UP_WITHIN_S):
                raise RuntimeError(f"the line does not come up: {gateway.why}")

    def patience(self, faults: Sequence[str]) -> None:
        self._answers_s = NEVER_WITHIN_S if self.unanswered & {*faults} else ANSWERS_WITHIN_S

    def trouble(self, faults: Sequence[str]) -> None:
        self._sides[0].faults.extend(faults)

    def _side(self, now: Clock) -> Centre | Modem:
        raise NotImplementedError

    @contextmanager
    def kept(self, house: House, opened: Opened, clock: VirtualClock) -> Iterator[None]:
        assert opened.lines is not None

        def heard(news: News) -> Screen | None:
            return take(house, news, clock())

        opened.lines.open(heard, clock)
        try:
            (gateway,) = (opened.lines.line(name) for name in opened.lines.names)
            assert isinstance(gateway, SmppGateway | ModemGateway)
            self._gateways = [gateway]
            self.ready()
            yield
        finally:
            self._gateways = []
            opened.lines.close()


class Smpp(_Kept):
    """An SMPP account at a message centre."""

    unanswered = frozenset({"silent"})

    def _side(self, now: Clock) -> Centre:
        return Centre(now)

    def trouble(self, faults: Sequence[str]) -> None:
        """Screens are only put off: one that is lost with its bind is a session that ended."""
        super().trouble(faults)
        centre = self._sides[0]
        assert isinstance(centre, Centre)
        centre.screen_faults.extend(
            fault if fault in ("throttle", "full") else "" for fault in faults
        )

    def settings(
        self, settings: Settings, operator: OperatorController, folder: Path
    ) -> Settings:
        centre = self._sides[0]
        assert isinstance(centre, Centre)
        return _with_lines(
            settings,
            folder,
            name="smpp",
            kind="smpp",
            host="127.0.0.1",
            port=centre.port,
            system_id=centre.account.system_id,
            password=centre.account.password,
            sender=settings.sender,
            ussd_code=settings.ussd_code,
            answer_s=self._answers_s,
        )


class OnTheDesk(_Kept):
    """A modem with a SIM card."""

    unanswered = frozenset({"silent", "taken", "half"})

    def _side(self, now: Clock) -> Modem:
        return Modem(now)

    def settings(
        self, settings: Settings, operator: OperatorController, folder: Path
    ) -> Settings:
        modem = self._sides[0]
        return _with_lines(
            settings,
            folder,
            name="desk",
            kind="modem",
            port=modem.port,
            send_s=self._answers_s,
        )


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
    "mill": Mapped("mill"),
    "smpp": Smpp(),
    "modem": OnTheDesk(),
}
"""By name, as `scenarios play --line` has it."""
