"""Reading what the operator sends us: JSON in, a channel value out, or one clear refusal.

Types are strict and all faulty fields are named together; keys we do not know are ignored, so
that an operator may send more. A text is never cut and never refused for what it says.
"""

import json
import re
from collections.abc import Callable, Mapping, Sequence
from datetime import UTC, datetime
from typing import Any

from assistant.channel import (
    Brought,
    Channel,
    Fate,
    Hook,
    Hooks,
    Incoming,
    NotTakenError,
    Receipt,
    Request,
    Response,
    Screen,
    Step,
    content,
)
from assistant.gateways.signature import AT_HEADER, SIGNATURE_HEADER, verify, why_refused

TEXT_MAX = 40_000
"""Characters; the longest SMS there is has 255 segments of 153 septets, 39,015."""

MOST_RECEIPTS = 500  # in one call

_ID = re.compile(r"[!-~]{1,128}")
_PHONE = re.compile(r"\+[1-9][0-9]{4,14}")
_LOST = "\N{REPLACEMENT CHARACTER}"


class WireError(NotTakenError):
    """A callback that does not follow the wire; the operator should not send it again."""

    def __init__(self, said: str) -> None:
        super().__init__(400, said)


def wire_hooks(secret: str, before: str = "") -> Hooks:
    """The operator's calls of our own wire, each signed with `secret`; while the secret is
    being changed also with the one `before`, so that no text is refused meanwhile."""
    secrets = tuple(filter(None, (secret, before)))
    return {
        "text": _signed(secrets, lambda body: Brought((read_text_callback(body),))),
        "ring": _signed(secrets, lambda body: Brought((read_ring_callback(body),))),
        "ussd": _signed(secrets, lambda body: Brought((read_ussd_callback(body),), _screen)),
        "receipt": _signed(secrets, lambda body: Brought((read_receipt_callback(body),))),
        "receipts": _signed(secrets, lambda body: Brought(read_receipts_callback(body))),
    }


def _signed(secrets: Sequence[str], read: Callable[[bytes], Brought]) -> Hook:
    """Checks the signature before the body is read."""

    def hook(request: Request, now: datetime) -> Brought:
        at = request.header(AT_HEADER)
        signature = request.header(SIGNATURE_HEADER)
        path, body = request.path, request.body
        if not any(
            verify(secret, at=at, signature=signature, path=path, body=body, now=now)
            for secret in secrets
        ):
            said = "sign the request with the shared secret"
            raise NotTakenError(401, said, why_refused(at, now))
        return read(body)

    return hook


def _screen(screen: Screen | None) -> Response:
    """The screen that answers a turn of USSD; none is due at the end of a session."""
    if screen is None:
        return content(screen)
    body = json.dumps({"text": screen.text, "more": screen.more}, ensure_ascii=False)
    return Response(200, body.encode(), "application/json")


def read_text_callback(body: bytes) -> Incoming:
    """Read a text from a phone (POST /gateway/text). Raises WireError."""
    told = _read(body, {"id": _id, "from": _phone, "to": _string, "text": _text, "at": _time})
    return Incoming(told["id"], told["from"], told["text"], Channel.SMS, told["at"])


def read_ring_callback(body: bytes) -> Incoming:
    """Read that a phone rang our number (POST /gateway/ring). Raises WireError."""
    told = _read(body, {"id": _id, "from": _phone, "to": _string, "at": _time})
    return Incoming(told["id"], told["from"], "", Channel.RING, told["at"])


def read_ussd_callback(body: bytes) -> Incoming:
    """Read one turn of a USSD session (POST /gateway/ussd). Raises WireError."""
    fields = {"id": _id, "session": _id, "from": _phone, "code": _string}
    told = _read(body, {**fields, "step": _step, "text": _text, "at": _time})
    return Incoming(
        gateway_id=told["id"],
        phone=told["from"],
        text=told["text"],
        channel=Channel.USSD,
        at=told["at"],
        step=told["step"],
        session_id=told["session"],
    )


