"""The conversations, each a table of questions."""

from collections.abc import Mapping

from assistant.dialogue.conversations.again import AGAIN, NO_SEED, SOWN_AGAIN, UNCOVERED_EARLY
from assistant.dialogue.conversations.asked import ASKED
from assistant.dialogue.conversations.dates import DATES, LEAVES
from assistant.dialogue.conversations.days import (
    PLANT_THEN,
    PLANTED_THEN,
    SOW_THEN,
    UNCOVERED_THEN,
)
from assistant.dialogue.conversations.delay import DELAY, TOO_OLD
from assistant.dialogue.conversations.emergence import EMERGENCE
from assistant.dialogue.conversations.heard import IF_HURT, IF_LOST, STOP_ALL
from assistant.dialogue.conversations.home import (
    CLOSE,
    LANGUAGE,
    MENU,
    OFFICER,
    STOPPING,
    UNCOVERED,
    WHICH,
)
from assistant.dialogue.conversations.invited import ADDING, INVITED, INVITED_FREE
from assistant.dialogue.conversations.lost import LOST, LOST_FILL
from assistant.dialogue.conversations.more import MORE
from assistant.dialogue.conversations.plan import PLAN
from assistant.dialogue.conversations.planting import (
    PLANTING,
    RECOUNT,
    SOAKING,
    VARIETY_OF,
)
from assistant.dialogue.conversations.rain import (
    DANGER_WARNING,
    DAYS_WARNING,
    RAIN_WARNING,
    WARNINGS,
)
from assistant.dialogue.conversations.result import RESULT, SEED_USED
from assistant.dialogue.conversations.seed_test import SEED_TEST
from assistant.dialogue.conversations.signup import SIGNUP
from assistant.dialogue.conversations.steps import STEPS
from assistant.dialogue.conversations.tell import TELLING, TELLING_LATER
from assistant.dialogue.conversations.trouble import TROUBLE
from assistant.dialogue.conversations.when import TIN, WHEN_SOW
from assistant.dialogue.questions import Conversation

__all__ = [
    "ADDING",
    "ASKED",
    "AGAIN",
    "CLOSE",
    "DATES",
    "DELAY",
    "EMERGENCE",
    "IF_HURT",
    "IF_LOST",
    "INVITED",
    "INVITED_FREE",
    "LANGUAGE",
    "LEAVES",
    "LOST",
    "LOST_FILL",
    "MENU",
    "MORE",
    "NO_SEED",
    "OFFICER",
    "PLAN",
    "PLANTED_THEN",
    "PLANTING",
    "PLANT_THEN",
    "DANGER_WARNING",
    "DAYS_WARNING",
    "RAIN_WARNING",
    "WARNINGS",
    "RECOUNT",
    "RESULT",
    "SEED_TEST",
    "SEED_USED",
    "SIGNUP",
    "SOAKING",
    "SOWN_AGAIN",
    "SOW_THEN",
    "STEPS",
    "STOPPING",
    "STOP_ALL",
    "TABLES",
    "TELLING",
    "TELLING_LATER",
    "TIN",
    "TOO_OLD",
    "TROUBLE",
    "UNCOVERED",
    "UNCOVERED_EARLY",
    "UNCOVERED_THEN",
    "VARIETY_OF",
    "WHEN_SOW",
    "WHICH",
]

TABLES: Mapping[str, Conversation] = {
    table.name: table
    for table in (
        SIGNUP,
        INVITED,
        INVITED_FREE,
        ADDING,
        PLAN,
        MENU,
        LANGUAGE,
        CLOSE,
        OFFICER,
        STOPPING,
        WHICH,
        DATES,
        LEAVES,
        DELAY,
        TOO_OLD,
        AGAIN,
        NO_SEED,
        SOWN_AGAIN,
        UNCOVERED_EARLY,
        LOST,
        LOST_FILL,
        TROUBLE,
        RAIN_WARNING,
        DANGER_WARNING,
        DAYS_WARNING,
        TELLING,
        TELLING_LATER,
        SEED_TEST,
        RESULT,
        SEED_USED,
        EMERGENCE,
        MORE,
        PLANTING,
        RECOUNT,
        SOAKING,
        VARIETY_OF,
        STEPS,
        IF_HURT,
        IF_LOST,
        STOP_ALL,
        UNCOVERED,
        ASKED,
        SOW_THEN,
        PLANT_THEN,
        UNCOVERED_THEN,
        PLANTED_THEN,
        WHEN_SOW,
        TIN,
    )
}
