"""Every line between a gateway of ours and the simulated operator: what a test of the contract
needs of it, both ways."""

import threading
from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager, contextmanager
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any, TypeVar

from flask import Flask, Response, request
from werkzeug.serving import WSGIRequestHandler, make_server

import scenarios
from assistant.channel import (
    Clock,
    Gateway,
    Hooks,
    Incoming,
    News,
    NotKeptError,
    NotTakenError,
    Receipt,
    Request,
    Screen,
)
from assistant.gateways import HttpGateway, wire_hooks
from assistant.gateways.mapped import MappedGateway, Secrets
from assistant.gateways.mapped_calls import mapped_hooks
from assistant.gateways.modem import ModemGateway, ModemTerms
from assistant.gateways.smpp import SmppGateway, SmppTerms
from assistant.wiring.mapping_file import open_mapping
from gateway_sim import OperatorController, OperatorLimits
from gateway_sim.modem import Modem
from gateway_sim.provider import SimulatedProvider
from gateway_sim.smpp import Centre, SmppAccount

SECRET, SENDER = "example-secret", "+447700900000"
# An operator that brings again at once what was not taken.
SOON = OperatorLimits(answer_seconds=60, retry_seconds=(0.1, 0.2, 0.5, 1, 2, 4))
# How long each side waits for an answer that nothing holds up but a machine at work [s].
PATIENT_S = 60
# How long a modem's network waits for the card to be emptied before it goes on.
CARD_S = 0.3
MAPPINGS = Path(scenarios.__file__).parent / "district" / "lines"

Kind = TypeVar("Kind", bound=Incoming | Receipt)


@dataclass
class Heard:
    """The assistant's ear: keeps what a line brings, answers screens, and may be away."""

    news: list[News] = field(default_factory=list)
    screen: Screen | None = None
    away: bool = False
    later: timedelta = timedelta(0)  # how far the assistant's clock is ahead
    changed: threading.Condition = field(default_factory=threading.Condition)

    def take(self, news: News) -> Screen | None:
        """As the service does it."""
        if self.away:
            raise NotKeptError("the database is away")
        with self.changed:
            self.news.append(news)
            self.changed.notify_all()
        return self.screen

    def clock(self) -> datetime:
        """What a line that listens takes for now."""
        return datetime.now(UTC) + self.later

    def of(self, kind: type[Kind], count: int, seconds: float = 60) -> list[Kind]:
        """The news of a kind, once there are so many."""

        def found() -> list[Kind]:
            return [each for each in self.news if isinstance(each, kind)]

        with self.changed:
            self.changed.wait_for(lambda: len(found()) >= count, seconds)
        return found()


@dataclass
class Line:
    """A gateway, the operator at its other end, and what the assistant heard by it."""

    name: str
    gateway: Gateway
    operator: OperatorController
    heard: Heard
    menus: bool = True
    rings: bool = True
    minutes: bool = True  # it can tell an end that is less than five minutes away
    names: bool = (
        True  # the operator names what a phone wrote, so that even at once two are two
    )

    def apart(self) -> None:
        """Lets so much time pass, on the clocks of both sides, that the same words of a phone
        are two texts: a network gives each of them its second."""
        if not self.names:
            self.heard.later += timedelta(seconds=4)
            core = self.operator.network.core
            clock = core.now
            core.now = lambda: clock() + timedelta(seconds=4)


class _Silent(WSGIRequestHandler):
    def log(self, type: str, message: str, *args: object) -> None:
        """Say nothing."""


@contextmanager
def called(hooks: Hooks, heard: Heard) -> Iterator[str]:
    """Hooks behind a web server, as the assistant has them; where they begin."""
    app = Flask(__name__)

    def view(name: str) -> Response:
        asked = request
        call = Request(
            asked.method,
            asked.path,
            asked.args.to_dict(),
            dict(asked.headers),
            asked.get_data(),
        )
        try:
            brought = hooks[name](call, datetime.now(UTC))
            screen = None
            for each in brought.news:
                screen = heard.take(each) or screen
        except NotTakenError as fault:
            return Response(str(fault), fault.status)
        except NotKeptError:
            return Response("later", 503)
        answer = brought.answer(screen)
        return Response(answer.body, answer.status, content_type=answer.kind)

    app.add_url_rule("/gateway/<name>", "view", view, methods=["GET", "POST"])
    server = make_server("127.0.0.1", 0, app, threaded=True, request_handler=_Silent)
    thread = threading.Thread(target=server.serve_forever, args=(0.01,), daemon=True)
    thread.start()
    try:
        yield f"http://127.0.0.1:{server.port}"
    finally:
        server.shutdown()
        thread.join()
        server.server_close()


