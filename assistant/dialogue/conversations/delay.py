"""Planting that waits: why, and until when."""

from assistant.dialogue.questions import ANY, Choice, Question, Reads, conversation
from assistant.wording import messages_delay as d
from assistant.wording import messages_talk as m

DELAY = conversation(
    "delay",
    1,
    Question(
        "why",
        asks=d.ASK_WHY,
        reads=Reads.CHOICE,
        keeps="why",
        choices=(
            Choice("hands", d.HANDS),
            Choice("water", d.WATER),
            Choice("rain", d.RAIN),
            Choice("field", d.FIELD),
            Choice("other", d.OTHER),
        ),
        goes={ANY: "until"},
        help=d.ASK_WHY,
        again=m.AGAIN_CHOICE,
    ),
    Question(
        "until",
        asks=d.ASK_UNTIL,
        reads=Reads.DATE,
        keeps="until",
        goes={ANY: "!delayed"},
        help=m.HELP_DATE,
        again=m.AGAIN_DATE,
    ),
)
