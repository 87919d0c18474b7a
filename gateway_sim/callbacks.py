"""Calls from the operator to the assistant, over real HTTP."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any
from urllib.parse import urlsplit

import requests

from gateway_sim import wire


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


class Assistant:
    """The assistant's address, and how it is called."""

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

    def close(self) -> None:
        """Give back the connections."""
        self._session.close()
