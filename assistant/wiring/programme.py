"""The programme file, with which an office starts: its zone, its villages and where they lie,
and what a text costs. Every fault of the file is told at once, with what to write instead.
"""

import tomllib
from collections.abc import Callable, Collection, Iterator, Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from difflib import get_close_matches
from pathlib import Path
from typing import Any, TypeVar

from assistant.alerts import VillagePlace
from assistant.alerts.fields import DATE_LINE, POLE
from assistant.alerts.values import Geocode, Point
from assistant.channel import Tariff
from assistant.dialogue.values import Nearby
from assistant.people import LONGEST_NAME, LONGEST_VILLAGE, VillageUnit, village_name
from assistant.service.alerts.codes import NoCode, read_codes
from assistant.service.climate import is_climate
from assistant.service.land_units import NoUnit, read_units
from assistant.service.nearby import KEYS, Phonebook
from assistant.settings import SettingsError, is_zone, read_currency, read_price
from assistant.wiring.lexicons import open_lexicons

ENTRIES = ("name", "zone", "price_per_segment", "currency", *KEYS, "alerts", "village")
Read = TypeVar("Read")
OF_VILLAGE = ("name", "zone", "latitude", "longitude", "codes", "climate", "units", *KEYS)
LONGEST_NUMBER = 24  # characters of the number to ring; the texts that say it have this room
LONGEST_HELPER = 40  # characters of a health post or a vet, name and number
LEAST_DIGITS = 2


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
    faults = list(_unknown("", table, ENTRIES))
    name = _tried(faults, "name", _name, table)
    zone = _tried(faults, "zone", _zone, table)
    tariff = _tried(faults, "price_per_segment", _tariff, table)
    nearby = _nearby("", table, faults)
    rows = tuple(_rows(table, faults))
    places = {each.name: each.place for each in rows if each.place.findable}
    if faults:
        raise SettingsError(f"NURSERY_PROGRAMME_FILE={path}: " + "; ".join(faults))
    villages = tuple((each.name, each.zone) for each in rows)
    own = {each.name.casefold(): each.nearby for each in rows if each.nearby != Nearby()}
    climates = {each.name: each.climate for each in rows if each.climate}
    book = Phonebook(nearby, own)
    units = {each.name: each.units for each in rows if each.units}
    return Programme(zone, villages, tariff, name, places, book, climates, units)


def _tried(
    faults: list[str],
    what: str,
    read: Callable[[Mapping[str, Any]], Read],
    table: Mapping[str, Any],
) -> Read | None:
    """What an entry says; its fault goes to the others."""
    try:
        return read(table)
    except ValueError as fault:
        faults.append(f"{what}: {fault}")
        return None


def _unknown(where: str, table: Mapping[str, Any], known: Collection[str], /) -> Iterator[str]:
    """A mistyped entry would be passed over in silence."""
    for entry in table:
        if entry not in known:
            near = get_close_matches(entry, known, 1)
            hint = f"write {near[0]}" if near else f"known are {', '.join(known)}"
            yield f"{where}{entry} is not known; {hint}"


def _name(table: Mapping[str, Any]) -> str | None:
    name = table.get("name")
    if name is not None and not (isinstance(name, str) and 0 < len(name) <= LONGEST_NAME):
        raise ValueError(f'write up to {LONGEST_NAME} letters, name = "Kijani rice programme"')
    return name


def _zone(table: Mapping[str, Any]) -> str | None:
    zone = table.get("zone")
    if zone is not None and not is_zone(str(zone)):
        raise ValueError(f"no time zone {zone}; write an IANA name such as Africa/Nairobi")
    return zone


def _tariff(table: Mapping[str, Any]) -> Tariff | None:
    """What a segment costs, where the file says so."""
    if "price_per_segment" not in table:
        return None
    try:
        price = read_price(str(table["price_per_segment"]))
        return Tariff(price, read_currency(str(table.get("currency", ""))))
    except ValueError as fault:
        raise ValueError(
            f'{fault}; write price_per_segment = 0.80 and currency = "KES"'
        ) from fault


# --- whom to turn to -------------------------------------------------------------------------


def _nearby(where: str, table: Mapping[str, Any], faults: list[str]) -> Nearby:
    """The numbers that a table says; each fault goes to the others."""
    found = {key: _tried(faults, f"{where}{key}", _HELPERS[key], table) or "" for key in KEYS}
    return Nearby(**found)


def _emergency(table: Mapping[str, Any]) -> str:
    return _helper(table, "emergency", LONGEST_NUMBER, '"number"', LEAST_DIGITS)


def _health_post(table: Mapping[str, Any]) -> str:
    return _helper(table, "health_post", LONGEST_HELPER, '"name and number"', 0)


