"""A message in CAP 1.2: bytes -> an alert, or all that is not as the standard has it."""

from collections.abc import Sequence
from typing import Any
from xml.etree.ElementTree import Element

from assistant.alert_terms import MessageType, Reference, Scope, Status
from assistant.alerts.document import SHOWN, open_document
from assistant.alerts.fields import WrongText
from assistant.alerts.standard import ALERT, BESIDE, NAMESPACE, SIGNATURES, Part
from assistant.alerts.values import (
    DEFAULT_LANGUAGE,
    Alert,
    AlertFault,
    AlertWrong,
    Area,
    Faulty,
    Info,
)
from assistant.places import Geocode

MOST_FAULTS = 20
_INSTANCE = "{http://www.w3.org/2001/XMLSchema-instance}"  # may stand on any element
Block = dict[str, list[Any]]


def read_alert(raw: bytes) -> Alert | Faulty:
    """Reads and checks one message. Never raises for what stands in it.

    Nothing outside `raw` is looked at: no document type, no entity, no address.
    """
    root = open_document(raw)
    if isinstance(root, Faulty):
        return root
    faults: list[AlertFault] = []
    signatures = [child for child in root if child.tag.startswith(f"{{{SIGNATURES}}}")]
    found = _block(root, ALERT, "alert", faults, skip=signatures)
    if faults:
        return Faulty(tuple(faults[:MOST_FAULTS]), _key(found))
    return _alert(found, signed=f"{{{SIGNATURES}}}Signature" in {s.tag for s in signatures})


def _block(
    element: Element,
    parts: tuple[Part, ...],
    where: str,
    faults: list[AlertFault],
    skip: Sequence[Element] = (),
) -> Block:
    """The values of a block by the names of its elements; faults are added to the list."""
    found: Block = {part.name: [] for part in parts}
    _stray(element, where, faults)
    place = 0
    places = {f"{{{NAMESPACE}}}{part.name}": n for n, part in enumerate(parts)}
    for child in element:
        if len(faults) >= MOST_FAULTS:
            return found
        if child in skip:
            place = len(parts)  # a signature stands last
            continue
        at = places.get(child.tag)
        if at is None:
            faults.append(AlertFault(AlertWrong.UNKNOWN, where, _name(child)))
            continue
        part, count = parts[at], len(found[parts[at].name]) + 1
        here = f"{where}/{part.name}" + (f"[{count}]" if part.many else "")
        if at < place:
            faults.append(AlertFault(AlertWrong.ORDER, here))
        if count > 1 and not part.many:
            faults.append(AlertFault(AlertWrong.TWICE, here))
        place = max(place, at)
        found[part.name].append(_value(child, part, here, faults))
    _complete(found, parts, where, faults)
    return found


def _name(element: Element) -> str:
    """Its name, with the namespace where that is not the standard's."""
    return element.tag.removeprefix(f"{{{NAMESPACE}}}")[-SHOWN:]


def _stray(element: Element, where: str, faults: list[AlertFault]) -> None:
    """Attributes, which the standard has none of, and words between the elements of a block."""
    faults += [
        AlertFault(AlertWrong.UNKNOWN, where, f"@{name}"[:SHOWN])
        for name in element.attrib
        if not name.startswith(_INSTANCE)
    ]
    if len(element):
        between = [element.text, *(child.tail for child in element)]
        words = next((text.strip() for text in between if text and text.strip()), "")
        if words:
            faults.append(AlertFault(AlertWrong.UNKNOWN, where, words[:SHOWN]))


def _value(element: Element, part: Part, where: str, faults: list[AlertFault]) -> Any:
    if part.parts:
        return _block(element, part.parts, where, faults)
    _stray(element, where, faults)
    if len(element):
        faults.append(AlertFault(AlertWrong.UNKNOWN, where, _name(element[0])))
        return None
    text = (element.text or "").strip()
    if not text and not part.blank:
        faults.append(AlertFault(AlertWrong.EMPTY, where))
        return None
    try:
        return part.read(text)
    except WrongText as fault:
        faults.append(AlertFault(fault.wrong, where, text[:SHOWN]))
        return None


def _complete(
    found: Block, parts: tuple[Part, ...], where: str, faults: list[AlertFault]
) -> None:
    """What is not there, and what must stand beside what is."""
    for part in parts:
        if part.needed and not found[part.name]:
            faults.append(AlertFault(AlertWrong.MISSING, f"{where}/{part.name}"))
    for name, word, needs in BESIDE:
        there = name in found and bool(found[name])
        if there and word in (None, found[name][0]) and not found.get(needs):
            faults.append(AlertFault(AlertWrong.NEEDS, f"{where}/{name}", needs))


# --- from blocks to values -------------------------------------------------------------------


def _one(block: Block, name: str, default: Any = "") -> Any:
    return block[name][0] if block[name] else default


def _key(block: Block) -> Reference | None:
    parts = [_one(block, name, None) for name in ("sender", "identifier", "sent")]
    return None if None in parts else Reference(*parts)


def _alert(block: Block, *, signed: bool) -> Alert:
    return Alert(
        key=Reference(_one(block, "sender"), _one(block, "identifier"), _one(block, "sent")),
        status=Status(_one(block, "status")),
        kind=MessageType(_one(block, "msgType")),
        scope=Scope(_one(block, "scope")),
        note=_one(block, "note"),
        references=_one(block, "references", ()),
        infos=tuple(map(_info, block["info"])),
        signed=signed,
    )


def _info(block: Block) -> Info:
    return Info(
        language=_one(block, "language", DEFAULT_LANGUAGE),
        categories=tuple(block["category"]),
        event=_one(block, "event"),
        responses=tuple(block["responseType"]),
        urgency=_one(block, "urgency"),
        severity=_one(block, "severity"),
        certainty=_one(block, "certainty"),
        event_codes=_codes(block["eventCode"]),
        effective=_one(block, "effective", None),
        onset=_one(block, "onset", None),
        expires=_one(block, "expires", None),
        sender_name=_one(block, "senderName"),
        headline=_one(block, "headline"),
        description=_one(block, "description"),
        instruction=_one(block, "instruction"),
        web=_one(block, "web"),
        contact=_one(block, "contact"),
        areas=tuple(map(_area, block["area"])),
    )


def _codes(blocks: list[Block]) -> tuple[Geocode, ...]:
    return tuple(Geocode(_one(each, "valueName"), _one(each, "value")) for each in blocks)


def _area(block: Block) -> Area:
    return Area(
        words=_one(block, "areaDesc"),
        polygons=tuple(block["polygon"]),
        circles=tuple(block["circle"]),
        geocodes=_codes(block["geocode"]),
    )
