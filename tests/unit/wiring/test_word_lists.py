"""The word lists as files: whole, and refused with all their faults at once."""

import tomllib
from importlib.resources import files
from typing import Any

import pytest

from assistant.people import LANGUAGES
from assistant.reading import Wish
from assistant.reading.text.lexicon import Sort
from assistant.wiring.lexicons import LexiconError, open_lexicons
from assistant.wiring.word_lists import read_word_list

WORDS = files("assistant.reading") / "words"


def _table(language: str = "en") -> dict[str, Any]:
    return tomllib.loads((WORDS / f"{language}.toml").read_text(encoding="utf-8"))


def test_every_language_has_a_word_list():
    """And no list is without its language."""
    assert set(open_lexicons()) == set(LANGUAGES)
    assert {file.name for file in WORDS.iterdir()} == {f"{code}.toml" for code in LANGUAGES}


def test_each_list_says_that_it_waits_for_a_reviewer():
    """Drafted by us; a native reviewer has yet to sign it."""
    for language in LANGUAGES:
        head = (WORDS / f"{language}.toml").read_text(encoding="utf-8")[:400]
        assert "reviewer has yet to sign it" in " ".join(head.replace("#", " ").split())


@pytest.mark.parametrize("language", LANGUAGES)
def test_a_list_has_every_wish_and_all_days_and_months(language):
    """Names come from the list, from CLDR and from English."""
    lexicon = open_lexicons()[language]
    assert all(lexicon.wishes[wish].words for wish in Wish)
    assert {int(key) for key in lexicon.phrases[Sort.WEEKDAY].values()} == set(range(7))
    assert {int(key) for key in lexicon.phrases[Sort.MONTH].values()} == set(range(1, 13))
    assert {"0", "1", "-1"} <= set(lexicon.phrases[Sort.DAY].values())
    for sort in (Sort.YES, Sort.NO, Sort.DONE, Sort.NOT_YET, Sort.PERCENT, Sort.NOT_KNOWN):
        assert lexicon.phrases[sort]


def test_all_faults_are_told_together():
    """A translator mends them in one go."""
    table = _table()
    table["wrods"] = {}
    table["words"]["yess"] = ["y"]
    table["number"]["four"] = ["4"]
    table["unit"]["acer"] = ["acer"]
    table["month"]["9"] = ["jan", "sept"]
    table["month"]["1"] = ["jan"]
    table["wishes"]["menu"]["words"] = []
    table["wishes"]["help"]["words"].append("stop")
    table["wishes"]["stop"]["anywhere"].append("whoa")
    table["day"]["0"] = "today"
    table["words"]["yes"].append("")
    del table["shown"]["answers"]["no"]
    table["shown"]["digits"] = "012"
    lexicon, faults = read_word_list("en", table)
    told = "\n".join(faults)
    assert lexicon is None
    for part in (
        "[wrods]: no such section|yess: no such kind|'four' is no key|'acer' is no key|"
        "'jan' stands for|[wishes.menu] needs|'stop' is also help|'whoa' is not among|"
        "[day] 0: expected a list|'' holds nothing|no is missing|ten digits"
    ).split("|"):
        assert part in told


def test_an_empty_table_is_refused_without_an_exception():
    """Every missing section is named."""
    lexicon, faults = read_word_list("en", {})
    assert lexicon is None
    assert {"[words] is missing", "[wishes] is missing", "[shown] is missing"} <= set(faults)


def test_a_language_without_a_list_is_an_error_of_ours():
    """The text says which file was expected."""
    with pytest.raises(LexiconError, match="xx.toml: cannot be read"):
        open_lexicons(["en", "xx"])
