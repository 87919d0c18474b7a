"""`nursery check`: whether a deployment is fit to serve, each fault with what to do."""

import os
import pyexpat
import sys
from collections.abc import Callable, Iterator
from email.utils import parsedate_to_datetime
from pathlib import Path
from shutil import disk_usage

import click
import requests

from assistant.commands.deployment import invented_numbers, opened, settings_now
from assistant.service.enrol import count_officers, list_villages
from assistant.service.house import House, Part
from assistant.service.places import turned_round
from assistant.service.placing import unplaced_villages
from assistant.service.pulse import WAITS_TOO_LONG, ServiceFault, pulse
from assistant.settings import Settings, SettingsError
from assistant.wiring.journal import journal_path
from assistant.wiring.lines import open_lines
from assistant.wiring.own_key import key_path
from assistant.wiring.review import catalogues, review
from assistant.worker import wall_clock

Finding = tuple[bool, str]
WAIT_S = 5
MOST_APART_S = 120
LEAST_FREE_MB = 500
GOOD_EXPAT = (2, 6, 0)  # before: CVE-2023-52425


@click.command()
def command() -> None:
    """Check settings, database, catalogues, word lists, gateway; exit 1 if one is unfit."""
    settings = settings_now()
    with opened(settings) as house:
        found = [finding for look in _LOOKS for finding in look(house, settings)]
    for fit, line in found:
        click.echo(f"{'ok   ' if fit else 'MEND '} {line}")
    sys.exit(0 if all(fit for fit, _ in found) else 1)


def _database(house: House, settings: Settings) -> Iterator[Finding]:
    kind = settings.database_url.partition(":")[0]
    yield True, f"database: {kind}, its tables up to date"


def _programme(house: House, settings: Settings) -> Iterator[Finding]:
    villages, officers = list_villages(house), count_officers(house)
    yield bool(villages), f"villages: {len(villages)}; add one with nursery village add NAME"
    yield bool(officers), f"officers: {officers}; add one with nursery officer add"
    asked = Part.ALERTS in house.parts and settings.alerts_from
    lost = unplaced_villages(house) if asked else ()
    yield not lost, f"villages that no official alert finds: {', '.join(lost) or 'none'}"
    odd = ", ".join(turned_round(villages))
    yield not odd, f"villages with latitude and longitude changed over: {odd or 'none'}"
    yield settings.zone != "UTC", f"time zone: {settings.zone}; NURSERY_ZONE sets another"


_OWN_FILE = "write your own in the file of NURSERY_PROGRAMME_FILE"
_WHAT = {
    "emergency": "emergency number",
    "health_post": "health post",
    "vet": "vet",
}


def _nearby(house: House, settings: Settings) -> Iterator[Finding]:
    """Whom people are sent to in need, also those of no village; no number is built in."""
    invented = invented_numbers()
    for key, what in _WHAT.items():
        said = getattr(house.phonebook.programme, key)
        if said in invented:
            yield False, f"{what}: {said} is of the invented district; {_OWN_FILE}"
            continue
        hint = f'not known; write {key} = "..." in the file of NURSERY_PROGRAMME_FILE'
        yield bool(said), f"{what}: {said or hint}"


def _texts(house: House, settings: Settings) -> Iterator[Finding]:
    there = catalogues()
    for code in settings.languages:
        faults = len(review(code).faults) if code in there else 0
        yield not faults, f"texts in {code}: {faults} faults (nursery catalogue --check)"


def _gateway(house: House, settings: Settings) -> Iterator[Finding]:
    if settings.lines_file:
        yield from _lines(settings)
        return
    if not settings.gateway_url:
        yield False, "gateway: none set, so only nursery start with its simulator can send"
        return
    yield bool(settings.gateway_secret), "gateway: NURSERY_GATEWAY_SECRET is set"
    try:
        answer = requests.get(settings.gateway_url, timeout=WAIT_S)
    except requests.RequestException as fault:
        yield False, f"gateway: {settings.gateway_url} does not answer ({type(fault).__name__})"
    else:
        yield True, f"gateway: {settings.gateway_url} answers"
        yield from _clock(answer.headers.get("Date", ""))


def _lines(settings: Settings) -> Iterator[Finding]:
    """The file of lines, as the worker would read it; no line is opened."""
    try:
        found = open_lines(settings)
    except SettingsError as fault:
        yield False, f"lines: {fault}"
        return
    names = ", ".join(f"{name} ({terms.kind})" for name, terms in found.terms.items())
    yield True, f"lines: {names}; nursery line test sends a text by each"


def _clock(said: str) -> Iterator[Finding]:
    """This machine's clock beside the operator's."""
    try:
        there = parsedate_to_datetime(said)
        apart = abs((wall_clock() - there).total_seconds())
    except (TypeError, ValueError):
        return
    yield apart < MOST_APART_S, f"clock: {apart:.0f} s from the operator's; set it by NTP"


def _running(house: House, settings: Settings) -> Iterator[Finding]:
    """Who works, and what waits."""
    found = pulse(house, wall_clock())
    for fault, says in _FAULTS.items():
        yield fault not in found.faults, says
    waits = round(found.waits.total_seconds())
    yield found.waits < WAITS_TOO_LONG, f"oldest text that waits: {waits} s"


_FAULTS = {
    ServiceFault.TICKING: "worker, daily texts: alive lately; else start nursery worker",
    ServiceFault.SENDING: "worker, sending: alive lately; else start nursery worker",
    ServiceFault.HELD: "texts are not held back; else nursery texts look, and nursery texts go",
}


def _files(house: House, settings: Settings) -> Iterator[Finding]:
    """Who may read names and keys, and whether there is room."""
    url = settings.database_url
    database = Path(url.removeprefix("sqlite:///")) if url.startswith("sqlite:///") else None
    for what, path in {
        "database": database,
        "key": None if settings.web_secret else key_path(settings),
        "journal of STOPs": journal_path(settings),
        "settings file": _settings_file(),
    }.items():
        if path is not None and path.exists():
            private = not path.stat().st_mode & 0o077
            yield private, f"{what}: only its owner reads it; else chmod 600 {path}"
    folder = database.parent if database else Path.cwd()
    free = disk_usage(folder).free // 1_000_000
    yield free > LEAST_FREE_MB, f"disk: {free} MB free; below {LEAST_FREE_MB} make room"


def _settings_file() -> Path | None:
    place = os.environ.get("NURSERY_SETTINGS_FILE")
    return Path(place) if place else None


def _safety(house: House, settings: Settings) -> Iterator[Finding]:
    """What stands open, or will not hold."""
    away = not settings.database_url.startswith("sqlite")
    yield (
        not away or bool(settings.web_secret or settings.key_file),
        "key: set; on PostgreSQL give all web machines the same NURSERY_WEB_SECRET",
    )
    yield settings.second_factor, "leads need a second factor (NURSERY_SECOND_FACTOR=yes)"
    limited = bool(settings.day_segments or settings.month_money)
    yield limited, "a limit on what is spent: NURSERY_DAY_SEGMENTS or NURSERY_MONTH_MONEY"
    version = pyexpat.version_info
    said = ".".join(map(str, version))
    holes = "" if version >= GOOD_EXPAT else ", with holes that limits on files bound"
    yield True, f"expat {said}{holes}; from 2.6.0 on it has none that is known"


_LOOKS: tuple[Callable[[House, Settings], Iterator[Finding]], ...] = (
    _database,
    _programme,
    _nearby,
    _texts,
    _gateway,
    _running,
    _files,
    _safety,
)
