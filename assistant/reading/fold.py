"""From what was typed to plain tokens: one alphabet of digits, no accents, no case.

Phones, people in a hurry and nine languages spell one thing in many ways; word lists and
replies both pass through here, so they meet in one form. All of it is linear in the length.
"""

import re
import unicodedata
from dataclasses import dataclass, replace
from enum import StrEnum

LONGEST_REPLY = 2000  # characters; a longer text is no answer to a question of one line

_THUMB_UP, _THUMB_DOWN = "👍", "👎"
_SIGNS = frozenset("👍👎✅✔☑✓👌🙏❌✖✗🚫❎")
_LETTERS = str.maketrans({"đ": "d", "ł": "l", "ø": "o", "œ": "oe", "æ": "ae", "ß": "ss"})
_LOOK_ALIKES = str.maketrans(
    {
        "\u2018": "'", "\u2019": "'", "\u02bc": "'", "`": "'", "\u00b4": "'",
        "\u2010": "-", "\u2011": "-", "\u2012": "-", "\u2013": "-", "\u2014": "-", "\u2212": "-",
        "\u2044": "/", "\u2215": "/", "\u00d7": " x ", "\u2715": " x ", "\u00ba": "", "\u00aa": "",
        "\u00b0": "", "\u066a": "%", "\u066b": ".", "\u0964": ".", "\u0901": "\u0902",
        "\u0981": "", "\u093c": "", "\u09bc": "", "\u0970": ".",
    }
)  # fmt: skip
# Latin accents, and invisible or enclosing marks that phones add to emoji and keycaps.
_DROPPED_MARKS = re.compile("[\u0300-\u036f\u20e3\ufe00-\ufe0f\U0001f3fb-\U0001f3ff]")
_SQUARED = re.compile(r"(?<=[^\W\d])(?:\^|\*\*)2")
# A number typed with the letter o or l: o.4, 1o, l.5; before a unit or the end, never in "10l".
_SLIP = re.compile(
    r"(?<![^\W_])(?<![.,])(?=[\d.,]*[ol])(?=[ol.,]*\d)[ol\d.,]*[ol\d]"
    r"(?=$|[^\w.,]|[.,](?:\s|$)|ha|ac|m2|ek)"
)
_SLIPS = str.maketrans("ol", "01")


class Kind(StrEnum):
    """What a token is made of."""

    NUMBER = "number"
    WORD = "word"
    MARK = "mark"


@dataclass(frozen=True)
class Token:
    """One number, word or mark; `glued` when nothing stood between it and the one before."""

    text: str
    kind: Kind
    glued: bool
    at: int = 0  # its place in the row


def fold(text: str) -> str:
    """The text in lower case with ASCII digits, without accents, nukta or invisible signs."""
    spaced = "".join(_vulgar(ch) for ch in text)
    plain = unicodedata.normalize("NFKD", spaced.translate(_LOOK_ALIKES)).translate(
        _LOOK_ALIKES
    )
    plain = _DROPPED_MARKS.sub("", plain).casefold().translate(_LETTERS)
    return _SQUARED.sub("2", "".join(_digit(ch) for ch in plain))


def _vulgar(ch: str) -> str:
    """A one-sign fraction such as the half sign as ' 1/2', so that 1 and a half is not 11/2."""
    way = unicodedata.decomposition(ch)
    return " " + unicodedata.normalize("NFKD", ch) + " " if way.startswith("<fraction>") else ch


def _digit(ch: str) -> str:
    """Any script's digit as ASCII; signs that carry no meaning here as a space."""
    if ch.isascii():
        return ch
    decimal = unicodedata.decimal(ch, None)
    if decimal is not None:
        return str(decimal)
    category = unicodedata.category(ch)
    if category in ("Cf", "Cc", "Cs", "Co", "Cn"):
        return ""
    return " " if category in ("So", "Sk", "Zs", "Zl", "Zp") and ch not in _SIGNS else ch


def unslip(folded: str) -> tuple[str, bool]:
    """The folded text with the letters o and l as digits inside numbers, and whether it had any."""
    mended, count = _SLIP.subn(lambda m: m[0].translate(_SLIPS), folded)
    return mended, count > 0


def cut(folded: str) -> tuple[Token, ...]:
    """The folded text cut into numbers (with their inner marks), words and single marks."""
    found: list[Token] = []
    at, glued = 0, False
    while at < len(folded):
        if folded[at].isspace():
            at, glued = at + 1, False
            continue
        end, kind = _token_end(folded, at)
        found.append(Token(folded[at:end], kind, glued))
        at, glued = end, True
    return tuple(replace(token, at=at) for at, token in enumerate(_merge(found)))


def _token_end(text: str, at: int) -> tuple[int, Kind]:
    """Where the token that starts at `at` ends, and its kind."""
    if _is_digit(text, at) or (
        text[at] in ".," and _is_digit(text, at + 1) and _starts(text, at)
    ):
        return _number_end(text, at), Kind.NUMBER
    if _is_letter(text[at]):
        end = at + 1
        while end < len(text) and _is_letter(text[end]):
            end += 1
        return end, Kind.WORD
    return at + 1, Kind.MARK


def _number_end(text: str, at: int) -> int:
    """The end of a run of digits with single dots and commas inside."""
    end = at + 1
    while end < len(text):
        if _is_digit(text, end) or (text[end] in ".," and _is_digit(text, end + 1)):
            end += 1
        else:
            break
    return end


def _starts(text: str, at: int) -> bool:
    return at == 0 or text[at - 1].isspace() or text[at - 1] in "(+-~=:"


def _is_digit(text: str, at: int) -> bool:
    return at < len(text) and text[at].isascii() and text[at].isdigit()


def _is_letter(ch: str) -> bool:
    return unicodedata.category(ch)[0] in "LM"


def _merge(found: list[Token]) -> list[Token]:
    """Square metres as one word; hyphens and apostrophes inside words as nothing."""
    merged: list[Token] = []
    for token in found:
        last = merged[-1] if merged else None
        if token.text == "2" and token.glued and last and last.text in ("m", "ft", "km"):
            merged[-1] = Token(last.text + "2", Kind.WORD, last.glued)
        elif token.text == "." and token.glued and last and last.kind is Kind.WORD:
            continue  # the end of an abbreviation or a sentence
        else:
            merged.append(token)
    return [t for i, t in enumerate(merged) if not _inside_word(merged, i)]


def _inside_word(found: list[Token], at: int) -> bool:
    """Whether the mark at `at` only joins two words: quatre-vingt, aujourd'hui, sq.m."""
    if (
        found[at].text not in ("-", "'", ".", "_")
        or not found[at].glued
        or at + 1 >= len(found)
    ):
        return False
    after = found[at + 1]
    return found[at - 1].kind is Kind.WORD and after.kind is Kind.WORD and after.glued
