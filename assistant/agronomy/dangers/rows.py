"""The table of dangers: whom each concerns, and what stands still while it is warned of.

It is filled once from `dangers.toml` when a program starts. The words of a warning stand in
`assistant.wording.dangers`.
"""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from enum import StrEnum

from assistant.agronomy.errors import AgronomyError

RAIN = "rain"
"""The danger of every warning that names no other."""


class BedStage(StrEnum):
    """Where a bed stands when a danger comes, in the order in which beds are told of."""

    COVERED = "covered"  # sown, days 0 to 5 or not uncovered yet
    SOON = "soon"  # sown within two days
    UNCOVERED = "uncovered"
    DRAINED = "drained"  # no water stands round it


@dataclass(frozen=True)
class FirstAdvice:
    """What is done first with beds of some stages, in plain English, and on what that rests.

    What farmers read is worded for each language in `assistant.wording.dangers`.
    """

    stages: frozenset[BedStage]
    what: str
    rests_on: str


@dataclass(frozen=True)
class DangerRow:
    """One danger.

    Args:
        code: its name in the table and in the store
        words: what officers write in front of a warning by text, in capitals, by language
        advice: what is done first, by the stages of the beds that it concerns
        waits: sowing and uncovering wait while it is warned of
        storm: people may come to harm out of doors, so that a cry is likelier
        indoors: nobody is sent out once it is there
        by_days: it has no hours: it stands for days from when it is told, and silence about it
            is not shown
        longest_d: how many days a warning may last
        alert_words: words of which one stands in the event of an official alert
    """

    code: str
    words: Mapping[str, tuple[str, ...]]
    advice: tuple[FirstAdvice, ...]
    waits: bool = False
    storm: bool = False
    indoors: bool = False
    by_days: bool = False
    longest_d: int = 3
    alert_words: tuple[str, ...] = ()

    @property
    def stages(self) -> frozenset[BedStage]:
        """The beds that it concerns."""
        return frozenset(stage for each in self.advice for stage in each.stages)

    def word(self, language: str) -> str:
        """The first of its words in a language; the English one stands in."""
        return (self.words.get(language) or self.words["en"])[0]


class DangerTable:
    """The rows by code, in the order of the file. A program fills it once, when it starts."""

    def __init__(self) -> None:
        self._rows: dict[str, DangerRow] = {}
        self._by_word: dict[str, DangerRow] = {}

    def fill(self, rows: Iterable[DangerRow]) -> None:
        """Takes the rows of the file.

        Raises:
            AgronomyError: other rows than were taken before.
        """
        found = {row.code: row for row in rows}
        if self._rows and self._rows != found:
            raise AgronomyError("dangers: the table is filled; a program has one for its run")
        self._rows = found
        self._by_word = {
            word: row
            for row in found.values()
            for words in row.words.values()
            for word in words
        }

    def __getitem__(self, code: str) -> DangerRow:
        """The row of a danger.

        Raises:
            AgronomyError: no such danger, or the table was not filled.
        """
        rows = self._filled()
        if code not in rows:
            raise AgronomyError(
                f"dangers: expected one of {', '.join(rows)}, got {code!r}: a row that "
                "warnings were given of must stay in dangers.toml"
            )
        return rows[code]

    @property
    def all(self) -> tuple[DangerRow, ...]:
        """All rows, rain first."""
        return tuple(self._filled().values())

    def of_word(self, word: str) -> DangerRow | None:
        """The danger that an officer's word names."""
        self._filled()
        return self._by_word.get(word)

    def codes(self, wanted: Callable[[DangerRow], bool]) -> frozenset[str]:
        """The dangers whose row is wanted."""
        return frozenset(row.code for row in self.all if wanted(row))

    def _filled(self) -> dict[str, DangerRow]:
        if not self._rows:
            raise AgronomyError(
                "dangers: the table is empty; call "
                "assistant.wiring.dangers.open_dangers() first"
            )
        return self._rows


DANGERS = DangerTable()
