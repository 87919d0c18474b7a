"""Two or three answers in one text, and the language a text is written in."""

import pytest

from assistant.reading import Ask, Outcome, guess_language, read_several

ASKS = (Ask.AREA, Ask.GERMINATION, Ask.DATE)


@pytest.mark.parametrize(
    ("language", "text"),
    [
        ("en", "0.4 ha 85% 15 June"),
        ("en", "0.4 ha, 85, 15/6"),
        ("en", "85% 15 June 0.4 ha"),
        ("fr", "0,4 ha, 85 %, 15 juin"),
        ("sw", "hekta 0.4, asilimia 85, tarehe 15 mwezi wa 6"),
        ("hi", "0.4 हेक्टेयर 85% 15 जून"),
        ("bn", "০.৪ হেক্টর ৮৫% ১৫ জুন"),
        ("id", "0,4 ha 85% 15 Juni"),
        ("vi", "0,4 ha 85% 15 tháng 6"),
        ("pt", "0,4 ha 85% 15 de junho"),
        ("fil", "0.4 ektarya 85% Hunyo 15"),
    ],
)
def test_three_answers_are_taken_from_one_text(lexicons, today, language, text):
    """Each is read by its own reader, whatever stands beside it."""
    readings = read_several(text, ASKS, lexicons[language], today)
    assert all(reading.outcome is Outcome.UNDERSTOOD for reading in readings.values())
    values = {ask: reading.value for ask, reading in readings.items()}
    assert values == {
        Ask.AREA: 4000.0,
        Ask.GERMINATION: 85.0,
        Ask.DATE: today.replace(day=15),
    }


@pytest.mark.parametrize(
    ("text", "kinds"),
    [
        ("2 acres", {Ask.AREA}),
        ("no, 2 acres", {Ask.AREA}),
        ("2 acres tomorrow", {Ask.AREA, Ask.DATE}),
        ("2 acres 85", {Ask.AREA, Ask.GERMINATION}),
        ("85", set()),
        ("hello", set()),
        ("", set()),
        ("x" * 3000, set()),
    ],
)
def test_only_what_a_text_speaks_of_is_read(lexicons, today, text, kinds):
    """The rest is left out."""
    assert set(read_several(text, ASKS, lexicons["en"], today)) == kinds


def test_bengali_shotangsho_is_a_unit_beside_a_percentage(lexicons, today):
    """50 shotangsho 85% is a field of 50 decimals and its germination."""
    readings = read_several("৫০ শতাংশ ৮৫%", ASKS, lexicons["bn"], today)
    # 50 decimals are half an acre of 4,046.8564224 m2.
    assert readings[Ask.AREA].value == pytest.approx(2023.4282112)
    assert readings[Ask.GERMINATION].value == 85


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("nina ekari mbili", "sw"),
        ("I have two acres", "en"),
        ("j'ai deux hectares", "fr"),
        ("मेरे पास", "hi"),
        ("আমার জমি", "bn"),
        ("saya punya dua hektar", "id"),
        ("tôi có hai hecta", "vi"),
        ("tenho dois hectares", "pt"),
        ("may dalawang ektarya ako", "fil"),
        ("mere paas do acre hai", "hi"),
        ("2", None),
        ("", None),
    ],
)
def test_the_language_of_a_text_is_guessed_where_it_is_clear(lexicons, text, code):
    """By its letters, or by the words that it holds."""
    assert guess_language(text, lexicons) == code
