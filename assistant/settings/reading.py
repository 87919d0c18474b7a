"""Settings from the environment, a file, and what a page says: each is read by its kind, and
all faults are told together."""

import tomllib
from collections.abc import Iterable, Mapping
from dataclasses import fields, replace
from difflib import get_close_matches
from functools import cache
from typing import Any, get_type_hints

from pydantic import BaseModel, ValidationError, create_model

from assistant.settings import Settings, SettingsError
from assistant.settings.agreeing import disagreements, unsafe
from assistant.settings.kinds import OF_NAME, OF_TYPE

# Read where a command begins, or by the simulator.
_NOT_OURS = frozenset({"NURSERY_SETTINGS_FILE", "NURSERY_CALLBACK_URL"})


@cache
def _given() -> type[BaseModel]:
    """What may be said, by the fields of `Settings`: they stand once. A setting of a type
    without a kind is a fault of ours, found at the first start."""
    types = get_type_hints(Settings)
    kinds = {name: OF_NAME.get(name) or OF_TYPE[each] for name, each in types.items()}
    said: dict[str, Any] = {name: (kind, None) for name, kind in kinds.items()}
    return create_model("Given", **said)


def from_file(text: str, place: str) -> dict[str, str]:
    """The entries of a settings file (TOML, names as in `Settings`), as an environment has
    them.

    Raises:
        SettingsError: it cannot be read, or has entries that are no settings; the nearest are
            named.
    """
    try:
        given = tomllib.loads(text)
    except tomllib.TOMLDecodeError as fault:
        raise SettingsError(f"{place}: {fault}; nursery settings prints one") from fault
    faults = [f"{place}: {_unknown(name)}" for name in given if _unknown(name)]
    if faults:
        raise SettingsError("Mend the settings file and start again:\n  " + "\n  ".join(faults))
    return {_variable(name): _as_text(value) for name, value in given.items()}


def mistyped(environment: Mapping[str, str]) -> list[str]:
    """What is set in the environment and is nearly the name of a setting."""
    names = [name for name in environment if name.startswith("NURSERY_")]
    names = [name for name in names if name not in _NOT_OURS]
    faults = ((name, _unknown(name.removeprefix("NURSERY_").lower())) for name in names)
    return [f"{name}: {fault}" for name, fault in faults if "did you mean" in fault]


def _unknown(name: str) -> str:
    """Why this is no setting; empty where it is one."""
    known = _names()
    if name in known:
        return ""
    near = get_close_matches(name, known, n=1, cutoff=0.8)
    hint = f"; did you mean {near[0]}?" if near else "; nursery settings lists all"
    return f"no setting is called {name}{hint}"


def _names() -> list[str]:
    return [each.name for each in fields(Settings)]


def _variable(name: str) -> str:
    return f"NURSERY_{name.upper()}"


def _as_text(value: object) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, list):
        return ",".join(map(str, value))
    return str(value)


def read_settings(environment: Mapping[str, str]) -> Settings:
    """The settings from the environment.

    Raises:
        SettingsError: lists every entry that cannot be used.
    """
    known = {name: _variable(name) for name in _names()}
    said = {name: environment[each] for name, each in known.items() if each in environment}
    given, refused = _read(said)
    settings = Settings(**given)
    faults = [f"{known[name]}={said[name]!r}: {why}" for name, why in refused.items()]
    faults += [*mistyped(environment), *disagreements(settings), *unsafe(settings)]
    if faults:
        raise SettingsError("Mend these settings and start again:\n  " + "\n  ".join(faults))
    return settings


def layered(settings: Settings, said: Mapping[str, str]) -> Settings:
    """Settings with what a page says of some of them, written as the environment has it.

    Raises:
        SettingsError: lists what cannot be used, with the names of the settings.
    """
    given, refused = _read({name: said[name] for name in _names() if name in said})
    found = replace(settings, **given)
    faults = [f"{name}: {why}" for name, why in refused.items()] + [*disagreements(found)]
    if faults:
        raise SettingsError("; ".join(faults))
    return found


def _read(said: Mapping[str, str]) -> tuple[dict[str, Any], dict[str, str]]:
    """What is given, by name, and why the rest cannot be used: what is well is read whatever
    stands beside it, so that all faults are found at once."""
    try:
        return _values(_given()(**said)), {}
    except ValidationError as refused:
        why = dict(_whys(refused))
        well = {name: text for name, text in said.items() if name not in why}
        return _values(_given()(**well)), why


def _values(given: BaseModel) -> dict[str, Any]:
    return {name: getattr(given, name) for name in given.model_fields_set}


def _whys(refused: ValidationError) -> Iterable[tuple[str, str]]:
    for fault in refused.errors():
        yield str(fault["loc"][0]), str(fault["ctx"]["error"])
