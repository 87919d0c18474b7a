"""A question that may be one of several: which one, is asked."""

from assistant.dialogue.questions import ANY, Question, Reads, conversation
from assistant.wording import messages_answers as a
from assistant.wording import messages_talk as m

ASKED = conversation(
    "asked",
    1,
    Question(
        "topic",
        asks=a.ASK_WHICH,
        reads=Reads.TOPIC,
        keeps="topic",
        goes={ANY: "!asked"},
        help=a.ASK_WHICH,
        again=m.AGAIN_CHOICE,
    ),
)
