"""Dates, on Wednesday 10 June 2026. Expected days are counted on the Gregorian calendar."""

from datetime import date

import pytest

from assistant.reading import Outcome, Reason, read_date


def _june(day: int) -> date:
    return date(2026, 6, day)


@pytest.mark.parametrize(
    ("language", "text", "day"),
    [
        ("en", "tomorrow", _june(11)),
        ("en", "day after tomorrow", _june(12)),
        ("en", "Friday", _june(12)),
        ("en", "next Monday", _june(15)),
        ("en", "Monday next week", _june(15)),
        ("en", "friday 12", _june(12)),
        ("en", "in 3 days", _june(13)),
        ("en", "a week ago", _june(3)),
        ("en", "+3", _june(13)),
        ("en", "15/6", _june(15)),
        ("en", "15.6.26", _june(15)),
        ("en", "15-06-2026", _june(15)),
        ("en", "2026-06-15", _june(15)),
        ("en", "June 15th, 2026", _june(15)),
        ("en", "15th of this month", _june(15)),
        ("en", "the 5th of next month", date(2026, 7, 5)),
        ("en", "12 June 8am", _june(12)),
        ("sw", "keshokutwa", _june(12)),
        ("sw", "tarehe 15 mwezi wa sita", _june(15)),
        ("sw", "tarehe 15/6", _june(15)),
        ("sw", "siku tatu zilizopita", _june(7)),
        ("fr", "il y a 3 jours", _june(7)),
        ("fr", "vendredi prochain", _june(12)),
        ("fr", "le 1er juillet", date(2026, 7, 1)),
        ("hi", "कल करूंगा", _june(11)),
        ("hi", "कल हो गया", _june(9)),
        ("bn", "৩ দিন পর", _june(13)),
        ("bn", "আগামীকাল", _june(11)),
        ("id", "hari minggu", _june(14)),
        ("id", "2 minggu lagi", _june(24)),
        ("id", "senin kemarin", _june(8)),
        ("vi", "thứ 7", _june(13)),
        ("vi", "15 tháng 6 năm 2026", _june(15)),
        ("vi", "thứ 6 tuần sau", _june(19)),
        ("pt", "depois de amanhã", _june(12)),
        ("pt", "há 3 dias", _june(7)),
        ("pt", "segunda", _june(15)),
        ("fil", "ika-18 ng Hunyo", _june(18)),
        ("fil", "sa makalawa", _june(12)),
    ],
)
def test_a_day_is_understood(lexicons, today, language, text, day):
    """Words, weekdays, spans, day-first dates and month names."""
    reading = read_date(text, lexicons[language], today)
    assert (reading.outcome, reading.value) == (Outcome.UNDERSTOOD, day)


@pytest.mark.parametrize(
    ("text", "day"),
    [
        ("monday", _june(8)),
        ("3 days ago", _june(7)),
        ("yesterday", _june(9)),
        ("5 June", _june(5)),
    ],
)
def test_a_day_gone_by_is_the_last_one(lexicons, today, text, day):
    """With `past` a bare weekday is the last one."""
    reading = read_date(text, lexicons["en"], today, past=True)
    assert (reading.outcome, reading.value) == (Outcome.UNDERSTOOD, day)


