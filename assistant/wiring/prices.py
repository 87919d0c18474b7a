"""A programme's price list: a TOML file -> the value of the core, all faults together."""

import math
import tomllib
from collections.abc import Mapping
from dataclasses import fields
from pathlib import Path
from typing import Any

from assistant.agronomy.work.costs import PriceList
from assistant.settings import SettingsError

_MOST = 1e9
_WORDS = frozenset({"currency"})
_MAY_MISS = frozenset({"pail_litres"})
_LONGEST_CURRENCY = 12


class PriceListError(SettingsError):
    """A price list that cannot be used; the text names every fault and what to write."""


def open_prices(path: Path) -> PriceList:
    """The price list in a file.

    Raises:
        PriceListError: lists every fault.
    """
    try:
        table = tomllib.loads(path.read_text(encoding="utf-8"))
    except (OSError, UnicodeDecodeError, tomllib.TOMLDecodeError) as error:
        raise PriceListError(f"{path} cannot be read ({error}); write a TOML file") from error
    prices, faults = read_prices(table)
    if prices is None:
        raise PriceListError(f"{path}: " + "; ".join(faults))
    return prices


def read_prices(table: Mapping[str, Any]) -> tuple[PriceList | None, tuple[str, ...]]:
    """A price list from its parsed file, and all its faults (then there is no list)."""
    names = [field.name for field in fields(PriceList)]
    faults = [
        f"{name} is not known; known are {', '.join(names)}"
        for name in sorted(set(table) - set(names))
    ]
    for name in names:
        if name in table:
            faults += _fault(name, table[name])
        elif name not in _MAY_MISS:
            faults.append(f"{name} is missing; {_example(name)}")
    if faults:
        return None, tuple(faults)
    given: dict[str, Any] = {n: v if n in _WORDS else float(v) for n, v in table.items()}
    return PriceList(**given), ()


def _fault(name: str, value: object) -> list[str]:
    if name in _WORDS:
        fine = isinstance(value, str) and 0 < len(value.strip()) <= _LONGEST_CURRENCY
    else:
        is_number = isinstance(value, int | float) and not isinstance(value, bool)
        least = 1.0 if name == "pail_litres" else 0.0
        fine = is_number and math.isfinite(value) and least <= value <= _MOST  # type: ignore[arg-type, operator]
    return [] if fine else [f"{name}: cannot take {value!r}; {_example(name)}"]


def _example(name: str) -> str:
    return 'write currency = "KES"' if name in _WORDS else f"write a number, {name} = 10"
