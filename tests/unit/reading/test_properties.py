"""What holds for any text in any language, and for any number that is shown back."""

from datetime import date, timedelta
from decimal import Decimal
from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.agronomy.units import UNITS
from assistant.people import LANGUAGES
from assistant.reading import (
    Ask,
    Outcome,
    guess_language,
    language_named,
    read_answer,
    read_area,
    read_choice,
    read_confirm,
    read_count,
    read_date,
    read_deeds,
    read_germination,
    read_reply,
    read_several,
    read_told,
    read_told_day,
)
from assistant.reading.text.echo import date_words, number_words, percent_words, unit_words
from assistant.wiring.lexicons import open_lexicons

LEXICONS = open_lexicons()
ASKS = [ask for ask in Ask if ask is not Ask.COMMAND]
WORDS = sorted({word for lexicon in LEXICONS.values() for word in lexicon.known})
MARKS = list("%-+/.,:()'_*=~?! ½¼⅓²×0123456789०১٣２👍😀\u200d\n")

languages = st.sampled_from(sorted(LANGUAGES))
pieces = st.sampled_from(WORDS) | st.sampled_from(MARKS) | st.integers(0, 10**7).map(str)
texts = st.text(max_size=120) | st.lists(pieces, max_size=14).map(" ".join)
texts |= st.lists(pieces, max_size=10).map("".join)
days = st.dates(date(1990, 1, 1), date(2090, 1, 1))
regions = st.sampled_from([None, *sorted({unit.region for unit in UNITS if unit.region})])


@settings(max_examples=300, deadline=None)
@given(texts, languages, st.sampled_from(list(Ask)), days, regions, st.booleans())
def test_any_text_gives_an_outcome(text, language, ask, today, region, past):
    """Never an exception; a value and its words wherever it is not asked again."""
    reading = read_reply(text, ask, LEXICONS, language, today, region, past)
    assert (reading.value is None) is (reading.outcome is Outcome.AGAIN)
    assert bool(reading.words) is (reading.outcome is not Outcome.AGAIN)
    read_several(text, ASKS, LEXICONS[language], today, region, past)
    read_choice(text, [["Riverside"], ["2"]], LEXICONS[language])
    assert guess_language(text, LEXICONS) in (None, *LANGUAGES)
    assert language_named(text) in (None, *LANGUAGES)


@settings(max_examples=300, deadline=None)
@given(texts, languages, st.sampled_from(ASKS), days, regions)
def test_what_is_shown_back_reads_as_the_same(text, language, ask, today, region):
    """A number, a day or an answer that was read keeps its value through being shown."""
    first = read_answer(text, ask, LEXICONS[language], today, region)
    if first.outcome is Outcome.AGAIN:
        return
    again = read_answer(first.words, ask, LEXICONS[language], today, region)
    assert again.value == first.value


@settings(max_examples=300, deadline=None)
@given(texts, languages, days, st.booleans())
def test_a_task_is_never_told_more_than_a_yes_is_read(text, language, today, digits):
    """What tells of a task says the same as to a question, or is asked back; but where it names
    what was done, or an amount (12 kg), which is no answer to a yes or no."""
    lexicon = LEXICONS[language]
    told = read_told(text, lexicon, digits)
    names_more = read_deeds(text, lexicon) or any(sign.isnumeric() for sign in text)
    if told.outcome is Outcome.UNDERSTOOD and not names_more:
        assert told.value == read_confirm(text, lexicon, digits).value
    day = read_told_day(text, LEXICONS[language], today)
    assert day is None or day <= today


numbers = st.fractions(Fraction(1, 100), Fraction(3000), max_denominator=1000)


@settings(max_examples=300, deadline=None)
@given(numbers, languages, st.sampled_from(["hectare", "acre", "are", "m2"]))
def test_an_area_shown_reads_back_exactly(number, language, unit):
    """In every language's marks, digits and unit names, fractions too."""
    reading = read_area(unit_words(number, unit, LEXICONS[language]), LEXICONS[language])
    if reading.value is not None:
        m2 = {"hectare": 10_000, "are": 100, "m2": 1, "acre": Fraction("4046.8564224")}[unit]
        assert reading.value == float(number * m2)
    else:
        assert not 20 <= number * 4046 < 400_000 or number.denominator > 1 or unit == "m2"


@settings(max_examples=200, deadline=None)
@given(st.decimals(0, 100, places=2), languages)
def test_a_germination_shown_reads_back_exactly(percent, language):
    """To the hundredth."""
    words = percent_words(Fraction(percent), LEXICONS[language])
    assert read_germination(words, LEXICONS[language]).value == float(percent)


@settings(max_examples=200, deadline=None)
@given(days, st.integers(-1000, 1000), languages)
def test_a_day_shown_reads_back_exactly(today, off, language):
    """With its weekday, its year and the language's digits."""
    day = today + timedelta(days=off)
    assert (
        read_date(date_words(day, LEXICONS[language]), LEXICONS[language], today).value == day
    )


@settings(max_examples=200, deadline=None)
@given(st.integers(0, 9_999_999) | st.decimals(0, 9999, places=1), languages)
def test_a_count_shown_reads_back_exactly(count, language):
    """Whole and with one decimal."""
    exact = Fraction(count if isinstance(count, int) else Decimal(count))
    words = number_words(exact, LEXICONS[language])
    assert read_count(words, LEXICONS[language]).value == float(exact)
