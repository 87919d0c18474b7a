"""How deeds are told, as files: forms written out, faults told together."""

from importlib.resources import files

import pytest

from assistant.people import LANGUAGES
from assistant.reading.text.lexicon import Sort
from assistant.wiring.deed_lists import read_deed_list

DEEDS = files("assistant.reading") / "deeds"


def test_every_language_has_a_list_that_waits_for_a_reviewer():
    assert {file.name for file in DEEDS.iterdir()} == {f"{code}.toml" for code in LANGUAGES}
    for language in LANGUAGES:
        head = (DEEDS / f"{language}.toml").read_text(encoding="utf-8")[:400]
        assert "reviewer has yet to sign it" in " ".join(head.replace("#", " ").split())


def test_a_form_stands_for_each_of_its_words():
    found = read_deed_list(
        {"forms": {"me": ["nime", "tume"]}, "told": {"soak": ["{me}loweka + mbegu"]}}
    )
    ((code, rule),) = found.rules
    assert code == "soak"
    assert rule.words == {"nimeloweka", "tumeloweka", "mbegu"}


def test_a_form_of_two_words_is_a_way_of_its_own():
    found = read_deed_list(
        {
            "forms": {"end": ["hoise", "hoye_gese"]},
            "told": {"sow": ["bona {end}"]},
            "beside": {"who": ["o_meu/- filho"]},
        }
    )
    ways = found.rules[0][1].groups[0]
    assert [len(way) for way in ways] == [2, 3]
    assert found.phrases == {Sort.COMPANION: ["o meu filho", "filho"]}


@pytest.mark.parametrize(
    ("table", "fault"),
    [
        ({"tell": {}}, "[tell]: no such section"),
        ({"told": {"cook": ["boil"]}}, "[told] cook: expected one of"),
        ({"told": {"sow": ["{me}sia"]}}, "me"),
        ({"told": {"sow": "sown"}}, "[told] sow: expected a list of rules"),
        ({"told": {"sow": ["sown + "]}}, "expected words between the signs"),
        ({"beside": {"when": "early"}}, "[beside] when: expected a list"),
        ({"beside": {"when": ["{day} early"]}}, "[beside] when: no form 'day'"),
        ({"forms": {"me": "nime"}}, "[forms] me: expected a list"),
    ],
)
def test_a_fault_says_what_was_expected(table, fault):
    assert fault in " ".join(read_deed_list(table).faults)
