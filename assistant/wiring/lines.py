"""The lines of a deployment: our own wire by two settings, or a TOML file of several lines ->
one way out, and what operators call. All faults of a file are told together."""

import tomllib
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from datetime import datetime
from pathlib import Path
from typing import Any

from assistant.channel import Gateway, Handover, Hooks, Listener
from assistant.gateways import HttpGateway, wire_hooks
from assistant.gateways.lines import Lines, Route, Terms
from assistant.gateways.mapped import MappedGateway, Secrets
from assistant.gateways.mapped_calls import mapped_hooks
from assistant.gateways.modem import ModemGateway, ModemTerms
from assistant.gateways.pace import Turns, begin_of_turns
from assistant.gateways.smpp import SmppGateway, SmppTerms
from assistant.service.connections import note_line, take_turns, used_today
from assistant.service.house import House
from assistant.settings import Settings, SettingsError
from assistant.wiring.filled import Faults, filled
from assistant.wiring.mapping_file import open_mapping
from assistant.worker import wall_clock

_NAME = "letters, digits and hyphens, up to 20"
_TERMS = ("a_second", "a_day", "price")
_OTHERS_MAY_READ = 0o077


class LinesError(SettingsError):
    """A file of lines that cannot be used; the text names every fault and what to write."""


@dataclass(frozen=True)
class Opened:
    """The way out, and what operators call by the names of their lines."""

    gateway: Gateway
    hooks: Mapping[str, Hooks]

    @property
    def lines(self) -> Lines | None:
        """The several lines; None where there is only our own wire."""
        return self.gateway if isinstance(self.gateway, Lines) else None

    @property
    def terms(self) -> Mapping[str, Terms]:
        """What each line of a file of lines allows and takes."""
        return self.lines.terms if self.lines else {}


@dataclass(frozen=True)
class WireTerms:
    """A line of our own wire (WIRE.md)."""

    url: str
    secret: str
    sender: str
    timeout_s: float = 10.0


@dataclass(frozen=True)
class Built:
    """One line as its file has it."""

    gateway: Gateway
    hooks: Hooks


Build = Callable[[str, Any, Path], Built]
"""The name of a line, its terms and the folder of its file -> the line. Raises ValueError."""


def _wire(name: str, terms: WireTerms, folder: Path) -> Built:
    gateway = HttpGateway(terms.url, terms.sender, terms.secret, terms.timeout_s)
    return Built(gateway, wire_hooks(terms.secret))


@dataclass(frozen=True)
class HttpTerms:
    """A provider's HTTP by a mapping file beside this one (gateways/MAPPING.md), and what the
    two sides share."""

    mapping: str
    sender: str
    token: str = ""
    user: str = ""
    password: str = ""
    secret: str = ""
    timeout_s: float = 10.0
    address: str = ""  # of the provider, where it is elsewhere than its mapping says


def _http(name: str, terms: HttpTerms, folder: Path) -> Built:
    provider = open_mapping(folder / terms.mapping, terms.address)
    secrets = Secrets(terms.token, terms.user, terms.password, terms.secret)
    gateway = MappedGateway(provider, secrets, terms.sender, terms.timeout_s)
    return Built(gateway, mapped_hooks(provider, secrets))


def _smpp(name: str, terms: SmppTerms, folder: Path) -> Built:
    return Built(SmppGateway(terms), {})


def _modem(name: str, terms: ModemTerms, folder: Path) -> Built:
    return Built(ModemGateway(terms), {})


KINDS: dict[str, tuple[type[Any], Build]] = {
    "wire": (WireTerms, _wire),
    "http": (HttpTerms, _http),
    "smpp": (SmppTerms, _smpp),
    "modem": (ModemTerms, _modem),
}
"""By what a line's `kind` says: the dataclass of its entries, and what builds it."""


def open_lines(settings: Settings, house: House | None = None) -> Opened:
    """The lines as they are set; with a `house` their quotas are counted and their state kept.

    Raises:
        SettingsError: no line is set, or the file of lines cannot be used.
    """
    if settings.lines_file:
        return _from_file(Path(settings.lines_file), house)
    if not settings.gateway_url or not settings.gateway_secret:
        raise SettingsError(
            "Set NURSERY_GATEWAY_URL and NURSERY_GATEWAY_SECRET, or NURSERY_LINES_FILE."
        )
    wire = WireTerms(
        settings.gateway_url,
        settings.gateway_secret,
        settings.sender,
        settings.gateway_timeout_s,
    )
    built = _wire("", wire, Path())
    hooks = wire_hooks(settings.gateway_secret, settings.gateway_secret_before)
    return Opened(built.gateway, {"": hooks})


