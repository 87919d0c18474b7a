"""A number in digits: what its dots and commas mean in this language, and what else they might.

Exact fractions: Python's float would take "nan", "1e5" and "1_000" for numbers.
"""

from dataclasses import dataclass
from fractions import Fraction

from assistant.reading.text.lexicon import Lexicon

MOST_DIGITS = 12  # no field, count or percentage needs more; keeps arithmetic small


@dataclass(frozen=True)
class Digits:
    """A number, and the other number that its one mark could mean (1.500)."""

    value: Fraction
    other: Fraction | None = None
    foreign_mark: bool = False  # the thousands mark is not one of this language


def read_digits(raw: str, lexicon: Lexicon) -> Digits | None:
    """The number of a token such as 1,500.5; None where it is none that we would trust."""
    marks = [ch for ch in raw if ch in ".,"]
    parts = raw.replace(",", ".").split(".")
    if sum(map(len, parts)) > MOST_DIGITS:
        return None
    if not marks:
        return Digits(Fraction(int(raw)))
    if len(marks) == 1:
        return _one_mark(parts[0], parts[1], marks[0], lexicon)
    if len(set(marks)) == 1:
        return Digits(Fraction(int("".join(parts)))) if is_grouped(parts) else None
    if len(set(marks[:-1])) == 1 and marks[-1] != marks[0] and is_grouped(parts[:-1]):
        return Digits(Fraction("".join(parts[:-1]) + "." + parts[-1]))
    return None


def _one_mark(whole: str, rest: str, mark: str, lexicon: Lexicon) -> Digits:
    """Three digits after the mark may be thousands; anything else is a decimal."""
    decimal = Fraction(f"{whole or '0'}.{rest}")
    if len(rest) != 3 or not 1 <= len(whole) <= 3 or whole.startswith("0"):
        return Digits(decimal)
    grouped = Fraction(int(whole + rest))
    if mark == lexicon.decimal:
        return Digits(decimal, other=grouped)
    return Digits(grouped, other=decimal, foreign_mark=mark not in lexicon.groups)


def is_grouped(parts: list[str]) -> bool:
    """Whether the parts are those of 1,234,567 or, as in South Asia, 12,34,567."""
    first, middle, last = parts[0], parts[1:-1], parts[-1]
    if not 1 <= len(first) <= 3 or first.startswith("0") or len(last) != 3:
        return False
    return all(len(p) == 3 for p in middle) or all(len(p) == 2 for p in middle)