@contextmanager
def wire() -> Iterator[Line]:
    """Our own wire."""
    heard = Heard()
    with OperatorController(secret=SECRET, limits=SOON) as operator:
        gateway = HttpGateway(operator.url, SENDER, SECRET, PATIENT_S)
        with called(wire_hooks(SECRET), heard) as url:
            operator.callback_url = url
            yield Line("wire", gateway, operator, heard)


# A way to open a line and its operator, for a `with`.
Way = Callable[[], AbstractContextManager[Line]]
# The mapping files that a line below was opened by.
MAPPED: list[str] = []


def mapped(name: str, rings: bool, menus: bool = True) -> Way:
    """An invented provider by its mapping."""
    MAPPED.append(name)

    @contextmanager
    def opened() -> Iterator[Line]:
        path, heard = MAPPINGS / f"{name}.toml", Heard()
        given = {"token": SECRET, "user": "us", "password": SECRET, "secret": SECRET}
        side = OperatorController(
            side=lambda now: SimulatedProvider(path, "", given, now, PATIENT_S), limits=SOON
        )
        with side as operator:
            provider, secrets = open_mapping(path, operator.url), Secrets(**given)
            gateway = MappedGateway(provider, secrets, SENDER, PATIENT_S)
            with called(mapped_hooks(provider, secrets), heard) as url:
                operator.callback_url = f"{url}/gateway"
                yield Line(name, gateway, operator, heard, menus=menus, rings=rings)

    return opened


def by_smpp(**terms: Any) -> Way:
    """An SMPP account, as this operator wants it."""

    @contextmanager
    def opened() -> Iterator[Line]:
        heard, centres = Heard(), []
        account = SmppAccount(
            receipts=terms.get("receipts", "both"), hex_ids="hex" in terms.get("ids", "")
        )

        def centre(clock: Clock) -> Centre:
            centres.append(Centre(clock, account, PATIENT_S))
            return centres[0]

        with OperatorController(side=centre, limits=SOON) as operator:
            given = {name: value for name, value in terms.items() if name != "receipts"}
            port = centres[0].port
            given |= {"answer_s": PATIENT_S}
            gateway = SmppGateway(
                SmppTerms("127.0.0.1", "nursery", "secret", SENDER, port, **given)
            )
            gateway.open(heard.take, heard.clock)
            try:
                assert gateway.wait_up(60) and centres[0].wait_bound(60)
                yield Line("smpp", gateway, operator, heard, rings=False, names=False)
            finally:
                gateway.close()

    return opened


def by_modem(stores_reports: bool = True) -> Way:
    """A modem on the desk."""

    @contextmanager
    def opened() -> Iterator[Line]:
        heard, modems = Heard(), []

        def plugged(clock: Clock) -> Modem:
            modems.append(Modem(clock, CARD_S, stores_reports))
            return modems[0]

        with OperatorController(side=plugged, limits=SOON) as operator:
            terms = ModemTerms(modems[0].port, answer_s=PATIENT_S, send_s=PATIENT_S, poll_s=0.2)
            gateway = ModemGateway(terms)
            gateway.open(heard.take, heard.clock)
            try:
                assert gateway.wait_up(60), gateway.why
                yield Line(
                    "modem",
                    gateway,
                    operator,
                    heard,
                    menus=False,
                    minutes=False,
                    names=False,
                )
            finally:
                gateway.close()

    return opened


LINES: dict[str, Way] = {
    "SMPP": by_smpp(),
    "SMPP, two binds, sar": by_smpp(
        bind="two", long="sar", validity="relative", receipts="text"
    ),
    "SMPP, payload, other ids": by_smpp(
        long="payload", ids="hex then decimal", receipts="fields"
    ),
    "modem": by_modem(),
    "modem, reports shown": by_modem(stores_reports=False),
    "wire": wire,
    "http, JSON": mapped("hill", rings=True),
    "http, forms": mapped("river", rings=False),
    "http, signed, in plain words": mapped("mill", rings=False, menus=False),
}
