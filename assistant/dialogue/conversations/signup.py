"""A new phone: language, village, consent."""

from assistant.dialogue.questions import ANY, Question, Reads, conversation
from assistant.wording import messages_talk as m

SIGNUP = conversation(
    "signup",
    1,
    Question(
        "language",
        asks=m.ASK_LANGUAGE,
        reads=Reads.LANGUAGE,
        keeps="language",
        goes={ANY: "village"},
        help=m.HELP,
        again=m.AGAIN_CHOICE,
    ),
    Question(
        "village",
        asks=m.ASK_VILLAGE,
        reads=Reads.VILLAGE,
        keeps="village",
        goes={ANY: "consent"},
        help=m.HELP,
        again=m.AGAIN_CHOICE,
    ),
    Question(
        "consent",
        asks=m.ASK_CONSENT,
        reads=Reads.YES_NO,
        goes={"yes": "!enrol", "no": "!refuse"},
        help=m.HELP,
        again=m.AGAIN_YES_NO,
    ),
)
