"""The programme file, with which an office starts: its zone, its villages and where they lie,
and what a text costs. Every fault of the file is told at once, with what to write instead.
"""

import tomllib
from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from pathlib import Path
from typing import Any

from pydantic import ValidationError
from pydantic_core import ErrorDetails

from assistant.channel import Tariff
from assistant.dialogue.values import Nearby
from assistant.people import VillageUnit, village_name
from assistant.places import VillagePlace
from assistant.service.nearby import KEYS, Phonebook
from assistant.settings import SettingsError
from assistant.settings.words import not_known
from assistant.wiring.programme_file import ProgrammeEntries, VillageEntry

_OWN_TABLE = "write each village as a table of its own, headed [[village]]"


@dataclass(frozen=True)
class Programme:
    """What a programme file says.

    zone:     IANA name, of villages without one
    villages: (name, zone or None), in their order
    tariff:   what a segment of a text costs
    name:     what the programme is called
    places:   where villages lie, by name; those that say so
    phonebook: whom to turn to in need
    climates: the mean temperature of each month [C] of villages, by name; those that say so
    units:    what land units are in villages, by name; those that say so
    """

    zone: str | None
    villages: tuple[tuple[str, str | None], ...]
    tariff: Tariff | None = None
    name: str | None = None
    places: Mapping[str, VillagePlace] = field(default_factory=dict)
    phonebook: Phonebook = Phonebook()
    climates: Mapping[str, tuple[float, ...]] = field(default_factory=dict)
    units: Mapping[str, tuple[VillageUnit, ...]] = field(default_factory=dict)


def read_programme(path: Path) -> Programme:
    """A programme file: TOML with `name`, `zone`, `price_per_segment`, `currency`, a table
    [alerts] (read by `wiring.alerts`) and [[village]] tables of `name` and maybe `zone`,
    `latitude` [degrees north], `longitude` [degrees east] (WGS 84), `codes`, `climate`, the
    mean temperature of each month [C], January first, and `units`, land units with their sizes.
    Both say whom
    to turn to in need: `emergency`, a number to ring; `health_post`; `vet`, with a number. A
    village's own go before.

    Raises:
        SettingsError: it cannot be read, or lists every entry that cannot be used.
    """
    try:
        text = path.read_text(encoding="utf-8")
        table = tomllib.loads(text, parse_float=Decimal)
    except (OSError, UnicodeDecodeError, tomllib.TOMLDecodeError) as fault:
        raise SettingsError(f"NURSERY_PROGRAMME_FILE={path}: {fault}") from fault
    faults = list(_twice(table))
    try:
        entries = ProgrammeEntries.model_validate(table)
    except ValidationError as refused:
        faults = list(dict.fromkeys(_told(each, table) for each in refused.errors())) + faults
    if faults:
        raise SettingsError(f"NURSERY_PROGRAMME_FILE={path}: " + "; ".join(faults))
    return _programme(entries)


def _programme(said: ProgrammeEntries) -> Programme:
    places = {each.name: VillagePlace(each.point, each.codes) for each in said.village}
    own = {each.name.casefold(): each.nearby for each in said.village}
    return Programme(
        zone=said.zone,
        villages=tuple((each.name, each.zone) for each in said.village),
        tariff=said.tariff,
        name=said.name,
        places={name: place for name, place in places.items() if place.findable},
        phonebook=Phonebook(
            said.nearby, {name: each for name, each in own.items() if each != Nearby()}
        ),
        climates={each.name: each.climate for each in said.village if each.climate},
        units={each.name: each.units for each in said.village if each.units},
    )


def _twice(table: Mapping[str, Any]) -> Iterator[str]:
    """Looked for beside the entries: a village whose zone is wrong may stand twice as well."""
    names = [name for number in range(_villages(table)) if (name := _named(table, number))]
    many = Counter(map(str.casefold, names))
    for name in dict.fromkeys(names[::-1]):
        if many.pop(name.casefold(), 0) > 1:
            yield f"{name}: stands twice; one [[village]] says all of a village"


def _villages(table: Mapping[str, Any]) -> int:
    given = table.get("village")
    return len(given) if isinstance(given, list) else 0


def _named(table: Mapping[str, Any], number: int) -> str:
    """The name of one of the villages; empty where it has none that can be used."""
    row = table["village"][number]
    name = row.get("name") if isinstance(row, dict) else None
    return name if isinstance(name, str) and village_name(name) == name else ""


def _told(fault: ErrorDetails, table: Mapping[str, Any]) -> str:
    """A fault with where it stands: by the name of the village, if it has one."""
    match fault["loc"]:
        case ("village",) | ("village", _):
            return f"village: {_OWN_TABLE}"
        case ("village", int(number), str(entry), *_):
            where = _named(table, number) or f"village {number + 1}"
            return f"{where}: {_words(fault, entry, VillageEntry)}"
        case (entry, *_):
            return _words(fault, str(entry), ProgrammeEntries)
    raise LookupError(f"expected a fault of an entry, got {fault}")


def _words(
    fault: ErrorDetails, entry: str, known: type[VillageEntry | ProgrammeEntries]
) -> str:
    if fault["type"] == "extra_forbidden":
        own_first = sorted(known.model_fields, key=KEYS.__contains__)
        return not_known(entry, own_first)
    words = str(fault["ctx"]["error"])
    return f"{entry}: {words}" if known is ProgrammeEntries or entry in KEYS else words
