"""What the store hands out of the answering desk. Times are aware and in UTC."""

from dataclasses import dataclass
from datetime import date, datetime

from assistant.hearing.office import OfficeQuestion


@dataclass(frozen=True)
class KeptQuestion:
    """A question that an office added, read by a second person or not yet."""

    id: int
    language: str
    village_id: int | None
    ways: tuple[str, ...]
    answer: str
    added_by: int | None
    added_at: datetime
    read_by: int | None = None
    read_at: datetime | None = None
    withdrawn_at: datetime | None = None

    @property
    def question(self) -> OfficeQuestion:
        """As the dialogue knows it."""
        return OfficeQuestion(self.id, self.language, self.ways, self.answer, self.village_id)

    @property
    def in_use(self) -> bool:
        """Whether farmers are answered with it."""
        return self.read_at is not None and self.withdrawn_at is None


@dataclass(frozen=True)
class AskedCount:
    """How often a question came in a month."""

    code: str
    answered: int
    offered: int


@dataclass(frozen=True)
class MonthAsked:
    """All questions of a month, the one asked most first; `unread`: replies that could not be
    read, `passed_on`: questions that a person was told of."""

    month: date
    counts: tuple[AskedCount, ...]
    unread: int
    passed_on: int
