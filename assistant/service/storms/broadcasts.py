"""An officer's words to many farmers: a meeting, seed that arrives. No warning: it waits for
the morning, and nobody is asked for an answer."""

from collections.abc import Collection, Iterable
from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal
from enum import StrEnum
from zoneinfo import ZoneInfo

from assistant.agronomy.constants import RAIN_WATCH_LAST_DAY
from assistant.alphabet import Encoding, cost, plain
from assistant.dialogue.values import Kind
from assistant.people import Village
from assistant.service.audit import Subject, TrailAct, note
from assistant.service.brakes import left_to_spend
from assistant.service.house import House
from assistant.service.later import ChosenHour
from assistant.service.letters import LONGEST_WORDS, WORDS_LAST
from assistant.service.limits import TooMany, too_many
from assistant.service.sight import Sight
from assistant.service.texts import Letter, Priced, Pricing, after_quiet, post_all
from assistant.store import Broadcast, Lane, OwnGroup, Progress, Reader, TextState, Work
from assistant.store import Group as Group  # for the page too
from assistant.wording import messages_officer as o
from assistant.wording.message import Say

MOST_LISTED = 20


class NotMade(StrEnum):
    """Why nothing was kept."""

    NO_WORDS = "no_words"
    LONG = "long"
    NO_VILLAGE = "no_village"
    BAD_HOUR = "bad_hour"


@dataclass(frozen=True)
class Asked:
    """What was filled in."""

    words: str
    village_ids: Collection[int]
    everywhere: bool = False
    stage: Group = Group.ALL
    practice: str | None = None
    group_id: int | None = None
    later: ChosenHour | None = None


@dataclass(frozen=True)
class Sample:
    """The text as it arrives in one language."""

    language: str
    priced: Priced
    phones: int


@dataclass(frozen=True)
class BroadcastPage:
    """A broadcast: its reach and cost before it goes, and after; then also where its texts are.

    `leaves_at` is local. `left_out`: farmers who stopped texts or have not agreed to them.
    `encoding` is that of the words as typed.
    """

    broadcast: Broadcast
    villages: tuple[Village, ...]
    phones: int
    segments: int
    cost: Decimal | None
    samples: tuple[Sample, ...]
    left_out: int
    encoding: Encoding
    leaves_at: datetime
    waits: bool
    counts: Progress
    group: OwnGroup | None = None


@dataclass(frozen=True)
class BroadcastList:
    """The page: what can be chosen, and what was sent."""

    villages: tuple[Village, ...]
    practices: tuple[tuple[str, str], ...]  # code, name
    latest: tuple[Broadcast, ...]
    groups: tuple[OwnGroup, ...] = ()


def broadcasts_page(house: House, sight: Sight) -> BroadcastList:
    """The form, and what this officer wrote; a lead sees what all wrote."""
    by = None if sight.officer.is_lead else sight.officer.id
    with house.store.look() as work:
        latest = work.broadcasts.latest(MOST_LISTED, by)
        groups = work.groups.of(sight.officer.id)
    offered = {code for village in sight.villages for code in village.practices}
    language = sight.officer.language
    practices = tuple(
        (code, each.name(language))
        for code, each in house.store.practices.items()
        if code in offered
    )
    return BroadcastList(sight.villages, practices, latest, groups)


def make(
    house: House, sight: Sight, asked: Asked, now: datetime
) -> Broadcast | tuple[NotMade, ...]:
    """Keeps what was written, to be looked at before it goes; or what is wrong with it."""
    words = " ".join(asked.words.split())
    everywhere = asked.everywhere or (asked.group_id and not asked.village_ids)
    ids = tuple(
        each.id for each in sight.villages if everywhere or each.id in asked.village_ids
    )
    late = asked.later is not None and not asked.later.is_ahead(house.zone, now)
    wrong = [
        *([NotMade.NO_WORDS] if not words else []),
        *([NotMade.LONG] if len(words) > LONGEST_WORDS else []),
        *([NotMade.NO_VILLAGE] if not ids else []),
        *([NotMade.BAD_HOUR] if late else []),
    ]
    if wrong:
        return tuple(wrong)
    practice = asked.practice if asked.practice in house.store.practices else None
    with house.store.work() as work:
        mine = {each.id for each in work.groups.of(sight.officer.id)}
        wanted = Broadcast(
            made_by=sight.officer.id,
            words=words,
            village_ids=ids,
            made_at=now,
            stage=asked.stage,
            practice=practice,
            group_id=asked.group_id if asked.group_id in mine else None,
            due_at=asked.later.moment(house.zone) if asked.later else None,
        )
        return work.broadcasts.add(wanted)


