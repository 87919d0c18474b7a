"""Numbers of every language, in digits and in words."""

from fractions import Fraction

import pytest

from assistant.reading.numbers import NUMBER_SORTS, Amount, amounts, number_items
from assistant.reading.numbers.digits import read_digits
from assistant.reading.text.fold import read_tokens
from assistant.reading.text.lexicon import Lexicon


def _numbers(text: str, lexicon: Lexicon) -> list[float | Fraction]:
    row = amounts(number_items(read_tokens(text), lexicon, NUMBER_SORTS), lexicon)
    return [piece.value for piece in row if isinstance(piece, Amount)]


@pytest.mark.parametrize(
    ("language", "text", "value"),
    [
        ("en", "forty one", 41),
        ("en", "two thousand five hundred", 2500),
        ("en", "two hundred and five", 205),
        ("en", "1.5 lakh", 150_000),
        ("en", "3.14", Fraction("3.14")),
        ("en", "three point one four", Fraction("3.14")),
        ("sw", "elfu mbili mia tano", 2500),
        ("sw", "themanini na tano", 85),
        ("sw", "mia moja na ishirini na tatu", 123),
        ("fr", "soixante et onze", 71),
        ("fr", "quatre-vingt-dix-neuf", 99),
        ("fr", "deux cents", 200),
        ("hi", "सवा सौ", 125),
        ("hi", "साढ़े तीन", Fraction(7, 2)),
        ("hi", "पौने दो", Fraction(7, 4)),
        ("hi", "डेढ़ सौ", 150),
        ("hi", "निन्यानवे", 99),
        ("bn", "সাড়ে তিন", Fraction(7, 2)),
        ("bn", "পাঁচশ", 500),
        ("bn", "নিরানব্বই", 99),
        ("id", "dua ratus lima puluh", 250),
        ("id", "sembilan puluh sembilan", 99),
        ("id", "seribu lima ratus", 1500),
        ("vi", "tám mươi lăm", 85),
        ("vi", "tam muoi lam", 85),
        ("vi", "một trăm hai mươi", 120),
        ("vi", "muoi hai", 12),
        ("vi", "hai muoi", 20),
        ("pt", "mil e quinhentos", 1500),
        ("pt", "noventa e nove", 99),
        ("fil", "walumpu't lima", 85),
        ("fil", "otsenta y singko", 85),
    ],
)
def test_a_number_in_words_has_its_value(lexicons, language, text, value):
    """Sums and products, the multiplier before or after, quarters more or less."""
    assert _numbers(text, lexicons[language]) == [value]


@pytest.mark.parametrize(
    ("language", "count"),
    [(language, 100) for language in ("hi", "bn")],
)
def test_every_number_to_a_hundred_has_a_word(lexicons, language, count):
    """Where each is a word of its own, none is missing and none stands for two."""
    words = lexicons[language].phrases
    told = {Fraction(key) for sort in NUMBER_SORTS[:2] for key in words[sort].values()}
    assert set(range(count)) <= told | {Fraction(0)}


@pytest.mark.parametrize(
    ("language", "raw", "value", "other"),
    [
        ("en", "1,500", 1500, Fraction("1.5")),
        ("en", "1.500", Fraction("1.5"), 1500),
        ("en", "1.50", Fraction("1.5"), None),
        ("en", "0.125", Fraction("0.125"), None),
        ("en", "1,234,567", 1_234_567, None),
        ("hi", "12,34,567", 1_234_567, None),
        ("en", "1,234.5", Fraction("1234.5"), None),
        ("id", "1.234,5", Fraction("1234.5"), None),
        ("id", "1.500", 1500, Fraction("1.5")),
        ("fr", "1,5", Fraction("1.5"), None),
    ],
)
def test_marks_mean_what_the_language_means(lexicons, language, raw, value, other):
    """Decimal or thousands; three digits after one mark may be the other thing."""
    digits = read_digits(raw, lexicons[language])
    assert digits is not None
    assert (digits.value, digits.other) == (value, other)


@pytest.mark.parametrize("raw", ["1,2,3", "1.2.3", "12,3456,789", "1" * 13, "1,23.456,7"])
def test_what_is_no_number_is_not_trusted(lexicons, raw):
    """Odd groups, two decimal marks, more digits than any field."""
    assert read_digits(raw, lexicons["en"]) is None
