"""Reads the head of a season file: who and where, before the first time."""

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

from scenarios.season import Person, SeasonOfficer, SeasonVillage

_NUMBER = r"(\+\d{8,15})"
_PHONE = re.compile(rf"(\w[\w'-]*)\s+{_NUMBER}")
_OFFICER = re.compile(
    rf"(\w[\w'-]*)\s+{_NUMBER}\s+code\s+(\d+)(?:\s+of\s+(.*?))?(?:\s+in\s+(\w{{2,3}}))?"
)
_VILLAGE = re.compile(r"([^()]+?)\s*(?:\(([^()]+)\))?")
_FICTION = re.compile(r"\+447700900\d{3}|\+99900\d{7}")
TAKEN = frozenset({"network", "assistant"})


@dataclass
class Head:
    """What the head says, while it is being read."""

    title: str = ""
    zone: str = "UTC"
    region: str = ""
    languages: tuple[str, ...] = ("en", "sw")
    villages: tuple[SeasonVillage, ...] = ()
    people: dict[str, Person] = field(default_factory=dict)
    officers: tuple[SeasonOfficer, ...] = ()
    strict: bool = False


def read_head_line(line: str, head: Head) -> None:
    """Takes one line of the head in. Raises ValueError with what to write instead."""
    key, _, rest = line.strip().partition(" ")
    reader = _KEYS.get(key)
    if reader is None:
        known = ", ".join(_KEYS)
        raise ValueError(f"no such line: {key!r}; before the first time stand: {known}")
    reader(rest.strip(), head)


def _title(rest: str, head: Head) -> None:
    head.title = rest


def _zone(rest: str, head: Head) -> None:
    head.zone = _known_zone(rest)


def _known_zone(name: str) -> str:
    try:
        ZoneInfo(name)
    except (ZoneInfoNotFoundError, ValueError):
        raise ValueError(
            f"no such time zone: {name!r}; write one like Africa/Nairobi"
        ) from None
    return name


def _region(rest: str, head: Head) -> None:
    head.region = rest


def _languages(rest: str, head: Head) -> None:
    head.languages = tuple(code.strip() for code in rest.split(",") if code.strip())
    if not head.languages:
        raise ValueError("no language; write codes with commas: languages en, sw")


def _villages(rest: str, head: Head) -> None:
    head.villages += tuple(_village(part.strip()) for part in rest.split(",") if part.strip())


def _village(part: str) -> SeasonVillage:
    found = _VILLAGE.fullmatch(part)
    if found is None:
        raise ValueError(f"no village: {part!r}; write a name, or a name (Asia/Manila)")
    name, _, practices = found[1].partition(" with ")
    zone = _known_zone(found[2]) if found[2] else None
    return SeasonVillage(name.strip(), zone, tuple(practices.split()))


def _phone(rest: str, head: Head) -> None:
    found = _PHONE.fullmatch(rest)
    if found is None:
        raise ValueError("write a name of one word and a number: phone Amani +447700900101")
    _add_person(found[1], found[2], head)


def _add_person(name: str, phone: str, head: Head) -> None:
    if name.casefold() in TAKEN or name in head.people:
        raise ValueError(f"{name} is taken already; choose another name")
    if not _FICTION.fullmatch(phone):
        raise ValueError(
            f"{phone} might belong to somebody; take one from +447700900001 to +447700900999, "
            "or +99900 and seven digits"
        )
    if any(person.phone == phone for person in head.people.values()):
        raise ValueError(f"{phone} is taken already; choose another number")
    head.people[name] = Person(name, phone)


def _officer(rest: str, head: Head) -> None:
    _add_officer(rest, head, is_lead=False)


def _lead(rest: str, head: Head) -> None:
    _add_officer(rest, head, is_lead=True)


def _add_officer(rest: str, head: Head, *, is_lead: bool) -> None:
    found = _OFFICER.fullmatch(rest)
    if found is None or (found[4] is None and not is_lead):
        raise ValueError(
            "write: officer Juma +447700900201 code 246813 of Kijani, Mto Mwanga "
            "(a lead without the villages; maybe: in sw)"
        )
    name, phone, code, villages, language = found.groups()
    served = tuple(part.strip() for part in (villages or "").split(",") if part.strip())
    missing = [each for each in served if each not in {v.name for v in head.villages}]
    if missing:
        raise ValueError(f"no village {', '.join(missing)}; name it in a line above: villages")
    _add_person(name, phone, head)
    officer = SeasonOfficer(name, code, served, language or head.languages[0], is_lead)
    head.officers += (officer,)


def _strict(rest: str, head: Head) -> None:
    if rest:
        raise ValueError("strict stands alone on its line")
    head.strict = True


_KEYS: Mapping[str, Callable[[str, Head], None]] = {
    "title": _title,
    "zone": _zone,
    "region": _region,
    "languages": _languages,
    "villages": _villages,
    "phone": _phone,
    "officer": _officer,
    "lead": _lead,
    "strict": _strict,
}
