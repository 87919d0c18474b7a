"""Calls from the operator to the assistant, over real HTTP."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import TYPE_CHECKING, Any, Protocol, runtime_checkable
from urllib.parse import urlsplit

import requests
from flask import Flask, request
from flask.typing import ResponseReturnValue

from gateway_sim import wire
from gateway_sim.handlers import Answer

if TYPE_CHECKING:
    from gateway_sim.network import Network


BUSY = 503


@dataclass(frozen=True)
class Reply:
    """The assistant's answer; `code` is None where none came, and `detail` says why."""

    code: int | None
    body: bytes = b""
    detail: str = ""

    @property
    def ok(self) -> bool:
        return self.code is not None and 200 <= self.code < 300

    @property
    def again(self) -> bool:
        """Whether calling again with the same id may help."""
        return self.code is None or self.code in (401, 429) or self.code >= 500


class Side(Protocol):
    """How one kind of line looks to the assistant: what it hands in, what it is told.

    The core tells in the words of our own wire (path and fields), whatever the line.
    """

    url: str

    def serve(self, app: Flask, network: "Network") -> None:
        """Begin to take what the assistant hands in, by `network.hand_in`."""
        ...

    def call(self, path: str, fields: Mapping[str, Any]) -> Reply:
        """Tell the assistant."""
        ...

    def close(self) -> None:
        """Let go of all connections."""
        ...


@runtime_checkable
class ReportsLists(Protocol):
    """A side that can also tell of many texts at once."""

    def report_all(self, receipts: Sequence[Mapping[str, Any]]) -> Reply:
        """Tell what became of all of them."""
        ...


def _of_list(text: wire.HandedIn, answer: Answer, repeated: bool) -> dict[str, Any]:
    """The answer to one text of a list."""
    if repeated:
        return {"id": text.id, "fate": "accepted", "repeat": True}
    fate = {202: "accepted", 422: "failed"}.get(answer.code, "try_later")
    return {"id": text.id, "fate": fate, "detail": answer.detail}


class Assistant:
    """Our own wire: the assistant's address, and how it is called."""

    def __init__(
        self, url: str, secret: str, clock: Callable[[], datetime], answer_seconds: float
    ) -> None:
        self.url = url
        self._secret = secret
        self._clock = clock
        self._answer_seconds = answer_seconds
        self._session = requests.Session()
        # A proxy in the environment must not stand between two processes of one machine.
        self._session.trust_env = False

    def serve(self, app: Flask, network: "Network") -> None:
        """Take signed texts at /texts."""

        @app.post("/texts")
        def texts() -> ResponseReturnValue:
            body = request.get_data()
            wire.check(self._secret, self._clock(), request.path, body, dict(request.headers))
            answer, repeated = network.hand_in(wire.handed_in(body))
            if repeated:
                return {"fate": "accepted", "repeat": True}, answer.code
            fate = {202: "accepted", 422: "failed"}.get(answer.code, "try_later")
            detail = {"detail": answer.detail} if answer.detail else {}
            return {"fate": fate, **detail}, answer.code

        @app.post("/texts/list")
        def several() -> ResponseReturnValue:
            body = request.get_data()
            wire.check(self._secret, self._clock(), request.path, body, dict(request.headers))
            said = [(each, *network.hand_in(each)) for each in wire.handed_in_all(body)]
            if all(answer.code == BUSY for _, answer, _ in said):
                return {"fate": "try_later", "detail": said[0][1].detail}, BUSY
            return {"answers": [_of_list(*each) for each in said]}

    def call(self, path: str, fields: Mapping[str, Any]) -> Reply:
        """Post these fields, signed; any failure of the line is a Reply without a code."""
        if not self.url:
            return Reply(None, detail="no callback_url is set")
        url = self.url.rstrip("/") + path
        body = wire.written(fields)
        signed = wire.headers(self._secret, self._clock(), urlsplit(url).path, body)
        try:
            answer = self._session.post(
                url, body, headers=signed, timeout=self._answer_seconds, allow_redirects=False
            )
        except requests.RequestException as silent:
            return Reply(None, detail=f"no answer from {url}: {type(silent).__name__}")
        return Reply(answer.status_code, answer.content, "" if answer.ok else answer.text[:200])

    def report_all(self, receipts: Sequence[Mapping[str, Any]]) -> Reply:
        """Post many receipts as one list."""
        return self.call("/gateway/receipts", {"receipts": list(receipts)})

    def close(self) -> None:
        """Give back the connections."""
        self._session.close()
