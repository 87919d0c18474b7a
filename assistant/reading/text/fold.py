"""From what was typed to plain tokens: one alphabet of digits, no accents, no case.

Phones, people in a hurry and nine languages spell one thing in many ways; word lists and
replies both pass through here, so they meet in one form. All of it is linear in the length.
"""

import re
import unicodedata
from dataclasses import dataclass, replace
from enum import StrEnum
from functools import cache, lru_cache

LONGEST_REPLY = 2000  # characters; a longer text is no answer to a question of one line
# A text is read in many ways while it is answered, and its parts too; then it comes no more.
TEXTS_KEPT = 1024
# What is read of a whole text is read within one turn; few turns go on at once.
TEXTS_IN_HAND = 128

# Signs that people answer with; any other picture says nothing to us.
SIGNS = frozenset("👍👎✅✔☑✓👌🙏❌✖✗🚫❎")

# Before and after decomposition: look-alikes of punctuation, and marks that are often left out:
# candrabindu, nukta (Devanagari and Bengali), ordinal and degree signs. Zero is no ordinal: 1º.
_LOOK_ALIKES = str.maketrans(
    {
        **dict.fromkeys("\u2018\u2019\u02bc`\u00b4", "'"),
        **dict.fromkeys("\u2010\u2011\u2012\u2013\u2014\u2212", "-"),
        **dict.fromkeys("\u2044\u2215", "/"),
        **dict.fromkeys("\u00d7\u2715", " x "),
        **dict.fromkeys("\u00ba\u00aa\u00b0\u0981\u093c\u09bc", ""),
        **dict.fromkeys("\u0964\u0970", "."),
        "\u066a": "%",
        "\u066b": ".",
        "\u0901": "\u0902",
    }
)
_LETTERS = str.maketrans({"đ": "d", "ł": "l", "ø": "o", "œ": "oe", "æ": "ae", "ß": "ss"})
_ACCENTS = re.compile("[\u0300-\u036f]")
# What phones add to emoji and keycaps: enclosing, variation and skin-tone marks.
_TRIMMINGS = re.compile("[\u20e3\ufe00-\ufe0f\U0001f3fb-\U0001f3ff]")
_SQUARED = re.compile(r"(?<=[^\W\d])(?:\^|\*\*)2")

# A number typed with the letter o or l: o.4, 1o, l.5; before a unit or the end, never "10l".
_SLIP = re.compile(
    r"(?<![^\W_])(?<![.,])(?=[\d.,]*[oil])(?=[oil.,]*\d)[oil\d.,]*[o\d]"
    r"(?=$|[^\w.,]|[.,](?:\s|$)|h|ac|m2|ek)"
)
_SLIPS = str.maketrans("oil", "011")
_LETTERS_KEPT = 4096  # signs whose nature is remembered: the letters of nine languages are few
_NOTHING = ("Cf", "Cs", "Co", "Cn")
_SPACES = ("So", "Sk", "Zs", "Zl", "Zp", "Cc")


class TokenKind(StrEnum):
    """What a token is made of."""

    NUMBER = "number"
    WORD = "word"
    MARK = "mark"


@dataclass(frozen=True, slots=True)
class Token:
    """One number, word or mark of a reply."""

    text: str
    kind: TokenKind
    glued: bool  # nothing stood between it and the one before
    at: int = 0  # its place in the reply
    marked: str = ""  # the word with its accents
    with_accents: bool = False  # the reply has accents, so their absence says something

    @property
    def is_word(self) -> bool:
        """Whether it is made of letters."""
        return self.kind is TokenKind.WORD

    @property
    def is_number(self) -> bool:
        """Whether it is made of digits."""
        return self.kind is TokenKind.NUMBER


@lru_cache(maxsize=TEXTS_KEPT)
def fold(text: str) -> str:
    """The text in lower case with ASCII digits, decomposed, without nukta and hidden signs."""
    if text.isascii():
        return _SQUARED.sub("2", text.translate(_LOOK_ALIKES).casefold())
    spaced = "".join(_vulgar(ch) for ch in text).translate(_LOOK_ALIKES)
    plain = unicodedata.normalize("NFKD", spaced).translate(_LOOK_ALIKES)
    plain = _TRIMMINGS.sub("", plain).casefold()
    return _SQUARED.sub("2", "".join(_plain(ch) for ch in plain))


@cache
def same(word: str) -> str:
    """The word: one value for all that are equal, while word lists are read."""
    return word


@lru_cache(maxsize=_LETTERS_KEPT)
def _vulgar(ch: str) -> str:
    """A one-sign fraction such as the half sign as ' 1/2 ': 1 and a half is not 11/2."""
    is_fraction = unicodedata.decomposition(ch).startswith("<fraction>")
    return f" {unicodedata.normalize('NFKD', ch)} " if is_fraction else ch


