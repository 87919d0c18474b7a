"""Warnings before and after they go: drafts, and what came of them. Times are UTC."""

from dataclasses import dataclass
from datetime import date, datetime
from enum import StrEnum
from typing import NamedTuple

from assistant.agronomy.dangers.rows import RAIN


class DraftSource(StrEnum):
    """Where a draft came from."""

    OFFICER = "officer"  # the page
    TEXT = "text"  # an officer's SMS, which is decided as soon as it is made
    ALERT = "alert"  # an official alert


class AlertCertainty(StrEnum):
    """How sure, in the words of the OASIS Common Alerting Protocol 1.2, 3.2.2 `certainty`."""

    OBSERVED = "observed"
    LIKELY = "likely"
    POSSIBLE = "possible"
    UNLIKELY = "unlikely"
    UNKNOWN = "unknown"


class Decision(StrEnum):
    """What became of a draft."""

    SENT = "sent"
    DROPPED = "dropped"


@dataclass(frozen=True)
class Draft:
    """A warning that is worded and not sent yet, or that was decided on.

    `made_by` and `decided_by` are ids of officers, None for the assistant itself. `hazard` is
    "rain", or the event in the words of an official alert; it is shown to the officer and
    stands in no text. `danger` is the code of its row in `dangers.toml`. `words` are an
    officer's own, added to each text. `alert_id` is the alert that the draft was made from.
    """

    village_ids: tuple[int, ...]
    starts_at: datetime
    ends_at: datetime
    created_at: datetime
    certainty: AlertCertainty = AlertCertainty.UNKNOWN
    hazard: str = "rain"
    words: str = ""
    source: DraftSource = DraftSource.OFFICER
    made_by: int | None = None
    alert_id: int | None = None
    danger: str = RAIN
    id: int = 0
    decided_at: datetime | None = None
    decided_by: int | None = None
    decision: Decision | None = None


class BedInDanger(NamedTuple):
    """A bed that a danger may harm, and its farmer."""

    farmer_id: int
    phone: str
    farmer: str | None
    language: str | None
    may_be_texted: bool  # agreed to texts, and has not stopped them
    called: str
    sow_date: date
    sown: bool


@dataclass(frozen=True)
class Progress:
    """How far the texts of a warning are."""

    queued: int = 0
    sent: int = 0  # the operator has it
    received: int = 0  # the phone has it
    failed: int = 0  # also those that came too late
    taken_back: int = 0

    @property
    def all(self) -> int:
        """All texts that were written."""
        return self.queued + self.sent + self.received + self.failed + self.taken_back


class Silent(NamedTuple):
    """A phone that was asked and has not answered."""

    farmer_id: int
    phone: str
    farmer: str | None
    village_id: int | None
    has_it: bool  # a receipt says that the text is on the phone
    asked_again: bool
    unsent: bool  # its text has not left yet


@dataclass(frozen=True)
class Given:
    """One village's warning, and how it ended, if it did."""

    id: int
    draft_id: int
    village_id: int
    starts_at: datetime
    ends_at: datetime
    issued_at: datetime
    cleared_at: datetime | None
    recalled_at: datetime | None
    danger: str = RAIN

    def stands(self, now: datetime) -> bool:
        """Whether it is neither over nor ended."""
        return self.cleared_at is None and self.ends_at > now
