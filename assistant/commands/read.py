"""`nursery read`: shows how replies are read, one a line from standard input."""

import datetime as dt
import json
import sys
from collections.abc import Iterator
from typing import Any

import click

from assistant.agronomy.units import region_code
from assistant.commands import numbers
from assistant.commands.one_line import OneLineCommand, shown
from assistant.people import LANGUAGES
from assistant.reading import Ask, Outcome, Reading, read_reply
from assistant.wiring.lexicons import open_lexicons

ASKS = [Ask.AREA, Ask.GERMINATION, Ask.DATE, Ask.CONFIRM, Ask.COUNT, Ask.COMMAND]


@click.command("read", cls=OneLineCommand)
@click.option("--ask", type=click.Choice([ask.value for ask in ASKS]), required=True)
@click.option("--lang", type=click.Choice(list(LANGUAGES)), default="en", show_default=True)
@click.option("--today", type=numbers.iso_date, help="The day of the reply: 2026-06-10.")
@click.option("--region", help="Where land units are meant, such as IN-WB or VN-N.")
@click.option("--past", is_flag=True, help="The question is about a day gone by.")
@click.option("--json", "as_json", is_flag=True, help="One JSON object a line.")
def command(
    ask: str, lang: str, today: dt.date | None, region: str | None, past: bool, as_json: bool
) -> None:
    """Read one reply a line from standard input and show how it is understood.

    In confirm 1 is yes and 2 is no. A wish (menu, help, stop ...) is understood anywhere.
    """
    place = region_code(region) if region else None
    if region and place is None:
        note = f"Note: region {shown(region)} is not known; local land units are asked back."
        click.echo(note, err=True)
    lexicons = open_lexicons()
    day = today or dt.datetime.now(dt.UTC).astimezone().date()
    for reply in _replies():
        reading = read_reply(reply, Ask(ask), lexicons, lang, day, place, past)
        click.echo(_json_line(reply, reading) if as_json else _line(reply, reading))


def _replies() -> Iterator[str]:
    """The lines of standard input, whatever their bytes, without their ends."""
    for line in sys.stdin.buffer:
        yield line.removesuffix(b"\n").removesuffix(b"\r").decode("utf-8", errors="replace")


def _json_line(reply: str, reading: Reading[Any]) -> str:
    """One line of ASCII: a reply may hold signs that other programs take for line ends."""
    row: dict[str, Any] = {"reply": reply, "outcome": reading.outcome.value}
    if reading.outcome is not Outcome.AGAIN:
        row |= {"value": _plain(reading.value), "reading": reading.words}
    return json.dumps(row)


def _plain(value: object) -> object:
    """A value as JSON holds it: whole numbers without a point, dates as ISO 8601."""
    if isinstance(value, float) and value.is_integer():
        return int(value)
    return value.isoformat() if isinstance(value, dt.date) else value


def _line(reply: str, reading: Reading[Any]) -> str:
    """One line for people: the reply, what became of it, and why."""
    parts = [shown(reply), reading.outcome.value]
    if reading.words:
        parts += [reading.words, f"= {_plain(reading.value)}"]
    if reading.reason:
        parts.append(f"({reading.reason.replace('_', ' ')})")
    if reading.options:
        parts.append("likely: " + ", ".join(option.words for option in reading.options))
    line = "  ".join(parts)
    encoding = sys.stdout.encoding or "ascii"
    return line.encode(encoding, errors="backslashreplace").decode(encoding)
