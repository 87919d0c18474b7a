"""What a rain warning says: by the hours, how sure it is, and what each nursery needs."""

from dataclasses import dataclass, field
from datetime import datetime, timedelta
from zoneinfo import ZoneInfo

from assistant.dialogue.rain_hours import span_slots
from assistant.people import Village
from assistant.service.storms.danger import InDanger
from assistant.service.storms.headline import NO_HEADLINE, Headline
from assistant.store import AlertCertainty, Draft
from assistant.wording import messages_rain as rain
from assistant.wording import messages_talk as m
from assistant.wording.message import Message, Say

ONE_DAY = timedelta(days=1)
SURE: dict[AlertCertainty, Message] = {
    AlertCertainty.OBSERVED: rain.SURE_OBSERVED,
    AlertCertainty.LIKELY: rain.SURE_LIKELY,
    AlertCertainty.POSSIBLE: rain.SURE_POSSIBLE,
    AlertCertainty.UNLIKELY: rain.SURE_POSSIBLE,
}
_MESSAGES = {  # (young beds?, over more than a day?)
    (True, False): m.WARNING,
    (False, False): m.WARNING_WAIT,
    (True, True): rain.WARNING_DAYS,
    (False, True): rain.WARNING_WAIT_DAYS,
}

Says = tuple[Say, ...]


@dataclass(frozen=True)
class RainWords:
    """The words of one draft in one village; nurseries of the same names share them, so that
    thousands of texts are worded once."""

    draft: Draft
    village: Village
    headline: Headline = NO_HEADLINE
    _made: dict[tuple[bool, tuple[str, ...], str], Says] = field(default_factory=dict)

    def says(self, phone: InDanger) -> Says:
        """What a phone is told. Where some beds are sown and others not, those that lie open to
        the rain: the others are told to wait by the text of their day."""
        told = self.headline.told(phone.language)
        key = bool(phone.young), phone.young or phone.soon, told
        if key not in self._made:
            self._made[key] = self._worded(*key)
        return self._made[key]

    def _worded(self, young: bool, called: tuple[str, ...], told: str) -> Says:
        draft = self.draft
        longer = draft.ends_at - draft.starts_at >= ONE_DAY
        slots = span_slots(draft.starts_at, draft.ends_at, self.village)
        if longer:
            slots["last"] = draft.ends_at.astimezone(ZoneInfo(self.village.zone)).date()
        message = _MESSAGES[young, longer]
        warning = message(village=self.village.name, labels=", ".join(called), **slots)
        sure = SURE.get(draft.certainty)
        service = (rain.SERVICE_SAYS(words=told),) if told else ()
        added = (rain.OFFICER_ADDS(words=draft.words),) if draft.words else ()
        keys = rain.COVERED_OR_HELP if young else rain.UNDERSTOOD_OR_HELP
        return (warning, *((sure(),) if sure else ()), *service, *added, keys())


def asked_again(village: Village, ends_at: datetime, phone: InDanger) -> Says:
    """The second text to a silent phone."""
    ends = ends_at.astimezone(ZoneInfo(village.zone))
    called = ", ".join((*phone.young, *phone.soon))
    again = rain.WARNING_AGAIN(
        village=village.name, labels=called, to_time=ends.time(), date=ends.date()
    )
    return (again,)
