"""A season as read from its file: who takes part, and what happens when."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime, timedelta

from scenarios.heard import Expected


@dataclass(frozen=True)
class SeasonVillage:
    """A village of the season; without a zone it keeps the programme's time. `practices` are
    offered there beside the mat."""

    name: str
    zone: str | None = None
    practices: tuple[str, ...] = ()


@dataclass(frozen=True)
class Person:
    """Somebody with a phone."""

    name: str
    phone: str


@dataclass(frozen=True)
class SeasonOfficer:
    """What makes a person of the season an officer from its start."""

    name: str
    code: str
    villages: tuple[str, ...]
    language: str
    is_lead: bool = False


@dataclass(frozen=True)
class SendsText:
    """Sends a text."""

    text: str


@dataclass(frozen=True)
class Dials:
    """Begins a USSD session."""

    code: str


@dataclass(frozen=True)
class Presses:
    """Answers a USSD screen."""

    keys: str


@dataclass(frozen=True)
class HangsUp:
    """Ends the USSD session by the red key."""


@dataclass(frozen=True)
class LosesTheLine:
    """The session breaks; `told`: the operator reports it to the assistant."""

    told: bool


@dataclass(frozen=True)
class Switches:
    """Turns the phone on or off."""

    on: bool


@dataclass(frozen=True)
class Waits:
    """Lets time pass before the next line."""

    span: timedelta


@dataclass(frozen=True)
class Hears:
    """A text must arrive, the next one to this phone."""

    expected: Expected


@dataclass(frozen=True)
class HearsNothing:
    """No text may have come since the phone's last act, nor until a time where one is given."""

    until: datetime | None = None


@dataclass(frozen=True)
class Sees:
    """The USSD screen that stands on the phone."""

    expected: Expected


@dataclass(frozen=True)
class Ends:
    """The USSD session must be over; said as "sees the end"."""


@dataclass(frozen=True)
class NetworkFault:
    """What the network does from now on, to whom (None: everybody)."""

    does: str
    ways: tuple[str, ...] = ()
    phone: str | None = None
    by: timedelta = timedelta(0)
    first: int | None = None


@dataclass(frozen=True)
class NetworkChange:
    """A change of the network's weather; None makes all well again."""

    fault: NetworkFault | None


WHOLE_PAGE = "the page"


@dataclass(frozen=True)
class SignsIn:
    """An officer comes to the page; the first time with a one-time password."""


@dataclass(frozen=True)
class Opens:
    """Goes to a page by its name in the list at the top, or by its address."""

    where: str


@dataclass(frozen=True)
class Follows:
    """Goes on by a link, of the place that is looked at."""

    link: str


@dataclass(frozen=True)
class LooksAt:
    """Holds what follows to one place: the smallest card, row or part that has these words."""

    words: str


@dataclass(frozen=True)
class Fills:
    """Types into a field."""

    label: str
    words: str


@dataclass(frozen=True)
class Ticks:
    """Ticks a box, or unticks it."""

    label: str
    on: bool


@dataclass(frozen=True)
class Chooses:
    """Chooses from a list."""

    label: str
    option: str


@dataclass(frozen=True)
class AddsTo:
    """Writes a line into a file of the officer's own, which begins with it."""

    file: str
    line: str


@dataclass(frozen=True)
class Mends:
    """Writes something else into a file, own or fetched, in the one place where it stands."""

    file: str
    old: str
    new: str


@dataclass(frozen=True)
class SendsFile:
    """Puts a file into a field."""

    label: str
    file: str


@dataclass(frozen=True)
class Clicks:
    """Presses a button, which sends its form."""

    button: str


@dataclass(frozen=True)
class PageReads:
    """These pieces must stand on the page, or in the place that is looked at."""

    expected: Expected


WithFiles = AddsTo | Mends | SendsFile
AtPage = (
    SignsIn
    | Opens
    | Follows
    | LooksAt
    | Fills
    | Ticks
    | Chooses
    | Clicks
    | PageReads
    | WithFiles
)

Act = (
    SendsText
    | Dials
    | Presses
    | HangsUp
    | LosesTheLine
    | Switches
    | Waits
    | Hears
    | HearsNothing
    | Sees
    | Ends
    | NetworkChange
    | AtPage
)


@dataclass(frozen=True)
class SeasonStep:
    """One line: what somebody does or must see. `who` is empty for the network."""

    line: int
    words: str
    who: str
    act: Act


@dataclass(frozen=True)
class SeasonBlock:
    """The lines under one time; `at` is aware."""

    line: int
    at: datetime
    steps: tuple[SeasonStep, ...]


@dataclass(frozen=True)
class Season:
    """A whole season. `strict`: every text that arrives must be heard by a line."""

    path: str
    title: str
    zone: str
    region: str
    languages: tuple[str, ...]
    villages: tuple[SeasonVillage, ...]
    people: Mapping[str, Person]
    officers: tuple[SeasonOfficer, ...]
    strict: bool
    blocks: tuple[SeasonBlock, ...] = field(default=())

    @property
    def zones(self) -> tuple[str, ...]:
        """All time zones that the season plays in."""
        found = [self.zone, *(village.zone for village in self.villages if village.zone)]
        return tuple(dict.fromkeys(found))
