"""The officer's rain warning, shown back with its reach before it goes."""

from assistant.dialogue.questions import Question, Reads, conversation
from assistant.wording import messages_officer as o
from assistant.wording import messages_talk as m

RAIN_WARNING = conversation(
    "rain_warning",
    1,
    Question(
        "sure",
        asks=o.ASK_WARN,
        reads=Reads.YES_NO,
        goes={"yes": "!warn", "no": "!kept"},
        help=o.OFFICER_HELP,
        again=m.AGAIN_YES_NO,
    ),
)
