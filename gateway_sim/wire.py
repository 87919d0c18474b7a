"""The operator's own reading of the wire between it and the assistant.

JSON bodies in UTF-8; each request carries the second it was sent at and a signature,
hex HMAC-SHA256(secret, at + LF + path + LF + body). Nothing here is shared with the
assistant: two readings of one description, so that a slip in either shows.
"""

import hashlib
import hmac
import json
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import UTC, datetime
from typing import Any

AT_HEADER = "X-Nursery-At"
SIGNATURE_HEADER = "X-Nursery-Signature"
# Room for clocks that differ and a slow line, yet too short to play back a copied request.
CLOCK_SLACK_SECONDS = 300
MOST_TEXTS = 500  # of one list


class RequestError(Exception):
    """A request that breaks the description; `code` is the HTTP answer it gets."""

    def __init__(self, code: int, detail: str) -> None:
        super().__init__(detail)
        self.code = code
        self.detail = detail


@dataclass(frozen=True)
class HandedIn:
    """A text that the assistant hands in for a phone."""

    id: str
    to: str
    sender: str
    text: str
    not_after: datetime


def signature(secret: str, at: str, path: str, body: bytes) -> str:
    """Hex HMAC-SHA256 over the time, the path and the body, joined by line feeds."""
    signed = b"\n".join((at.encode(), path.encode(), body))
    return hmac.new(secret.encode(), signed, hashlib.sha256).hexdigest()


def headers(secret: str, now: datetime, path: str, body: bytes) -> dict[str, str]:
    """The headers of a request of ours."""
    at = str(int(now.timestamp()))
    return {
        "Content-Type": "application/json; charset=utf-8",
        AT_HEADER: at,
        SIGNATURE_HEADER: signature(secret, at, path, body),
    }


def check(secret: str, now: datetime, path: str, body: bytes, given: Mapping[str, str]) -> None:
    """Raise WireError (401) unless the request is signed with our secret, and lately."""
    at = given.get(AT_HEADER, "")
    right = signature(secret, at, path, body)
    mark = given.get(SIGNATURE_HEADER, "")
    if not hmac.compare_digest(right.encode(), mark.encode()):
        raise RequestError(
            401, f"wrong {SIGNATURE_HEADER}: the secrets or the signed parts differ"
        )
    if not (at.isascii() and at.isdigit() and len(at) <= 12):
        raise RequestError(401, f"{AT_HEADER} is {at!r}: expected unix seconds")
    apart = abs(now.timestamp() - int(at))
    if apart > CLOCK_SLACK_SECONDS:
        raise RequestError(
            401, f"{AT_HEADER} is {apart:.0f} s from our clock: at most {CLOCK_SLACK_SECONDS}"
        )


def handed_in(body: bytes) -> HandedIn:
    """Read the body of a text handed in; raises WireError (400) naming all faulty fields."""
    return _handed_in(_object(body))


def handed_in_all(body: bytes) -> list[HandedIn]:
    """Read the body of a list of texts; raises WireError (400)."""
    fields = _object(body)
    texts = fields.get("texts")
    if not isinstance(texts, list) or not all(isinstance(each, dict) for each in texts):
        raise RequestError(400, "texts: expected a list of objects")
    if not 0 < len(texts) <= MOST_TEXTS:
        raise RequestError(400, f"texts: expected 1 to {MOST_TEXTS}, got {len(texts)}")
    return [_handed_in({"from": fields.get("from"), **each}) for each in texts]


def _handed_in(fields: Mapping[str, Any]) -> HandedIn:
    names = ("id", "to", "from", "text", "not_after")
    missing = [name for name in names if not isinstance(fields.get(name), str)]
    if missing:
        raise RequestError(400, f"not a string: {', '.join(missing)}")
    return HandedIn(
        id=fields["id"],
        to=fields["to"],
        sender=fields["from"],
        text=fields["text"],
        not_after=_moment(fields["not_after"]),
    )


def written(fields: Mapping[str, Any]) -> bytes:
    """A body of ours."""
    return json.dumps(fields, ensure_ascii=False).encode()


def stamp(moment: datetime) -> str:
    """A moment as ISO 8601 in UTC."""
    return moment.astimezone(UTC).isoformat()


def read_screen(body: bytes) -> tuple[str, bool]:
    """The (text, more) of the assistant's answer to a USSD turn; WireError (502) if neither."""
    fields = _object(body, code=502)
    text, more = fields.get("text"), fields.get("more")
    if not isinstance(text, str) or not isinstance(more, bool):
        raise RequestError(502, 'expected {"text": "...", "more": true or false}')
    return text, more


def _object(body: bytes, code: int = 400) -> dict[str, Any]:
    try:
        fields = json.loads(body)
    except ValueError as broken:
        raise RequestError(code, "the body is not JSON in UTF-8") from broken
    if not isinstance(fields, dict):
        raise RequestError(code, "the body is not a JSON object")
    return fields


def _moment(text: str) -> datetime:
    try:
        moment = datetime.fromisoformat(text)
    except ValueError as broken:
        raise RequestError(400, f"not_after is {text!r}: expected ISO 8601") from broken
    if moment.tzinfo is None:
        raise RequestError(400, f"not_after is {text!r}: expected a time zone")
    return moment
