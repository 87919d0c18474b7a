"""Which column of an office's list is what: by the names at their heads, in any language.

A name is looked up in `column_words`; a misspelt or longer one is compared by rapidfuzz. What
is found is shown to the officer, who approves or changes it; nothing is read before.
"""

import re
import unicodedata
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from functools import lru_cache

from rapidfuzz import fuzz

from assistant.service.office.column_words import WORDS
from assistant.service.office.rows import SheetRow

NEAR_ENOUGH = 84  # of 100, as rapidfuzz counts; two slips in a word of twelve
SHORTEST_NEAR = 4  # letters; shorter words are too near to too many
_HEAD_ROWS = 12  # a title and an address may stand above the names
_SURE = 100.0
_BRACKETS = re.compile(r"\([^)]*\)|\[[^\]]*\]")


class Field(StrEnum):
    """What a column may hold."""

    PHONE = "phone"
    NAME = "name"
    VILLAGE = "village"
    LANGUAGE = "language"
    AREA = "area"
    SOWING = "sowing"
    GERMINATION = "germination"
    NURSERY = "nursery"


@dataclass(frozen=True)
class Column:
    """One column: its head as written, what it is taken for, and whether that is sure."""

    at: int
    head: str
    field: Field | None
    sure: bool = False


def bare(text: str) -> str:
    """A head without what differs between offices: capitals, accents, brackets, marks."""
    letters = unicodedata.normalize("NFKD", text.casefold().replace("\u0111", "d"))
    plain = "".join(ch for ch in letters if not "\u0300" <= ch <= "\u036f")
    plain = unicodedata.normalize("NFC", _BRACKETS.sub(" ", plain))
    return " ".join(_apart(plain).split())


def _apart(text: str) -> str:
    """Words apart by blanks; the vowel signs of Indian scripts belong to their words."""
    kept = (
        ch if ch.isalpha() or unicodedata.category(ch).startswith("M") else " " for ch in text
    )
    return "".join(kept)


@lru_cache(maxsize=1)
def _known() -> dict[str, Field]:
    return {
        bare(word): Field(name) for name, words in WORDS.items() for word in words.split("|")
    }


def _score(head: str) -> tuple[Field | None, float]:
    """What a head means and how surely, of 100."""
    said = bare(head)
    if not said:
        return None, 0.0
    if said in _known():
        return _known()[said], _SURE
    best: tuple[Field | None, float] = (None, 0.0)
    for word, field in _known().items():
        score = _near(said, word)
        if score > best[1]:
            best = field, score
    return best


def _near(said: str, word: str) -> float:
    if len(word) < SHORTEST_NEAR or len(said) < SHORTEST_NEAR:
        return 0.0
    ratio = fuzz.ratio(said, word)
    if ratio >= NEAR_ENOUGH:
        return ratio - 1
    # "Mobile number of the farmer" holds the whole of a name; the longest such name counts.
    inside = f" {word} " in f" {said} "
    return NEAR_ENOUGH + min(len(word), 14) if inside else 0.0


def columns_of(heads: Sequence[str]) -> tuple[Column, ...]:
    """What each column is taken for; of two for the same, only the surer."""
    scored = [_score(head) for head in heads]
    best: dict[Field, int] = {}
    for at, (field, score) in enumerate(scored):
        if field is not None and (field not in best or score > scored[best[field]][1]):
            best[field] = at
    found = []
    for at, (field, score) in enumerate(scored):
        mine = field if field is not None and best[field] == at else None
        found.append(Column(at, heads[at], mine, mine is not None and score == _SURE))
    return tuple(found)


def head_row(rows: Sequence[SheetRow]) -> int:
    """The place of the row that holds the names: the one with most of them, the phone's first
    of all; the first row where none is known."""

    def known(at: int) -> tuple[bool, int]:
        fields = [each.field for each in columns_of(rows[at].cells) if each.field]
        return Field.PHONE in fields, len(fields)

    first = range(min(_HEAD_ROWS, len(rows)))
    return max(first, key=lambda at: (*known(at), -at))


def has_phones(rows: Sequence[SheetRow]) -> bool:
    """Whether names of columns stand above these rows, that of the phone among them."""
    held = [row for row in rows[: 2 * _HEAD_ROWS] if any(row.cells)]
    if not held:
        return False
    heads = held[head_row(held)].cells
    return Field.PHONE in {each.field for each in columns_of(heads)}
