"""The paper and the keys of the terminal phone: lines in, lines out, nothing garbled."""

import sys
from collections.abc import Iterator
from datetime import datetime
from io import TextIOWrapper
from shutil import get_terminal_size
from threading import Lock

import click

PROMPT = "> "


class Terminal:
    """Where the person reads and types; `typed` is false when lines come from a pipe."""

    def __init__(self) -> None:
        self.typed = sys.stdin.isatty()
        _half_typed()  # loads line editing, which must be there before the first line
        self._reading = False
        self._lock = Lock()

    def say(self, line: str) -> None:
        """Print a line; a half-typed one is lifted out of the way and put back."""
        with self._lock:
            if not (self._reading and sys.stdout.isatty()):
                click.echo(line)
                return
            half = PROMPT + _half_typed()
            rows_above = max(len(half) - 1, 0) // get_terminal_size().columns
            up = f"\x1b[{rows_above}A" if rows_above else ""
            click.echo(f"\r{up}\x1b[J{line}\n{half}", nl=False)

    def note(self, line: str) -> None:
        """Print what is not part of the talk."""
        click.echo(line, err=True)

    def lines(self) -> Iterator[str]:
        """The lines of the pipe as they are, or typed ones that are not blank."""
        if not self.typed:
            if isinstance(sys.stdin, TextIOWrapper):
                sys.stdin.reconfigure(encoding="utf-8", errors="replace")
            yield from (line.rstrip("\r\n") for line in sys.stdin)
            return
        while (line := self._typed_line()) is not None:
            if line.strip():
                yield line

    def _typed_line(self) -> str | None:
        self._reading = True
        try:
            return input(PROMPT)
        except EOFError:
            click.echo()
            return None
        finally:
            self._reading = False


def _half_typed() -> str:
    """What stands on the line so far; nothing on a machine without line editing."""
    try:
        import readline
    except ImportError:
        return ""
    return readline.get_line_buffer()


def clock_time(at: datetime) -> str:
    """The time of day where this terminal stands."""
    return f"{at.astimezone():%H:%M}"


def segments(count: int) -> str:
    """What a text costs, in words."""
    return f"{count} segment" if count == 1 else f"{count} segments"


def indented(text: str) -> str:
    """A text of several lines, the later ones set in under the first."""
    return text.replace("\r\n", "\n").replace("\r", "\n").replace("\n", "\n    ")
