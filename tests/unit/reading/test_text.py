"""Folding, misspellings and the finding of phrases."""

import pytest

from assistant.reading.text.fold import has_other_digits, read_tokens, unslip
from assistant.reading.text.lexicon import Sort
from assistant.reading.text.near import nearest
from assistant.reading.text.spot import items

WORDS = {"acre": 1, "acres": 1, "are": 2, "hectare": 3, "weather": 4}


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("2 Acres.", "2 acres"),
        ("500 m²", "500 m2"),
        ("500m^2", "500 m2"),
        ("sq. m", "sq m"),
        ("1½", "1 1 / 2"),
        ("२.५", "2.5"),
        ("２", "2"),
        ("1️⃣", "1"),
        ("quatre-vingt", "quatre vingt"),
        ("aujourd’hui", "aujourd hui"),
        ("50×20", "50 x 20"),
        ("10–12", "10 - 12"),
        ("Đúng", "dung"),
        ("एकड़", "एकड"),
        ("हाँ", "हां"),
        ("1º", "1"),
        ("na\u200dme \ufeff", "name"),
        ("👍🏾", "👍"),
        ("🌾 🎉", ""),
        ("1e5", "1 e 5"),
        (".5", ".5"),
        ("", ""),
    ],
)
def test_a_text_is_cut_into_plain_tokens(text, words):
    """One alphabet of digits, no accents, no case, nothing invisible."""
    assert " ".join(token.text for token in read_tokens(text)) == words


@pytest.mark.parametrize(
    ("text", "mended"),
    [("o.4 ha", "0.4 ha"), ("1o june", "10 june"), ("l.5", "1.5"), ("0,5o ha", "0,50 ha")],
)
def test_letters_inside_a_number_are_digits(text, mended):
    """The letter o for 0, l for 1."""
    assert unslip(text) == (mended, True)


@pytest.mark.parametrize("text", ["10l", "20 l", "o", "lo", "2 litres", "1st of july", "old 2"])
def test_letters_beside_a_number_are_letters(text):
    """Ten litres stay ten litres."""
    assert unslip(text) == (text, False)


def test_digits_of_another_script_are_noticed():
    """Devanagari is Hindi's own; Arabic-Indic is not; square metres are no digit."""
    assert not has_other_digits("२ एकड़ 500 m²", "०१२३४५६७८९")
    assert has_other_digits("٢ ha", "०१२३४५६७८९")


@pytest.mark.parametrize(
    ("word", "meaning"),
    [
        ("acers", 1),
        ("hectre", 3),
        ("hectaer", 3),
        ("ha", None),
        ("bare", None),
    ],
)
def test_a_misspelt_word_has_its_nearest_meaning(word, meaning):
    """Short words and other first letters are let alone."""
    hit = nearest(word, WORDS)
    assert (hit[0] if hit else None) == meaning


def test_a_rival_as_near_is_told():
    """Juny is June, or July."""
    assert nearest("juny", {"june": 6, "july": 7}) == (6, (7,))


def test_the_longest_phrase_is_found_first(lexicons):
    """Day after tomorrow is no tomorrow."""
    row = items(read_tokens("day after tomorrow"), lexicons["en"], (Sort.DAYS, Sort.DAY))
    assert [(item.sort, item.key) for item in row] == [(Sort.DAY, "2")]


def test_tones_make_another_word_where_they_are_typed(lexicons):
    """Mưa is rain, mua is to buy; without tone marks it may be either."""
    vi = lexicons["vi"]
    found = {text: items(read_tokens(text), vi, (Sort.NUMBER,))[-1].sort for text in
             ("tám", "tấm", "tam", "là tam")}  # fmt: skip
    assert found == {"tám": Sort.NUMBER, "tấm": None, "tam": Sort.NUMBER, "là tam": None}
