"""A table of a TOML file as a frozen dataclass: names and kinds checked, all faults told.

pydantic reads the table into a form made of the dataclass's own fields. The form is forgotten:
what is handed on is the dataclass, since gateways know nothing of how their terms were read.
"""

from collections.abc import Callable, Mapping
from dataclasses import MISSING, fields, is_dataclass
from dataclasses import Field as Entry
from decimal import Decimal
from functools import cache
from types import NoneType
from typing import Annotated, Any, TypeVar, get_args, get_type_hints

from pydantic import (
    AfterValidator,
    BaseModel,
    BeforeValidator,
    ConfigDict,
    Field,
    StrictBool,
    StrictFloat,
    StrictInt,
    StrictStr,
    TypeAdapter,
    ValidationError,
    create_model,
)
from pydantic_core import ErrorDetails

from assistant.settings import SettingsError
from assistant.settings.words import said

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
    try:
        value: T = _reader(kind).validate_python(table)  # type: ignore[arg-type]
    except ValidationError as refused:
        raise Faults([_told(fault, kind, where) for fault in refused.errors()]) from refused
    return value


@cache
def _reader(kind: type[Any]) -> TypeAdapter[Any]:
    return TypeAdapter(_of(kind))


def _of(kind: type[Any]) -> Any:
    """A table that makes this dataclass. What the dataclass says of its entries together is a
    fault of the table."""
    given: dict[str, Any] = {
        each.name: (_read_as(hint), ... if _is_needed(each) else None)
        for each, hint in _entries(kind)
    }
    form = create_model(kind.__name__, __config__=ConfigDict(extra="forbid"), **given)

    def made(read: BaseModel) -> Any:
        try:
            return kind(**{name: getattr(read, name) for name in read.model_fields_set})
        except ValueError as fault:
            raise ValueError(f": {fault}") from fault

    return Annotated[form, AfterValidator(made)]


def _entries(kind: type[Any]) -> list[tuple[Entry[Any], Any]]:
    """The fields of a dataclass, each with what a table writes there: no table says None."""
    hints = get_type_hints(kind)
    return [(each, _without_none(hints[each.name])) for each in fields(kind)]


def _without_none(hint: Any) -> Any:
    kinds = get_args(hint)
    return next(each for each in kinds if each is not NoneType) if NoneType in kinds else hint


def _is_needed(each: Entry[Any]) -> bool:
    return each.default is MISSING and each.default_factory is MISSING


def _read_as(kind: Any) -> Any:
    if is_dataclass(kind):
        return _of(kind)  # type: ignore[arg-type]
    read, wanted = _READ[kind]
    return Annotated[read, said(f" is {{value!r}}: expected {wanted}")]


def _told(fault: ErrorDetails, kind: type[Any], where: str) -> str:
    """A fault in our words, with the place where it stands."""
    *tables, last = map(str, fault["loc"] or ("",))
    place = ".".join(filter(None, (where, *tables, last)))
    return _SAYS[fault["type"]](fault, place, _inner(kind, tables))


def _inner(kind: type[Any], tables: list[str]) -> str:
    """The entries that the table at this place may have."""
    for name in tables:
        kind = next(hint for each, hint in _entries(kind) if each.name == name)
    return ", ".join(each.name for each in fields(kind))


_SAYS: dict[str, Callable[[ErrorDetails, str, str], str]] = {
    "value_error": lambda fault, place, _: f"{place}{fault['ctx']['error']}".removeprefix(": "),
    "missing": lambda _, place, __: f"{place} is missing",
    "extra_forbidden": lambda _, place, known: f"{place} is not known; known are {known}",
    "model_type": lambda _, place, __: f"{place}: write it as a table",
}


def _digits(value: object) -> str:
    """Money is written in quotes: a binary fraction is not what was written."""
    if not isinstance(value, str):
        raise ValueError(value)
    return value


_READ: dict[Any, tuple[Any, str]] = {
    str: (StrictStr, "words in quotes"),
    int: (Annotated[StrictInt, Field(ge=0)], "a whole number, 0 or more"),
    float: (Annotated[StrictFloat, Field(gt=0, allow_inf_nan=False)], "a number above 0"),
    bool: (StrictBool, "true or false"),
    Decimal: (
        Annotated[Decimal, Field(ge=0), BeforeValidator(_digits)],
        'an amount in quotes, such as "0.80"',
    ),
    tuple[str, ...]: (
        Annotated[tuple[StrictStr, ...], Field(min_length=1)],
        'a list of words in quotes, such as ["a", "b"]',
    ),
    tuple[int, ...]: (
        Annotated[tuple[StrictInt, ...], Field(min_length=1)],
        "a list of whole numbers, such as [200, 202]",
    ),
    dict[str, str]: (
        dict[StrictStr, StrictStr],
        'a table of words in quotes, such as {{a = "b"}}',
    ),
}
