"""Sent by me: what an officer has sent in the last days, and what of it can be taken back."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

from assistant.people import Village
from assistant.service.audit import Subject, TrailAct, note
from assistant.service.house import House
from assistant.service.sight import Sight
from assistant.service.storms.rain_drafts import storms
from assistant.store import DONE, PRIVATE, TextState, Work

SHOWN_FOR = timedelta(days=14)
MOST = 100  # lines of each kind
WAITS = (TextState.WAITING, TextState.CLAIMED)


@dataclass(frozen=True)
class MendableSent:
    """One thing that was sent; times are local.

    kind: "text", "many", "rain", "list" or "call"      key: its id, or that of the text
    name: of the farmer or the file              words: what it said
    waiting: texts of it that have not left      due_at: when those leave
    stands: a warning that is not over           back: it was taken back
    """

    kind: str
    key: str
    at: datetime
    name: str = ""
    words: str = ""
    farmer_id: int | None = None
    villages: tuple[Village, ...] = ()
    state: TextState | None = None
    waiting: int = 0
    due_at: datetime | None = None
    reached_at: datetime | None = None
    detail: str = ""
    stands: bool = False
    back: bool = False
    danger: str = ""  # of a warning


def sent_by(house: House, sight: Sight, now: datetime) -> tuple[MendableSent, ...]:
    """What this officer has sent, the latest first."""
    zone = ZoneInfo(sight.zone(None, house.zone))
    since = now - SHOWN_FOR
    with house.store.look() as work:
        found = [
            *_texts(work, sight, since, zone),
            *_many(work, sight, since, zone),
            *_rain(work, sight, now, zone),
            *_lists(work, sight, since, zone),
            *_calls(work, sight, since, zone),
        ]
    return tuple(sorted(found, key=lambda line: line.at, reverse=True))


def _texts(work: Work, sight: Sight, since: datetime, zone: ZoneInfo) -> Iterator[MendableSent]:
    for each in work.story.written_by(sight.officer.id, since, MOST):
        yield MendableSent(
            kind="text",
            key=each.message_id,
            at=each.at.astimezone(zone),
            name=each.farmer or each.phone,
            words="" if each.private else each.words,
            farmer_id=each.farmer_id,
            state=each.state,
            waiting=int(each.state in WAITS),
            due_at=each.due_at.astimezone(zone),
            reached_at=each.reached_at.astimezone(zone) if each.reached_at else None,
            detail=each.detail,
            back=each.state is TextState.WITHDRAWN,
        )


def _calls(work: Work, sight: Sight, since: datetime, zone: ZoneInfo) -> Iterator[MendableSent]:
    """Calls that they closed, which can be opened again."""
    me = sight.officer
    for each, at in work.calls.closed(since, sight.scope(), me, by=me.id, most=MOST):
        yield MendableSent(
            kind="call",
            key=str(each.id),
            at=at.astimezone(zone),
            name=each.farmer.name or each.farmer.phone,
            words="" if each.about == PRIVATE else each.words,
            farmer_id=each.farmer.id,
        )


def _many(work: Work, sight: Sight, since: datetime, zone: ZoneInfo) -> Iterator[MendableSent]:
    for each in work.broadcasts.latest(MOST, sight.officer.id):
        if each.sent_at is None or each.sent_at < since:
            continue
        states = work.broadcasts.states(each.id)
        yield MendableSent(
            kind="many",
            key=str(each.id),
            at=each.sent_at.astimezone(zone),
            words=each.words,
            villages=_named(sight, each.village_ids),
            waiting=sum(states.get(state, 0) for state in WAITS),
            back=bool(states) and set(states) == {TextState.WITHDRAWN},
        )


def _rain(work: Work, sight: Sight, now: datetime, zone: ZoneInfo) -> Iterator[MendableSent]:
    for line in storms(work, sight, now):
        if line.draft.decided_by == sight.officer.id and line.draft.decided_at:
            yield MendableSent(
                kind="rain",
                danger=line.draft.danger,
                key=str(line.draft.id),
                at=line.draft.decided_at.astimezone(zone),
                villages=line.villages,
                stands=line.stands,
                back=line.recalled,
            )


def _lists(work: Work, sight: Sight, since: datetime, zone: ZoneInfo) -> Iterator[MendableSent]:
    for each in work.lists.latest(sight.officer.id, MOST):
        if each.state == DONE and each.changed_at >= since:
            at, back = each.changed_at.astimezone(zone), "withdrawn" in each.counts
            yield MendableSent("list", str(each.id), at, name=each.name, back=back)


def _named(sight: Sight, ids: tuple[int, ...]) -> tuple[Village, ...]:
    return tuple(each for each in sight.villages if each.id in ids)


def take_text_back(house: House, sight: Sight, message_id: str, now: datetime) -> bool | None:
    """Takes back a text of this officer that waits; False where it has left, None where it is
    none of theirs."""
    with house.store.work() as work:
        mine = work.story.written(message_id)
        if mine is None or mine.officer_id != sight.officer.id:
            return None
        if not work.outbox.take_back([message_id], now):
            return False
        about = Subject(mine.farmer_id)
        note(work, sight.officer.id, TrailAct.TEXT_TAKEN_BACK, now, about)
        return True
