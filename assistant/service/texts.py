"""Words what is to be said and puts it into the outbox."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

from assistant.alphabet import Encoding, cost, plain
from assistant.dialogue.values import Focus, Kind
from assistant.reminders.plan import local
from assistant.service.house import House
from assistant.store import Lane, OutboxText, Work
from assistant.wording.message import Say
from assistant.wording.render import render_all

REPLY_LASTS = timedelta(days=1)


@dataclass(frozen=True)
class Letter:
    """A text on its way into the outbox."""

    phone: str
    language: str | None
    says: tuple[Say, ...]
    kind: Kind
    not_after: datetime
    due_at: datetime | None = None
    focus: Focus | None = None
    nursery_id: int | None = None
    warning_id: int | None = None
    urgent: bool = False
    private: bool = False  # pages do not show its words
    lane: Lane | None = None  # None: that of its kind


# What is urgent goes before all of these.
_LANES = {
    Kind.REPLY: Lane.ANSWER,
    Kind.NOTICE: Lane.ANSWER,
    Kind.WARNING: Lane.DANGER,
    Kind.ALL_CLEAR: Lane.DANGER,
    Kind.PROMPT: Lane.TASK,
    Kind.SECOND: Lane.TASK,
    Kind.LETTER: Lane.ANSWER,
    Kind.CONSENT: Lane.LIST,
}


def _lane(letter: Letter) -> Lane:
    if letter.urgent:
        return Lane.DANGER
    return _LANES[letter.kind] if letter.lane is None else letter.lane


def worded(house: House, says: Sequence[Say], language: str | None) -> str:
    """Sentences as one plain text in a language."""
    return plain(render_all(says, house.catalogue(language)))


def post(work: Work, house: House, letter: Letter, now: datetime) -> OutboxText:
    """Puts a text into the outbox."""
    return work.outbox.add(written(house, letter, now))


@dataclass(frozen=True)
class Priced:
    """A text in a language, and what it takes to send it."""

    text: str
    encoding: Encoding
    segments: int


class Pricing:
    """Words texts and counts their segments. Those that share their `says` are worded once in
    each language: thousands of phones are told the same."""

    def __init__(self, house: House) -> None:
        self._house = house
        self._known: dict[tuple[int, str | None], tuple[Sequence[Say], Priced]] = {}

    def of(self, says: Sequence[Say], language: str | None) -> Priced:
        """One text."""
        key = id(says), language
        if key not in self._known:  # what is kept beside it holds the id
            self._known[key] = says, priced(self._house, says, language)
        return self._known[key][1]


def priced(house: House, says: Sequence[Say], language: str | None) -> Priced:
    """Words sentences in a language, and counts their segments."""
    text = worded(house, says, language)
    price = cost(text)
    return Priced(text, price.encoding, price.segments)


def post_all(
    work: Work, house: House, letters: Iterable[Letter], now: datetime
) -> list[tuple[str, str]]:
    """Puts many texts into the outbox at once; the phone and the id of each."""
    pricing = Pricing(house)
    texts = [
        written(house, letter, now, pricing.of(letter.says, letter.language))
        for letter in letters
    ]
    work.outbox.add_all(texts)
    return [(text.phone, text.message_id) for text in texts]


def written(
    house: House, letter: Letter, now: datetime, given: Priced | None = None
) -> OutboxText:
    """A letter as it is kept; `given` where it was worded before."""
    price = given or priced(house, letter.says, letter.language)
    return OutboxText(
        message_id=house.new_id(),
        phone=letter.phone,
        text=price.text,
        kind=letter.kind,
        due_at=letter.due_at or now,
        not_after=letter.not_after,
        created_at=now,
        focus=letter.focus,
        nursery_id=letter.nursery_id,
        warning_id=letter.warning_id,
        urgent=letter.urgent,
        private=letter.private,
        lane=_lane(letter),
        encoding=price.encoding,
        segments=price.segments,
    )


def after_quiet(house: House, zone: str, now: datetime) -> datetime:
    """When a text that may not break the quiet hours can leave: now, or when they end."""
    here = now.astimezone(ZoneInfo(zone))
    if not house.hours.quiet(here.time()):
        return now
    today = local(here.date(), house.hours.quiet_until, zone)
    tomorrow = local(here.date() + timedelta(days=1), house.hours.quiet_until, zone)
    return today if today > now else tomorrow


@dataclass(frozen=True)
class Hush:
    """That the quiet hours hold a text back: until when (local), and whether one that is
    urgent may leave all the same."""

    until: datetime
    may_break: bool


def hush(house: House, zone: str, now: datetime) -> Hush | None:
    """What the quiet hours do to an officer's text now; None outside of them."""
    until = after_quiet(house, zone, now)
    if until <= now:
        return None
    return Hush(until.astimezone(ZoneInfo(zone)), house.urgent_breaks_quiet)
