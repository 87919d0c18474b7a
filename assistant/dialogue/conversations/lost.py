"""Mats that are eaten or spoiled: how many, and whether they are sown again."""

from assistant.dialogue.questions import ANY, Question, Reads, conversation
from assistant.wording import messages_delay as d
from assistant.wording import messages_talk as m

LOST = conversation(
    "lost",
    1,
    Question(
        "mats",
        asks=d.ASK_LOST,
        reads=Reads.LOST,
        keeps="lost",
        goes={"none": "!mats_none", ANY: "!mats_gone"},
        help=d.ASK_LOST,
        again=d.ASK_LOST,
    ),
)

LOST_FILL = conversation(
    "lost_fill",
    1,
    Question(
        "fill",
        asks=d.ASK_FILL,
        reads=Reads.YES_NO,
        keeps="fill",
        goes={"yes": "!mats_fill", "no": "!mats_keep"},
        help=d.ASK_FILL,
        again=m.AGAIN_YES_NO,
    ),
)
