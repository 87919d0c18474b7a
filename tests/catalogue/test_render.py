"""Numbers, dates and hours as each language writes them (marks and names: Unicode CLDR)."""

from datetime import date, time, timedelta

import pytest

from assistant.alphabet import plain, septets
from assistant.people import LANGUAGES
from assistant.reading import read_date
from assistant.wiring.catalogues import open_catalogue
from assistant.wiring.lexicons import open_lexicons
from assistant.wording import messages_talk as m
from assistant.wording.checks import UCS2_LANGUAGES
from assistant.wording.languages import LANGUAGE_ROWS
from assistant.wording.render import day, number, render, slot_text, spoken_hour
from assistant.wording.texts import declared

ALL = ("en", "sw", "fr", "hi", "bn", "id", "vi", "pt", "fil")
_OFFICERS = (  # and the hours of work in a plan on paper
    *("officer.", "tell.", "plan."),
    *("dangers.ASK_WARN", "dangers.HOURS_PAST"),
)


def test_each_language_has_its_row() -> None:
    """Without it a text could not be said."""
    assert LANGUAGE_ROWS.keys() == LANGUAGES.keys() == set(ALL)


@pytest.mark.parametrize(
    ("code", "written"),
    [
        ("en", "123,456.5"),
        ("sw", "123,456.5"),
        ("fil", "123,456.5"),
        ("id", "123.456,5"),
        ("vi", "123.456,5"),
        ("pt", "123.456,5"),
        ("fr", "123 456,5"),
        ("hi", "1,23,456.5"),
        ("bn", "১,২৩,৪৫৬.৫"),
    ],
)
def test_a_number_has_the_marks_groups_and_digits_of_its_language(
    code: str, written: str
) -> None:
    """CLDR: decimal and group marks; groups of two above the thousand in Hindi and Bengali."""
    assert plain(number(123_456.5, code)) == written


@pytest.mark.parametrize("code", [code for code in ALL if code not in UCS2_LANGUAGES])
def test_no_date_turns_a_cheap_text_into_a_dear_one(code: str) -> None:
    """Every day of two years is within GSM 7-bit, August in French too."""
    days = [date(2026, 1, 1) + timedelta(days=n) for n in range(730)]
    assert [day(each, code) for each in days if septets(day(each, code)) is None] == []


@pytest.mark.parametrize(
    ("code", "written"),
    [
        ("en", "Mon 10 Aug"),
        ("fr", "lundi 10 aout"),
        ("pt", "segunda 10 ago"),
        ("vi", "thứ Hai 10/8"),
        ("id", "Senin 10 Agu"),
        ("fil", "Lun 10 Ago"),
        ("bn", "সোম ১০ আগস্ট"),
    ],
)
def test_a_date_has_its_weekday_and_no_full_stop(code: str, written: str) -> None:
    """10 August 2026 is a Monday."""
    assert day(date(2026, 8, 10), code) == written


@pytest.mark.parametrize("code", ALL)
def test_a_date_reads_back_as_that_date(code: str) -> None:
    """Whoever sends back what was shown is understood."""
    today = date(2026, 6, 10)
    for ahead in range(60):
        wanted = today + timedelta(days=ahead)
        reading = read_date(day(wanted, code), open_lexicons()[code], today)
        assert (reading.value, day(wanted, code)) == (wanted, day(wanted, code))


def test_short_names_of_days_that_are_other_words_are_written_out() -> None:
    """mar, mer and jeu are French for a mare, the sea and a game, ter and qui Portuguese for to
    have and who, and "Th 4" is the fourth to a reader of Vietnamese."""
    week = [date(2026, 6, 8) + timedelta(days=n) for n in range(7)]
    others = {"mar", "mer", "jeu", "ter", "qui", "sex", "Th", "Min", "Sel", "Mar", "Lin"}
    for code in ALL:
        assert not {day(each, code).split()[0] for each in week} & others, code


# As speakers say them; Swahili counts from sunrise and sunset, twelve hours each.
HOURS = {
    "en": ("midnight", "5 am", "7:30 am", "noon", "2 pm", "6 pm", "10 pm"),
    "sw": (
        *("saa 6 usiku", "saa 11 alfajiri", "saa 1:30 asubuhi", "saa 6 mchana"),
        *("saa 8 mchana", "saa 12 jioni", "saa 4 usiku"),
    ),
    "hi": (
        *("रात 12 बजे", "सुबह 5 बजे", "सुबह 7:30 बजे", "दोपहर 12 बजे"),
        *("दोपहर 2 बजे", "शाम 6 बजे", "रात 10 बजे"),
    ),
    "bn": ("রাত ১২টা", "ভোর ৫টা", "সকাল ৭:৩০", "দুপুর ১২টা", "দুপুর ২টা", "সন্ধ্যা ৬টা", "রাত ১০টা"),
    "id": (
        *("jam 12 malam", "jam 5 pagi", "jam 7.30 pagi", "jam 12 siang"),
        *("jam 2 siang", "jam 6 sore", "jam 10 malam"),
    ),
    "vi": (
        *("12 giờ đêm", "5 giờ sáng", "7 giờ 30 sáng", "12 giờ trưa"),
        *("2 giờ chiều", "6 giờ tối", "10 giờ đêm"),
    ),
    "pt": ("0 h", "5 h", "7 h 30", "12 h", "14 h", "18 h", "22 h"),
    "fr": ("0 h", "5 h", "7 h 30", "12 h", "14 h", "18 h", "22 h"),
    "fil": (
        *("alas-12 ng hatinggabi", "alas-5 ng umaga", "alas-7:30 ng umaga"),
        *("alas-12 ng tanghali", "alas-2 ng hapon", "alas-6 ng gabi", "alas-10 ng gabi"),
    ),
}
TIMES = (time(0), time(5), time(7, 30), time(12), time(14), time(18), time(22))


@pytest.mark.parametrize("code", ALL)
def test_hours_of_a_farmers_text_are_as_people_say_them(code: str) -> None:
    """Through the day; one o'clock has a form of its own in Filipino."""
    assert tuple(spoken_hour(each, code) for each in TIMES) == HOURS[code]
    assert spoken_hour(time(13), "fil") == "ala-1 ng hapon"


@pytest.mark.parametrize("code", ALL)
def test_no_two_hours_of_a_day_are_said_alike(code: str) -> None:
    """A warning of 2 at night is none of 2 in the afternoon."""
    said = {spoken_hour(time(hour), code) for hour in range(24)}
    assert len(said) == 24


def test_every_farmers_text_says_its_hours_so() -> None:
    """Officers type hours by 24, and read them by 24."""
    clocks = {"time", "from_time", "to_time"}
    theirs = [
        each
        for each in declared()
        if each.slots & clocks and not each.printed and not each.place.startswith(_OFFICERS)
    ]
    assert theirs and [each.place for each in theirs if not each.message.spoken] == []


def test_other_hours_are_those_of_the_clock_on_a_phone() -> None:
    """0 to 24 in every language, in the language's digits."""
    hours = {code: slot_text(time(14, 5), open_catalogue(code)) for code in ALL}
    assert hours.pop("bn") == "১৪:০৫"
    assert set(hours.values()) == {"14:05"}


@pytest.mark.parametrize("code", ALL)
def test_a_key_is_shown_as_it_stands_on_the_phone(code: str) -> None:
    """Keys bear 0 to 9, also where quantities are written in other digits."""
    choice = m.NUMBERED(digit=1, label=m.LITRES(litres=10.0))
    assert render(choice, open_catalogue(code)).startswith("1 ")
