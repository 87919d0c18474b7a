"""How another provider's HTTP looks, as values: what a mapping file says (MAPPING.md)."""

import base64
import hashlib
import hmac
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from assistant.channel import Fate, Step

BODIES = ("json", "form", "query")
LONG = ("whole", "cut")
_SLOT = re.compile(r"\{([a-z0-9_]+)\}")
_SPELLED = ("hex", "base64")
_DIGESTS = ("sha1", "sha256", "sha512")


@dataclass(frozen=True)
class Meets:
    """Which answers mean something: by status, and by what stands at a place of the JSON."""

    status: tuple[int, ...] = ()
    at: str = ""
    says: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        if not self.status and not self.at:
            raise ValueError("say by which status, or place of the answer, it is known")

    def meets(self, status: int, said: Any) -> bool:
        """Whether an answer is such a one."""
        if self.status and status not in self.status:
            return False
        if not self.at:
            return True
        found = found_at(said, self.at)
        return found is not None and (not self.says or str(found) in self.says)


@dataclass(frozen=True)
class Sign:
    """A signature by a shared secret: in which header, over what, spelled how."""

    header: str
    over: str = "{body}"
    digest: str = "sha256"
    spelled: str = "hex"
    time_header: str = ""  # bears {now_unix}

    def __post_init__(self) -> None:
        _one_of("digest", self.digest, _DIGESTS)
        _one_of("spelled", self.spelled, _SPELLED)

    def made(self, secret: str, slots: Mapping[str, str], body: bytes) -> str:
        """The signature; `slots` has all but the body, which may be any octets."""
        before, mark, after = self.over.partition("{body}")
        over = (
            put(before, slots).encode() + (body if mark else b"") + put(after, slots).encode()
        )
        found = hmac.new(secret.encode(), over, getattr(hashlib, self.digest)).digest()
        return found.hex() if self.spelled == "hex" else base64.b64encode(found).decode()


SIGN_SLOTS = ("body", "path", "now_unix")
SEND_SLOTS = (
    "id",
    "phone",
    "digits",
    "sender",
    "sender_digits",
    "text",
    "ref",
    "part",
    "parts",
    "until",
    "until_unix",
    "seconds",
    "minutes",
    "now_unix",
    "token",
    "user",
    "password",
)


@dataclass(frozen=True)
class Sends:
    """How a text is handed over and what the answers mean."""

    url: str
    fields: dict[str, str]
    taken: Meets
    method: str = "POST"
    body: str = "json"
    numbers: tuple[str, ...] = ()
    headers: dict[str, str] = field(default_factory=dict)
    sign: Sign | None = None
    long: str = "whole"
    refused: Meets | None = None
    busy: Meets | None = None
    reads: tuple[str, ...] = ()  # answers in plain words, such as "{state} {number}"
    their_id: str = ""
    words: str = ""

    def __post_init__(self) -> None:
        _one_of("method", self.method, ("GET", "POST", "PUT"))
        _one_of("body", self.body, BODIES)
        _one_of("long", self.long, LONG)
        if self.sign is not None:
            check_slots(self.sign.over, (*SIGN_SLOTS, *SEND_SLOTS))
        for template in self.reads:
            names = _SLOT.findall(template)
            if not names or not all(name.isidentifier() for name in names):
                raise ValueError(f"reads has {template!r}: name what it tells, as {{state}}")
        for template in (self.url, *self.fields.values(), *self.headers.values()):
            check_slots(template, SEND_SLOTS)


@dataclass(frozen=True)
class Check:
    """How a call of the provider is known: a token in a header or a field, or a signature."""

    header: str = ""
    field: str = ""
    token: str = "{token}"
    sign: Sign | None = None

    def __post_init__(self) -> None:
        if not (self.header or self.field or self.sign):
            raise ValueError("say by which header, field or signature a call is known")
        check_slots(self.token, ("token", "user", "password"))
        if self.sign is not None:
            check_slots(self.sign.over, SIGN_SLOTS)


