"""A table of a TOML file as a frozen dataclass: names and kinds checked, all faults told."""

from collections.abc import Callable, Mapping
from dataclasses import MISSING, fields, is_dataclass
from decimal import Decimal, InvalidOperation
from types import NoneType
from typing import Any, TypeVar, get_args, get_type_hints

from assistant.settings import SettingsError

T = TypeVar("T")


class Faults(SettingsError):
    """What is wrong in a table; `all` in the order of the table."""

    def __init__(self, found: list[str]) -> None:
        super().__init__("; ".join(found))
        self.all = tuple(found)


def filled(kind: type[T], table: Mapping[str, Any], where: str = "") -> T:
    """The table as a value of this dataclass.

    Args:
        where: where the table stands, for the faults

    Raises:
        Faults: names every entry that is not known, is missing, or cannot be read.
    """
    hints = get_type_hints(kind)
    names = [field.name for field in fields(kind)]  # type: ignore[arg-type]
    place = f"{where}." if where else ""
    found = [
        f"{place}{name} is not known; known are {', '.join(names)}"
        for name in table
        if name not in names
    ]
    given: dict[str, Any] = {}
    for field in fields(kind):  # type: ignore[arg-type]
        if field.name in table:
            try:
                value = table[field.name]
                given[field.name] = _read(hints[field.name], value, place + field.name)
            except Faults as faults:
                found += faults.all
        elif field.default is MISSING and field.default_factory is MISSING:
            found.append(f"{place}{field.name} is missing")
    if found:
        raise Faults(found)
    try:
        return kind(**given)
    except ValueError as fault:  # what a dataclass says of its entries together
        raise Faults([f"{where}: {fault}" if where else str(fault)]) from fault


def _read(hint: Any, value: Any, where: str) -> Any:
    kind = next((each for each in get_args(hint) if each is not NoneType), hint)
    if NoneType not in get_args(hint):
        kind = hint
    if is_dataclass(kind):
        if not isinstance(value, dict):
            raise Faults([f"{where}: write it as a table"])
        return filled(kind, value, where)  # type: ignore[arg-type]
    read, wanted = _READERS[str(kind) if get_args(kind) else kind.__name__]
    found = read(value)
    if found is None:
        raise Faults([f"{where} is {value!r}: expected {wanted}"])
    return found


def _str(value: Any) -> str | None:
    return value if isinstance(value, str) else None


def _int(value: Any) -> int | None:
    return value if type(value) is int and value >= 0 else None


def _float(value: Any) -> float | None:
    return float(value) if type(value) in (int, float) and value > 0 else None


def _bool(value: Any) -> bool | None:
    return value if isinstance(value, bool) else None


def _decimal(value: Any) -> Decimal | None:
    try:
        found = Decimal(value) if isinstance(value, str) else None
    except InvalidOperation:
        return None
    return found if found is not None and found.is_finite() and found >= 0 else None


def _all(kind: type[Any]) -> Callable[[Any], Any]:
    def read(value: Any) -> Any:
        right = isinstance(value, list) and value and all(type(each) is kind for each in value)
        return tuple(value) if right else None

    return read


def _pairs(value: Any) -> dict[str, str] | None:
    right = isinstance(value, dict) and all(isinstance(each, str) for each in value.values())
    return dict(value) if right else None


_READERS: dict[str, tuple[Callable[[Any], Any], str]] = {
    "str": (_str, "words in quotes"),
    "int": (_int, "a whole number, 0 or more"),
    "float": (_float, "a number above 0"),
    "bool": (_bool, "true or false"),
    "Decimal": (_decimal, 'an amount in quotes, such as "0.80"'),
    "tuple[str, ...]": (_all(str), 'a list of words in quotes, such as ["a", "b"]'),
    "tuple[int, ...]": (_all(int), "a list of whole numbers, such as [200, 202]"),
    "dict[str, str]": (_pairs, 'a table of words in quotes, such as {a = "b"}'),
}
