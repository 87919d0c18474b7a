"""Each emergency text in each language says what the English says, part by part.

A table of key words a language (`emergency/<code>.toml`) stands in for a reader: drafted by
the project, and signed by no native reader. It finds a sentence that was dropped, moved, or
lost its deed, and words that could do harm; it does not replace a health worker who reads the
language.
"""

import re
import tomllib
import unicodedata
from collections.abc import Iterator, Mapping
from functools import cache
from pathlib import Path

import pytest

from assistant.people import LANGUAGES
from assistant.wiring.catalogues import open_catalogue
from assistant.wording import messages_aid as aid
from assistant.wording.message import Message
from assistant.wording.render import Catalogue

FOLDER = Path(__file__).parent / "emergency"
COMFORT: Mapping[str, Message] = {
    "die": aid.DIE,
    "die_hurt": aid.DIE_HURT,
    "die_here": aid.DIE_HERE,
}
TEXTS: Mapping[str, Message] = {**aid.BY_KIND, "hurt_here": aid.HURT_HERE, **COMFORT}

# What must never be said to somebody in need, in no wording: each is known to do harm where the
# reader is not trained, or keeps them from going (first-aid sources: SOURCES.md, "First aid").
HARMFUL = {
    "vomit",
    "milk",
    "salt",
    "oil",
    "charcoal",
    "cut",
    "suck",
    "tie",
    "ice",
    "medicine",
    "drink",
}

# Words of the English that carry nothing by themselves.
SMALL = set(
    "a all along and any anyone are as be came can for from get have if in into is it its keep "
    "let must needs of off on one or other that the them this to us very was we well what when "
    "while who with you your".split()
)


@cache
def table(code: str) -> Mapping[str, Mapping[str, list[str]]]:
    """The key words of a language."""
    return tomllib.loads((FOLDER / f"{code}.toml").read_text(encoding="utf-8"))


@cache
def catalogue(code: str) -> Catalogue:
    """The texts of a language, opened once."""
    return open_catalogue(code)


def said(code: str, name: str) -> str:
    """A text as its catalogue has it."""
    return catalogue(code).translations.gettext(TEXTS[name].text)


def sentences(text: str) -> list[str]:
    """The sentences of a text, in any script."""
    return [part for part in re.split(r"(?<=[.\u0964])\s+", text.strip()) if part]


def slots(sentence: str) -> set[str]:
    """Which numbers and names stand in a sentence."""
    return set(re.findall(r"\{(\w+)\}", sentence))


def numbers(sentence: str) -> list[int]:
    """The numbers that a sentence says, in any digits."""
    return [int(each) for each in re.findall(r"\d+", sentence)]


@cache
def words_of(sentence: str) -> str:
    """The words of a sentence in small letters, with a blank on either side of each."""
    plain = unicodedata.normalize("NFC", re.sub(r"\{\w+\}", " ", sentence)).lower()
    kept = (sign if unicodedata.category(sign)[0] in "LMN" else " " for sign in plain)
    return f" {' '.join(''.join(kept).split())} "


def holds(sentence: str, spellings: list[str]) -> bool:
    """Whether one of the spellings stands in a sentence."""
    return any(_spelt(each) in words_of(sentence) for each in spellings)


@cache
def _spelt(spelling: str) -> str:
    """A spelling as it is looked for: whole words, unless a star leaves the end open."""
    folded = unicodedata.normalize("NFC", spelling).lower()
    return f" {folded[:-1]}" if folded.endswith("*") else f" {folded} "


def parts(code: str, sentence: str) -> set[str]:
    """The parts that a sentence has."""
    return {part for part, all_ in table(code)["parts"].items() if holds(sentence, all_)}


def lost(code: str, name: str) -> Iterator[str]:
    """The parts that an English sentence has and the same sentence of a language has not."""
    english = sentences(TEXTS[name].text)
    pairs = zip(english, sentences(said(code, name)), strict=True)
    for at, (theirs, ours) in enumerate(pairs, start=1):
        for part in sorted(parts("en", theirs) - parts(code, ours)):
            yield f"sentence {at} lost {part!r}: {ours}"


@pytest.mark.parametrize("code", LANGUAGES)
def test_every_language_has_words_for_every_part(code: str) -> None:
    """The parts are those of the English, and what is never said is looked for everywhere."""
    assert table(code)["parts"].keys() == table("en")["parts"].keys()
    assert set(table(code)["never"]) == HARMFUL
    assert all(table(code)["parts"].values()) and all(table(code)["never"].values())


@pytest.mark.parametrize("name", TEXTS)
def test_no_word_of_the_english_is_outside_the_parts(name: str) -> None:
    """A new sentence of a text needs its parts in the tables before it can pass."""
    left = words_of(TEXTS[name].text)
    spellings = [each for part in table("en")["parts"].values() for each in part]
    for spelling in sorted(spellings, key=len, reverse=True):
        while _spelt(spelling) in left:
            left = left.replace(_spelt(spelling), " ")
    assert set(left.split()) - SMALL - {"15"} == set()


@pytest.mark.parametrize("code", LANGUAGES)
def test_a_text_has_each_sentence_with_its_slots_and_numbers(code: str) -> None:
    """As many as in English, in the same order: the call stays first, 15 stays 15."""
    for name, message in TEXTS.items():
        english = [(slots(each), numbers(each)) for each in sentences(message.text)]
        own = [(slots(each), numbers(each)) for each in sentences(said(code, name))]
        assert own == english, name


@pytest.mark.parametrize("code", LANGUAGES)
def test_a_text_says_every_part_in_its_sentence(code: str) -> None:
    """Call, go, packet, rinse, carry, and all others, each where the English has it."""
    assert [(name, part) for name in TEXTS for part in lost(code, name)] == []


@pytest.mark.parametrize("code", LANGUAGES)
def test_a_text_names_nothing_that_could_do_harm(code: str) -> None:
    """Not even to forbid it: a reader who loses the "not" must do no harm."""
    never = table(code)["never"]
    found = [
        (name, word) for name in TEXTS for word in never if holds(said(code, name), never[word])
    ]
    assert found == []


@pytest.mark.parametrize("code", LANGUAGES)
def test_only_words_of_comfort_say_not(code: str) -> None:
    """ "You are not alone" says it; every other text only says what to do."""
    denied = table(code)["only_to_comfort"]["not"]
    others = [name for name in TEXTS if name not in COMFORT]
    assert [name for name in others if holds(said(code, name), denied)] == []


@pytest.mark.parametrize("code", LANGUAGES)
def test_a_sentence_in_the_place_of_another_is_noticed(code: str) -> None:
    """Else the tables would let everything pass. Each sentence of all texts is put in the
    place of each other one; where the English of both has the same parts it may."""
    pairs = {
        theirs: (parts("en", theirs), parts(code, ours))
        for name in TEXTS
        for theirs, ours in zip(
            sentences(TEXTS[name].text), sentences(said(code, name)), strict=True
        )
    }
    unnoticed = [
        (one, other)
        for one, (wanted, _) in pairs.items()
        for other, (there, found) in pairs.items()
        if not wanted <= there and slots(one) == slots(other) and wanted <= found
    ]
    assert unnoticed == []


def test_words_that_could_do_harm_are_found_whole() -> None:
    """Milk is found; a word that only begins like one of them is not."""
    assert holds("Mpe maziwa.", table("sw")["never"]["milk"])
    assert not holds("Lepas cincin esok.", table("id")["never"]["ice"])
