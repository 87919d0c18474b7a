"""The officer's warning, shown back with its reach before it goes: of rain, of another danger
by its hours, and by its days."""

from assistant.dialogue.questions import Conversation, Question, Reads, conversation
from assistant.wording import messages_dangers as dangers
from assistant.wording import messages_officer as o
from assistant.wording import messages_talk as m
from assistant.wording.message import Message


def _warning(name: str, asks: Message) -> Conversation:
    return conversation(
        name,
        1,
        Question(
            "sure",
            asks=asks,
            reads=Reads.YES_NO,
            goes={"yes": "!warn", "no": "!kept"},
            help=o.OFFICER_HELP,
            again=m.AGAIN_YES_NO,
        ),
    )


RAIN_WARNING = _warning("rain_warning", o.ASK_WARN)
DANGER_WARNING = _warning("danger_warning", dangers.ASK_WARN)
DAYS_WARNING = _warning("days_warning", dangers.ASK_WARN_DAYS)
WARNINGS = frozenset({RAIN_WARNING.name, DANGER_WARNING.name, DAYS_WARNING.name})
