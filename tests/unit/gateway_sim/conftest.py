"""An operator on a clock of the test's own, and a stub that plays the assistant.

The stub signs and checks by itself, from the description of the wire: it uses nothing of the
simulator's.
"""

import hashlib
import hmac
import json
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from threading import Thread
from typing import Any

import pytest
import requests
from flask import Flask, request
from werkzeug.serving import WSGIRequestHandler, make_server

from gateway_sim import OperatorController, Phone

SECRET = "between-the-two"
SERVICE = "+447700900000"
PHONE = "+447700900101"
CODE = "*555*7#"


@dataclass
class Clock:
    """A clock that stands still until it is moved on."""

    now: datetime = datetime(2026, 6, 10, 3, 0, tzinfo=UTC)

    def __call__(self) -> datetime:
        return self.now

    def forward(self, **time: float) -> None:
        self.now += timedelta(**time)


def sign(at: str, path: str, body: bytes) -> str:
    signed = at.encode() + b"\n" + path.encode() + b"\n" + body
    return hmac.new(SECRET.encode(), signed, hashlib.sha256).hexdigest()


@dataclass
class StubAssistant:
    """Keeps what the operator calls with, and answers as it is told.

    got:     (path, fields) of each call     codes:   HTTP codes of the next calls, if not fine
    screens: what each USSD answer gets      on_text: what is done when a text comes
    """

    clock: Clock
    got: list[tuple[str, dict[str, Any]]] = field(default_factory=list)
    codes: list[int] = field(default_factory=list)
    screens: dict[str, tuple[str, bool]] = field(default_factory=lambda: {"": ("Menu", True)})
    on_text: Callable[[dict[str, Any]], None] = lambda fields: None
    url: str = ""
    operator_url: str = ""

    def take(self, path: str) -> Any:
        body = request.get_data()
        at = request.headers["X-Nursery-At"]
        assert request.headers["X-Nursery-Signature"] == sign(at, path, body)
        assert abs(int(at) - self.clock().timestamp()) <= 5
        fields = json.loads(body)
        self.got.append((path, fields))
        if self.codes and (code := self.codes.pop(0)) != 204:
            return "not now", code
        if path == "/gateway/ussd" and fields["step"] != "end":
            text, more = self.screens[fields["text"]]
            return {"text": text, "more": more}
        if path == "/gateway/text":
            self.on_text(fields)
        return "", 204

    def calls(self, path: str) -> list[dict[str, Any]]:
        return [fields for called, fields in self.got if called == path]

    @property
    def texts(self) -> list[str]:
        return [fields["text"] for fields in self.calls("/gateway/text")]

    @property
    def fates(self) -> list[tuple[str, str]]:
        lists = [fields["receipts"] for fields in self.calls("/gateway/receipts")]
        told = [*self.calls("/gateway/receipt"), *(each for some in lists for each in some)]
        return [(fields["id"], fields["fate"]) for fields in told]

    @property
    def steps(self) -> list[str]:
        return [fields["step"] for fields in self.calls("/gateway/ussd")]

    def hand_in(self, text: str, id: str = "n1", **other: Any) -> requests.Response:
        """Hand a text for PHONE to the operator; worthless after an hour."""
        fields = {
            "id": id,
            "to": PHONE,
            "from": SERVICE,
            "text": text,
            "not_after": (self.clock() + timedelta(hours=1)).isoformat(),
        }
        body = json.dumps(fields | other).encode()
        at = str(int(self.clock().timestamp()))
        headers = {"X-Nursery-At": at, "X-Nursery-Signature": sign(at, "/texts", body)}
        return requests.post(f"{self.operator_url}/texts", body, headers=headers, timeout=60)


class Silent(WSGIRequestHandler):
    def log(self, type: str, message: str, *args: Any) -> None:
        return


@pytest.fixture
def clock() -> Clock:
    return Clock()


@pytest.fixture
def assistant(clock: Clock) -> Iterator[StubAssistant]:
    """The stub, served over HTTP."""
    stub = StubAssistant(clock)
    app = Flask("stub")
    app.post("/gateway/<kind>")(lambda kind: stub.take(f"/gateway/{kind}"))
    server = make_server("127.0.0.1", 0, app, threaded=True, request_handler=Silent)
    stub.url = f"http://127.0.0.1:{server.port}"
    thread = Thread(target=server.serve_forever, args=(0.02,))
    thread.start()
    yield stub
    server.shutdown()
    server.server_close()
    thread.join()


@pytest.fixture
def operator(clock: Clock, assistant: StubAssistant) -> Iterator[OperatorController]:
    """An operator on the test's clock, in touch with the stub."""
    with OperatorController(secret=SECRET, callback_url=assistant.url, clock=clock) as op:
        assistant.operator_url = op.url
        yield op


@pytest.fixture
def phone(operator: OperatorController) -> Phone:
    return operator.phone(PHONE)
