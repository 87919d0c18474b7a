"""A day that was named in a sentence is read back; no asks which day it is."""

from collections.abc import Mapping

from assistant.dialogue.questions import ANY, Question, Reads, conversation
from assistant.wording import messages_days as days
from assistant.wording import messages_talk as m
from assistant.wording.message import Message


def _then(step: str, asks: Message, goes: Mapping[str, str], reads: Reads) -> Question:
    return Question(
        step, asks=asks, reads=reads, goes=goes, help=m.HELP_DATE, again=m.AGAIN_YES_NO
    )


SOW_THEN = conversation(
    "sow_then",
    1,
    _then("then", days.SOW_THEN, {"yes": "!moved", "no": "sowing"}, Reads.YES_NO),
    Question(
        "sowing",
        asks=m.ASK_NEW_SOWING,
        reads=Reads.SOWING,
        keeps="sowing",
        drops=("sown",),
        goes={"coming": "!moved", "past": "sown"},
        help=m.HELP_DATE,
        again=m.AGAIN_DATE,
    ),
    Question(
        "sown",
        asks=m.SOWN_THAT_DAY,
        reads=Reads.DEED,
        keeps="sown",
        goes={"yes": "!moved", "no": "sowing"},
        help=m.HELP_DATE,
        again=m.AGAIN_YES_NO,
    ),
)

PLANT_THEN = conversation(
    "plant_then",
    1,
    _then("then", days.PLANT_THEN, {"yes": "!chosen", "no": "transplanting"}, Reads.YES_NO),
    Question(
        "transplanting",
        asks=m.ASK_TRANSPLANTING,
        reads=Reads.DATE,
        keeps="transplanting",
        goes={ANY: "!chosen"},
        help=m.HELP_DATE,
        again=m.AGAIN_DATE,
    ),
)

UNCOVERED_THEN = conversation(
    "uncovered_then",
    1,
    _then("then", days.UNCOVERED_THEN, {"yes": "!uncovered_then", "no": "!kept"}, Reads.DEED),
)

PLANTED_THEN = conversation(
    "planted_then",
    1,
    _then("then", days.PLANTED_THEN, {"yes": "!planted_then", "no": "!kept"}, Reads.DEED),
)
