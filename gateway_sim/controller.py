"""The one who runs the operator: a server of its own, started and stopped."""

from __future__ import annotations

import os
import socket
from collections.abc import Callable
from datetime import UTC, datetime
from functools import partial
from threading import Thread
from types import TracebackType
from typing import Any, Self

import requests
from werkzeug.serving import BaseWSGIServer, WSGIRequestHandler, make_server

from gateway_sim.callbacks import Assistant, Side
from gateway_sim.core import Core, OperatorLimits
from gateway_sim.errors import OperatorError, StartError
from gateway_sim.handlers import Deliver, Handler
from gateway_sim.network import Network
from gateway_sim.numbering import number as known_number
from gateway_sim.phones import Phone
from gateway_sim.record import EntryKind, RecordEntry
from gateway_sim.server import create_app
from gateway_sim.showing import Showing

LOOPBACK = ("127.0.0.1", "localhost")
STOP_WITHIN_SECONDS = 0.05  # how often the server looks whether it should stop
OWN_NUMBER = "+447700900000"
USSD_CODE = "*555*7#"


def real_time() -> datetime:
    """The machine's clock."""
    return datetime.now(UTC)


MakeSide = Callable[[Callable[[], datetime]], Side]
"""The operator's clock -> how it looks to the assistant."""


def _nothing() -> None:
    """In real time a thread of ours wakes up by itself."""


class _Silent(WSGIRequestHandler):
    """Requests are in the record; a second list on standard error helps nobody."""

    def log(self, type: str, message: str, *args: Any) -> None:
        return


