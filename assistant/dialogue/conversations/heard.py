"""Short talks that the ear opens where it is only half sure."""

from assistant.dialogue.questions import Choice, Question, Reads, conversation
from assistant.wording import messages_aid as aid
from assistant.wording import messages_talk as m

IF_HURT = conversation(
    "if_hurt",
    1,
    Question(
        "hurt",
        asks=aid.ASK_IF_HURT,
        reads=Reads.CHOICE,
        choices=(Choice("yes", aid.SOMEBODY), Choice("no", aid.NOBODY)),
        goes={"yes": "!hurt", "no": "!nobody_hurt"},
        help=aid.ASK_IF_HURT,
        again=m.AGAIN_CHOICE,
    ),
)

IF_LOST = conversation(
    "if_lost",
    1,
    Question(
        "lost",
        asks=aid.ASK_IF_LOST,
        reads=Reads.YES_NO,
        goes={"yes": "!lost", "no": "!not_lost"},
        help=aid.ASK_IF_LOST,
        again=m.AGAIN_YES_NO,
    ),
)

STOP_ALL = conversation(
    "stop_all",
    1,
    Question(
        "stop",
        asks=aid.ASK_STOP,
        reads=Reads.YES_NO,
        goes={"yes": "!stop_all", "no": "!go_on"},
        help=aid.ASK_STOP,
        again=m.AGAIN_YES_NO,
    ),
)
