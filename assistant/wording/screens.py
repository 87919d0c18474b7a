"""Cuts an answer into USSD screens that fit, each with its way on and back."""

from collections.abc import Iterator
from dataclasses import dataclass

from assistant.alphabet import fits_screen


@dataclass(frozen=True)
class Limits:
    """What one screen holds (3GPP TS 23.038: 160 octets; operators differ)."""

    septets: int = 182
    ucs2: int = 80

    def hold(self, text: str) -> bool:
        """Whether a text fits one screen."""
        return fits_screen(text, septets_max=self.septets, ucs2_max=self.ucs2)


@dataclass(frozen=True)
class Hints:
    """The last lines of screens: the way on, the way back, and what ends the last one."""

    more: str
    back: str
    last: str = ""


def pages(text: str, hints: Hints, limits: Limits) -> tuple[str, ...]:
    """The screens of a text. Lines stay whole where they can, words always.

    Every screen but the last shows `hints.more`, every one but the first `hints.back`.
    """
    whole = _with(text, hints.last)
    if limits.hold(whole):
        return (whole,)
    found: list[str] = []
    taken = ""
    pieces = tuple(_pieces(text, hints, limits))
    for place, piece in enumerate(pieces, start=1):
        joined, last = taken + piece, place == len(pieces)
        if taken and not limits.hold(_with(joined.strip(), *_foot(hints, found, last=last))):
            found.append(_with(taken.strip(), *_foot(hints, found, last=False)))
            joined = piece.lstrip("\n")
        taken = joined
    found.append(_with(taken.strip(), *_foot(hints, found, last=True)))
    return tuple(found)


def _foot(hints: Hints, before: list[str], *, last: bool) -> tuple[str, ...]:
    back = (hints.back,) if before else ()
    on = (hints.last if not before else "",) if last else (hints.more,)
    return (*on, *back)


def _pieces(text: str, hints: Hints, limits: Limits) -> Iterator[str]:
    """Lines, or the words of a line that is too long for a screen of its own."""
    for number, line in enumerate(text.split("\n")):
        start = "\n" if number else ""
        if _fits(line, hints, limits):
            yield start + line
            continue
        for place, word in enumerate(line.split(" ")):
            first, *rest = _parts(word, hints, limits)
            yield (start if not place else " ") + first
            yield from rest


def _parts(word: str, hints: Hints, limits: Limits) -> Iterator[str]:
    """A word, cut where it is longer than a screen: a farmer may have typed no blanks."""
    end = len(word)
    while end > 1 and not _fits(word[:end], hints, limits):
        end -= 1
    yield word[:end]
    if word[end:]:
        yield from _parts(word[end:], hints, limits)


def _fits(piece: str, hints: Hints, limits: Limits) -> bool:
    """Whether a piece has room on any screen, whatever stands under it."""
    on, out = _with(piece, hints.more, hints.back), _with(piece, hints.last)
    return limits.hold(on) and limits.hold(out)


def _with(text: str, *lines: str) -> str:
    return "\n".join((text, *(line for line in lines if line)))
