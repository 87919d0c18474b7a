"""A provider's HTTP by its mapping: the texts out. Its calls: mapped_calls."""

import base64
import json
import re
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from typing import Any
from urllib.parse import quote, urlsplit
from zlib import crc32

import requests

from assistant.alphabet import split
from assistant.channel import (
    Fate,
    Handover,
    Outgoing,
)
from assistant.gateways.mapping import Provider, Sends, found_at, nested, put, read_by
from assistant.gateways.memory import Taken
from assistant.gateways.over_http import Sessions, moment_of, rest_of, unanswered

_DETAIL_MAX = 200
_ANSWER_MAX = 1_000  # octets of an answer in plain words
_CLOCKS_APART = timedelta(minutes=5)
_NUMBER = re.compile(r"\+[1-9][0-9]{4,14}")
_SPACING = re.compile(r"[\s().-]")


@dataclass(frozen=True)
class Secrets:
    """What the two sides share; those that a mapping names."""

    token: str = ""
    user: str = ""
    password: str = ""
    secret: str = ""

    @property
    def slots(self) -> dict[str, str]:
        """As they may stand in a template."""
        return {"token": self.token, "user": self.user, "password": self.password}


class MappedGateway:
    """Hands texts to a provider as its mapping says."""

    def __init__(
        self, provider: Provider, secrets: Secrets, sender: str, timeout_s: float
    ) -> None:
        self._provider, self._sends = provider, provider.send
        self._secrets, self._sender, self._timeout_s = secrets, sender, timeout_s
        self._own, self._taken = Sessions(), Taken()
        requests.Request("POST", self._sends.url).prepare()  # raises ValueError for no address

    def send(self, outgoing: Outgoing, now: datetime) -> Handover:
        """Offers one text, or its segments one by one where the provider wants them so."""
        cut = self._sends.long == "cut"
        words = split(outgoing.text) if cut else (outgoing.text,)
        taken = self._taken.of(outgoing.message_id)
        for place in range(len(taken), len(words)):
            slots = self._slots(outgoing, words[place], place + 1, len(words), now)
            handover = self._offer(slots, now)
            if handover.fate is not Fate.ACCEPTED:
                return handover
            taken = (*taken, *(handover.parts or (slots["id"],)))
            self._taken.keep(outgoing.message_id, taken)
        by_parts = self._provider.receipt and not self._provider.receipt.our_id
        return Handover(Fate.ACCEPTED, parts=taken if by_parts or cut else ())

    def time(self) -> datetime | None:
        """The provider's clock, by the Date of its answers."""
        try:
            answer = self._own.session().head(
                self._sends.url, timeout=self._timeout_s, allow_redirects=False
            )
        except OSError:
            return None
        return moment_of(answer.headers.get("Date", ""))

    def _slots(
        self, outgoing: Outgoing, words: str, part: int, parts: int, now: datetime
    ) -> dict[str, str]:
        until = outgoing.not_after.astimezone(UTC)
        left = max(int((until - now).total_seconds()), 1)
        message_id = outgoing.message_id
        return self._secrets.slots | {
            "id": f"{message_id}-{part}" if parts > 1 else message_id,
            "phone": outgoing.phone,
            "digits": outgoing.phone.removeprefix("+"),
            "sender": self._sender,
            "sender_digits": self._sender.removeprefix("+"),
            "text": words,
            "ref": str(crc32(message_id.encode()) & 0xFF),  # one octet, as phones have it
            "part": str(part),
            "parts": str(parts),
            "until": until.isoformat(timespec="seconds").replace("+00:00", "Z"),
            "until_unix": str(int(until.timestamp())),
            "seconds": str(left),
            "minutes": str(max(left // 60, 1)),
            "now_unix": str(int(now.timestamp())),
        }

    def _offer(self, slots: Mapping[str, str], now: datetime) -> Handover:
        try:
            request = _request(self._sends, slots, self._secrets.secret)
            answer = self._own.session().send(
                request, timeout=self._timeout_s, allow_redirects=False
            )
        except OSError as trouble:
            return unanswered(trouble, self._sends.url)
        return self._meant(answer, now)

    def _meant(self, answer: requests.Response, now: datetime) -> Handover:
        sends, said = self._sends, _said(self._sends, answer.content)
        status, after = answer.status_code, answer.headers.get("Retry-After", "")
        if sends.taken.meets(status, said):
            theirs = found_at(said, sends.their_id) if sends.their_id else None
            return Handover(Fate.ACCEPTED, parts=() if theirs is None else (str(theirs),))
        told = found_at(said, sends.words) if sends.words else None
        words = f"{status} {told if told is not None else ''}".strip()[:_DETAIL_MAX]
        if sends.busy and sends.busy.meets(status, said):
            return Handover(Fate.TRY_LATER, words, rest=rest_of(503, after, now))
        if sends.refused and sends.refused.meets(status, said):
            return Handover(Fate.FAILED, words)
        return Handover(Fate.TRY_LATER, words, rest=rest_of(status, after, now))


def _request(sends: Sends, slots: Mapping[str, str], secret: str) -> requests.PreparedRequest:
    """The request of one text, signed where the provider wants that."""
    safe = {name: quote(value, safe="") for name, value in slots.items()}
    fields: dict[str, Any] = {name: put(value, slots) for name, value in sends.fields.items()}
    headers = {name: put(value, slots) for name, value in sends.headers.items()}
    if slots["user"] and not {"authorization"} & {name.lower() for name in headers}:
        both = f"{slots['user']}:{slots['password']}".encode()
        headers["Authorization"] = f"Basic {base64.b64encode(both).decode()}"
    given: dict[str, Any] = {"params" if sends.body == "query" else "data": fields}
    if sends.body == "json":
        typed = {n: int(v) if n in sends.numbers else v for n, v in fields.items()}
        given = {"data": json.dumps(nested(typed), ensure_ascii=False).encode()}
        headers.setdefault("Content-Type", "application/json; charset=utf-8")
    made = requests.Request(sends.method, put(sends.url, safe), headers=headers, **given)
    ready = made.prepare()
    if sends.sign is not None:
        body = ready.body or b""
        octets = body.encode() if isinstance(body, str) else bytes(body)
        over = dict(slots) | {"path": urlsplit(ready.url or "").path}
        ready.headers[sends.sign.header] = sends.sign.made(secret, over, octets)
        if sends.sign.time_header:
            ready.headers[sends.sign.time_header] = slots["now_unix"]
    return ready


def _said(sends: Sends, content: bytes) -> Any:
    """What an answer tells, by names; None where it has not the form that it should."""
    if sends.reads:
        words = content[:_ANSWER_MAX].decode("utf-8", "replace").strip()
        return read_by(sends.reads, words)
    try:
        return json.loads(content)
    except (ValueError, RecursionError):
        return None
