"""Says a message in a language: gettext for the words, CLDR (Babel) for numbers and dates."""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, time
from decimal import Decimal
from functools import lru_cache
from gettext import NullTranslations
from typing import Literal

from babel import Locale
from babel.dates import format_date, format_time
from babel.lists import format_list
from babel.numbers import format_currency, format_decimal

from assistant.wording.figures import Figure
from assistant.wording.languages import LANGUAGE_ROWS, PLAIN_DIGITS
from assistant.wording.message import Country, Listed, Named, Say, Slot


@dataclass(frozen=True)
class Catalogue:
    """A language and its translations, opened by the wiring and handed in."""

    language: str
    translations: NullTranslations


# Every number, date and time that we word is in the digits of the language; what people typed
# stays as typed, and so do phone numbers, codes, addresses, and digits that are a key of the
# phone.
_DIGITS = {
    code: str.maketrans(PLAIN_DIGITS, row.digits)
    for code, row in LANGUAGE_ROWS.items()
    if row.digits != PLAIN_DIGITS
}
# CLDR parts a currency's letters from its digits (its currencySpacing, which Babel leaves out).
_LETTER_BY_DIGIT = re.compile(r"(?<=[^\W\d_])(?=\d)|(?<=\d)(?=[^\W\d_])")
_KEYS = frozenset({"digit"})  # slots that name a key of the phone, which bears 0-9
_HOURS_OF_A_DIAL = 12
# Reading CLDR takes longer than all else in a text, and a morning's texts say the same days.
_remembered = lru_cache(maxsize=1024)


@_remembered
def number(value: float, language: str) -> str:
    """A number as the language writes it, at most three decimals, no trailing zeros."""
    return _local(format_decimal(value, locale=language), language)


@_remembered
def money(amount: Decimal, currency: str, language: str) -> str:
    """Money as the language writes it, rounded to the coins of the currency."""
    written = format_currency(amount, currency, locale=language)
    return _local(_LETTER_BY_DIGIT.sub("\N{NO-BREAK SPACE}", written), language)


def _local(text: str, language: str) -> str:
    return text.translate(_DIGITS.get(language, {}))


# Short names do without their full stop. "aout" is the French spelling of 1990: one û would
# turn every text of that month to UCS-2, which holds less than half as much.
_SHORTER = str.maketrans({".": "", "û": "u"})
_WEEKDAY = "EEE"  # of a pattern


@_remembered
def day(value: date, language: str) -> str:
    """A date short enough for a text, with its weekday: 'Wed 10 Jun'."""
    row = LANGUAGE_ROWS.get(language, LANGUAGE_ROWS["en"])
    pattern = row.day
    if row.weekdays:
        pattern = pattern.replace(_WEEKDAY, f"'{row.weekdays[value.weekday()]}'")
    short = format_date(value, format=pattern, locale=language).translate(_SHORTER)
    return _local(short, language)


@_remembered
def short_day(value: date, language: str) -> str:
    """Day and month in the order of `day`, for the scale of a chart."""
    short = format_date(value, format="d MMM", locale=language).translate(_SHORTER)
    return _local(short, language)


@_remembered
def long_day(value: date, language: str) -> str:
    """A date in full, for a page: 'Wednesday, June 10, 2026'."""
    return _local(format_date(value, format="full", locale=language), language)


@_remembered
def month(value: date, language: str) -> str:
    """A month by itself: 'June 2026'."""
    return _local(format_date(value, format="LLLL y", locale=language), language)


@_remembered
def clock(value: time, language: str) -> str:
    """A time of the day, by 24 hours."""
    return _local(format_time(value, format="HH:mm", locale=language), language)


@_remembered
def spoken_hour(value: time, language: str) -> str:
    """A time of the day as people say it: '2 pm', 'saa 8 mchana'."""
    words = LANGUAGE_ROWS[language].hours
    names = dict(words.names)
    if value.minute == 0 and value.hour in names:
        return names[value.hour]
    hour = value.hour
    if words.first is not None:
        hour = (value.hour - words.first - 1) % _HOURS_OF_A_DIAL + 1
    both = words.one if words.one and hour == 1 else (words.whole, words.part_hour)
    part = next((name for start, name in reversed(words.parts) if value.hour >= start), "")
    said = both[value.minute > 0].format(hour=hour, minute=f"{value.minute:02}", part=part)
    return _local(said, language)


def _list_style(language: str) -> Literal["unit", "standard"]:
    """Plain commas, where the data of a language has them for three parts and more."""
    patterns = Locale.parse(language).list_patterns
    return "unit" if "start" in patterns.get("unit", {}) else "standard"


def slot_text(value: Slot, catalogue: Catalogue, spoken: bool = False) -> str:
    """One slot, worded. Strings are data and pass unchanged. `spoken`: hours as people say
    them, else by 24."""
    if spoken and isinstance(value, time):
        return spoken_hour(value, catalogue.language)
    if isinstance(value, Say):
        return render(value, catalogue)
    if isinstance(value, Listed):
        parts = [render(say, catalogue) for say in value.says]
        return format_list(
            parts, style=_list_style(catalogue.language), locale=catalogue.language
        )
    if isinstance(value, Country):
        names = Locale.parse(catalogue.language).territories
        return str(names.get(value.code, value.code))
    if isinstance(value, Named):
        return value.in_language(catalogue.language)
    return _plain_text(value, catalogue.language)


def _plain_text(value: str | float | date | time | Figure, language: str) -> str:
    """A word, a number, a date or an hour."""
    if isinstance(value, str):
        return value
    if isinstance(value, date):
        return day(value, language)
    if isinstance(value, time):
        return clock(value, language)
    return number(value.told if isinstance(value, Figure) else value, language)


def render(say: Say, catalogue: Catalogue) -> str:
    """The text of `say` in the catalogue's language; English stands in where one is missing."""
    message = say.message
    if message.plural is None:
        template = catalogue.translations.gettext(message.text)
    else:
        count = say.slots["n"]
        if not isinstance(count, int):
            raise TypeError(f"the slot n of {message.text[:40]!r} counts: give it an int")
        template = catalogue.translations.ngettext(message.text, message.plural, count)
    filled = {
        name: str(value) if name in _KEYS else slot_text(value, catalogue, message.spoken)
        for name, value in say.slots.items()
    }
    return template.format_map(filled)


def render_all(says: Sequence[Say], catalogue: Catalogue, between: str = "\n") -> str:
    """Whole sentences, one after the other."""
    return between.join(render(say, catalogue) for say in says)
