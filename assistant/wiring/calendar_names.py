"""Names of months and days as Babel (CLDR) has them, in a file of ours.

A process reads nine languages and mostly shows two: opening Babel's whole record of the other
seven for their months was a tenth of its start. After another Babel:

    python -m assistant.wiring.calendar_names > assistant/wiring/calendar_names.toml
"""

import subprocess
import sys
import tomllib
from collections.abc import Iterator, Mapping, Sequence
from functools import lru_cache
from importlib.resources import files
from types import MappingProxyType
from typing import Any

from assistant.people import LANGUAGES
from assistant.reading.text.lexicon import Sort

CalendarNames = Mapping[Sort, Sequence[tuple[str, str]]]
"""Full and short names with their numbers, in the order of Babel."""

BRITISH = "en_GB"  # the locale of the English list
_SORTS = (Sort.MONTH, Sort.WEEKDAY)


def open_calendar_names(locale: str) -> CalendarNames:
    """The names of a language; of one that the file has not, as of a list that is tried out,
    they are Babel's."""
    found = _table().get(locale)
    if found is None:
        return of_babel(locale)
    return {sort: [(str(name), str(key)) for name, key in found[sort]] for sort in _SORTS}


@lru_cache(maxsize=1)
def _table() -> Mapping[str, Any]:
    text = (files("assistant.wiring") / "calendar_names.toml").read_text("utf-8")
    return MappingProxyType(tomllib.loads(text))


def of_babel(locale: str) -> CalendarNames:
    """The names as Babel has them."""
    from babel import Locale  # noqa: PLC0415  # see above

    names = Locale.parse(locale)
    tables = {Sort.MONTH: names.months, Sort.WEEKDAY: names.days}
    return {
        sort: [
            (name, str(number))
            for context in ("format", "stand-alone")
            for width in ("wide", "abbreviated")
            for number, name in sorted(table[context][width].items())
        ]
        for sort, table in tables.items()
    }


def written() -> Iterator[str]:
    """The lines of the file. Each language has a process of its own: Babel keeps what one
    inherits where the next finds it, so that French days would be Swahili ones too."""
    yield "# Made by: python -m assistant.wiring.calendar_names"
    for locale in (*LANGUAGES, BRITISH):
        command = [sys.executable, "-m", "assistant.wiring.calendar_names", locale]
        yield from subprocess.run(  # noqa: S603  # our own module
            command, check=True, capture_output=True, encoding="utf-8"
        ).stdout.splitlines()


def _section(locale: str) -> Iterator[str]:
    yield f"\n[{locale}]"
    for sort, rows in of_babel(locale).items():
        pairs = ", ".join(f'["{name}", "{key}"]' for name, key in rows)
        yield f"{sort} = [{pairs}]"


if __name__ == "__main__":
    lines = _section(sys.argv[1]) if len(sys.argv) > 1 else written()
    sys.stdout.buffer.write(("\n".join(lines) + "\n").encode())
