"""A phone that rang and was not answered: a call for help from somebody without credit."""

from datetime import datetime, timedelta

from assistant.channel import Channel, Incoming
from assistant.dialogue.values import CallForHelp, Kind
from assistant.people import Farmer
from assistant.service.effects import Scene, carry_out
from assistant.service.house import House
from assistant.service.storms.warnings import in_storm
from assistant.service.texts import REPLY_LASTS, Letter, post
from assistant.store import Work
from assistant.wording import messages_talk as m

ABOUT = "ring"
IN_THE_RAIN = "ring_rain"
SAME_CALL = timedelta(hours=6)  # who rings again soon means the same


def take_ring(house: House, incoming: Incoming, now: datetime) -> None:
    """Keeps a missed call, once; from a farmer it becomes a call for help, and is answered by a
    text. A number that nobody enrolled gets no text: it may have been dialled by mistake.

    Raises:
        DatabaseAwayError: nothing is kept; the gateway should send the same again.
    """
    with house.store.work() as work:
        work.lock(incoming.phone)
        if not work.inbox.take(incoming, "", now).new:
            return
        farmer = work.people.farmer(incoming.phone)
        if farmer is None or not _is_ours(farmer) or _rang_lately(work, farmer, now):
            return
        beds = work.nurseries.of_farmer(farmer.id)
        nursery_id = beds[0].id if len(beds) == 1 else None
        scene = Scene(work, house, incoming.phone, Channel.RING, now)
        about = IN_THE_RAIN if _rains(work, farmer, now) else ABOUT
        carry_out((CallForHelp(about, "", nursery_id),), scene)
        if farmer.consent_at is not None and farmer.stopped_at is None:
            _say_so(work, house, farmer, now)


def _is_ours(farmer: Farmer) -> bool:
    """Not who said no: of them nothing is kept but that, no village either. Who has not agreed
    yet is called back, since a call is no text."""
    return farmer.consent_at is not None or farmer.village_id is not None


def _rains(work: Work, farmer: Farmer, now: datetime) -> bool:
    """Whether a warning of a storm stands where the phone rings from."""
    return in_storm(work, farmer.village_id, now)


def _rang_lately(work: Work, farmer: Farmer, now: datetime) -> bool:
    """Whether such a call stands open already. One of the rain is another."""
    rains = _rains(work, farmer, now)
    same = (IN_THE_RAIN,) if rains else (ABOUT, IN_THE_RAIN)
    return any(
        call.about in same and call.handled_at is None and call.at > now - SAME_CALL
        for call in work.story.calls_of(farmer.id)
    )


def _say_so(work: Work, house: House, farmer: Farmer, now: datetime) -> None:
    letter = Letter(
        phone=farmer.phone,
        language=farmer.language,
        says=(m.RING_NOTED(),),
        kind=Kind.REPLY,
        not_after=now + REPLY_LASTS,
    )
    post(work, house, letter, now)
