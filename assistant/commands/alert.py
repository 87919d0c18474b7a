"""`nursery alert`: what one official alert says, and what the assistant would make of it."""

import datetime as dt
import sys
from collections.abc import Iterator
from pathlib import Path
from zoneinfo import ZoneInfo

import click

from assistant.alerts import Alert, AlertOutcome, Faulty, JudgedAlert, Threat, read_alert
from assistant.alerts.document import LARGEST_BYTES
from assistant.commands.deployment import opened, settings_now
from assistant.commands.one_line import OneLineCommand
from assistant.dialogue.rain_hours import hours_fault
from assistant.people import Village
from assistant.service.alerts.mapping import danger_of
from assistant.service.alerts.page import swapped_villages
from assistant.service.alerts.taking import dry, take_alert
from assistant.service.enrol import list_villages
from assistant.service.house import House
from assistant.service.placing import unplaced_villages
from assistant.store import KeptAlert
from assistant.wording import messages_web_alerts as web_alerts
from assistant.wording.dangers import NAMES
from assistant.worker import wall_clock


def _moment(_: click.Context, __: click.Parameter, value: str | None) -> dt.datetime | None:
    if value is None:
        return None
    try:
        moment = dt.datetime.fromisoformat(value)
    except ValueError:
        moment = None
    if moment is None or moment.tzinfo is None:
        raise click.BadParameter("give a time with its zone, such as 2026-06-12T06:00+03:00")
    return moment.astimezone(dt.UTC)


@click.command("alert", cls=OneLineCommand)
@click.argument("file", type=click.Path(exists=True, dir_okay=False, path_type=Path))
@click.option("--at", callback=_moment, help="As if it came then: 2026-06-12T06:00+03:00.")
@click.option("--take", is_flag=True, help="Take it as if it came from a source, not only try.")
def command(file: Path, at: dt.datetime | None, take: bool) -> None:
    """Try one CAP 1.2 message: what it says and what would follow. Nothing is kept or sent.

    With --take it is kept, and drafted or sent by the setting.
    """
    if take and at:
        raise click.UsageError("--at only tries; leave it out to take the message now")
    with file.open("rb") as opened_file:
        raw = opened_file.read(LARGEST_BYTES + 1)
    found = read_alert(raw)
    with opened(settings_now()) as house:
        for line in _said(house, found, _signed(house, found, raw, at or wall_clock())):
            click.echo(_printable(line))
        if take:
            click.echo(_taken(take_alert(house, raw, str(file), wall_clock())))
        elif isinstance(found, Alert):
            moment = at or wall_clock()
            for line in _follows(house, found, dry(house, found, moment), moment):
                click.echo(line)
    sys.exit(1 if isinstance(found, Faulty) else 0)


def _signed(house: House, found: Alert | Faulty, raw: bytes, at: dt.datetime) -> str:
    """What is known of its signature."""
    if not isinstance(found, Alert) or not found.signed:
        return web_alerts.UNSIGNED.text
    if house.check_alert is None:
        return web_alerts.SIGNED.text
    name = house.check_alert(raw, at)
    return web_alerts.SEALED.text.format(name=name) if name else web_alerts.FORGED.text


def _said(house: House, found: Alert | Faulty, signed: str) -> Iterator[str]:
    """What the message says, in its own words; or what is wrong with it."""
    if isinstance(found, Faulty):
        yield "Not as CAP 1.2 has it; nothing would follow:"
        for fault in found.faults:
            got = f": {fault.got!r}" if fault.got else ""
            yield f"  {fault.where}: {web_alerts.WRONGS[fault.wrong].text}{got}"
        return
    key = found.key
    yield f"{key.identifier} of {key.sender}, sent {_local(house, key.sent)}, {signed}"
    yield f"{found.status} {found.kind}, {found.scope}"
    for each in found.references:
        yield f"  names {each.identifier} of {each.sender}, sent {_local(house, each.sent)}"
    for info in found.infos:
        yield f"{info.language}: {info.headline or info.event}"
        yield (
            f"  {info.event} ({', '.join(info.categories)}): {info.severity}, {info.urgency}, "
            f"{info.certainty}"
        )
        for area in info.areas:
            yield (
                f"  {area.words}: {len(area.polygons)} polygons, {len(area.circles)} circles, "
                f"{len(area.geocodes)} codes"
            )


def _follows(house: House, found: Alert, judged: JudgedAlert, at: dt.datetime) -> Iterator[str]:
    unplaced = unplaced_villages(house)
    if unplaced:
        lost = ", ".join(unplaced)
        yield f"No alert can find these yet: {lost} (nursery village place, or codes)"
    if judged.outcome is not AlertOutcome.MATTERS:
        yield f"Nothing would follow: {web_alerts.BECAMES[judged.outcome].text}"
        if swapped := swapped_villages(house, found):
            names = ", ".join(swapped)
            yield f"LOOK: with latitude and longitude changed over it would hold {names}"
        return
    villages = {village.id: village for village in list_villages(house)}
    for threat in judged.threats:
        fault = hours_fault(threat.starts_at, threat.ends_at, at)
        goes = house.alerts_go_out and fault is None
        verb = "Farmers would be warned" if goes else "A draft would wait"
        why = f" ({fault.value.replace('_', ' ')})" if fault else ""
        yield f"{verb}{why}: {_threat(house, threat, villages)}"


def _threat(house: House, threat: Threat, villages: dict[int, Village]) -> str:
    names = ", ".join(villages[each].name for each in threat.place_ids)
    hours = f"{_local(house, threat.starts_at)} to {_local(house, threat.ends_at)}"
    danger = NAMES[danger_of(threat)].text
    return f"{danger}: {names}, {hours}, {threat.certainty.lower()}"


def _taken(kept: KeptAlert | None) -> str:
    if kept is None:
        return "Taken before; nothing was changed."
    return f"Taken: {web_alerts.BECAMES[kept.became].text}"


def _printable(line: str) -> str:
    """A line that plays no tricks on a terminal: it was written by others."""
    return "".join(ch if ch.isprintable() else "?" for ch in line)


def _local(house: House, moment: dt.datetime) -> str:
    return f"{moment.astimezone(ZoneInfo(house.zone)):%Y-%m-%d %H:%M}"
