"""Rain warnings before and after they go: drafts, and what came of them. Times are UTC."""

from dataclasses import dataclass
from datetime import datetime
from enum import StrEnum


class Source(StrEnum):
    """Where a draft came from."""

    OFFICER = "officer"  # the page
    TEXT = "text"  # an officer's SMS, which is decided as soon as it is made
    ALERT = "alert"  # an official alert


class Certainty(StrEnum):
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
    """A rain warning that is worded and not sent yet, or that was decided on.

    `made_by` and `decided_by` are ids of officers, None for the assistant itself. `hazard` is
    "rain", or the event in the words of an official alert; it is shown to the officer and
    stands in no text. `words` are an officer's own, added to each text. `alert_id` is the
    alert that the draft was made from.
    """

    village_ids: tuple[int, ...]
    starts_at: datetime
    ends_at: datetime
    created_at: datetime
    certainty: Certainty = Certainty.UNKNOWN
    hazard: str = "rain"
    words: str = ""
    source: Source = Source.OFFICER
    made_by: int | None = None
    alert_id: int | None = None
    id: int = 0
    decided_at: datetime | None = None
    decided_by: int | None = None
    decision: Decision | None = None
