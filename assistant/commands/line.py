"""`nursery line`: whether each line works, and how it stands."""

import secrets
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import datetime

import click

from assistant.channel import Fate, Gateway, Listener
from assistant.commands.deployment import opened, settings_now
from assistant.commands.one_line import OneLineError
from assistant.people import read_phone
from assistant.service.connections import LineStands, lines_stand
from assistant.service.house import House
from assistant.service.line_test import became, offer_test
from assistant.settings import Settings, SettingsError
from assistant.store import TextState
from assistant.wiring.lines import Opened, open_lines
from assistant.worker import LineWatch, wall_clock

UP_WITHIN_S = 30.0
LOOK_EVERY_S = 0.2
_ENDS = {
    TextState.DELIVERED: "the phone has it",
    TextState.FAILED: "it will not arrive",
    TextState.EXPIRED: "its time ran out",
}


@click.group()
def line() -> None:
    """Try the lines to the phones, or look how they stand."""


@line.command()
@click.argument("number")
@click.option(
    "--wait",
    "wait_s",
    type=click.FloatRange(0, 600),
    default=60.0,
    show_default=True,
    help="Seconds to wait for the receipt.",
)
@click.option("--only", metavar="NAME", help="By this line alone.")
def test(number: str, wait_s: float, only: str | None) -> None:
    """Send a text to NUMBER by each line and say what becomes of it.

    A line that keeps a connection (SMPP, a modem) can be tried while no service runs, or none
    that has it. Ends with 1 where a line did not take the text.
    """
    settings = settings_now()
    phone = _phone(number, settings)
    with opened(settings) as house, _lines(house, settings) as found:
        names = found.lines.names if found.lines else ("",)
        if only is not None and only not in names:
            raise OneLineError(f"no line {only}; lines are {', '.join(names)}")
        wanted = [name for name in names if only in (None, name)]
        fine = [_tried(house, found, name, phone, wait_s) for name in wanted]
    sys.exit(0 if all(fine) else 1)


def _phone(number: str, settings: Settings) -> str:
    found = read_phone(number, settings.region or None)
    if found is None:
        raise OneLineError(f"{number} is no phone number; write it as +447700900101")
    return found


@contextmanager
def _lines(house: House, settings: Settings) -> Iterator[Opened]:
    """The lines, those that keep a connection with it, where nobody else has them."""
    try:
        found = open_lines(settings, house)
    except SettingsError as fault:
        raise click.ClickException(str(fault)) from fault
    if found.lines is None or not found.lines.listens:
        yield found
        return
    lines = found.lines
    watch = LineWatch(house, lines, owner=secrets.token_hex(8), whys=lines.whys)
    watch.round()
    if not watch.has():
        raise click.ClickException(
            "the lines are kept by a service that runs: stop it, try the lines, start it again"
        )
    watch.start()
    try:
        yield found
    finally:
        watch.stop()


def _tried(house: House, found: Opened, name: str, phone: str, wait_s: float) -> bool:
    """Whether a line took a text; says so."""
    gateway: Gateway = found.lines.line(name) if found.lines else found.gateway
    shown = name or "the line"
    if isinstance(gateway, Listener) and not gateway.wait_up(UP_WITHIN_S):
        click.echo(f"{shown}: {gateway.why}")
        return False
    now = wall_clock()
    words = f"Test of {shown} by {house.programme or 'the rice nursery'}, {now:%H:%M:%S} UTC."
    offered = offer_test(house, name, gateway, phone, words, now)
    if offered.fate is not Fate.ACCEPTED:
        click.echo(f"{shown}: not taken: {offered.detail or offered.fate.value}")
    else:
        click.echo(f"{shown}: taken")
        click.echo(f"{shown}: {_followed(house, offered.message_id, wait_s)}")
    credit = getattr(gateway, "credit", None)  # where none is left, that is why
    if credit is not None and (told := credit()):
        click.echo(f"{shown}: {told}")
    return offered.fate is Fate.ACCEPTED


def _followed(house: House, message_id: str, wait_s: float) -> str:
    """What became of a text within so many seconds."""
    end = time.monotonic() + wait_s
    while True:
        text = became(house, message_id)
        if text is not None and text.state in _ENDS:
            detail = f" ({text.detail})" if text.detail else ""
            return _ENDS[text.state] + detail
        if time.monotonic() >= end:
            return (
                "no receipt yet; where the operator calls the web side, 'nursery web' must run"
            )
        time.sleep(LOOK_EVERY_S)


@line.command()
def look() -> None:
    """How each line stands: what it took today, when it answered last, and what it said."""
    settings = settings_now()
    with opened(settings) as house:
        try:
            found = open_lines(settings, house)
        except SettingsError as fault:
            raise click.ClickException(str(fault)) from fault
        names = found.lines.names if found.lines else ()
        terms = found.lines.terms if found.lines else {}
        for each in lines_stand(house, names, terms, wall_clock()):
            click.echo(_shown(each, settings.currency))


def _shown(each: LineStands, currency: str) -> str:
    """How a line stands, in one line."""
    told = [f"{each.name or 'the line'}: {_allowed(each.used, each.a_day)} segments today"]
    if each.cost is not None:
        told.append(f"{each.cost} {currency}".rstrip())
    told.append(f"answered {_at(each.line.answered_at)}")
    told.append(f"took a text {_at(each.line.took_at)}")
    if each.rests:
        told.append(f"rests until {_at(each.line.rests_until)}")
    if each.line.said:
        told.append(f"said: {each.line.said}")
    return "; ".join(told)


def _allowed(used: int, a_day: int | None) -> str:
    return f"{used} of {a_day}" if a_day is not None else str(used)


def _at(moment: datetime | None) -> str:
    return f"{moment:%Y-%m-%d %H:%M} UTC" if moment else "never"
