"""Numbers and days as options take them: plain, in a stated range; a refusal shows both.

Each maker gives a reader for click's `type`. Its errors are `click.BadParameter`.
"""

import datetime as dt
import re
from collections.abc import Callable
from typing import NamedTuple

import click
from babel import Locale

from assistant.commands.one_line import shown

# Python's float() also takes "nan", "1e5", "1_000" and digits of any script: none of them here.
_PLAIN = re.compile(r"[0-9]{1,9}(\.[0-9]{1,6})?")
_SPACING = re.compile(r"([0-9.]+)\s*[xX\u00d7*]\s*([0-9.]+)\s*(?:cm)?")
_REGION = re.compile(r"[A-Z]{2}(-[A-Z0-9]{1,3})?")
_CLOCK = re.compile(r"([01][0-9]|2[0-3]):[0-5][0-9]")
_ISO = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")
# A plan reaches some weeks to both sides of its anchor.
_FIRST_DAY, _LAST_DAY = dt.date(1, 4, 1), dt.date(9999, 9, 30)


class Spacing(NamedTuple):
    """Between rows, and between hills in a row [cm]."""

    row_cm: float
    hill_cm: float


def region(typed: str) -> str:
    """A country or a part of one by its ISO 3166 code, in capitals.

    Raises:
        click.BadParameter: no such code.
    """
    code = typed.strip().upper()
    known = Locale("en").territories
    if not _REGION.fullmatch(code) or code[:2] not in known:
        raise click.BadParameter(
            f"cannot take {shown(typed)}; write a country or its part as in ISO 3166, such as "
            "KE or IN-WB"
        )
    return code


def plain_number(typed: str) -> float | None:
    """A number in plain digits, or None."""
    text = typed.strip()
    return float(text) if _PLAIN.fullmatch(text) else None


def number(low: float, high: float, unit: str, example: str) -> Callable[[str], float]:
    """A reader of a number from `low` to `high`, both included."""

    def read(typed: str) -> float:
        found = plain_number(str(typed))
        if found is None or not low <= found <= high:
            raise click.BadParameter(
                f"cannot take {shown(typed)}; write a number of {unit} from {low:g} to "
                f"{high:g}, such as {example}"
            )
        return found

    read.__name__ = unit
    return read


def whole(low: float, high: float, unit: str, example: str) -> Callable[[str], int]:
    """A reader of a whole number from `low` to `high`, both included."""

    def read(typed: str) -> int:
        found = plain_number(str(typed))
        if found is None or found != int(found) or not low <= found <= high:
            raise click.BadParameter(
                f"cannot take {shown(typed)}; write a whole number of {unit} from {low:g} to "
                f"{high:g}, such as {example}"
            )
        return int(found)

    read.__name__ = unit
    return read


def percent(low: float, high: float) -> Callable[[str], float]:
    """A reader of percent, with or without the sign.

    0.85 may be meant as 85, so a bare number of 1 or less is asked back, not guessed.
    """

    def read(typed: str) -> float:
        text = typed.strip()
        found = plain_number(text.removesuffix("%"))
        may_be_fraction = found is not None and found <= 1 and not text.endswith("%")
        if found is None or may_be_fraction or not low <= found <= high:
            raise click.BadParameter(
                f"cannot take {shown(typed)}; write percent from {low:g} to {high:g}, such as "
                "85 or 85%"
            )
        return found

    read.__name__ = "percent"
    return read


def spacing(low_cm: float, high_cm: float) -> Callable[[str], Spacing]:
    """A reader of two distances, such as 20x20."""

    def read(typed: str) -> Spacing:
        match = _SPACING.fullmatch(typed.strip())
        row, hill = (plain_number(side) for side in match.groups()) if match else (None, None)
        if (
            row is None
            or hill is None
            or not low_cm <= min(row, hill) <= max(row, hill) <= high_cm
        ):
            raise click.BadParameter(
                f"cannot take {shown(typed)}; write row x hill in cm, each from {low_cm:g} to "
                f"{high_cm:g}, such as 20x20"
            )
        return Spacing(row, hill)

    read.__name__ = "spacing"
    return read


def iso_date(typed: str) -> dt.date:
    """A day written as year-month-day, within the years whose calendar can be told."""
    text = typed.strip()
    try:
        day = dt.date.fromisoformat(text) if _ISO.fullmatch(text) else None
    except ValueError:
        day = None
    if day is None:
        raise click.BadParameter(
            f"{shown(typed)} is no day of the calendar; write it as 2026-06-10"
        )
    if not _FIRST_DAY <= day <= _LAST_DAY:
        raise click.BadParameter(
            f"{shown(typed)} is too near the end of the years that can be printed; "
            "write a day of your season, such as 2026-06-10"
        )
    return day


def clock(typed: str) -> dt.time:
    """A time of the day by 24 hours, such as 06:30."""
    text = typed.strip()
    found = dt.time.fromisoformat(text) if _CLOCK.fullmatch(text) else None
    if found is None:
        raise click.BadParameter(f"cannot take {shown(typed)}; write a time such as 06:30")
    return found
