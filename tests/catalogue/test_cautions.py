"""Each caution says in each language who, what, where, how far and when, as the English does.

A table of words (`cautions.toml`) stands in for a reader: a caution that lost "keep children
and animals away", "the leaves" of "rinse the leaves", or "in the evening" is found. It does
not replace somebody who reads the language.
"""

import tomllib
import unicodedata
from collections.abc import Mapping
from functools import cache
from pathlib import Path

import pytest

from assistant.people import LANGUAGES
from assistant.wiring.catalogues import open_catalogue
from assistant.wording import messages_care as care
from assistant.wording import messages_cautions as cautions
from assistant.wording.message import Message
from assistant.wording.render import Catalogue
from assistant.wording.texts import declared

TABLE = tomllib.loads(
    (Path(__file__).parent / "cautions.toml").read_text(encoding="utf-8"),
)
TEXTS: Mapping[str, list[str]] = TABLE["texts"]
MESSAGES = {text.place: text.message for text in declared()}


def folded(text: str) -> str:
    """Small letters, composed alike."""
    return unicodedata.normalize("NFC", text).casefold()


@cache
def catalogue(code: str) -> Catalogue:
    """The texts of a language, opened once."""
    return open_catalogue(code)


@cache
def said(code: str, place: str) -> str:
    """A text as its catalogue has it."""
    return folded(catalogue(code).translations.gettext(MESSAGES[place].text))


def lost(text: str, code: str, place: str) -> list[str]:
    """The parts of a caution that a text does not say."""
    words = TABLE[code]
    return [
        part for part in TEXTS[place] if not any(folded(word) in text for word in words[part])
    ]


@pytest.mark.parametrize("code", LANGUAGES)
def test_a_caution_says_all_its_parts(code: str) -> None:
    """Against the parts of the English."""
    found = {place: lost(said(code, place), code, place) for place in TEXTS}
    assert {place: parts for place, parts in found.items() if parts} == {}


@pytest.mark.parametrize("code", LANGUAGES)
def test_every_language_has_words_for_every_part(code: str) -> None:
    """The parts are those that the texts name."""
    assert TABLE[code].keys() == {part for parts in TEXTS.values() for part in parts}
    assert all(TABLE[code].values())


def test_every_text_of_caution_is_in_the_table() -> None:
    """A new one needs its parts before it can pass."""
    mine = {f"cautions.{name}" for name, value in vars(cautions).items()
            if isinstance(value, Message)}  # fmt: skip
    assert mine <= TEXTS.keys()


@pytest.mark.parametrize("code", LANGUAGES)
def test_a_caution_without_one_of_its_sentences_is_noticed(code: str) -> None:
    """Else the table would let everything pass: of the spray the last five are cautions."""
    place, stop = "care.UREA_CAN", "।" if code in ("hi", "bn") else "."
    sentences = said(code, place).rstrip(f"{stop} ").split(f"{stop} ")
    assert MESSAGES[place] is care.UREA_CAN and len(sentences) >= 7
    for left_out in range(len(sentences) - 5, len(sentences)):
        rest = f"{stop} ".join(sentences[:left_out] + sentences[left_out + 1 :])
        assert lost(rest, code, place) != [], sentences[left_out]
