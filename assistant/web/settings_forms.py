"""A form for each group of settings. What can be set the readers of settings say, as they do
for the environment (`settings.layered`); here stands how long an entry may be."""

from collections.abc import Mapping
from typing import Any

from assistant.service.desk.settings_page import SettingsPage
from assistant.service.desk.village_office import LONGEST_HELPER, LONGEST_NUMBER
from assistant.web.fields import TickedWords, TypedLines, TypedWords
from assistant.web.forms import OfficerForm
from assistant.wording import messages_web_office as office
from assistant.wording import messages_web_settings as words

_CLOCK, _COUNT, _MONEY, _NAME = 5, 9, 12, 40


class SettingsForm(OfficerForm):
    """Values as the environment has them."""

    def given(self) -> dict[str, str]:
        """What was filled in, by name."""
        return {field.name: _written(field.data) for field in self}


def _written(data: str | list[str]) -> str:
    # None ticked is nothing that can be set, and not the same as leaving it to the file.
    return data if isinstance(data, str) else ",".join(data) or "-"


class HoursForm(SettingsForm):
    """When texts go out."""

    prompt_at = TypedWords(office.S_PROMPT, longest=_CLOCK)
    second_at = TypedWords(words.SECOND_AT, longest=_CLOCK)
    quiet_from = TypedWords(words.QUIET_FROM, longest=_CLOCK)
    quiet_until = TypedWords(words.QUIET_UNTIL, longest=_CLOCK)


class NameForm(SettingsForm):
    """Who writes, and whom to turn to."""

    programme = TypedWords(words.PROGRAMME_NAME, longest=_NAME)
    emergency = TypedWords(office.EMERGENCY, longest=LONGEST_NUMBER)
    health_post = TypedWords(office.HEALTH_POST, longest=LONGEST_HELPER)
    vet = TypedWords(office.VET, longest=LONGEST_HELPER)


class LanguagesForm(SettingsForm):
    """What farmers may choose."""

    languages = TickedWords()


class PriceForm(SettingsForm):
    """What a segment costs."""

    price_per_segment = TypedWords(office.S_PRICE, longest=_MONEY)
    currency = TypedWords(words.CURRENCY, longest=3)


class LimitsForm(SettingsForm):
    """How much may go out."""

    day_segments = TypedWords(office.S_LIMITS, longest=_COUNT)
    month_money = TypedWords(words.MONTH_MONEY, longest=_MONEY)
    village_segments = TypedWords(words.VILLAGE_SEGMENTS, longest=_COUNT)
    village_month_money = TypedWords(words.VILLAGE_MONEY, longest=_MONEY)
    officer_day_texts = TypedWords(words.OFFICER_DAY, longest=_COUNT)
    officer_month_texts = TypedWords(words.OFFICER_MONTH, longest=_COUNT)
    strangers_hour_answers = TypedWords(words.STRANGERS_HOUR, longest=_COUNT)


class SeasonsForm(SettingsForm):
    """In which months seasons begin."""

    season_months = TickedWords()


class AlertsForm(SettingsForm):
    """Which official alerts matter, and where they are looked for."""

    alerts_events = TypedWords(words.EVENTS, longest=600)
    alerts_severities = TickedWords()
    alerts_urgencies = TickedWords()
    alerts_certainties = TickedWords()
    alerts_from = TypedLines(words.ADDRESSES, longest=3000)


FORMS: Mapping[str, type[SettingsForm]] = {
    "hours": HoursForm,
    "name": NameForm,
    "languages": LanguagesForm,
    "price": PriceForm,
    "limits": LimitsForm,
    "seasons": SeasonsForm,
    "alerts": AlertsForm,
}


def forms_of(model: SettingsPage) -> dict[str, OfficerForm]:
    """As the settings are."""
    return {group: form(data=_typed(form, model.values)) for group, form in FORMS.items()}


def _typed(form: type[SettingsForm], values: Mapping[str, str]) -> dict[str, Any]:
    """Values as fields have them: what is ticked as a list."""
    return {
        field.name: values[field.name].replace(" ", "").split(",")
        if isinstance(field, TickedWords)
        else values[field.name]
        for field in form()
    }
