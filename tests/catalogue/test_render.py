"""Numbers, dates and hours as each language writes them (marks and names: Unicode CLDR)."""

from datetime import date, time, timedelta

import pytest

from assistant.alphabet import plain, septets
from assistant.wiring.catalogues import open_catalogue
from assistant.wording import messages_talk as m
from assistant.wording.checks import UCS2_LANGUAGES
from assistant.wording.render import day, number, render, slot_text

ALL = ("en", "sw", "fr", "hi", "bn", "id", "vi", "pt", "fil")


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
        ("fr", "lun 10 aout"),
        ("pt", "seg 10 ago"),
        ("vi", "Th 2 10 thg 8"),
        ("bn", "সোম ১০ আগস্ট"),
    ],
)
def test_a_date_has_its_weekday_and_no_full_stop(code: str, written: str) -> None:
    """10 August 2026 is a Monday."""
    assert day(date(2026, 8, 10), code) == written


def test_hours_are_those_of_the_clock_on_a_phone() -> None:
    """0 to 24 in every language, in the language's digits."""
    hours = {code: slot_text(time(14, 5), open_catalogue(code)) for code in ALL}
    assert hours.pop("bn") == "১৪:০৫"
    assert set(hours.values()) == {"14:05"}


@pytest.mark.parametrize("code", ALL)
def test_a_key_is_shown_as_it_stands_on_the_phone(code: str) -> None:
    """Keys bear 0 to 9, also where quantities are written in other digits."""
    choice = m.NUMBERED(digit=1, label=m.LITRES(litres=10.0))
    assert render(choice, open_catalogue(code)).startswith("1 ")