def _from_file(path: Path, house: House | None) -> Opened:
    table = _table(path)
    faults = _unknown("the file", table, ("line", "route"))
    built: dict[str, Built] = {}
    terms: dict[str, Terms] = {}
    for place, given in enumerate(_tables(table, "line", faults), 1):
        name = str(given.get("name", ""))
        where = f"line {name or place}"
        if not name.replace("-", "").isalnum() or not name.isascii() or len(name) > 20:
            faults.append(f"{where}: set name, {_NAME}")
        elif name in built:
            faults.append(f"{where}: there are two of this name; give one another")
        else:
            _build(where, name, given, path.parent, built, terms, faults)
    routes = _routes(table, tuple(built), faults)
    if not built and not faults:
        faults.append("no line stands in it; write a [[line]]")
    if faults:
        raise LinesError(f"{path}: " + "; ".join(faults))
    gateways = {name: each.gateway for name, each in built.items()}
    lines = Lines(gateways, routes, terms, **_kept_by(house), turns=_turns(house, gateways))
    return Opened(lines, {name: each.hooks for name, each in built.items()})


def _kept_by(house: House | None) -> dict[str, Any]:
    if house is None:
        return {}

    def used(line: str, now: datetime) -> int:
        return used_today(house, line, now)

    def note(line: str, handover: Handover, now: datetime) -> None:
        note_line(house, line, handover, now)

    return {"used": used, "note": note}


def _turns(house: House | None, gateways: Mapping[str, Gateway]) -> Mapping[str, Turns]:
    """A line that keeps a connection is sent by one process; the others' rates are shared."""
    if house is None:
        return {}
    many = (name for name, gateway in gateways.items() if not isinstance(gateway, Listener))
    return {name: _turns_of(house, name) for name in many}


def _turns_of(house: House, name: str) -> Turns:
    def taken(span_s: float, most_s: float) -> float:
        now = wall_clock()
        return take_turns(
            house, name, now, lambda until: begin_of_turns(until, now, span_s, most_s)
        ).total_seconds()

    return taken


def _table(path: Path) -> Mapping[str, Any]:
    try:
        if path.stat().st_mode & _OTHERS_MAY_READ:
            raise LinesError(
                f"{path} holds secrets and others may read it; chmod 600 it, then start again"
            )
        return tomllib.loads(path.read_text(encoding="utf-8"))
    except (OSError, UnicodeDecodeError, tomllib.TOMLDecodeError) as error:
        raise LinesError(f"{path} cannot be read ({error}); write a TOML file") from error


def _tables(table: Mapping[str, Any], name: str, faults: list[str]) -> list[dict[str, Any]]:
    found = table.get(name, [])
    if isinstance(found, list) and all(isinstance(each, dict) for each in found):
        return list(found)
    faults.append(f"{name}: write it as [[{name}]]")
    return []


def _unknown(where: str, table: Mapping[str, Any], known: tuple[str, ...]) -> list[str]:
    return [
        f"{where}: {name} is not known; known are {', '.join(known)}"
        for name in table
        if name not in known
    ]


def _build(
    where: str,
    name: str,
    given: Mapping[str, Any],
    folder: Path,
    built: dict[str, Built],
    terms: dict[str, Terms],
    faults: list[str],
) -> None:
    kind = given.get("kind")
    if kind not in KINDS:
        faults.append(f"{where}: set kind to one of {', '.join(KINDS)}")
        return
    of_line, build = KINDS[kind]
    own = {key: value for key, value in given.items() if key not in (*_TERMS, "name", "kind")}
    try:
        made = build(name, filled(of_line, own, where), folder)
        terms[name] = replace(filled(Terms, _terms_of(given), where), kind=str(kind))
        built[name] = made
    except Faults as found:
        faults += found.all
    except ValueError as fault:
        faults.append(f"{where}: {fault}")


def _terms_of(given: Mapping[str, Any]) -> dict[str, Any]:
    return {key: given[key] for key in _TERMS if key in given}


def _routes(
    table: Mapping[str, Any], names: tuple[str, ...], faults: list[str]
) -> tuple[Route, ...]:
    routes = []
    for place, given in enumerate(_tables(table, "route", faults), 1):
        where = f"route {place}"
        try:
            route = filled(Route, given, where)
        except Faults as found:
            faults += found.all
            continue
        strange = [each for each in route.lines if each not in names]
        faults += [f"{where}: no line {each}; lines are {', '.join(names)}" for each in strange]
        routes.append(route)
    return tuple(routes)
