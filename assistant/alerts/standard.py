"""The data dictionary of CAP 1.2 (section 3.2) as tables: order, number and kind of elements.

Written from the standard's text. The rules that only its prose holds are in `fields` (what a
text may be) and in `reading` (what must stand beside what).
"""

from collections.abc import Callable
from dataclasses import dataclass
from enum import StrEnum
from typing import Any

from assistant.alert_terms import (
    CATEGORIES,
    CERTAINTIES,
    SEVERITIES,
    URGENCIES,
    MessageType,
    Scope,
    Status,
)
from assistant.alerts import fields
from assistant.alerts.fields import WrongText
from assistant.alerts.values import AlertWrong

NAMESPACE = "urn:oasis:names:tc:emergency:cap:1.2"
SIGNATURES = "http://www.w3.org/2000/09/xmldsig#"  # 3.3.4.1: may follow the last <info>

Read = Callable[[str], Any]


@dataclass(frozen=True)
class Part:
    """One element of a block. `parts` are those inside it, where it is a block itself.

    blank: it may be empty (free text).
    """

    name: str
    read: Read = str
    needed: bool = False
    many: bool = False
    blank: bool = False
    parts: tuple["Part", ...] = ()


def one_of(*words: str) -> Read:
    """Reads one of these words, exactly as written."""

    def read(text: str) -> str:
        if text not in words:
            raise WrongText(AlertWrong.WORD)
        return text

    return read


def _of(words: type[StrEnum]) -> Read:
    return one_of(*words)


RESPONSES = tuple("Shelter Evacuate Prepare Execute Avoid Monitor Assess AllClear None".split())


def _text(name: str, *, needed: bool = False, many: bool = False) -> Part:
    return Part(name, needed=needed, many=many, blank=True)


def _named_value(name: str) -> Part:
    inside = (_text("valueName", needed=True), _text("value", needed=True))
    return Part(name, many=True, parts=inside)


_RESOURCE = (
    _text("resourceDesc", needed=True),
    _text("mimeType", needed=True),
    Part("size", fields.whole),
    _text("uri"),
    _text("derefUri"),
    _text("digest"),
)
_AREA = (
    _text("areaDesc", needed=True),
    Part("polygon", fields.polygon, many=True),
    Part("circle", fields.circle, many=True),
    _named_value("geocode"),
    Part("altitude", fields.decimal),
    Part("ceiling", fields.decimal),
)
_INFO = (
    Part("language", fields.language, blank=True),
    Part("category", one_of(*CATEGORIES), needed=True, many=True),
    Part("event", needed=True),
    Part("responseType", one_of(*RESPONSES), many=True),
    Part("urgency", one_of(*URGENCIES), needed=True),
    Part("severity", one_of(*SEVERITIES), needed=True),
    Part("certainty", one_of(*CERTAINTIES), needed=True),
    _text("audience"),
    _named_value("eventCode"),
    Part("effective", fields.moment),
    Part("onset", fields.moment),
    Part("expires", fields.moment),
    _text("senderName"),
    _text("headline"),
    _text("description"),
    _text("instruction"),
    _text("web"),
    _text("contact"),
    _named_value("parameter"),
    Part("resource", many=True, parts=_RESOURCE),
    Part("area", many=True, parts=_AREA),
)
ALERT = (
    Part("identifier", fields.identifier, needed=True),
    Part("sender", fields.identifier, needed=True),
    Part("sent", fields.moment, needed=True),
    Part("status", _of(Status), needed=True),
    Part("msgType", _of(MessageType), needed=True),
    _text("source"),
    Part("scope", _of(Scope), needed=True),
    _text("restriction"),
    _text("addresses"),
    _text("code", many=True),
    _text("note"),
    Part("references", fields.references, blank=True),
    _text("incidents"),
    Part("info", many=True, parts=_INFO),
)

# What must stand beside what: (element, its value or None for any, what it needs).
BESIDE: tuple[tuple[str, str | None, str], ...] = (
    ("scope", Scope.RESTRICTED, "restriction"),  # 3.2.1 <restriction>
    ("scope", Scope.PRIVATE, "addresses"),  # 3.2.1 <addresses>
    ("ceiling", None, "altitude"),  # 3.2.4 <ceiling>
)
