"""What it takes to write to those who are ticked: texts, segments, cost, and what is beside."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal
from zoneinfo import ZoneInfo

from assistant.people import Farmer
from assistant.service.alarm_kinds import CLIMBS
from assistant.service.desk.nursery_page import ShownMessage, last_messages
from assistant.service.house import House
from assistant.service.letters import Pen
from assistant.service.sight import Sight
from assistant.service.texts import Hush, Priced, hush, priced
from assistant.service.told import URGENT
from assistant.service.waiting.picks import Pick, picked
from assistant.wording.message import Say

MESSAGES_SHOWN = 6


@dataclass(frozen=True)
class Offer:
    """Words with the texts that they make, one a language, and what all of them take; `says`
    are the words in no language yet, or as somebody wrote them."""

    key: str
    says: Say | str
    texts: tuple[tuple[str, Priced], ...]
    phones: int
    segments: int
    cost: Decimal | None


def offers(
    house: House,
    sight: Sight,
    keys: Iterable[str],
    words: Mapping[str, Say | str],
    now: datetime,
) -> tuple[Offer, ...]:
    """What each of these words would take, sent to the farmers of these lines."""
    with house.store.look() as work:
        pen = Pen(work, house, sight, now)
        picks = picked(pen, keys, "text").picks
        farmers = tuple({pick.farmer.id: pick.farmer for pick in picks}.values())
        return tuple(_offer(pen, key, each, farmers) for key, each in words.items())


def _offer(pen: Pen, key: str, words: Say | str, farmers: tuple[Farmer, ...]) -> Offer:
    texts: dict[str, Priced] = {}
    for farmer in farmers:
        language = pen.house.catalogue(farmer.language).language
        if language not in texts:
            said = pen.said(words, farmer)
            texts[language] = priced(pen.house, pen.says(said), farmer.language)
    segments = sum(
        texts[pen.house.catalogue(farmer.language).language].segments for farmer in farmers
    )
    tariff = pen.house.tariff
    cost = tariff.cost(segments) if tariff else None
    return Offer(key, words, tuple(sorted(texts.items())), len(farmers), segments, cost)


@dataclass(frozen=True)
class Beside:
    """What stands beside the field for one farmer: the last messages, what the quiet hours do
    to an answer now, and whether theirs is urgent."""

    messages: tuple[ShownMessage, ...]
    hush: Hush | None
    urgent: bool


def beside(house: House, sight: Sight, pick: Pick, now: datetime) -> Beside:
    """For who is written to alone."""
    zone = sight.zone(pick.farmer.village_id, house.zone)
    about = pick.call.about if pick.call else ""
    with house.store.look() as work:
        messages = last_messages(work, pick.farmer, ZoneInfo(zone), MESSAGES_SHOWN)
    quiet = None if about in CLIMBS else hush(house, zone, now)
    return Beside(messages, quiet, about in URGENT)
