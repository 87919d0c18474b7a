"""What a line expects of a text or a screen: pieces of it, in order, or the whole."""

import re
from dataclasses import dataclass

BUT_NOT = "but not "


@dataclass(frozen=True)
class Expected:
    """Pieces that must stand in a text in this order, and pieces that must not.

    Case and the breaks between lines do not matter. A piece that begins or ends in a digit
    matches whole numbers only: "4 kg" is not in "14 kg" nor in "1.4 kg". `whole`: the text is
    the piece, nothing more.
    """

    pieces: tuple[str, ...]
    without: tuple[str, ...] = ()
    whole: bool = False


def read_expected(words: str, *, whole: bool = False) -> Expected:
    """Pieces between bars; one that begins with "but not" must be absent."""
    if whole:
        return Expected((_even(words),), whole=True)
    parts = [part.strip() for part in words.split("|")]
    wanted = tuple(part for part in parts if part and not part.startswith(BUT_NOT))
    banned = tuple(part[len(BUT_NOT) :] for part in parts if part.startswith(BUT_NOT))
    return Expected(wanted, banned)


def differences(expected: Expected, text: str) -> tuple[str, ...]:
    """What is wrong with a text, in words; nothing where it is as expected."""
    text = _even(text)
    if expected.whole:
        same = text == expected.pieces[0]
        return () if same else (f"not exactly: {expected.pieces[0]}",)
    return (*_missing(expected.pieces, text), *_present(expected.without, text))


def _missing(pieces: tuple[str, ...], text: str) -> tuple[str, ...]:
    place, faults = 0, []
    for piece in pieces:
        pattern = _pattern(piece)
        found = pattern.search(text, place)
        if found:
            place = found.end()
        elif pattern.search(text):
            faults.append(f"in it, but not in this order: {piece}")
        else:
            faults.append(f"not in it: {piece}")
    return tuple(faults)


def _present(pieces: tuple[str, ...], text: str) -> tuple[str, ...]:
    return tuple(f"should not be in it: {p}" for p in pieces if _pattern(p).search(text))


def _even(text: str) -> str:
    """The text on one line, each gap one space."""
    return " ".join(text.split())


def _pattern(piece: str) -> re.Pattern[str]:
    piece = _even(piece)
    before = r"(?<!\d)(?<!\d[.,])" if piece[:1].isdigit() else ""
    after = r"(?!\d)(?![.,]\d)" if piece[-1:].isdigit() else ""
    return re.compile(before + re.escape(piece) + after, re.IGNORECASE)
