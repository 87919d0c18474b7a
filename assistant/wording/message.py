"""A text declared once: its English, its slots, a note to the translator and its budget."""

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date, time
from typing import Union

from assistant.wording.figures import FIGURES, Figure

Slot = Union[str, int, float, date, time, Figure, "Say", "Named", "Listed", "Country"]
"""What may fill a slot. Numbers, dates and times are worded in the reader's language."""

_SLOT = re.compile(r"\{(\w+)\}")


def slots_of(text: str) -> frozenset[str]:
    """The slot names of a text, as in 'Field {area}'."""
    return frozenset(_SLOT.findall(text))


@dataclass(frozen=True)
class Message:
    """One text that people see. Calling it with its slots gives what to say.

    Slots that are figures of the trade (`figures.FIGURES`) fill themselves.

    `segments` is its budget as an SMS at its widest slots; `note` tells the translator where it
    stands and what the slots hold. `plural` is the form for other counts of the slot `n`; with
    `spoken` its hours are as people say them, else by 24.
    """

    text: str
    note: str = ""
    segments: int = 1
    plural: str | None = None
    spoken: bool = False

    def __call__(self, **slots: Slot) -> "Say":
        expected = slots_of(self.text) | slots_of(self.plural or "")
        figures = {name: FIGURES[name] for name in expected & FIGURES.keys()}
        filled: dict[str, Slot] = {**figures, **slots}
        if set(filled) != expected:
            raise WordingError(
                f"{self.text[:40]!r} has the slots {sorted(expected)}, got {sorted(slots)}"
            )
        return Say(self, filled)


@dataclass(frozen=True)
class Named:
    """A name that comes with its translations, (language, name), as those of a practice."""

    names: tuple[tuple[str, str], ...]
    otherwise: str = ""

    def in_language(self, language: str) -> str:
        """The name in a language; the English one, else what is given, stands in."""
        names = dict(self.names)
        return names.get(language) or names.get("en") or self.otherwise


@dataclass(frozen=True)
class Country:
    """A country by its ISO 3166-1 code; said by the name that the language has for it."""

    code: str


@dataclass(frozen=True)
class Listed:
    """Several short texts in one slot, parted as the language parts a list."""

    says: tuple["Say", ...]


@dataclass(frozen=True)
class Say:
    """A message with its slots filled, still in no language."""

    message: Message
    slots: Mapping[str, Slot] = field(default_factory=dict)


class WordingError(Exception):
    """A text was used in a way that its declaration does not allow; the text says which."""
