"""The work by hand, one step after the other; told until the farmer has seen enough."""

from assistant.dialogue.questions import Choice, Question, Reads, conversation
from assistant.wording import messages_steps as steps
from assistant.wording import messages_talk as m

STEPS = conversation(
    "steps",
    1,
    Question(
        "step",
        asks=steps.ASK_NEXT,
        reads=Reads.CHOICE,
        choices=(Choice("next", steps.NEXT_STEP),),
        goes={"next": "!next"},
        help=m.HELP,
        again=m.AGAIN_CHOICE,
    ),
)