def _vet(table: Mapping[str, Any]) -> str:
    return _helper(table, "vet", LONGEST_HELPER, '"name and number"', LEAST_DIGITS)


_HELPERS: Mapping[str, Callable[[Mapping[str, Any]], str]] = {
    "emergency": _emergency,
    "health_post": _health_post,
    "vet": _vet,
}


def _helper(table: Mapping[str, Any], key: str, longest: int, how: str, digits: int) -> str:
    """One entry, in quotes since a number may begin with 0; empty where it is not there."""
    value = table.get(key)
    if value is None:
        return ""
    said = " ".join(value.split()) if isinstance(value, str) else ""
    if not 0 < len(said) <= longest or sum(ch.isdecimal() for ch in said) < digits:
        least = f" with {digits} digits or more" if digits else ""
        raise ValueError(f"write {key} = {how} in up to {longest} characters{least}")
    return said


# --- villages --------------------------------------------------------------------------------


@dataclass(frozen=True)
class _Row:
    """One village of the file."""

    name: str
    zone: str | None
    place: VillagePlace
    nearby: Nearby = Nearby()
    climate: tuple[float, ...] = ()
    units: tuple[VillageUnit, ...] = ()


def _rows(table: Mapping[str, Any], faults: list[str]) -> Iterator[_Row]:
    given = table.get("village", [])
    if not isinstance(given, list) or not all(isinstance(row, dict) for row in given):
        faults.append("village: write each village as a table of its own, headed [[village]]")
        return
    seen: set[str] = set()
    for number, row in enumerate(given, start=1):
        name = row.get("name")
        if not isinstance(name, str) or village_name(name) != name:
            faults.append(
                f"village {number}: no name {name!r}; write words of up to "
                f"{LONGEST_VILLAGE} letters, without blanks around them"
            )
            continue
        if name.casefold() in seen:
            faults.append(f"{name}: stands twice; one [[village]] says all of a village")
        seen.add(name.casefold())
        faults.extend(_unknown(f"{name}: ", row, OF_VILLAGE))
        zone = _tried(faults, name, _zone, row)
        point = _tried(faults, name, _point, row)
        codes = _tried(faults, name, _codes, row)
        nearby = _nearby(f"{name}: ", row, faults)
        climate = _tried(faults, name, _climate, row) or ()
        units = _tried(faults, name, _units, row) or ()
        place = VillagePlace(point, codes or frozenset())
        yield _Row(name, zone, place, nearby, climate, units)


def _point(row: Mapping[str, Any]) -> Point | None:
    given = [row.get("latitude"), row.get("longitude")]
    if given == [None, None]:
        return None
    for value, most in zip(given, (POLE, DATE_LINE), strict=True):
        number = isinstance(value, int | Decimal) and not isinstance(value, bool)
        if not number or not -most <= float(value) <= most:  # type: ignore[arg-type]
            shown = ", ".join("nothing" if each is None else str(each) for each in given)
            raise ValueError(
                f"no place {shown}; write both, in degrees north and east with a point and "
                "without quotes: latitude = -3.7 and longitude = 42.5"
            )
    return Point(float(given[0]), float(given[1]))  # type: ignore[arg-type]


def _climate(row: Mapping[str, Any]) -> tuple[float, ...]:
    given = row.get("climate", [])
    numbers = isinstance(given, list) and all(
        isinstance(each, int | Decimal) and not isinstance(each, bool) for each in given
    )
    months = tuple(float(each) for each in given) if numbers else ()
    if (given and not months) or (months and not is_climate(months)):
        raise ValueError(
            "no temperatures of the months; write twelve means in degrees C, January first: "
            "climate = [19, 20, 22, 25, 27, 28, 28, 27, 26, 24, 21, 19]"
        )
    return months


def _units(row: Mapping[str, Any]) -> tuple[VillageUnit, ...]:
    given = row.get("units", [])
    lines = "\n".join(map(str, given)) if isinstance(given, list) else "?"
    found = read_units(lines, open_lexicons())
    if isinstance(found, NoUnit):
        raise ValueError(
            f'no unit of land {found.line}; write units = ["bigha = 1338"], sizes in m2, and '
            "none that is the same everywhere"
        )
    return found


def _codes(row: Mapping[str, Any]) -> frozenset[Geocode]:
    value = row.get("codes", [])
    lines = "\n".join(map(str, value)) if isinstance(value, list) else "?"
    found = read_codes(lines)
    if isinstance(found, NoCode):
        raise ValueError(f'no code {found.line}; write codes = ["NAME=value"]')
    return frozenset(found)
