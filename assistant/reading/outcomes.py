"""What became of a reply: understood, to be confirmed, or to be asked again, and why."""

from dataclasses import dataclass, replace
from enum import StrEnum
from typing import Generic, TypeVar

T = TypeVar("T")
T_co = TypeVar("T_co", covariant=True)


class Outcome(StrEnum):
    """How sure the reader is."""

    UNDERSTOOD = "understood"
    CONFIRM = "confirm"
    AGAIN = "again"


class Reason(StrEnum):
    """Why a reply was not simply understood: the dialogue words it."""

    NONE = ""
    EMPTY = "empty"
    NOT_READ = "not_read"
    TOO_LONG = "too_long"
    NOT_KNOWN = "not_known"  # "I don't know"
    NEGATED = "negated"  # "not 2 acres"
    MISSING_UNIT = "missing_unit"
    MISSING_NUMBER = "missing_number"
    UNKNOWN_UNIT = "unknown_unit"
    UNMEASURED_UNIT = "unmeasured_unit"  # paces, ropes, plots
    REGION_UNIT = "region_unit"  # a bigha, where the region is not known
    LENGTH_ONLY = "length_only"  # "50 m" for an area
    TWO_VALUES = "two_values"
    CORRECTED = "corrected"  # "2 acres no 3 acres"
    TOO_BIG = "too_big"
    TOO_SMALL = "too_small"
    IMPOSSIBLE = "impossible"  # 31 February, germination over 100, a negative area
    AMBIGUOUS = "ambiguous"
    SLIP = "slip"  # the letter o for 0, l for 1
    MISSPELT = "misspelt"
    ROUGH = "rough"  # "less than 2 acres", "at least 85"
    FAR_OFF = "far_off"
    DAY_MISMATCH = "day_mismatch"
    BARE_DAY = "bare_day"
    WRONG_WAY = "wrong_way"  # a coming day where a past one was asked for
    OTHER_CALENDAR = "other_calendar"
    UNUSUAL = "unusual"


class Ask(StrEnum):
    """Kinds of answer that can be asked for."""

    AREA = "area"
    GERMINATION = "germination"
    DATE = "date"
    COUNT = "count"
    CONFIRM = "confirm"
    LITRES = "litres"
    COMMAND = "command"


class Wish(StrEnum):
    """What a person can wish for at any point."""

    MENU = "menu"
    HELP = "help"
    STOP = "stop"
    START = "start"
    LANGUAGE = "language"
    BACK = "back"
    CHANGE_DATE = "change_date"
    DATES = "dates"  # when something is to be done
    PROBLEM = "problem"
    RAIN = "rain"
    TODAY = "today"
    QUANTITIES = "quantities"
    OFFICER = "officer"
    THANKS = "thanks"
    NEXT = "next"  # the next step of the work by hand
    HOW = "how"  # how the work of the day is done
    MAKING = "making"  # how the bed is made, what a mat is
    WORK_DAYS = "work_days"  # texts only on days with work
    EVERY_DAY = "every_day"  # texts every day


@dataclass(frozen=True)
class Option(Generic[T_co]):
    """One likely reading, to be offered under a digit."""

    value: T_co
    words: str


@dataclass(frozen=True)
class Reading(Generic[T_co]):
    """What was read from one reply.

    `value` and `words` (what is shown back, in the reply's language) are there unless the
    outcome is AGAIN. `options` are the likely readings, best first, to offer as digits.
    """

    outcome: Outcome
    value: T_co | None = None
    words: str = ""
    reason: Reason = Reason.NONE
    options: tuple[Option[T_co], ...] = ()

    def __post_init__(self) -> None:
        has_value = self.value is not None and self.words != ""
        if has_value == (self.outcome is Outcome.AGAIN):
            raise ValueError(f"{self.outcome} with value {self.value!r}, words {self.words!r}")


def understood(value: T, words: str) -> Reading[T]:
    """A reply that needs no question."""
    return Reading(Outcome.UNDERSTOOD, value, words)


def confirm(
    value: T, words: str, reason: Reason, options: tuple[Option[T], ...] = ()
) -> Reading[T]:
    """A reply that was read but is unusual or not quite sure."""
    return Reading(Outcome.CONFIRM, value, words, reason, options)


def again(reason: Reason, options: tuple[Option[T], ...] = ()) -> Reading[T]:
    """A reply that must be asked for again."""
    return Reading(Outcome.AGAIN, None, "", reason, options)


def slipped(reading: Reading[T], has_slip: bool) -> Reading[T]:
    """The reading, read back where letters stood for digits in it."""
    if not has_slip or reading.outcome is not Outcome.UNDERSTOOD:
        return reading
    return replace(reading, outcome=Outcome.CONFIRM, reason=Reason.SLIP)
