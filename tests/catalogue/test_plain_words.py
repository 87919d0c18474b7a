"""No text to a phone uses the words of an office, in any language (`plain_words.toml`)."""

import re
import tomllib
from pathlib import Path

import pytest

from assistant.people import LANGUAGES
from assistant.wiring.catalogues import open_catalogue
from assistant.wording.texts import declared

LISTED = tomllib.loads((Path(__file__).parent / "plain_words.toml").read_text("utf-8"))
FEWEST = 6  # words a language


def said(language: str) -> list[str]:
    """Every text that a phone may get, as it is said in a language."""
    translated = open_catalogue(language).translations
    texts = (each.message for each in declared() if not each.printed)
    return [translated.gettext(each.text) for each in texts]


@pytest.mark.parametrize("language", LANGUAGES)
def test_no_text_uses_a_word_of_the_office(language: str) -> None:
    """A farmer with four years of school, reading a second language, should know each word."""
    words = LISTED[language]
    assert len(words) >= FEWEST
    # Not \b: the vowel signs of Indic scripts are no letters to it.
    any_of = "|".join(map(re.escape, words))
    found = re.compile(rf"(?<![\w\u0900-\u09ff])({any_of})(?![\w\u0900-\u09ff])", re.IGNORECASE)
    assert [text for text in said(language) if found.search(text)] == []
