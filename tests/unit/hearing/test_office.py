"""Whether a text asks a question of the office, and what no answer may hold."""

import pytest

from assistant.hearing.office import (
    Nearness,
    dose_in,
    has_number,
    nearness,
    refused_in,
    ways_fit,
)
from assistant.people import LANGUAGES
from assistant.wiring.office_words import open_office_words

WORDS = open_office_words()
FERRY = ["when does the ferry run", "ferry hours"]
SHOP = ["duka la mbegu liko wapi"]


@pytest.mark.parametrize(
    ("text", "near"),
    [
        ("When does the ferry run?", Nearness.SAME),
        ("pls when is the fery runing", None),  # two words are others
        ("when ferry run pls", Nearness.SAME),
        ("when does the ferrry run", Nearness.SAME),
        ("when does the ferry not run", Nearness.PERHAPS),
        ("my neighbour says when the ferry will run", Nearness.PERHAPS),
        ("when does it run", None),  # the thing itself is missing
        ("when do I uncover", None),
        ("", None),
    ],
)
def test_the_same_words_are_the_question_and_others_beside_it_may_be(
    text: str, near: Nearness | None
) -> None:
    """A "not" is never passed over."""
    assert nearness(text, FERRY, WORDS["en"]) is near


def test_a_word_of_a_long_way_may_be_missing() -> None:
    """It is then asked, not guessed."""
    long = ["where is the seed shop of the ward"]
    assert nearness("where is the seed shop", long, WORDS["en"]) is Nearness.PERHAPS
    assert nearness("duka la mbegu wapi", SHOP, WORDS["sw"]) is Nearness.PERHAPS


def test_a_number_is_never_a_slip() -> None:
    """Ward 11 is not ward 12."""
    ward = ["office of ward 1112"]
    assert nearness("office ward 1113", ward, WORDS["en"]) is not Nearness.SAME


def test_ways_of_one_word_or_too_long_or_none_are_not_taken() -> None:
    """One word alone would take too many texts."""
    assert ways_fit(FERRY, WORDS["en"])
    for ways in ([], ["the ferry"], ["ferry run", "w " * 31], ["ferry run"] * 13):
        assert not ways_fit(ways, WORDS["en"]), ways


@pytest.mark.parametrize(
    ("language", "answer"),
    [
        ("en", "Spray in the morning."),
        ("en", "Ask for the blue pesticide"),
        ("sw", "Nunua dawa dukani."),
        ("hi", "दुकान से कीटनाशक लें।"),
        ("hi", "dawai dukan se lein"),
        ("bn", "দোকান থেকে কীটনাশক নিন।"),
        ("id", "Semprotkan pagi hari."),
        ("vi", "Mua thuốc trừ sâu ở chợ."),
        ("pt", "Compre o inseticida."),
        ("fr", "Achetez l'appât."),
        ("fil", "Bumili ng pamatay-kulisap."),
    ],
)
def test_no_answer_names_a_dose_a_product_or_a_bait(language: str, answer: str) -> None:
    """By the words of its language, and in English everywhere."""
    assert refused_in(answer, [WORDS[language], WORDS["en"]])


@pytest.mark.parametrize("language", LANGUAGES)
def test_an_amount_in_a_measure_of_doses_is_told(language: str) -> None:
    """ "20 ml" in every language; a price, a day and a bag are none."""
    words = [WORDS[language], WORDS["en"]]
    assert dose_in("Mix 20 ml", words) == "20 ml" and dose_in("20ml", words) == "20 ml"
    assert dose_in("A bag of 50 kg is 3,000 at the shop, open 8 to 5.", words) is None
    assert refused_in("The seed shop is open on Monday and Friday, 8 to 5.", words) is None


def test_a_figure_is_shown_to_the_second_reader() -> None:
    """It may be one that the assistant works out."""
    assert has_number("Open 8 to 5") and not has_number("Open all day")
