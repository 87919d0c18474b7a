"""A phone held from another process: the operator's phone addresses as a small class."""

from dataclasses import dataclass
from datetime import datetime
from typing import Any
from urllib.parse import quote

import requests

from gateway_sim.errors import OperatorError

# Longer than any answer the operator waits for from the assistant (`Limits.answer_seconds`).
PATIENCE_SECONDS = 15.0


class UnreachableError(OperatorError):
    """No operator answers at the address."""


class RefusedError(OperatorError):
    """The operator answered, and refused."""


@dataclass(frozen=True)
class HandsetText:
    """One text, sent or received; `sender` is empty for one's own."""

    turn: int
    sender: str
    text: str
    segments: int
    at: datetime


@dataclass(frozen=True)
class Shown:
    """A USSD screen with its size; `more` waits for an answer, else `ended` says why not."""

    text: str
    more: bool
    encoding: str
    size: int
    limit: int
    ended: str


class Handset:
    """One phone of the operator at `url`. Its methods raise Unreachable- or RefusedError."""

    def __init__(self, number: str, url: str) -> None:
        self._url = url.rstrip("/")
        self._session = requests.Session()
        self._session.trust_env = False  # no proxy between two processes of one machine
        about = self._ask("GET", "/phones")
        self.service: str = about["number"]
        self.code: str = about["code"]
        self.number: str = self._ask("GET", f"/phones/{quote(number, safe='')}/screen")["phone"]

    def text(self, text: str) -> HandsetText:
        """Send a text to the service."""
        return _text(self._ask("POST", self._path("texts"), {"text": text}))

    def inbox(self, after: int = 0, wait: float = 0) -> list[HandsetText]:
        """Texts received since a turn; waits so many seconds for the first."""
        path = f"{self._path('inbox')}?after={after}&wait={wait}"
        found = self._ask("GET", path, patience=wait + PATIENCE_SECONDS)
        return [_text(fields) for fields in found["messages"]]

    def dial(self, code: str) -> Shown:
        """Begin a USSD session."""
        return _shown(self._ask("POST", self._path("dial"), {"code": code}))

    def answer(self, text: str) -> Shown:
        """Answer the USSD screen."""
        return _shown(self._ask("POST", self._path("keys"), {"text": text}))

    def hang_up(self) -> None:
        """End the USSD session."""
        self._ask("POST", self._path("hang-up"), {})

    def close(self) -> None:
        """Give back the connections."""
        self._session.close()

    def _path(self, last: str) -> str:
        return f"/phones/{self.number}/{last}"

    def _ask(
        self,
        method: str,
        path: str,
        fields: dict[str, str] | None = None,
        patience: float = PATIENCE_SECONDS,
    ) -> dict[str, Any]:
        try:
            answer = self._session.request(
                method, self._url + path, json=fields, timeout=patience
            )
            found: dict[str, Any] = answer.json()
        except requests.RequestException as silent:
            raise UnreachableError(
                f"no operator answers at {self._url}: start it with `python -m gateway_sim`, "
                "or everything at once with `nursery start`"
            ) from silent
        if not answer.ok:
            raise RefusedError(
                found.get("error", f"the operator answered {answer.status_code}")
            )
        return found


def _text(fields: dict[str, Any]) -> HandsetText:
    return HandsetText(
        turn=fields["turn"],
        sender=fields["sender"] or "",
        text=fields["text"],
        segments=fields["segments"],
        at=datetime.fromisoformat(fields["at"]),
    )


def _shown(fields: dict[str, Any]) -> Shown:
    return Shown(**fields["screen"], ended=fields["ended"])
