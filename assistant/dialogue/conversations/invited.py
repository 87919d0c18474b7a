"""A farmer whom somebody else enrolled: whether they agree. And an officer enrolling one."""

from assistant.dialogue.questions import ANY, Conversation, Question, Reads, conversation
from assistant.wording import messages_officer as o
from assistant.wording import messages_people as people
from assistant.wording import messages_talk as m
from assistant.wording.message import Message


def _invited(name: str, asks: Message) -> Conversation:
    return conversation(
        name,
        1,
        Question(
            "agree",
            asks=asks,
            reads=Reads.YES_NO,
            goes={"yes": "!enrol", "no": "!refuse"},
            help=m.HELP,
            again=m.AGAIN_YES_NO,
        ),
    )


INVITED = _invited("invited", people.INVITED)
INVITED_FREE = _invited("invited_free", people.INVITED_FREE)

ADDING = conversation(
    "adding",
    1,
    Question(
        "village",
        asks=people.ASK_ADD_VILLAGE,
        reads=Reads.OWN_VILLAGE,
        keeps="village",
        goes={ANY: "sure"},
        help=o.OFFICER_HELP,
        again=m.AGAIN_CHOICE,
    ),
    Question(
        "sure",
        asks=people.ASK_ADD,
        reads=Reads.YES_NO,
        goes={"yes": "!add", "no": "!kept"},
        help=o.OFFICER_HELP,
        again=m.AGAIN_YES_NO,
    ),
)
