"""An officer's words to many farmers. Times are UTC."""

from dataclasses import dataclass
from datetime import date, datetime
from enum import StrEnum


class Group(StrEnum):
    """Whose beds it is about."""

    ALL = "all"  # every farmer, also without a bed
    BEFORE = "before"  # not sown yet
    YOUNG = "young"  # days 0 to 5
    GROWING = "growing"  # from day 6 until ready
    READY = "ready"  # ready to be lifted, or old


@dataclass(frozen=True)
class Broadcast:
    """What was written, and to whom; `practice` None is every practice, `group_id` an own
    group of its officer, `due_at` when it is to leave where not at once."""

    made_by: int
    words: str
    village_ids: tuple[int, ...]
    made_at: datetime
    stage: Group = Group.ALL
    practice: str | None = None
    sent_at: datetime | None = None
    id: int = 0
    group_id: int | None = None
    due_at: datetime | None = None


@dataclass(frozen=True)
class Reader:
    """A farmer who may be written to, and one of their beds; without one the day is None."""

    phone: str
    language: str | None
    village_id: int
    may_be_texted: bool
    practice: str | None = None
    sow_date: date | None = None
    sown: bool = False
