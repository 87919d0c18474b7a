"""What is shown back: numbers, areas and dates in the words of the reply's language.

Babel (CLDR) knows every language's marks, plurals and date order. What is shown must read
back as the same number: so all digits are kept, a fraction that has no short decimal is shown
as a fraction, and three decimals are shown as four, since 1.500 is 1500 to some readers.
"""

from datetime import date
from decimal import Decimal
from fractions import Fraction

from babel import Locale
from babel.dates import format_date
from babel.numbers import format_decimal

from assistant.reading.text.lexicon import Lexicon

_MOST_DECIMALS = 6


def number_words(value: Fraction, lexicon: Lexicon) -> str:
    """A number in the language's marks and digits: 1,337.8 or 2 1/3."""
    whole, part = divmod(value, 1)
    decimals = _decimals(part)
    if decimals is None:
        fraction = f"{part.numerator}/{part.denominator}"
        shown = f"{_decimal(whole, 0, lexicon)} {fraction}" if whole else fraction
    else:
        shown = _decimal(value, decimals, lexicon)
    return shown.translate(str.maketrans("0123456789", lexicon.digits))


def _decimals(part: Fraction) -> int | None:
    """How many decimals hold the part exactly; never three; None where none do."""
    for places in range(_MOST_DECIMALS + 1):
        if (part * 10**places).denominator == 1:
            return 4 if places == 3 else places
    return None


def _decimal(value: Fraction | int, decimals: int, lexicon: Lexicon) -> str:
    number = Decimal(Fraction(value).numerator) / Decimal(Fraction(value).denominator)
    pattern = "#,##0" + ("." + "0" * decimals if decimals else "")
    if lexicon.digits != "0123456789" or lexicon.language == "hi":
        pattern = "#,##,##0" + ("." + "0" * decimals if decimals else "")
    shown = format_decimal(number, pattern, locale=Locale.parse(lexicon.locale))
    return shown.replace("\u202f", " ").replace("\u00a0", " ")


def unit_words(value: Fraction, unit: str, lexicon: Lexicon) -> str:
    """A number with its land unit, in the right plural."""
    one, many = lexicon.unit_names[unit]
    count = Decimal(str(int(value) if value.denominator == 1 else float(value)))
    form = Locale.parse(lexicon.locale).plural_form(count)
    return f"{number_words(value, lexicon)} {one if form == 'one' else many}"


def percent_words(value: Fraction, lexicon: Lexicon) -> str:
    """A percentage: 85%."""
    return f"{number_words(value, lexicon)}%"


def date_words(day: date, lexicon: Lexicon) -> str:
    """A date with its weekday, so that a misread shows."""
    shown = format_date(day, "full", Locale.parse(lexicon.locale))
    return shown.translate(str.maketrans("0123456789", lexicon.digits))
