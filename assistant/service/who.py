"""Who must be seen, as an officer hears it by text: the same list as This morning."""

from datetime import datetime

from assistant.dialogue.readers import shortened
from assistant.dialogue.values import Visit
from assistant.people import Officer, Village
from assistant.service.calls import CallCard
from assistant.service.house import House
from assistant.service.morning import ToSee, VisitReason, gathered
from assistant.service.sight import sight_of
from assistant.service.told import ToldCall
from assistant.store import Work
from assistant.wording import messages_officer as o
from assistant.wording.message import Say
from assistant.wording.render import Catalogue, render

MOST_WORDS = 24  # letters of a farmer's own words in a line of WHO


def to_visit(work: Work, house: House, officer: Officer, now: datetime) -> tuple[Visit, ...]:
    """Open calls for help, then nurseries to be seen; a nursery stands once, with its first
    reason."""
    catalogue = house.catalogue(officer.language)
    cards, to_see = gathered(work, house, sight_of(work, officer), now)
    found = (
        *(_called(card, catalogue) for card in cards),
        *(_seen(line, line.reasons[0], catalogue) for line in to_see),
    )
    by_place = {(visit.phone, visit.label): visit for visit in reversed(found)}
    return tuple(reversed(by_place.values()))


def _called(card: CallCard, catalogue: Catalogue) -> Visit:
    return Visit(
        phone=card.farmer.phone,
        label=card.label or "",
        village=_name(card.village),
        reason=_worded(_trouble(card.told), catalogue),
        since=card.at.date(),
        name=card.farmer.name or "",
    )


def _trouble(told: ToldCall) -> Say:
    """What a call is about, and the first of the farmer's own words: a line of WHO is short."""
    if not told.words:
        return o.CALLED(about=told.about)
    return o.CALLED_SAYING(about=told.about, words=shortened(told.words, MOST_WORDS))


def _seen(line: ToSee, reason: VisitReason, catalogue: Catalogue) -> Visit:
    return Visit(
        phone=line.farmer.phone,
        label=line.label,
        village=_name(line.village),
        reason=_worded(reason.say, catalogue),
        since=reason.since,
        name=line.farmer.name or "",
    )


def _worded(say: Say, catalogue: Catalogue) -> str:
    return render(say, catalogue)


def _name(village: Village | None) -> str:
    return village.name if village else "-"
