"""A text as the pieces that its act is learned from: parts of words, words, pairs of words.

Folding is light: one case, no marks on Latin letters, one sign for any number. The vowel signs
of Indic scripts stay, since they make the words. All of it is linear in the length.
"""

import re
import unicodedata
from collections.abc import Iterator
from functools import lru_cache
from zlib import crc32

LONGEST = 400  # characters that are looked at; an act is clear long before
SHORTEST_PIECE, LONGEST_PIECE = 1, 5
MOST_WORDS_COUNTED = 9
WORDS_KEPT = 4096  # words whose pieces are remembered: people use the same few thousand

_SEPARATE = str.maketrans({"đ": "d", "ı": "i", "ø": "o", "œ": "oe", "ß": "ss"})
_UNSEEN = dict.fromkeys(map(ord, "'’`´\u200c\u200d"))
_DRAWN_OUT = re.compile(r"(\D)\1{2,}")  # noooo


def pieces(text: str) -> frozenset[str]:
    """The pieces of a text, each once; a sign in front tells their kind."""
    words = _words(text)
    plain = [_bare(word) for word in words]
    found = {piece for word in plain for piece in _of_word(word)}
    found |= {f"a{word}" for word, bare in zip(words, plain, strict=True) if word != bare}
    found |= set(_pairs(plain))
    found.add(f"n{min(len(words), MOST_WORDS_COUNTED)}")
    return frozenset(found)


def rows_of(text: str, bits: int) -> frozenset[int]:
    """The rows of a table of 2**bits rows that a text's pieces fall on."""
    mask = (1 << bits) - 1
    return frozenset(crc32(piece.encode()) & mask for piece in pieces(text))


def _words(text: str) -> list[str]:
    """Words, a question or percent mark as a word of its own, any number as 0."""
    folded = unicodedata.normalize("NFC", text[:LONGEST].lower()).translate(_UNSEEN)
    return "".join(_kept(sign) for sign in folded).split()


@lru_cache(maxsize=WORDS_KEPT)
def _kept(sign: str) -> str:
    if sign.isdigit():
        return "0"
    if sign.isalpha() or unicodedata.category(sign).startswith("M"):
        return sign
    return f" {sign} " if sign in "?%" else " "


@lru_cache(maxsize=WORDS_KEPT)
def _bare(word: str) -> str:
    """A word without the marks of Latin letters; a letter drawn out stands twice."""
    apart = unicodedata.normalize("NFD", word)
    kept = "".join(sign for sign in apart if not "\u0300" <= sign <= "\u036f")
    joined = unicodedata.normalize("NFC", kept).translate(_SEPARATE)
    return _DRAWN_OUT.sub(r"\1\1", joined)


@lru_cache(maxsize=WORDS_KEPT)
def _of_word(word: str) -> tuple[str, ...]:
    edged = f" {word} "
    parts = (
        edged[start : start + size]
        for size in range(SHORTEST_PIECE, min(LONGEST_PIECE, len(edged)) + 1)
        for start in range(len(edged) - size + 1)
    )
    return (f"w{word}", *(f"c{part}" for part in parts if part != " "))


def _pairs(words: list[str]) -> Iterator[str]:
    """Neighbours, with the ends of the text; and words with one between them."""
    edged = ["^", *words, "$"]
    for first, second in zip(edged, edged[1:], strict=False):
        yield f"b{first} {second}"
    for first, second in zip(words, words[2:], strict=False):
        yield f"s{first} {second}"