class OperatorController:
    """A simulated operator in threads of this process, between `start` and `stop`.

    secret:       shared with the assistant; signs both directions
    side:         another kind of line than our own wire, made of the clock
    callback_url: where the assistant listens; may be set later, as an attribute
    handler:      what becomes of each message; may be changed at any time
    clock:        gives the operator's time (aware). With one of your own nothing happens
                  behind your back: what a phone does is carried out before it returns, and
                  what is due later waits for `advance`. Without one, real time is kept and
                  a thread does what is due.
    number, ussd_code: what phones text and dial
    host, port:   loopback only; port 0 takes a free one
    limits:       what this operator allows
    showing:      what the phone page shows besides the phones
    start_seconds: how long `start` waits for the first answer
    """

    def __init__(
        self,
        *,
        secret: str = "",
        side: MakeSide | None = None,
        callback_url: str = "",
        handler: Handler | None = None,
        clock: Callable[[], datetime] | None = None,
        number: str = OWN_NUMBER,
        ussd_code: str = USSD_CODE,
        host: str = "127.0.0.1",
        port: int = 0,
        limits: OperatorLimits | None = None,
        showing: Showing | None = None,
        start_seconds: float = 60.0,
    ) -> None:
        if host not in LOOPBACK:
            raise StartError(
                f"host is {host!r}: this operator serves {', '.join(LOOPBACK)} only"
            )
        if not secret and side is None:
            raise StartError("secret is empty: give the one that the assistant has")
        limits = limits or OperatorLimits()
        now = clock or real_time
        self._assistant: Side = (
            side(now) if side else Assistant(callback_url, secret, now, limits.answer_seconds)
        )
        self._core = Core(now, self._assistant, handler or Deliver(), limits)
        self._assistant.url = callback_url
        self._own_time = clock is not None
        self._errors: list[BaseException] = []
        kick = self.advance if self._own_time else _nothing
        self.network = Network(self._core, known_number(number), ussd_code, kick)
        app = create_app(self.network, self._assistant, self._failed, showing)
        self._app = app
        self._host, self._port, self._start_seconds = host, port, start_seconds
        self._server: BaseWSGIServer | None = None
        self._threads: list[Thread] = []

    # Its life.

    def start(self) -> Self:
        """Serve; returns when the server has answered. Raises StartError."""
        if self._server is not None:
            raise StartError("this operator is running: stop it before you start it again")
        self._core.closed = False
        self._server = self._bind()
        self._begin("operator-http", partial(self._server.serve_forever, STOP_WITHIN_SECONDS))
        try:
            self._greet()
        except BaseException:
            self._end()
            raise
        if not self._own_time:
            self._begin("operator-work", self._work)
        return self

    def stop(self) -> None:
        """Stop serving; raises what went wrong in the operator's threads, if anything."""
        self._end()
        self._raise_errors()

    def __enter__(self) -> Self:
        return self.start()

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self._end()
        if error is None:
            self._raise_errors()

    # Its use.

    @property
    def url(self) -> str:
        """Where it serves."""
        if self._server is None:
            raise OperatorError("the operator is not running: use `with`, or call start()")
        return f"http://{self._host}:{self._server.port}"

    @property
    def callback_url(self) -> str:
        return self._assistant.url

    @callback_url.setter
    def callback_url(self, url: str) -> None:
        self._assistant.url = url

    @property
    def handler(self) -> Handler:
        return self._core.handler

    @handler.setter
    def handler(self, handler: Handler) -> None:
        self._core.handler = handler

    @property
    def record(self) -> list[RecordEntry]:
        """All that happened, oldest first."""
        return self._core.record

    def recorded(self, *kinds: EntryKind) -> list[RecordEntry]:
        """The entries of these kinds."""
        return [entry for entry in list(self._core.record) if entry.kind in kinds]

    @property
    def faults(self) -> list[RecordEntry]:
        """What should not have happened: screens too long, calls given up, no answers."""
        return self.recorded(EntryKind.FAULT)

    @property
    def repeats(self) -> int:
        """How often a text came again under an id that was taken; nothing was sent twice."""
        return self.network.repeats

    def on_entry(self, listener: Callable[[RecordEntry], None]) -> None:
        """Call this with each new entry of the record."""
        self._core.on_entry = listener

    def phone(self, number: str) -> Phone:
        """The phone of this number. Raises NumberError outside the ranges of fiction."""
        return self.network.phone(number)

    def due(self) -> datetime | None:
        """When there is something to do next: the time to set your clock to."""
        return self._core.due()

    def advance(self) -> None:
        """Do all that is due by the clock; raises what went wrong in the server's threads."""
        self._core.do_all()
        self._raise_errors()

    # Its threads.

    def _bind(self) -> BaseWSGIServer:
        try:
            ours = socket.create_server((self._host, self._port))
        except OSError as taken:
            why = os.strerror(taken.errno or 0)
            raise StartError(
                f"port {self._port} on {self._host} cannot be had ({why}): "
                "choose another port, or 0 for a free one"
            ) from taken
        # werkzeug, asked to bind by itself, would print and exit where a port is taken.
        with ours:
            return make_server(
                self._host,
                self._port,
                self._app,
                threaded=True,
                request_handler=_Silent,
                fd=ours.fileno(),
            )

    def _greet(self) -> None:
        with requests.Session() as session:
            session.trust_env = False
            try:
                session.get(
                    f"{self.url}/phones", timeout=self._start_seconds
                ).raise_for_status()
            except requests.RequestException as silent:
                raise StartError(
                    f"no answer within start_seconds={self._start_seconds:g}: "
                    f"allow more on a slow machine ({silent})"
                ) from silent

    def _begin(self, name: str, run: Callable[[], None]) -> None:
        thread = Thread(target=self._guard, args=(run,), name=name, daemon=True)
        self._threads.append(thread)
        thread.start()

    def _guard(self, run: Callable[[], None]) -> None:
        try:
            run()
        except BaseException as error:
            self._failed(error)

    def _failed(self, error: BaseException) -> None:
        self._errors.append(error)
        self._core.note(EntryKind.FAULT, "", detail=f"the operator itself failed: {error!r}")

    def _work(self) -> None:
        """Do what is due, then wait for the next thing or for news."""
        while not self._core.closed:
            self._core.wake.clear()
            self._core.do_all()
            due = self._core.due()
            pause = None if due is None else (due - self._core.now()).total_seconds()
            self._core.wake.wait(None if pause is None else max(pause, 0))

    def _end(self) -> None:
        if self._server is None:
            return
        self._core.close()
        self._server.shutdown()
        self._server.server_close()
        for thread in self._threads:
            thread.join(self._core.limits.answer_seconds + 1)
        self._assistant.close()
        self._server = None

    def _raise_errors(self) -> None:
        if self._errors:
            errors, self._errors[:] = list(self._errors), []
            raise errors[0]
