"""What a warning says, of whatever danger: rain in its own words, the others by their table."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from typing import Protocol
from zoneinfo import ZoneInfo

from assistant.agronomy.dangers.rows import DANGERS, RAIN, BedStage
from assistant.dialogue.rain_hours import days_slots, is_told_by_days, span_slots
from assistant.dialogue.values import Standing
from assistant.people import Village
from assistant.service.storms import rain_words
from assistant.service.storms.danger import Beds, InDanger
from assistant.service.storms.headline import NO_HEADLINE, Headline
from assistant.service.storms.rain_words import RainWords, Says
from assistant.store import AlertCertainty, Draft
from assistant.wording import messages_dangers as dangers
from assistant.wording import messages_rain as rain
from assistant.wording import messages_talk as m
from assistant.wording.dangers import AFTER, FIRST, name_of
from assistant.wording.message import Message, Say

# What is likely is warned of without a word: it is what a warning means.
SURE = {
    AlertCertainty.OBSERVED: dangers.BEGUN,
    AlertCertainty.POSSIBLE: dangers.POSSIBLE,
    AlertCertainty.UNLIKELY: dangers.POSSIBLE,
}


class WarningWords(Protocol):
    """The words of one draft in one village."""

    def says(self, phone: InDanger) -> Says:
        """What a phone is told."""
        ...


def words_of(
    draft: Draft,
    village: Village,
    headline: Headline,
    now: datetime,
    *,
    people_in: bool = False,
) -> WarningWords:
    """What a draft says in a village, as of `now`.

    Args:
        people_in: another danger is there in which nobody is sent out
    """
    if draft.danger == RAIN and not people_in:
        return RainWords(draft, village, headline)
    return DangerWords(draft, village, now, headline, people_in)


@dataclass(frozen=True)
class DangerWords:
    """The words of a draft of another danger than rain, or of rain while people must stay in;
    phones whose nurseries have the same names and stages share them."""

    draft: Draft
    village: Village
    now: datetime
    headline: Headline = NO_HEADLINE
    people_in: bool = False
    _made: dict[tuple[Beds, str], Says] = field(default_factory=dict)

    def says(self, phone: InDanger) -> Says:
        """What a phone is told: the danger, what to do first with each nursery, the answers."""
        key = phone.beds, self.headline.told(phone.language)
        if key not in self._made:
            self._made[key] = tuple(self._worded(*key))
        return self._made[key]

    def _worded(self, beds: Beds, told: str) -> list[Say]:
        draft = self.draft
        sure = SURE.get(draft.certainty)
        return [
            self._head(),
            *(
                [dangers.STAY_IN(labels=_joined(beds))]
                if self._is_there
                else _first(draft, beds)
            ),
            *([sure()] if sure else []),
            *([rain.SERVICE_SAYS(words=told)] if told else []),
            *([rain.OFFICER_ADDS(words=draft.words)] if draft.words else []),
            dangers.KEYS(),
        ]

    def _head(self) -> Say:
        draft, name = self.draft, self.village.name
        if is_told_by_days(draft.starts_at, draft.ends_at):
            days = days_slots(draft.starts_at, draft.ends_at, self.village)
            return dangers.HEAD_DAYS(village=name, danger=name_of(draft.danger), **days)
        hours = span_slots(draft.starts_at, draft.ends_at, self.village)
        return dangers.HEAD(village=name, danger=name_of(draft.danger), **hours)

    @property
    def _is_there(self) -> bool:
        """Whether nobody may be sent out any more."""
        begun = (
            self.draft.certainty is AlertCertainty.OBSERVED or self.draft.starts_at <= self.now
        )
        danger = DANGERS[self.draft.danger]
        hurried = danger.indoors or danger.code == RAIN  # its words send people out at once
        return (begun and danger.indoors) or (self.people_in and hurried)


def _first(draft: Draft, beds: Beds) -> list[Say]:
    """What to do with the nurseries of each stage, those of which the same is said together."""
    told: dict[Message, list[str]] = {}
    for stage, names in beds:
        told.setdefault(FIRST[draft.danger][BedStage(stage)], []).extend(names)
    return [message(labels=", ".join(names)) for message, names in told.items()]


def _joined(beds: Beds) -> str:
    return ", ".join(name for _, names in beds for name in names)


def asked_again(village: Village, standing: Standing, phone: InDanger) -> Says:
    """The second text to a silent phone."""
    if standing.danger == RAIN:
        return rain_words.asked_again(village, standing.ends_at, phone)
    ends = standing.ends_at.astimezone(ZoneInfo(village.zone))
    again = dangers.AGAIN(
        village=village.name,
        danger=name_of(standing.danger),
        date=ends.date(),
        labels=_joined(phone.beds),
    )
    return (again,)


def recalled(village: Village, standing: Standing) -> Says:
    """That a warning was a mistake."""
    date = span_slots(standing.starts_at, standing.ends_at, village)["date"]
    if standing.danger == RAIN:
        return (rain.RECALLED(village=village.name, date=date),)
    return (dangers.RECALLED(village=village.name, danger=name_of(standing.danger), date=date),)


def cleared(village: Village, standing: Standing, beds: Mapping[str, bool]) -> Says:
    """That a danger is over, and what to look at: nurseries by their names, each with whether
    it is sown."""
    labels = ", ".join(beds)
    if standing.danger == RAIN:
        return (m.ALL_CLEAR(village=village.name, labels=labels), rain.STAY_SAFE())
    over = dangers.OVER(village=village.name, danger=name_of(standing.danger))
    sown = [name for name, is_sown in beds.items() if is_sown]
    if not sown:
        return (over, dangers.AFTER_SOON(labels=labels))
    return (over, AFTER[standing.danger](labels=", ".join(sown)))
