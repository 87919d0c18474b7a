"""Replies that could not be read, kept without the phone they came from, to mend word lists."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from zoneinfo import ZoneInfo

from assistant.service.house import House
from assistant.service.sight import Sight
from assistant.store import Unread

PAGE_LINES = 50


@dataclass(frozen=True)
class UnreadPage:
    """Replies that could not be read, the latest first; `older` is where the next page is."""

    counts: dict[str, int]
    language: str | None
    lines: tuple[Unread, ...]
    older: int | None


def unread_replies(
    house: House, sight: Sight, *, language: str | None = None, before: int | None = None
) -> UnreadPage | None:
    """For the lead, who has word lists mended; None for anybody else, since what was typed may
    be of any village."""
    if not sight.officer.is_lead:
        return None
    with house.store.look() as work:
        counts = work.ledger.unread_by_language()
        chosen = language if language in counts else None
        lines = work.ledger.unread(PAGE_LINES + 1, language=chosen, before=before)
    older = lines[PAGE_LINES - 1].id if len(lines) > PAGE_LINES else None
    return UnreadPage(counts, chosen, tuple(_here(lines[:PAGE_LINES], house)), older)


def _here(lines: Iterable[Unread], house: House) -> Iterator[Unread]:
    zone = ZoneInfo(house.zone)
    return (replace(each, at=each.at.astimezone(zone)) for each in lines)
