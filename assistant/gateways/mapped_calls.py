"""A provider's HTTP by its mapping: the reading of its calls."""

import hashlib
import hmac
import json
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from typing import Any
from urllib.parse import parse_qsl

from assistant.channel import (
    Brought,
    Channel,
    Fate,
    Hooks,
    Incoming,
    News,
    NotTakenError,
    Piece,
    Receipt,
    Request,
    Response,
    Screen,
    Step,
)
from assistant.gateways.mapped import Secrets
from assistant.gateways.mapping import CallFields, Check, Provider, found_at, put
from assistant.gateways.numbers import e164

_DETAIL_MAX = 200
_ID_MAX = 128
_CLOCKS_APART = timedelta(minutes=5)


def mapped_hooks(provider: Provider, secrets: Secrets) -> Hooks:
    """The provider's calls, each checked as the mapping says before it is read."""
    readers: dict[str, tuple[CallFields | None, _Reader]] = {
        "text": (provider.text, _text),
        "ring": (provider.ring, _ring),
        "ussd": (provider.ussd, _ussd),
        "receipt": (provider.receipt, _receipt),
    }
    return {
        name: _Called(provider, heard, secrets, read)
        for name, (heard, read) in readers.items()
        if heard is not None
    }


@dataclass(frozen=True)
class _Item:
    """One thing that a call tells of."""

    said: Mapping[str, Any]
    heard: CallFields
    country: str
    cut: bool  # our texts go in segments, each with an id of its own
    now: datetime

    def has(self, place: str) -> str:
        """What stands at a place, as words; empty where nothing does."""
        found = found_at(self.said, place) if place else None
        words = "" if found is None else str(found)
        return words.encode("utf-16", "surrogatepass").decode("utf-16", "replace")

    @property
    def phone(self) -> str:
        return e164(self.has(self.heard.phone), self.country)

    @property
    def at(self) -> datetime:
        return _moment(self.has(self.heard.at), self.heard.at_as, self.now)

    @property
    def id(self) -> str:
        """The provider's own id; where it gives none, one of what the call says."""
        given = self.has(self.heard.id)
        if given:
            return given[:_ID_MAX]
        over = json.dumps(self.said, sort_keys=True, default=str).encode()
        return hashlib.sha256(over).hexdigest()


_Reader = Callable[[_Item], News | None]


@dataclass(frozen=True)
class _Called:
    """The hook of one kind of call."""

    provider: Provider
    heard: CallFields
    secrets: Secrets
    read: _Reader

    def __call__(self, request: Request, now: datetime) -> Brought:
        said = _body(request, self.heard.body)
        _let_in(self.provider.check, self.secrets, request, said, now)
        items = found_at(said, self.heard.each) if self.heard.each else [said]
        if not isinstance(items, list):
            raise NotTakenError(400, f"expected a list at {self.heard.each}")
        news = []
        for each in items:
            if not isinstance(each, dict):
                raise NotTakenError(400, "expected fields with names")
            country, cut = self.provider.country, self.provider.send.long == "cut"
            found = self.read(_Item(each, self.heard, country, cut, now))
            if found is not None:
                news.append(found)
        return Brought(tuple(news), self._answer)

    def _answer(self, screen: Screen | None) -> Response:
        heard = self.heard
        words = heard.answer
        if screen is not None:
            is_json = "json" in heard.answer_kind
            text = json.dumps(screen.text)[1:-1] if is_json else screen.text
            words = put(heard.answer_more if screen.more else heard.answer_last, {"text": text})
        return Response(heard.answer_status, words.encode(), heard.answer_kind)


def _let_in(check: Check, secrets: Secrets, request: Request, said: Any, now: datetime) -> None:
    """Raises NotTakenError for a call that is not the provider's."""
    token = put(check.token, secrets.slots)
    given = [(request.header(check.header), token)] if check.header else []
    if check.field:
        told = request.query.get(check.field) or found_at(said, check.field)
        given.append((str(told), token))
    if check.sign is not None:
        sign, at = check.sign, ""
        if sign.time_header:
            at = request.header(sign.time_header)
            if not _is_lately(at, now):
                raise NotTakenError(401, "the time of the call is missing or wrong", "its time")
        slots = {"path": request.path, "now_unix": at}
        right = sign.made(secrets.secret, slots, request.body)
        given.append((request.header(sign.header), right))
    for told, right in given:
        heard = told.encode("utf-8", "replace")
        if not right or not hmac.compare_digest(heard, right.encode()):
            raise NotTakenError(401, "this call is not known", "its token or signature")


