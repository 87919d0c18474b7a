"""Official alerts as they are kept: what they said and what became of them. Times are UTC."""

from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum


class Became(StrEnum):
    """What became of an alert. All but the first and the last five are outcomes of judging."""

    FAULTY = "faulty"  # not as the standard has it
    NOT_ACTUAL = "not_actual"
    NOT_PUBLIC = "not_public"
    NO_WARNING = "no_warning"
    EXPIRED = "expired"
    ALL_CLEAR = "all_clear"
    OTHER_HAZARD = "other_hazard"
    BELOW = "below"
    ONLY_WORDS = "only_words"
    ELSEWHERE = "elsewhere"
    CANCELS = "cancels"
    REPLACED = "replaced"  # a later message that took its place came first
    UNCHANGED = "unchanged"  # its villages are under the same warning already
    DRAFTED = "drafted"
    SENT = "sent"


@dataclass(frozen=True)
class AlertWords:
    """What an alert said in one language, in the service's own words."""

    language: str
    event: str
    headline: str
    urgency: str
    severity: str
    certainty: str
    area: str
    sender_name: str


@dataclass(frozen=True)
class KeptAlert:
    """One official alert.

    source: where it was read from      sender .. scope: None where it could not be read
    starts_at, ends_at: the hours of its dangers that matter here, of the earliest and latest
    replaced_by: the id of the message that took its place or cancelled it
    sealed_by: whose key its signature was checked with; "" where it was wrong, None where it
        was not checked
    """

    source: str
    received_at: datetime
    became: Became
    sender: str | None = None
    identifier: str | None = None
    sent: datetime | None = None
    status: str | None = None
    kind: str | None = None
    scope: str | None = None
    signed: bool = False
    sealed_by: str | None = None
    told: tuple[AlertWords, ...] = ()
    village_ids: tuple[int, ...] = ()
    starts_at: datetime | None = None
    ends_at: datetime | None = None
    replaced_by: int | None = None
    id: int = 0

    @property
    def is_forged(self) -> bool:
        """Whether it bears a signature that none of the keys has made."""
        return self.sealed_by == ""


@dataclass(frozen=True)
class SourceLook:
    """One place where alerts are read, and how the last look at it went.

    etag, modified: what a web server said, to be asked again only for what is new
    trouble: what went wrong, in the words of who could not read it; empty where all was well
    """

    name: str
    looked_at: datetime | None = None
    etag: str = ""
    modified: str = ""
    trouble: str = ""
    well_at: datetime | None = None
