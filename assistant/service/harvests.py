"""The harvest of a season, asked for once: some months after its result was told."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime, timedelta

from assistant.agronomy.season.outcome import YIELD_ASKED_AFTER_D
from assistant.dialogue.values import Kind
from assistant.service.house import House
from assistant.service.known import local_date
from assistant.service.texts import Letter, after_quiet, post
from assistant.store import Work
from assistant.wording import messages_result as r

# A harvest asked for later is not remembered; older results are of before this was asked.
ASKED_WITHIN = timedelta(days=14)
LASTS = timedelta(days=2)


def to_ask(work: Work, house: House, now: datetime) -> Sequence[int]:
    """The nurseries whose field is cut by now."""
    until = local_date(now, house.zone) - timedelta(days=YIELD_ASKED_AFTER_D)
    return work.seasons.unasked(until - ASKED_WITHIN, until)


def ask(work: Work, house: House, nursery_id: int, now: datetime) -> None:
    """One text, by day; who wants no texts gets none, and is not looked for again."""
    nursery, season = work.nurseries.get(nursery_id), work.seasons.of_nursery(nursery_id)
    if nursery is None or season is None:
        return
    farmer = work.people.farmer_by_id(nursery.farmer_id)
    if farmer is None:
        return
    village = work.people.village(farmer.village_id) if farmer.village_id else None
    zone = village.zone if village else house.zone
    if after_quiet(house, zone, now) > now:
        return
    today = local_date(now, zone)
    work.seasons.save(replace(season, yield_asked=today))
    wants = farmer.consent_at and farmer.stopped_at is None and farmer.paused_at is None
    if not (farmer.phone and wants):
        return
    letter = Letter(
        phone=farmer.phone,
        language=farmer.language,
        says=(r.ASK_YIELD(label=nursery.called, area=nursery.area_typed),),
        kind=Kind.PROMPT,
        not_after=now + LASTS,
        nursery_id=nursery_id,
    )
    post(work, house, letter, now)