@lru_cache(maxsize=_LETTERS_KEPT)
def _plain(ch: str) -> str:
    """Any script's digit as ASCII; signs that carry no meaning here as a space."""
    if ch.isascii():
        return ch
    decimal = unicodedata.decimal(ch, None)
    if decimal is not None:
        return str(decimal)
    category = unicodedata.category(ch)
    if category in _NOTHING:
        return ""
    return " " if category in _SPACES and ch not in SIGNS else ch


def unslip(folded: str) -> tuple[str, bool]:
    """The folded text with o, i and l inside numbers as digits, and whether it had any."""
    mended, count = _SLIP.subn(lambda m: m[0].translate(_SLIPS), folded)
    return mended, count > 0


def has_other_digits(text: str, own: str) -> bool:
    """Whether digits of another script than ASCII and these stand in the text."""
    squares = text.replace("m²", "")  # square metres are no digit
    return any(
        not ch.isascii() and ch not in own and unicodedata.digit(ch, None) is not None
        for ch in squares
    )


def read_tokens(text: str) -> tuple[Token, ...]:
    """The tokens of what was typed."""
    return cut(fold(text))


@lru_cache(maxsize=TEXTS_KEPT)
def cut(folded: str) -> tuple[Token, ...]:
    """The folded text cut into numbers (with their inner marks), words and single marks."""
    if folded and all(map(_is_letter, folded)):
        return _one_word(folded)
    found: list[Token] = []
    at, glued = 0, False
    while at < len(folded):
        if folded[at].isspace():
            at, glued = at + 1, False
            continue
        end, kind = _token_end(folded, at)
        raw = folded[at:end]
        plain = _plain_word(raw)
        if plain:
            found.append(Token(plain, kind, glued, marked=raw))
        at, glued = end, True
    accented = any(token.marked != token.text for token in found)
    return tuple(
        Token(token.text, token.kind, token.glued, at, token.marked, accented)
        for at, token in enumerate(_tidy(found))
    )


def _one_word(folded: str) -> tuple[Token, ...]:
    """A text of nothing but letters: most of what stands in word lists."""
    plain = _plain_word(folded)
    if not plain:
        return ()
    return (Token(plain, TokenKind.WORD, False, 0, folded, plain != folded),)


def _plain_word(raw: str) -> str:
    """A word without its accents; itself, not another like it, where it has none."""
    if raw.isascii():
        return raw
    plain = _ACCENTS.sub("", raw).translate(_LETTERS)
    return raw if plain == raw else plain


def _token_end(text: str, at: int) -> tuple[int, TokenKind]:
    """Where the token that starts at `at` ends, and its kind."""
    if _is_digit(text, at) or (
        text[at] in ".," and _is_digit(text, at + 1) and _opens(text, at)
    ):
        return _number_end(text, at), TokenKind.NUMBER
    if _is_letter(text[at]):
        end = at + 1
        while end < len(text) and _is_letter(text[end]):
            end += 1
        return end, TokenKind.WORD
    return at + 1, TokenKind.MARK


def _number_end(text: str, at: int) -> int:
    """The end of a run of digits with single dots and commas inside."""
    end = at + 1
    while _is_digit(text, end) or (
        text[end : end + 1] in (".", ",") and _is_digit(text, end + 1)
    ):
        end += 1
    return end


def _opens(text: str, at: int) -> bool:
    """Whether a dot here can open a number: .5"""
    return at == 0 or text[at - 1].isspace() or text[at - 1] in "(+-~=:"


def _is_digit(text: str, at: int) -> bool:
    return at < len(text) and text[at].isascii() and text[at].isdigit()


@lru_cache(maxsize=_LETTERS_KEPT)
def _is_letter(ch: str) -> bool:
    return unicodedata.category(ch)[0] in "LM"


def _tidy(found: list[Token]) -> list[Token]:
    """Square metres as one word; marks that end an abbreviation or join two words left out."""
    kept: list[Token] = []
    for place, token in enumerate(found):
        last = kept[-1] if kept else None
        after_word = token.glued and last is not None and last.is_word
        if token.text == "2" and after_word and last and last.text in ("m", "ft", "km"):
            kept[-1] = replace(last, text=last.text + "2", marked=last.marked + "2")
        elif not (after_word and _says_nothing(token, found[place + 1 : place + 2])):
            kept.append(token)
    return kept


def _says_nothing(token: Token, after: list[Token]) -> bool:
    """The dot of "sq. m", the hyphen of "quatre-vingt", the apostrophe of "aujourd'hui"."""
    if token.text == ".":
        return True
    return token.text in ("-", "'") and bool(after) and after[0].is_word and after[0].glued