@dataclass(frozen=True)
class CallFields:
    """Where a call has what it brings, and how it is answered."""

    phone: str = ""
    text: str = ""
    id: str = ""
    at: str = ""
    at_as: str = "iso"  # or unix, unix_ms, or a pattern such as "%Y-%m-%d %H:%M:%S" (UTC)
    each: str = ""  # the place of a list, where a call brings several
    body: str = "json"
    ref: str = ""  # of a long text in pieces
    part: str = ""
    parts: str = ""
    session: str = ""
    step: str = ""
    steps: dict[str, str] = field(default_factory=dict)
    so_far: str = ""  # the text holds all answers of a session, with this between them
    our_id: str = ""
    their_id: str = ""
    fate: str = ""
    fates: dict[str, str] = field(default_factory=dict)
    detail: str = ""
    answer: str = ""
    answer_more: str = "{text}"
    answer_last: str = "{text}"
    answer_status: int = 200
    answer_kind: str = "text/plain; charset=utf-8"

    def __post_init__(self) -> None:
        _one_of("body", self.body, BODIES)
        for said in self.steps.values():
            _one_of("steps", said, [s.value for s in Step if s is not Step.TEXT])
        known = [f.value for f in Fate if f is not Fate.TRY_LATER]
        for said in self.fates.values():
            _one_of("fates", said, known)
        if bool(self.ref) != bool(self.part and self.parts):
            raise ValueError("name ref, part and parts, or none of them")
        for template in (self.answer_more, self.answer_last):
            check_slots(template, ("text",))


@dataclass(frozen=True)
class Provider:
    """A provider's HTTP as a whole. `country` is put before numbers that begin with a 0."""

    send: Sends
    check: Check
    text: CallFields | None = None
    ring: CallFields | None = None
    ussd: CallFields | None = None
    receipt: CallFields | None = None
    country: str = ""

    def __post_init__(self) -> None:
        needs = {"text": ("phone", "text"), "ring": ("phone",)}
        needs |= {"ussd": ("phone", "text", "session"), "receipt": ("fate", "fates")}
        for call, names in needs.items():
            heard = getattr(self, call)
            missing = [name for name in names if heard and not getattr(heard, name)]
            if missing:
                raise ValueError(f"{call}: say where {', '.join(missing)} stands")
        if self.receipt and not (self.receipt.our_id or self.receipt.their_id):
            raise ValueError("receipt: say where our_id or their_id stands")
        if self.receipt and not self.receipt.our_id and not self.send.their_id:
            raise ValueError("send: say where their_id stands in the answer: receipts bear it")


def _one_of(name: str, value: str, known: Any) -> None:
    if value not in known:
        raise ValueError(f"{name} is {value!r}: set one of {', '.join(known)}")


def check_slots(template: str, known: tuple[str, ...]) -> None:
    """Raises ValueError for a slot that nothing fills."""
    strange = [name for name in _SLOT.findall(template) if name not in known]
    if strange:
        slots = ", ".join(f"{{{name}}}" for name in known)
        raise ValueError(f"{{{strange[0]}}} in {template!r} is not known; slots are {slots}")


def put(template: str, slots: Mapping[str, str]) -> str:
    """A template with its slots filled; what stands in a slot is never read as a slot."""
    return _SLOT.sub(lambda found: slots.get(found[1], found[0]), template)


def read_by(templates: Sequence[str], words: str) -> dict[str, str] | None:
    """What fills the slots of the first template that has the form of these words; None where
    none has it."""
    for template in templates:
        pattern = _SLOT.sub(
            lambda slot: f"(?P<{slot[1]}>.+?)",
            re.escape(template).replace(r"\{", "{").replace(r"\}", "}"),
        )
        fits = re.fullmatch(pattern, words, re.DOTALL)
        if fits:
            return fits.groupdict()
    return None


def found_at(said: Any, place: str) -> Any:
    """What stands at a place such as "messages.0.id"; None where nothing does."""
    for name in place.split("."):
        if isinstance(said, dict):
            said = said.get(name)
        elif isinstance(said, list) and name.isdecimal() and int(name) < len(said):
            said = said[int(name)]
        else:
            return None
    return said


def nested(fields: Mapping[str, Any]) -> dict[str, Any]:
    """Fields by their places as one object: "messages.0.to" makes a list in an object."""
    whole: dict[str, Any] = {}
    for place, value in fields.items():
        names = place.split(".")
        inner: Any = whole
        for name, following in zip(names, [*names[1:], ""], strict=True):
            fresh: Any = value if not following else [] if following.isdecimal() else {}
            inner = _inner(inner, name, fresh, last=not following)
    return whole


def _inner(outer: Any, name: str, fresh: Any, *, last: bool) -> Any:
    if isinstance(outer, dict):
        if last:
            outer[name] = fresh
        return outer.setdefault(name, fresh)
    place = int(name)
    while len(outer) <= place:
        outer.append(None)
    if last or outer[place] is None:
        outer[place] = fresh
    return outer[place]
