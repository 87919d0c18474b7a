"""What may stand in a programme file, entry by entry, as pydantic reads it from TOML."""

from decimal import Decimal
from typing import Annotated, Any

from pydantic import (
    AfterValidator,
    BaseModel,
    BeforeValidator,
    ConfigDict,
    Field,
    PlainValidator,
    StrictStr,
    ValidationInfo,
    field_validator,
)

from assistant.channel import Tariff
from assistant.dialogue.values import Nearby
from assistant.people import LONGEST_NAME, LONGEST_VILLAGE, VillageUnit, village_name
from assistant.places import DATE_LINE, POLE, Geocode, Point
from assistant.service.climate import is_climate
from assistant.service.land_units import NoUnit, read_units
from assistant.service.placing import NoCode, read_codes
from assistant.settings import kinds
from assistant.settings.words import said
from assistant.wiring.lexicons import open_lexicons

LONGEST_NUMBER = 24  # characters of the number to ring; the texts that say it have this room
LONGEST_HELPER = 40  # characters of a health post or a vet, name and number
LEAST_DIGITS = 2
_BOTH = '; write price_per_segment = 0.80 and currency = "KES"'


def _closed_up(longest: int, digits: int) -> AfterValidator:
    """Words and a number in so much room; blanks are closed up."""

    def check(text: str) -> str:
        said = " ".join(text.split())
        if not 0 < len(said) <= longest or sum(ch.isdecimal() for ch in said) < digits:
            raise ValueError(text)
        return said

    return AfterValidator(check)


def _number(value: object) -> float:
    """TOML's numbers, read as they are written; quotes and yes or no are none."""
    if isinstance(value, bool) or not isinstance(value, int | Decimal):
        raise ValueError(value)
    return float(value)


def _months(means: tuple[float, ...]) -> tuple[float, ...]:
    if means and not is_climate(means):
        raise ValueError(means)
    return means


def _village(name: str) -> str:
    if village_name(name) != name:
        raise ValueError(name)
    return name


def _lines(value: object) -> str:
    return "\n".join(map(str, value)) if isinstance(value, list) else "?"


def _units(value: object) -> tuple[VillageUnit, ...]:
    found = read_units(_lines(value), open_lexicons())
    if isinstance(found, NoUnit):
        raise ValueError(
            f'no unit of land {found.line}; write units = ["bigha = 1338"], sizes in m2, and '
            "none that is the same everywhere"
        )
    return found


def _codes(value: object) -> frozenset[Geocode]:
    found = read_codes(_lines(value))
    if isinstance(found, NoCode):
        raise ValueError(f'no code {found.line}; write codes = ["NAME=value"]')
    return frozenset(found)


# In quotes: a number may begin with 0.
Emergency = Annotated[
    StrictStr,
    _closed_up(LONGEST_NUMBER, LEAST_DIGITS),
    said(
        f'write emergency = "number" in up to {LONGEST_NUMBER} characters with '
        f"{LEAST_DIGITS} digits or more"
    ),
]
HealthPost = Annotated[
    StrictStr,
    _closed_up(LONGEST_HELPER, 0),
    said(f'write health_post = "name and number" in up to {LONGEST_HELPER} characters'),
]
Vet = Annotated[
    StrictStr,
    _closed_up(LONGEST_HELPER, LEAST_DIGITS),
    said(
        f'write vet = "name and number" in up to {LONGEST_HELPER} characters with '
        f"{LEAST_DIGITS} digits or more"
    ),
]
Price = Annotated[
    kinds.Price,
    BeforeValidator(str),
    said("set the price of one segment such as 0.80" + _BOTH),
]
Currency = Annotated[kinds.Currency, said("set a currency as in ISO 4217" + _BOTH)]
Zone = Annotated[
    kinds.Zone, said("no time zone {value}; write an IANA name such as Africa/Nairobi")
]
Climate = Annotated[
    tuple[Annotated[float, BeforeValidator(_number)], ...],
    AfterValidator(_months),
    said(
        "no temperatures of the months; write twelve means in degrees C, January first: "
        "climate = [19, 20, 22, 25, 27, 28, 28, 27, 26, 24, 21, 19]"
    ),
]
VillageName = Annotated[
    StrictStr,
    AfterValidator(_village),
    said(
        f"no name {{value!r}}; write words of up to {LONGEST_VILLAGE} letters, without blanks "
        "around them"
    ),
]
ProgrammeName = Annotated[
    StrictStr,
    Field(min_length=1, max_length=LONGEST_NAME),
    said(f'write up to {LONGEST_NAME} letters, name = "Kijani rice programme"'),
]


class _Helped(BaseModel):
    """Whom to turn to in need, of the programme or of one village."""

    model_config = ConfigDict(extra="forbid")

    emergency: Emergency = ""
    health_post: HealthPost = ""
    vet: Vet = ""

    @property
    def nearby(self) -> Nearby:
        """The numbers as a conversation says them."""
        return Nearby(self.emergency, self.health_post, self.vet)


class VillageEntry(_Helped):
    """One [[village]]. Latitude and longitude are told of together: half a place is none."""

    name: VillageName = Field("", validate_default=True)
    zone: Zone | None = None
    latitude: Any = None
    longitude: Any = Field(None, validate_default=True)
    codes: Annotated[frozenset[Geocode], PlainValidator(_codes)] = frozenset()
    climate: Climate = ()
    units: Annotated[tuple[VillageUnit, ...], PlainValidator(_units)] = ()

    @field_validator("longitude")
    @classmethod
    def _is_on_earth(cls, longitude: Any, info: ValidationInfo) -> Any:
        given = (info.data["latitude"], longitude)
        if given != (None, None) and not all(map(_within, given, (POLE, DATE_LINE))):
            shown = ", ".join("nothing" if each is None else str(each) for each in given)
            raise ValueError(
                f"no place {shown}; write both, in degrees north and east with a point and "
                "without quotes: latitude = -3.7 and longitude = 42.5"
            )
        return longitude

    @property
    def point(self) -> Point | None:
        """Where it lies, where the file says so."""
        return (
            None
            if self.latitude is None
            else Point(float(self.latitude), float(self.longitude))
        )


def _within(value: object, most: float) -> bool:
    try:
        return -most <= _number(value) <= most
    except ValueError:
        return False


class ProgrammeEntries(_Helped):
    """The file as a whole; [alerts] is read by `wiring.alerts`."""

    name: ProgrammeName | None = None
    zone: Zone | None = None
    price_per_segment: Price | None = None
    currency: Currency | None = Field(None, validate_default=True)
    alerts: Any = None
    village: list[VillageEntry] = []

    @field_validator("currency")
    @classmethod
    def _is_of_the_price(cls, currency: str | None, info: ValidationInfo) -> str | None:
        if currency is None and info.data.get("price_per_segment") is not None:
            raise ValueError("a price has one" + _BOTH)
        return currency

    @property
    def tariff(self) -> Tariff | None:
        """What a segment costs, where the file says so."""
        if self.price_per_segment is None or self.currency is None:
            return None
        return Tariff(self.price_per_segment, self.currency)