def broadcast_page(
    house: House, sight: Sight, broadcast_id: int, now: datetime
) -> BroadcastPage | None:
    """One broadcast; None for one that is another officer's, but to a lead."""
    with house.store.look() as work:
        found = _in_sight(work, sight, broadcast_id)
        if found is None:
            return None
        villages = _villages(sight, found)
        readers = _readers(work, house, villages, found, now)
        counts = _counts(work.broadcasts.states(found.id))
        went = work.broadcasts.segments(found.id) if found.sent_at else None
        group = work.groups.get(found.group_id) if found.group_id else None
    texted = [each for each in readers if each.may_be_texted]
    samples, segments = _samples(house, _says(sight, found), texted)
    segments = segments if went is None else went
    zone = villages[0].zone if villages else house.zone
    leaves = after_quiet(house, zone, _due(found, now))
    return BroadcastPage(
        broadcast=found,
        villages=villages,
        phones=len(texted) if went is None else counts.all,
        segments=segments,
        cost=house.tariff.cost(segments) if house.tariff else None,
        samples=samples,
        left_out=len(readers) - len(texted),
        encoding=cost(plain(found.words)).encoding,
        leaves_at=leaves.astimezone(ZoneInfo(zone)),
        waits=leaves > now,
        counts=counts,
        group=group,
    )


def _due(found: Broadcast, now: datetime) -> datetime:
    """When it leaves, but for the quiet hours."""
    return max(now, found.due_at) if found.due_at else now


@dataclass(frozen=True)
class NotSent:
    """Why a broadcast was not sent: it needs another lead, since it reaches more than `phones`;
    or it takes more segments than the `left` that a limit leaves; or its officer would write to
    more phones than a day or a month allows."""

    phones: int = 0
    left: int = 0
    over: TooMany | None = None


def send(house: House, sight: Sight, broadcast_id: int, now: datetime) -> bool | NotSent | None:
    """Sends a broadcast, each phone once; False where that was done before, None as above."""
    page = broadcast_page(house, sight, broadcast_id, now)
    refused = _refused(house, sight, page, now) if page else None
    if refused is not None:
        return refused
    with house.store.work() as work:
        found = _in_sight(work, sight, broadcast_id)
        if found is None or not (found.made_by == sight.officer.id or sight.officer.is_lead):
            return None
        if not work.broadcasts.send(found.id, now):
            return False
        villages = _villages(sight, found)
        says = _says(sight, found)
        texted = [
            each for each in _readers(work, house, villages, found, now) if each.may_be_texted
        ]
        zones = {village.id: village.zone for village in villages}
        due = _due(found, now)
        letters = (_letter(house, says, each, zones[each.village_id], due) for each in texted)
        posted = post_all(work, house, letters, now)
        work.broadcasts.went_to(found.id, posted)
        for village in villages:
            subject = Subject(village_id=village.id)
            note(work, sight.officer.id, TrailAct.BROADCAST, now, subject, found.words)
        return True


def _refused(house: House, sight: Sight, page: BroadcastPage, now: datetime) -> NotSent | None:
    """Four eyes above so many phones; nothing beyond what may be spent."""
    its_own = page.broadcast.made_by == sight.officer.id
    if house.four_eyes and page.phones > house.four_eyes and its_own:
        return NotSent(phones=house.four_eyes)
    with house.store.look() as work:
        left = left_to_spend(work, house, now)
        if over := too_many(work, house, sight, page.phones, now):
            return NotSent(over=over)
    return NotSent(left=left) if left is not None and page.segments > left else None


