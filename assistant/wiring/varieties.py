"""A programme's varieties: a TOML file -> values of the core, all faults together.

One table a variety, `[[variety]]`, with `code`, `name`, `days` (from sowing to maturity) and
`kind` (inbred, hybrid or traditional), and where they are known `grain_weight_g` and the good
age of seedlings, `age_first` and `age_last` (days from sowing).
"""

import tomllib
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

from assistant.agronomy.field import LIMITS
from assistant.agronomy.lot.programme_variety import Breeding, ProgrammeVariety
from assistant.agronomy.lot.varieties import variety_key
from assistant.settings import SettingsError

_DAYS, _AGES, _LONGEST = (60, 260), (8, 60), 40
_MUST = ("code", "name", "days", "kind")


class VarietiesError(SettingsError):
    """A file of varieties that cannot be used; the text names every fault and what to write."""


def open_varieties(path: Path) -> Mapping[str, ProgrammeVariety]:
    """The varieties in a file, by their codes without case and signs.

    Raises:
        VarietiesError: lists every fault.
    """
    try:
        table = tomllib.loads(path.read_text(encoding="utf-8"))
    except (OSError, UnicodeDecodeError, tomllib.TOMLDecodeError) as error:
        raise VarietiesError(f"{path} cannot be read ({error}); write a TOML file") from error
    rows = table.get("variety")
    if set(table) - {"variety"} or not isinstance(rows, list) or not rows:
        raise VarietiesError(f"{path}: write one [[variety]] or more, and nothing else")
    faults = [fault for place, row in enumerate(rows, 1) for fault in _faults(place, row)]
    codes = [variety_key(str(row.get("code"))) for row in rows if isinstance(row, dict)]
    faults += [f"the code {each} stands twice" for each in _twice(codes)]
    if faults:
        raise VarietiesError(f"{path}: " + "; ".join(faults))
    return {variety_key(row["code"]): _variety(row) for row in rows}


def _variety(row: Mapping[str, Any]) -> ProgrammeVariety:
    return ProgrammeVariety(**{**row, "kind": Breeding(row["kind"])})


def _twice(codes: list[str]) -> list[str]:
    return sorted({code for code in codes if codes.count(code) > 1})


def _faults(place: int, row: object) -> list[str]:
    """What is wrong with one variety."""
    if not isinstance(row, dict):
        return [f"variety {place}: write [[variety]]"]
    found = [f"{name} is missing" for name in _MUST if name not in row]
    found += [f"{name} is not known" for name in sorted(set(row) - set(_RULES))]
    found += [
        f"{name}: cannot take {value!r}; write {_RULES[name][1]}"
        for name, value in row.items()
        if name in _RULES and not _RULES[name][0](value)
    ]
    ages = [row.get(name) for name in ("age_first", "age_last")]
    if None in ages and ages != [None, None]:
        found.append("write both age_first and age_last, or none")
    elif not found and None not in ages and ages[0] > ages[1]:  # type: ignore[operator]
        found.append("age_first is after age_last")
    return [f"variety {place}: {fault}" for fault in found]


def _words(value: object) -> bool:
    return isinstance(value, str) and 0 < len(value.strip()) <= _LONGEST


def _whole(low: int, high: int) -> Callable[[object], bool]:
    def fits(value: object) -> bool:
        return isinstance(value, int) and not isinstance(value, bool) and low <= value <= high

    return fits


def _grain(value: object) -> bool:
    low, high = LIMITS["grain_weight_g"]
    is_number = isinstance(value, int | float) and not isinstance(value, bool)
    return is_number and low <= value <= high  # type: ignore[operator]


_RULES: Mapping[str, tuple[Callable[[object], bool], str]] = {
    "code": (_words, 'a short word, such as "early-1"'),
    "name": (_words, "what people call it"),
    "days": (_whole(*_DAYS), f"days from sowing to maturity, {_DAYS[0]} to {_DAYS[1]}"),
    "kind": (lambda value: value in tuple(Breeding), "inbred, hybrid or traditional"),
    "grain_weight_g": (_grain, "the weight of 1000 grains in g, 10 to 40"),
    "age_first": (_whole(*_AGES), f"days from sowing, {_AGES[0]} to {_AGES[1]}"),
    "age_last": (_whole(*_AGES), f"days from sowing, {_AGES[0]} to {_AGES[1]}"),
}
