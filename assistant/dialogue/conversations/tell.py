"""An officer's words to a farmer by text, shown back before they go."""

from assistant.dialogue.questions import Conversation, Question, Reads, conversation
from assistant.wording import messages_officer as o
from assistant.wording import messages_talk as m
from assistant.wording import messages_tell as tell
from assistant.wording.message import Message


def _telling(name: str, asks: Message) -> Conversation:
    return conversation(
        name,
        1,
        Question(
            "sure",
            asks=asks,
            reads=Reads.YES_NO,
            goes={"yes": "!tell", "no": "!kept"},
            help=o.OFFICER_HELP,
            again=m.AGAIN_YES_NO,
        ),
    )


TELLING = _telling("telling", tell.ASK_TELL)
TELLING_LATER = _telling("telling_later", tell.ASK_TELL_LATER)
