"""Planting that waits: why, and until when."""

from assistant.dialogue.questions import ANY, Choice, Question, Reads, conversation
from assistant.wording import messages_delay as d
from assistant.wording import messages_talk as m

DELAY = conversation(
    "delay",
    2,
    Question(
        "why",
        asks=d.ASK_WHY,
        reads=Reads.CHOICE,
        keeps="why",
        choices=(
            Choice("why_hands", d.HANDS),
            Choice("why_water", d.WATER),
            Choice("why_rain", d.RAIN),
            Choice("why_field", d.FIELD),
            Choice("why_other", d.OTHER),
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

TOO_OLD = conversation(
    "too_old",
    1,
    Question(
        "now",
        asks=d.ASK_OLD,
        reads=Reads.CHOICE,
        keeps="now",
        choices=(Choice("sow_anew", d.SOW_ANEW), Choice("give_up", d.GIVE_UP)),
        goes={"sow_anew": "!sow_anew", "give_up": "!give_up"},
        help=d.ASK_OLD,
        again=m.AGAIN_CHOICE,
    ),
)
