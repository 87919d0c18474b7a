"""What may stand in a setting: each kind as a type that pydantic reads from text, with what to
set instead where it cannot."""

import re
from datetime import time
from decimal import Decimal
from typing import Annotated, Any, Literal
from zoneinfo import ZoneInfo

from pydantic import AfterValidator, BeforeValidator, Field, StringConstraints

from assistant.settings.words import said

LAST_PORT = 65_535
SMALLEST_SCREEN = 40
MOST_A_SEGMENT = 1_000_000
LAST_MONTH = 12
LARGEST_LIMIT = 999_999_999
ADDRESSES = ("https://", "http://127.0.0.1:", "http://localhost:")  # http: on this machine
_CLOCK = re.compile(r"([01][0-9]|2[0-3]):[0-5][0-9]")


def is_zone(name: str) -> bool:
    """Whether there is an IANA time zone of that name."""
    try:
        ZoneInfo(name)
    except (KeyError, ValueError, OSError):  # not found; no name of one; "Africa", a folder
        return False
    return True


def _zone(name: str) -> str:
    if not is_zone(name):
        raise ValueError(name)
    return name


def _clock(text: str) -> str:
    """Hours and minutes only: the standard's form has seconds and zones besides."""
    if not _CLOCK.fullmatch(text):
        raise ValueError(text)
    return text


def _yes_no(text: str) -> bool | None:
    """Only these two: what else pydantic takes for a yes, nobody is told of."""
    return {"yes": True, "no": False}.get(text.lower())


def _parts(text: str) -> tuple[str, ...]:
    return tuple(part.strip() for part in text.split(",") if part.strip())


def _in_order(months: tuple[int, ...]) -> tuple[int, ...]:
    if len(set(months)) < len(months):
        raise ValueError(months)
    return tuple(sorted(months))


def _places(places: tuple[str, ...]) -> tuple[str, ...]:
    wrong = [place for place in places if "://" in place and not place.startswith(ADDRESSES)]
    if wrong:
        raise ValueError(f"set files, folders and https addresses with commas, not {wrong[0]}")
    return places


Zone = Annotated[
    str, AfterValidator(_zone), said("set an IANA time zone such as Africa/Nairobi")
]
Region = Annotated[
    str,
    StringConstraints(to_upper=True, pattern=r"^[A-Za-z]{2}(-[A-Za-z0-9]{1,3})?$"),
    said("set a country or its part as in ISO 3166, such as KE or IN-WB"),
]
Currency = Annotated[
    str,
    StringConstraints(to_upper=True, pattern=r"^[A-Za-z]{3}$"),
    said("set a currency as in ISO 4217, such as KES"),
]
_Amount = Annotated[Decimal, Field(ge=0, le=MOST_A_SEGMENT, allow_inf_nan=False)]
Price = Annotated[_Amount, said("set the price of one segment such as 0.80")]
Money = Annotated[_Amount, said("set an amount of money such as 25000, or 0 for no limit")]
Limit = Annotated[
    int, Field(ge=0, le=LARGEST_LIMIT), said("set a whole number, 0 for no limit")
]
Count = Annotated[int, Field(gt=0), said("set a number above 0")]
Span = Annotated[float, Field(gt=0, allow_inf_nan=False), said("set a number above 0")]
Port = Annotated[
    int, Field(gt=0, le=LAST_PORT), said(f"set a number above 0, up to {LAST_PORT}")
]
Screen = Annotated[
    int,
    Field(ge=SMALLEST_SCREEN),
    said(f"set {SMALLEST_SCREEN} or more; less holds no choice and its hints"),
]
Clock = Annotated[time, BeforeValidator(_clock), said("set an hour of the day such as 06:00")]
YesNo = Annotated[bool, BeforeValidator(_yes_no), said("set yes or no")]
Commas = BeforeValidator(_parts)
Languages = Annotated[
    tuple[Annotated[str, StringConstraints(pattern="^[A-Za-z]+$")], ...],
    Field(min_length=1),
    Commas,
    said("set the codes of languages with commas, such as en,sw"),
]
Months = Annotated[
    tuple[Annotated[int, Field(ge=1, le=LAST_MONTH)], ...],
    Field(min_length=1),
    AfterValidator(_in_order),
    Commas,
    said("set the months in which seasons begin, such as 3,10"),
]
Places = Annotated[tuple[str, ...], AfterValidator(_places), Commas]
Hosts = Annotated[
    tuple[
        Annotated[
            str,
            StringConstraints(
                to_lower=True, pattern=r"^([A-Za-z0-9.-]{1,253}|\[[0-9A-Fa-f:]+\])$"
            ),
        ],
        ...,
    ],
    Commas,
    said("set names without https:// and port, such as nursery.example.org"),
]
Parts = Annotated[
    tuple[Literal["alerts", "lists"], ...],
    Commas,
    said("set alerts, lists, both with a comma, or nothing"),
]
Sender = Annotated[
    str,
    StringConstraints(pattern=r"^\+[0-9]{5,15}$"),
    said("set a number that can be answered, with + and its country code"),
]
AlertsThen = Annotated[Literal["drafted", "sent"], said("set drafted or sent")]
LogLines = Annotated[Literal["text", "json"], said("set text or json")]

OF_TYPE: dict[type[Any], Any] = {
    str: str,
    bool: YesNo,
    int: Count,
    float: Span,
    time: Clock,
}
"""What a setting of such a type is where nothing else is said of it."""

OF_NAME: dict[str, Any] = {
    "web_hosts": Hosts,
    "zone": Zone,
    "region": Region,
    "languages": Languages,
    "price_per_segment": Price,
    "currency": Currency,
    "month_money": Money,
    "day_segments": Limit,
    "village_segments": Limit,
    "officer_day_texts": Limit,
    "officer_month_texts": Limit,
    "village_month_money": Money,
    "strangers_hour_answers": Limit,
    "four_eyes": Limit,
    "season_months": Months,
    "parts": Parts,
    "sender": Sender,
    "alerts_from": Places,
    "alerts_keys": Places,
    "alerts_then": AlertsThen,
    "log_lines": LogLines,
    "port": Port,
    "metrics_port": Port,
    "calls_port": Port,
    "screen_septets": Screen,
    "screen_ucs2": Screen,
}
