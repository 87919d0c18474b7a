"""How the service itself runs, as values."""

from dataclasses import dataclass
from datetime import datetime


@dataclass(frozen=True)
class SetAside:
    """A nursery whose row cannot be read, and since when; `village_id` is its farmer's."""

    nursery_id: int
    label: str
    farmer_id: int
    farmer: str
    village_id: int | None
    why: str
    since: datetime


@dataclass(frozen=True)
class Line:
    """The line to the operator.

    `answered_at` is the last answer of any kind, `took_at` the last text it accepted, `said`
    its words when it last took nothing. From `rests_from` until `rests_until` it is offered
    nothing; while `held_at` is set a person holds all texts, for the reason `held_why`.
    """

    answered_at: datetime | None = None
    took_at: datetime | None = None
    rests_from: datetime | None = None
    rests_until: datetime | None = None
    said: str = ""
    held_at: datetime | None = None
    held_why: str = ""

    def may_send(self, now: datetime) -> bool:
        """Whether the operator wants texts now. What a person holds is looked at text by text:
        dangers leave. A pause that begins later than now was kept while the clock was wrong."""
        if self.rests_until is None or self.rests_until <= now:
            return True
        return self.rests_from is not None and self.rests_from > now

    @property
    def took_nothing(self) -> bool:
        """Whether it has taken no text since it rested."""
        return self.rests_until is not None