@pytest.mark.parametrize(
    ("text", "day", "reason"),
    [
        ("15", _june(15), Reason.BARE_DAY),
        ("Wednesday", _june(10), Reason.AMBIGUOUS),
        ("next Friday", _june(12), Reason.AMBIGUOUS),
        ("friday week", _june(12), Reason.AMBIGUOUS),
        ("Friday 17 June", _june(17), Reason.DAY_MISMATCH),
        ("tomorrow friday", _june(11), Reason.DAY_MISMATCH),
        ("6/25", _june(25), Reason.AMBIGUOUS),
        ("6/12", date(2026, 12, 6), Reason.AMBIGUOUS),
        ("10 June 2027", date(2027, 6, 10), Reason.FAR_OFF),
        ("29/2", date(2028, 2, 29), Reason.FAR_OFF),
        ("20 dec", date(2025, 12, 20), Reason.FAR_OFF),
        ("next week", _june(17), Reason.UNUSUAL),
        ("3 days", _june(13), Reason.UNUSUAL),
        ("10062026", _june(10), Reason.UNUSUAL),
        ("1o june", _june(10), Reason.SLIP),
        ("15 juny", _june(15), Reason.MISSPELT),
        ("after 15 june", _june(15), Reason.ROUGH),
        ("after monday", _june(15), Reason.ROUGH),
        ("every monday", _june(15), Reason.ROUGH),
        ("10 days after sowing", _june(20), Reason.UNUSUAL),
        ("tonday", _june(10), Reason.MISSPELT),  # today, or Monday
        ("friday sorry saturday", _june(13), Reason.CORRECTED),
    ],
)
def test_a_doubtful_day_is_read_back(lexicons, today, text, day, reason):
    """A bare number, a weekday that disagrees, half a year off."""
    reading = read_date(text, lexicons["en"], today)
    assert (reading.outcome, reading.value, reading.reason) == (Outcome.CONFIRM, day, reason)


@pytest.mark.parametrize(
    ("language", "text", "reason"),
    [
        ("en", "31/2", Reason.IMPOSSIBLE),
        ("en", "32", Reason.IMPOSSIBLE),
        ("en", "June", Reason.BARE_DAY),
        ("en", "10-12 June", Reason.TWO_VALUES),
        ("en", "tomorrow or friday", Reason.TWO_VALUES),
        ("en", "not tomorrow", Reason.NEGATED),
        ("en", "15 june 1926", Reason.FAR_OFF),
        ("en", "2 acres", Reason.NOT_READ),
        ("en", "soon", Reason.NOT_READ),
        ("en", "i dont know", Reason.NOT_KNOWN),
        ("hi", "कल", Reason.AMBIGUOUS),
        ("bn", "porshu", Reason.AMBIGUOUS),
        ("bn", "১৫ আষাঢ়", Reason.OTHER_CALENDAR),
        ("vi", "15/6 âm lịch", Reason.OTHER_CALENDAR),
    ],
)
def test_an_unsure_day_is_asked_again(lexicons, today, language, text, reason):
    """No such day, two days, another calendar, yesterday or tomorrow."""
    reading = read_date(text, lexicons[language], today)
    assert (reading.outcome, reading.reason) == (Outcome.AGAIN, reason)


def test_a_word_for_yesterday_and_tomorrow_offers_both(lexicons, today):
    """As choices for digits, the likelier first."""
    coming = read_date("कल", lexicons["hi"], today)
    gone = read_date("कल", lexicons["hi"], today, past=True)
    assert [option.value for option in coming.options] == [_june(11), _june(9)]
    assert [option.value for option in gone.options] == [_june(9), _june(11)]


def test_a_coming_day_for_one_gone_by_is_read_back(lexicons, today):
    """Asked when they sowed, they say tomorrow."""
    reading = read_date("tomorrow", lexicons["en"], today, past=True)
    assert (reading.outcome, reading.reason) == (Outcome.CONFIRM, Reason.WRONG_WAY)


@pytest.mark.parametrize("today", [date(1, 4, 1), date(9999, 9, 30), date(2028, 2, 29)])
def test_the_ends_of_the_calendar_hold(lexicons, today):
    """No day beyond them, and no exception."""
    for text in (
        "in 999 weeks",
        "999 months ago",
        "yesterday",
        "29/2",
        "31",
        "next month",
        "kal",
    ):
        assert read_date(text, lexicons["en"], today).outcome in Outcome


@pytest.mark.parametrize(
    ("language", "text"),
    [("fr", "ares demain"), ("sw", "kesho kuwa"), ("id", "senu")],
)
def test_one_letter_from_another_day_is_read_back(lexicons, language, text):
    """A slip that makes another word of the list: après demain, kesho kutwa; sen or setu."""
    assert read_date(text, lexicons[language], _june(10)).outcome is Outcome.CONFIRM