def read_receipt_callback(body: bytes) -> Receipt:
    """Read what became of a text of ours (POST /gateway/receipt). Raises WireError."""
    return _receipt(_object(body))


def read_receipts_callback(body: bytes) -> tuple[Receipt, ...]:
    """Read what became of many texts of ours (POST /gateway/receipts). Raises WireError, which
    names the first that is faulty."""
    told = _object(body).get("receipts")
    if not isinstance(told, list) or not 0 < len(told) <= MOST_RECEIPTS:
        raise WireError(f'"receipts": expected a list of 1 to {MOST_RECEIPTS}')
    if not all(isinstance(each, dict) for each in told):
        raise WireError('"receipts": expected a list of objects')
    return tuple(map(_receipt, told))


def _receipt(told: Mapping[str, object]) -> Receipt:
    read = _fields(told, {"id": _id, "fate": _fate, "at": _time, "detail": _detail})
    return Receipt(read["id"], read["fate"], read["at"], read["detail"])


def _read(body: bytes, fields: Mapping[str, Callable[[object], object]]) -> dict[str, Any]:
    return _fields(_object(body), fields)


def _fields(
    told: Mapping[str, object], fields: Mapping[str, Callable[[object], object]]
) -> dict[str, Any]:
    """Read each field by its reader, and refuse all the faulty ones at once."""
    faults = []
    values: dict[str, object] = {}
    for name, reader in fields.items():
        try:
            values[name] = reader(told.get(name))
        except ValueError as fault:
            faults.append(f'"{name}": expected {fault}, got {_shortly(told, name)}')
    if faults:
        raise WireError("; ".join(faults))
    return values


def _object(body: bytes) -> dict[str, object]:
    try:
        told = json.loads(body.decode("utf-8"))
    except (ValueError, RecursionError) as broken:
        raise WireError("expected a JSON object in UTF-8, got something else") from broken
    if not isinstance(told, dict):
        raise WireError(f"expected a JSON object in UTF-8, got {_shortly({'': told}, '')}")
    return told


def _shortly(told: Mapping[str, object], name: str) -> str:
    if name not in told:
        return "nothing"
    value = told[name]
    if isinstance(value, list | dict):
        return "a list" if isinstance(value, list) else "an object"
    shown = json.dumps(value)
    return shown if len(shown) <= 60 else shown[:60] + "..."


def _string(value: object) -> str:
    if not isinstance(value, str) or len(value) > TEXT_MAX:
        raise ValueError(f"a string of up to {TEXT_MAX} characters")
    return value


def _text(value: object) -> str:
    """Read a phone's words; what no database can hold (NUL, half an emoji) becomes U+FFFD."""
    whole = _string(value).encode("utf-16", "surrogatepass").decode("utf-16", "replace")
    return whole.replace("\0", _LOST)


def _detail(value: object) -> str:
    return "" if value is None else _text(value)


def _id(value: object) -> str:
    if not isinstance(value, str) or _ID.fullmatch(value) is None:
        raise ValueError("a string of 1 to 128 visible ASCII characters")
    return value


def _phone(value: object) -> str:
    if not isinstance(value, str) or _PHONE.fullmatch(value) is None:
        raise ValueError('a number like "+447700900101"')
    return value


def _time(value: object) -> datetime:
    wanted = 'a time with an offset like "2026-06-01T05:30:00Z"'
    try:
        at = datetime.fromisoformat(_string(value))
        if at.tzinfo is not None:
            return at.astimezone(UTC)
    except (ValueError, OverflowError) as unread:
        raise ValueError(wanted) from unread
    raise ValueError(wanted)


def _step(value: object) -> Step:
    if value not in ("begin", "answer", "end"):
        raise ValueError('"begin", "answer" or "end"')
    return Step(value)


def _fate(value: object) -> Fate:
    if value not in ("delivered", "failed", "expired"):
        raise ValueError('"delivered", "failed" or "expired"')
    return Fate(value)