def _is_lately(at: str, now: datetime) -> bool:
    if not (at.isascii() and at.isdecimal() and len(at) <= 12):
        return False
    return abs(int(at) - now.timestamp()) <= _CLOCKS_APART.total_seconds()


def _body(request: Request, kind: str) -> Any:
    """What a call says, as one object."""
    if kind == "query":
        return dict(request.query)
    if kind == "form":
        try:
            return dict(parse_qsl(request.body.decode(), keep_blank_values=True))
        except ValueError as broken:
            raise NotTakenError(400, "expected a form in UTF-8") from broken
    try:
        return json.loads(request.body)
    except (ValueError, RecursionError) as broken:
        raise NotTakenError(400, "expected JSON in UTF-8") from broken


def _text(item: _Item) -> Incoming | None:
    """A text; nothing where the sender is no number, such as an operator's advertisement."""
    if not item.phone:
        return None
    words = item.has(item.heard.text).replace("\0", "\N{REPLACEMENT CHARACTER}")
    return Incoming(item.id, item.phone, words, Channel.SMS, item.at, piece=_piece(item))


def _piece(item: _Item) -> Piece | None:
    part, parts = item.has(item.heard.part), item.has(item.heard.parts)
    if not (part.isdecimal() and parts.isdecimal()) or int(parts) < 2:
        return None
    if not 1 <= int(part) <= int(parts):
        return None
    return Piece(item.has(item.heard.ref), int(part), int(parts))


def _ring(item: _Item) -> Incoming | None:
    if not item.phone:
        return None
    return Incoming(item.id, item.phone, "", Channel.RING, item.at)


def _ussd(item: _Item) -> Incoming | None:
    heard, words = item.heard, item.has(item.heard.text)
    session = item.has(heard.session)
    if not session or not item.phone:
        raise NotTakenError(400, "expected a session and a number")
    step = _step(item, words)
    if step is Step.ANSWER and heard.so_far:
        words = words.rpartition(heard.so_far)[2]
    return Incoming(
        item.id, item.phone, words, Channel.USSD, item.at, step=step, session_id=session
    )


def _step(item: _Item, words: str) -> Step:
    said = item.heard.steps.get(item.has(item.heard.step)) if item.heard.step else None
    if said is None:
        return Step.ANSWER if words else Step.BEGIN
    return Step(said)


def _receipt(item: _Item) -> Receipt | None:
    """What became of a text; nothing for a state on the way that we keep no word for."""
    heard = item.heard
    fate = heard.fates.get(item.has(heard.fate))
    if fate is None or fate == Fate.ACCEPTED:
        return None
    ours, theirs = item.has(heard.our_id), item.has(heard.their_id)
    detail = item.has(heard.detail)[:_DETAIL_MAX]
    if not ours and not theirs:
        raise NotTakenError(400, "expected the id of a text")
    if ours and not item.cut:
        return Receipt(ours, Fate(fate), item.at, detail)
    return Receipt("", Fate(fate), item.at, detail, part=ours or theirs)


def _moment(told: str, how: str, now: datetime) -> datetime:
    """A time of the provider's; ours where it tells none that can be read."""
    try:
        if how in ("unix", "unix_ms"):
            return datetime.fromtimestamp(int(told) / (1000 if how == "unix_ms" else 1), UTC)
        if how == "iso":
            at = datetime.fromisoformat(told)
        else:
            at = datetime.strptime(told, how)  # noqa: DTZ007 a zone follows, where it has none
    except (ValueError, OverflowError, OSError):
        return now
    return at.replace(tzinfo=UTC) if at.tzinfo is None else at.astimezone(UTC)
