"""Changing the day of sowing or of transplanting."""

from assistant.dialogue.questions import ANY, Choice, Question, Reads, conversation
from assistant.wording import messages_talk as m

DATES = conversation(
    "dates",
    1,
    Question(
        "nursery",
        asks=m.ASK_NURSERY,
        reads=Reads.NURSERY,
        keeps="nursery",
        goes={ANY: "which"},
        help=m.HELP,
        again=m.AGAIN_CHOICE,
    ),
    Question(
        "which",
        asks=m.ASK_WHICH_DATE,
        reads=Reads.CHOICE,
        choices=(
            Choice("sowing", m.THE_SOWING_DAY),
            Choice("transplanting", m.THE_TRANSPLANTING_DAY),
        ),
        goes={"sowing": "sowing", "transplanting": "transplanting"},
        help=m.HELP_DATE,
        again=m.AGAIN_CHOICE,
    ),
    Question(
        "sowing",
        asks=m.ASK_NEW_SOWING,
        reads=Reads.SOWING,
        keeps="sowing",
        goes={"coming": "!moved", "past": "sown"},
        help=m.HELP_DATE,
        again=m.AGAIN_DATE,
    ),
    Question(
        "sown",
        asks=m.SOWN_THAT_DAY,
        reads=Reads.YES_NO,
        keeps="sown",
        goes={"yes": "!moved", "no": "sowing"},
        help=m.HELP_DATE,
        again=m.AGAIN_YES_NO,
    ),
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

LEAVES = conversation(
    "leaves",
    1,
    Question(
        "count",
        asks=m.ASK_LEAVES,
        reads=Reads.LEAVES,
        keeps="leaves",
        goes={ANY: "transplanting"},
        help=m.LEAVES_ODD,
        again=m.AGAIN_COUNT,
    ),
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
