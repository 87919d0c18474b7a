"""Makes alert messages for tests: invented dangers in an invented district.

`cap()` is a heavy-rain alert of an invented service; each argument changes one element, `None`
leaves it out, a list repeats it, and `Raw` is put in as it stands.
"""

from typing import Any
from xml.sax.saxutils import escape

NAMESPACE = "urn:oasis:names:tc:emergency:cap:1.2"
SENDER = "weather@lindara.example.org"
# Round the invented villages of the tests, which lie near 1 south, 37 east.
RING = "-0.9,36.9 -0.9,37.1 -1.1,37.1 -1.1,36.9 -0.9,36.9"


class Raw(str):
    """XML that is put in as it stands."""


def part(name: str, value: Any) -> str:
    """One element, several of them, or none."""
    if value is None:
        return ""
    if isinstance(value, list):
        return "".join(part(name, each) for each in value)
    inside = value if isinstance(value, Raw) else escape(str(value))
    return f"<{name}>{inside}</{name}>"


def block(defaults: dict[str, Any], changes: dict[str, Any]) -> Raw:
    """A block of elements in their order; what is not among the defaults comes last."""
    return Raw("".join(part(name, value) for name, value in (defaults | changes).items()))


def code(name: str, value: str) -> Raw:
    """A named value, as in <geocode>, <eventCode> and <parameter>."""
    return Raw(part("valueName", name) + part("value", value))


def area(**changes: Any) -> Raw:
    """The valley."""
    defaults = {"areaDesc": "Lindara valley", "polygon": RING, "circle": None, "geocode": None}
    return block(defaults, changes)


def info(**changes: Any) -> Raw:
    """Heavy rain this afternoon."""
    defaults = {
        "language": "en",
        "category": "Met",
        "event": "Heavy rain",
        "responseType": "Prepare",
        "urgency": "Expected",
        "severity": "Severe",
        "certainty": "Likely",
        "audience": None,
        "eventCode": None,
        "effective": None,
        "onset": "2026-06-12T14:00:00+03:00",
        "expires": "2026-06-12T20:00:00+03:00",
        "senderName": "Lindara weather service",
        "headline": "Orange: heavy rain in the Lindara valley",
        "description": None,
        "instruction": None,
        "web": None,
        "contact": None,
        "parameter": None,
        "resource": None,
        "area": area(),
    }
    return block(defaults, changes)


def cap(namespace: str = NAMESPACE, **changes: Any) -> bytes:
    """One message."""
    defaults = {
        "identifier": "LWS-1",
        "sender": SENDER,
        "sent": "2026-06-12T06:00:00+03:00",
        "status": "Actual",
        "msgType": "Alert",
        "source": None,
        "scope": "Public",
        "restriction": None,
        "addresses": None,
        "code": None,
        "note": None,
        "references": None,
        "incidents": None,
        "info": info(),
    }
    return f'<alert xmlns="{namespace}">{block(defaults, changes)}</alert>'.encode()