def take_back(house: House, sight: Sight, broadcast_id: int, now: datetime) -> int | None:
    """Takes back the texts that have not left; how many. None as above."""
    with house.store.work() as work:
        found = _in_sight(work, sight, broadcast_id)
        return None if found is None else work.broadcasts.take_back(found.id, now)


def _in_sight(work: Work, sight: Sight, broadcast_id: int) -> Broadcast | None:
    found = work.broadcasts.get(broadcast_id)
    own = found is not None and (sight.officer.is_lead or found.made_by == sight.officer.id)
    return found if own else None


def _villages(sight: Sight, found: Broadcast) -> tuple[Village, ...]:
    """Its villages that are in sight still."""
    return tuple(each for each in sight.villages if each.id in found.village_ids)


def _says(sight: Sight, found: Broadcast) -> tuple[Say, ...]:
    """The officer's words stand in a slot: they are data, whatever signs are in them."""
    return (o.FROM_OFFICER(officer=sight.officer.name, words=found.words),)


def _letter(
    house: House, says: tuple[Say, ...], reader: Reader, zone: str, at: datetime
) -> Letter:
    due = after_quiet(house, zone, at)
    return Letter(
        phone=reader.phone,
        language=reader.language,
        says=says,
        kind=Kind.LETTER,
        due_at=due,
        not_after=due + WORDS_LAST,
        lane=Lane.LIST,
    )


def _samples(
    house: House, says: tuple[Say, ...], texted: Iterable[Reader]
) -> tuple[tuple[Sample, ...], int]:
    """The text in each language that is used, and the segments in all."""
    pricing = Pricing(house)
    phones: dict[str, int] = {}
    for reader in texted:
        language = house.catalogue(reader.language).language
        phones[language] = phones.get(language, 0) + 1
    samples = tuple(
        Sample(language, pricing.of(says, language), count)
        for language, count in sorted(phones.items(), key=lambda each: -each[1])
    )
    return samples, sum(each.priced.segments * each.phones for each in samples)


# --- to whom ----------------------------------------------------------------------------------


def _readers(
    work: Work, house: House, villages: tuple[Village, ...], found: Broadcast, now: datetime
) -> tuple[Reader, ...]:
    """Each phone once, whose farmer or one of whose beds is meant."""
    todays = {each.id: now.astimezone(ZoneInfo(each.zone)).date() for each in villages}
    kept = None if found.group_id is None else _phones(work, found.group_id)
    once: dict[str, Reader] = {}
    for reader in work.broadcasts.readers(list(todays)):
        day = (todays[reader.village_id] - reader.sow_date).days if reader.sow_date else None
        if (kept is None or reader.phone in kept) and _meant(house, found, reader, day):
            once.setdefault(reader.phone, reader)
    return tuple(once.values())


def _phones(work: Work, group_id: int) -> frozenset[str]:
    """The phones of a group; none where it is gone."""
    return frozenset(each.phone for each in work.groups.members(group_id))


def _meant(house: House, found: Broadcast, reader: Reader, day: int | None) -> bool:
    if found.practice is not None and reader.practice != found.practice:
        return False
    if found.stage is Group.ALL:
        return True
    return day is not None and found.stage is _stage(house, reader, day)


def _stage(house: House, reader: Reader, day: int) -> Group:
    if day < 0 or (day == 0 and not reader.sown):
        return Group.BEFORE
    if day <= RAIN_WATCH_LAST_DAY.value:
        return Group.YOUNG
    practice = house.store.practices.get(reader.practice or "")
    ready = practice.window.first.value if practice else None
    return Group.READY if ready is not None and day >= ready else Group.GROWING


def _counts(states: dict[TextState, int]) -> Progress:
    def of(*wanted: TextState) -> int:
        return sum(states.get(state, 0) for state in wanted)

    return Progress(
        queued=of(TextState.WAITING, TextState.CLAIMED),
        sent=of(TextState.ACCEPTED),
        received=of(TextState.DELIVERED),
        failed=of(TextState.FAILED, TextState.EXPIRED),
        taken_back=of(TextState.WITHDRAWN),
    )
