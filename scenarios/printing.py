"""Prints a season as a conversation, with the local time of each message."""

import os
import sys
from collections.abc import Callable, Mapping
from datetime import datetime
from zoneinfo import ZoneInfo

from gateway_sim import EntryKind, OperatorController, RecordEntry
from scenarios.season import Season

INDENT = " " * 22
LONGEST = 400  # characters of a text that are printed
_COLOURS = {
    "farmer": "\033[36m",
    "assistant": "\033[32m",
    "network": "\033[33m",
    "officer": "\033[35m",
}
_PLAIN = "\033[0m"

Say = Callable[[str], None]


def say_nothing(line: str) -> None:
    """For those who only want to know how it ends."""


def on_terminal() -> bool:
    """Whether colours can be seen, and are wanted."""
    return sys.stdout.isatty() and "NO_COLOR" not in os.environ


class Printer:
    """Writes down what happens at the operator, in the words of the season's people."""

    def __init__(self, season: Season, say: Say, *, colour: bool = False) -> None:
        self._zone = ZoneInfo(season.zone)
        self._names = {person.phone: person.name for person in season.people.values()}
        self._say, self._colour = say, colour
        self.operator: OperatorController | None = None

    def head(self, season: Season) -> None:
        """The season's title and its people."""
        self._say(f"== {season.title} ({season.path})")
        codes = {officer.name for officer in season.officers}
        for person in season.people.values():
            role = " (officer)" if person.name in codes else ""
            self._say(f"   {person.name}{role} {person.phone}")

    def time(self, moment: datetime) -> str:
        """A time as the season's place has it."""
        here = moment.astimezone(self._zone)
        return f"{here:%a} {here.day:2d} {here:%b %H:%M}"

    def note(self, entry: RecordEntry) -> None:
        """Prints one thing that happened, where it is worth it."""
        write = _WRITE.get(entry.kind)
        if write is not None:
            write(self, entry, self._names.get(entry.phone, entry.phone))

    def line(self, at: datetime, who: str, head: str, text: str = "") -> None:
        """One message: its time, from whom to whom, and its text."""
        shown = (
            text if len(text) <= LONGEST else f"{text[:LONGEST]}... ({len(text)} characters)"
        )
        first, *more = shown.split("\n")
        first = f"{self.time(at)}  {head}  {first}".rstrip()
        self._say(self._coloured(who, "\n".join([first, *(INDENT + each for each in more)])))

    def at_page(self, at: datetime, who: str, words: str, path: str) -> None:
        """What an officer did at the page, and where that led."""
        self.line(
            at, "officer", f"{words if words.startswith(who) else f'{who} {words}'}  [{path}]"
        )

    def screen(self, entry: RecordEntry) -> None:
        """A USSD screen, set in, with its size."""
        rows = [f"{INDENT}| {row}" for row in entry.text.split("\n")]
        screen = self.operator.phone(entry.phone).screen if self.operator else None
        if screen is not None:
            end = "" if screen.more else ", the end"
            size = f"{screen.size} of {screen.limit} {screen.encoding}"
            rows[-1] = f"{rows[-1]}   ({size}{end})"
        self._say(self._coloured("assistant", "\n".join(rows)))

    def _coloured(self, who: str, text: str) -> str:
        return f"{_COLOURS[who]}{text}{_PLAIN}" if self._colour else text


def _written(printer: Printer, entry: RecordEntry, name: str) -> None:
    printer.line(entry.at, "farmer", f"{name} -> assistant", entry.text)


def _delivered(printer: Printer, entry: RecordEntry, name: str) -> None:
    plural = "" if entry.segments == 1 else "s"
    head = f"assistant -> {name} ({entry.segments} segment{plural})"
    printer.line(entry.at, "assistant", head, entry.text)


def _ussd(printer: Printer, entry: RecordEntry, name: str) -> None:
    does = "dials" if entry.detail.startswith("*") else "presses"
    printer.line(entry.at, "farmer", f"{name} {does}", entry.detail)
    printer.screen(entry)


def _rang(printer: Printer, entry: RecordEntry, name: str) -> None:
    printer.line(entry.at, "farmer", f"{name} rings, and nobody takes the call")


def _ended(printer: Printer, entry: RecordEntry, name: str) -> None:
    printer.line(entry.at, "network", f"({name}'s session ended: {entry.detail})")


def _power(printer: Printer, entry: RecordEntry, name: str) -> None:
    printer.line(entry.at, "network", f"({name}'s phone is {entry.detail})")


def _handed_in(printer: Printer, entry: RecordEntry, name: str) -> None:
    if entry.code not in (200, 202):
        printer.line(
            entry.at, "network", f"(for {name}, not taken: {entry.detail})", entry.text
        )


def _lost(printer: Printer, entry: RecordEntry, name: str) -> None:
    printer.line(entry.at, "network", f"({name}, {entry.kind} on the way)", entry.text)


def _fault(printer: Printer, entry: RecordEntry, name: str) -> None:
    printer.line(entry.at, "network", f"({name}: {entry.detail})", entry.text)


_WRITE: Mapping[EntryKind, Callable[[Printer, RecordEntry, str], None]] = {
    EntryKind.WRITTEN: _written,
    EntryKind.DELIVERED: _delivered,
    EntryKind.USSD: _ussd,
    EntryKind.RANG: _rang,
    EntryKind.ENDED: _ended,
    EntryKind.POWER: _power,
    EntryKind.HANDED_IN: _handed_in,
    EntryKind.LOST: _lost,
    EntryKind.FAILED: _lost,
    EntryKind.EXPIRED: _lost,
    EntryKind.FAULT: _fault,
}
