"""What passes when an officer answers a farmer by text: whom the number names, and changes."""

from dataclasses import dataclass
from datetime import datetime


@dataclass(frozen=True)
class Addressee:
    """A farmer whom an officer's TELL or SEEN names.

    `words` are those after the number; `may` whether the farmer takes texts; `calls` how many
    calls for help are open; `leaves_at` (local) when words would leave, where not at once.
    """

    farmer_id: int
    name: str
    phone: str
    words: str
    may: bool
    calls: int
    leaves_at: datetime | None = None


@dataclass(frozen=True)
class SeveralCalled:
    """More than one who called has a number that ends so."""

    digits: str


@dataclass(frozen=True)
class TellFarmer:
    """An officer's own words to a farmer; they answer what the farmer called for."""

    farmer_id: int
    words: str


@dataclass(frozen=True)
class SeeTo:
    """An officer has seen to a farmer's calls, by phone or on the spot."""

    farmer_id: int
