"""When to sow, where a farmer does not know yet; and a tin that is measured by the pail."""

from assistant.dialogue.questions import ANY, Question, Reads, conversation
from assistant.wording import messages_talk as m
from assistant.wording import messages_when as when

WHEN_SOW = conversation(
    "when_sow",
    1,
    Question(
        "water",
        asks=when.ASK_WATER_FROM,
        reads=Reads.DATE,
        keeps="water",
        goes={ANY: "ripens"},
        help=m.HELP_DATE,
        again=m.AGAIN_DATE,
    ),
    Question(
        "ripens",
        asks=when.ASK_RIPENS,
        reads=Reads.RIPENS,
        keeps="ripens",
        goes={"none": "!when_to_sow", ANY: "by"},
        help=when.ASK_RIPENS,
        again=m.AGAIN_COUNT,
    ),
    Question(
        "by",
        asks=when.ASK_RIPE_BY,
        reads=Reads.DATE_OR_NO,
        keeps="by",
        goes={ANY: "!when_to_sow"},
        help=m.HELP_DATE,
        again=m.AGAIN_DATE,
    ),
)

TIN = conversation(
    "tin",
    1,
    Question(
        "nursery",
        asks=m.ASK_NURSERY,
        reads=Reads.NURSERY,
        keeps="nursery",
        goes={ANY: "tins"},
        help=m.HELP,
        again=m.AGAIN_CHOICE,
    ),
    Question(
        "tins",
        asks=when.ASK_TINS,
        reads=Reads.TINS,
        keeps="tins",
        goes={ANY: "!tin_kept"},
        help=when.ASK_TINS,
        again=m.AGAIN_COUNT,
    ),
)
