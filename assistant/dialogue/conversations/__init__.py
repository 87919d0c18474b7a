"""The conversations, each a table of questions."""

from collections.abc import Mapping

from assistant.dialogue.conversations.dates import DATES, LEAVES
from assistant.dialogue.conversations.home import (
    CLOSE,
    LANGUAGE,
    MENU,
    OFFICER,
    STOPPING,
    WHICH,
)
from assistant.dialogue.conversations.plan import PLAN
from assistant.dialogue.conversations.rain import RAIN_WARNING
from assistant.dialogue.conversations.signup import SIGNUP
from assistant.dialogue.conversations.trouble import TROUBLE
from assistant.dialogue.questions import Conversation

__all__ = [
    "CLOSE",
    "DATES",
    "LANGUAGE",
    "LEAVES",
    "MENU",
    "OFFICER",
    "PLAN",
    "RAIN_WARNING",
    "SIGNUP",
    "STOPPING",
    "TABLES",
    "TROUBLE",
    "WHICH",
]

TABLES: Mapping[str, Conversation] = {
    table.name: table
    for table in (
        SIGNUP,
        PLAN,
        MENU,
        LANGUAGE,
        CLOSE,
        OFFICER,
        STOPPING,
        WHICH,
        DATES,
        LEAVES,
        TROUBLE,
        RAIN_WARNING,
    )
}
