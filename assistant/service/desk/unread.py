"""Replies that could not be read, with who wrote them: to answer, and to mend word lists."""

from dataclasses import dataclass, replace
from datetime import datetime
from zoneinfo import ZoneInfo

from assistant.people import Farmer, Village
from assistant.service.desk.nursery_page import ShownMessage, last_messages
from assistant.service.house import House
from assistant.service.sight import Sight
from assistant.store import UnreadText, Work

PAGE_LINES = 50
MESSAGES_SHOWN = 4


@dataclass(frozen=True)
class UnreadLine:
    """One reply in local time, who wrote it where that is known, and what passed last."""

    reply: UnreadText
    farmer: Farmer | None
    village: Village | None
    messages: tuple[ShownMessage, ...]


@dataclass(frozen=True)
class UnreadPage:
    """Replies that could not be read, the latest first; `older` is where the next page is."""

    counts: dict[str, int]
    language: str | None
    lines: tuple[UnreadLine, ...]
    older: int | None


def unread_replies(
    house: House, sight: Sight, *, language: str | None = None, before: int | None = None
) -> UnreadPage:
    """Those of an officer's villages; a lead sees all, also of numbers that nobody enrolled."""
    scope = sight.scope()
    with house.store.look() as work:
        counts = work.ledger.unread_by_language(scope)
        chosen = language if language in counts else None
        found = work.ledger.unread(PAGE_LINES + 1, language=chosen, before=before, scope=scope)
        lines = tuple(_lines(work, house, sight, found[:PAGE_LINES]))
    older = found[PAGE_LINES - 1].id if len(found) > PAGE_LINES else None
    return UnreadPage(counts, chosen, lines, older)


def _lines(
    work: Work, house: House, sight: Sight, found: tuple[UnreadText, ...]
) -> list[UnreadLine]:
    shown: set[int] = set()
    lines = []
    for each in found:
        farmer = each.farmer
        zone = ZoneInfo(sight.zone(farmer.village_id if farmer else None, house.zone))
        messages: tuple[ShownMessage, ...] = ()
        if farmer is not None and farmer.id not in shown:  # once, beside the latest
            shown.add(farmer.id)
            messages = last_messages(work, farmer, zone, MESSAGES_SHOWN)
        village = sight.village(farmer.village_id) if farmer else None
        lines.append(UnreadLine(_here(each, zone), farmer, village, messages))
    return lines


def _here(each: UnreadText, zone: ZoneInfo) -> UnreadText:
    at: datetime = each.at.astimezone(zone)
    return replace(each, at=at)
