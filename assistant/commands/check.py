"""`nursery check`: whether a deployment is fit to serve, each fault with what to do."""

import sys
from collections.abc import Callable, Iterator

import click
import requests

from assistant.commands.deployment import opened, settings_now
from assistant.service.alerts.codes import unplaced_villages
from assistant.service.enrol import count_officers, list_villages
from assistant.service.house import House
from assistant.settings import Settings
from assistant.wiring.review import catalogues, review

Finding = tuple[bool, str]
WAIT_S = 5


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
    lost = unplaced_villages(house) if settings.alerts_from else ()
    yield not lost, f"villages that no official alert finds: {', '.join(lost) or 'none'}"
    yield settings.zone != "UTC", f"time zone: {settings.zone}; NURSERY_ZONE sets another"


_WHAT = {
    "emergency": "emergency number",
    "health_post": "health post",
    "vet": "vet",
}


def _nearby(house: House, settings: Settings) -> Iterator[Finding]:
    """Whom people are sent to in need, also those of no village; no number is built in."""
    for key, what in _WHAT.items():
        said = getattr(house.phonebook.programme, key)
        hint = f'not known; write {key} = "..." in the file of NURSERY_PROGRAMME_FILE'
        yield bool(said), f"{what}: {said or hint}"


def _texts(house: House, settings: Settings) -> Iterator[Finding]:
    there = catalogues()
    for code in settings.languages:
        faults = len(review(code).faults) if code in there else 0
        yield not faults, f"texts in {code}: {faults} faults (nursery catalogue --check)"


def _gateway(house: House, settings: Settings) -> Iterator[Finding]:
    if not settings.gateway_url:
        yield False, "gateway: none set, so only nursery start with its simulator can send"
        return
    yield bool(settings.gateway_secret), "gateway: NURSERY_GATEWAY_SECRET is set"
    try:
        requests.get(settings.gateway_url, timeout=WAIT_S)
    except requests.RequestException as fault:
        yield False, f"gateway: {settings.gateway_url} does not answer ({type(fault).__name__})"
    else:
        yield True, f"gateway: {settings.gateway_url} answers"


_LOOKS: tuple[Callable[[House, Settings], Iterator[Finding]], ...] = (
    _database,
    _programme,
    _nearby,
    _texts,
    _gateway,
)
