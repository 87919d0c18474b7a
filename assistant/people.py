"""Who is on the line: farmers, officers, villages, languages and phone numbers."""

from dataclasses import dataclass
from datetime import datetime

import phonenumbers

# (code, the language's own name)
LANGUAGES: dict[str, str] = {
    "en": "English",
    "sw": "Kiswahili",
    "fr": "Français",
    "hi": "हिन्दी",
    "bn": "বাংলা",
    "id": "Bahasa Indonesia",
    "vi": "Tiếng Việt",
    "pt": "Português",
    "fil": "Filipino",
}

# Numbers set aside for fiction, which phone-number libraries call invalid: the mobile range of
# the United Kingdom's Ofcom for drama, and a larger one of our own under country code 999,
# which ITU-T E.164 keeps unassigned.
SHOWN = 4  # digits at the end of a number: enough to tell people of a village apart
_FICTION = (("+447700900", 13), ("+99900", 13))


@dataclass(frozen=True)
class VillageUnit:
    """A land unit as it is in one village: its names, the first shown, and its size [m2]."""

    names: tuple[str, ...]
    m2: float


@dataclass(frozen=True)
class Village:
    """A place with its time zone (an IANA name) and the practices that are offered there.

    `latitude` [degrees north] and `longitude` [degrees east] are of WGS 84, both or none.
    `climate` is the mean temperature of each month [C], January first, where that is known.
    `emergency`, `health_post` and `vet` are whom to turn to there, None where the programme's
    are; one that is `retired_at` is listed nowhere. `units` are land units as they are there,
    None where nobody has said any.
    """

    id: int
    name: str
    zone: str
    practices: tuple[str, ...] = ("mat",)
    latitude: float | None = None
    longitude: float | None = None
    climate: tuple[float, ...] | None = None
    emergency: str | None = None
    health_post: str | None = None
    vet: str | None = None
    retired_at: datetime | None = None
    units: tuple[VillageUnit, ...] | None = None


@dataclass(frozen=True)
class Farmer:
    """One phone that raises nurseries. `language` is None until it was asked; `name` is what an
    office keeps, since a phone is never asked for it; `phone` is empty where the number has
    gone to somebody else; since `paused_at` the daily texts rest, warnings go on; with
    `only_work` what is the same every day is said on its first day alone."""

    id: int
    phone: str
    language: str | None
    village_id: int | None
    consent_at: datetime | None
    stopped_at: datetime | None
    name: str | None = None
    paused_at: datetime | None = None
    only_work: bool = False


@dataclass(frozen=True)
class Officer:
    """One extension officer, known by number and code (kept only as a hash)."""

    id: int
    phone: str
    name: str
    code_hash: str
    language: str
    village_ids: tuple[int, ...]
    is_lead: bool = False


LONGEST_VILLAGE = 20  # characters; what the texts that name one have room for


def village_name(text: str) -> str | None:
    """A village's name as it is kept, or None where it is blank, too long or no word."""
    name = " ".join(text.split())
    words = any(letter.isalpha() for letter in name)
    return name if words and len(name) <= LONGEST_VILLAGE else None


LONGEST_NAME = 40  # characters of a person's name


def person_name(text: str) -> str | None:
    """A person's name as it is kept, or None where it is blank, too long or no word."""
    name = " ".join("".join(ch if ch.isprintable() else " " for ch in text).split())
    words = any(letter.isalpha() for letter in name)
    return name if words and len(name) <= LONGEST_NAME else None


def is_fiction(phone: str) -> bool:
    """Whether an E.164 number is from a range set aside for fiction."""
    return any(phone.startswith(start) and len(phone) == length for start, length in _FICTION)


def read_phone(text: str, region: str | None = None) -> str | None:
    """The E.164 form of a typed phone number, or None where it is not a number that can exist.

    `region` (ISO 3166-1) is the country that a number without a country code belongs to.
    """
    compact = "".join(ch for ch in text if ch not in " -().\t")
    if compact.startswith("00"):
        compact = "+" + compact[2:]
    if is_fiction(compact) and compact[1:].isascii() and compact[1:].isdigit():
        return compact
    try:
        number = phonenumbers.parse(compact, region)
    except phonenumbers.NumberParseException:
        return None
    e164 = phonenumbers.format_number(number, phonenumbers.PhoneNumberFormat.E164)
    return e164 if phonenumbers.is_valid_number(number) or is_fiction(e164) else None


def spaced(phone: str) -> str:
    """A number in threes from its end, with blanks that do not break, to be read and dialled
    by hand; what is no number of digits stays as it is."""
    digits = phone.removeprefix("+")
    if not digits.isdecimal():
        return phone
    first = len(digits) % 3
    threes = [digits[at : at + 3] for at in range(first, len(digits), 3)]
    marked = phone[: len(phone) - len(digits)]
    return marked + "\u00a0".join([*([digits[:first]] if first else []), *threes])


def ending(phone: str) -> str:
    """The end of a number, for who need not ring it."""
    return f"…{phone[-SHOWN:]}"
