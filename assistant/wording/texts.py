"""Every text that is declared, under the name by which translators know it."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import ModuleType

from assistant.wording import (
    messages_again,
    messages_aid,
    messages_alarms,
    messages_amounts,
    messages_answers,
    messages_answers_field,
    messages_answers_more,
    messages_answers_work,
    messages_care,
    messages_cautions,
    messages_dangers,
    messages_days,
    messages_delay,
    messages_officer,
    messages_people,
    messages_phrases,
    messages_plan,
    messages_planting,
    messages_practice,
    messages_privacy,
    messages_rain,
    messages_result,
    messages_seed,
    messages_sowing,
    messages_steps,
    messages_talk,
    messages_tasks,
    messages_tell,
    messages_web,
    messages_web_alerts,
    messages_web_beds,
    messages_web_books,
    messages_web_brakes,
    messages_web_broadcast,
    messages_web_calls,
    messages_web_desk,
    messages_web_door,
    messages_web_forms,
    messages_web_groups,
    messages_web_lines,
    messages_web_mend,
    messages_web_office,
    messages_web_people,
    messages_web_privacy,
    messages_web_questions,
    messages_web_rain,
    messages_web_running,
    messages_web_season,
    messages_web_settings,
    messages_web_story,
    messages_web_told,
    messages_when,
)
from assistant.wording.message import Message, slots_of

# In the order of the catalogues; a new module of texts gets a row (a test looks for it).
MODULES: Mapping[str, ModuleType] = {
    "talk": messages_talk,
    "amounts": messages_amounts,
    "tasks": messages_tasks,
    "steps": messages_steps,
    "cautions": messages_cautions,
    "again": messages_again,
    "aid": messages_aid,
    "seed": messages_seed,
    "care": messages_care,
    "days": messages_days,
    "delay": messages_delay,
    "answers": messages_answers,
    "answers_field": messages_answers_field,
    "answers_more": messages_answers_more,
    "answers_work": messages_answers_work,
    "result": messages_result,
    "practice": messages_practice,
    "planting": messages_planting,
    "officer": messages_officer,
    "when": messages_when,
    "tell": messages_tell,
    "alarms": messages_alarms,
    "calls": messages_web_calls,
    "door": messages_web_door,
    "forms": messages_web_forms,
    "brakes": messages_web_brakes,
    "lines": messages_web_lines,
    "people": messages_people,
    "privacy": messages_privacy,
    "rain": messages_rain,
    "dangers": messages_dangers,
    "plan": messages_plan,
    "sowing": messages_sowing,
    "web": messages_web,
    "desk": messages_web_desk,
    "groups": messages_web_groups,
    "mend": messages_web_mend,
    "office": messages_web_office,
    "phrases": messages_phrases,
    "web_people": messages_web_people,
    "web_privacy": messages_web_privacy,
    "web_running": messages_web_running,
    "alerts": messages_web_alerts,
    "beds": messages_web_beds,
    "books": messages_web_books,
    "story": messages_web_story,
    "told": messages_web_told,
    "season": messages_web_season,
    "settings": messages_web_settings,
    "questions": messages_web_questions,
    "warnings": messages_web_rain,
    "broadcasts": messages_web_broadcast,
}
# Read on paper or a large screen: these cost no segments and have no budget of them.
PRINTED = frozenset(
    {
        "sowing",
        "alerts",
        "beds",
        "books",
        "broadcasts",
        "calls",
        "door",
        "forms",
        "desk",
        "groups",
        "mend",
        "office",
        "brakes",
        "lines",
        "plan",
        "questions",
        "season",
        "settings",
        "told",
        "warnings",
        "web",
        "web_people",
        "web_privacy",
    }
)


@dataclass(frozen=True)
class Declared:
    """A text and its place, such as "talk.ASK_AREA"; `printed` if no phone ever shows it."""

    place: str
    message: Message
    printed: bool = False

    @property
    def slots(self) -> frozenset[str]:
        """The slots of all its forms."""
        return slots_of(self.message.text) | slots_of(self.message.plural or "")


def declared() -> tuple[Declared, ...]:
    """All texts in the order in which they stand in the code."""
    return tuple(
        Declared(f"{name}.{constant}", value, name in PRINTED)
        for name, module in MODULES.items()
        for constant, value in vars(module).items()
        if isinstance(value, Message)
    )
