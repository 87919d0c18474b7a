"""Few shoots: counted in a small square; then the farmer waits, fills or sows again."""

from assistant.dialogue.questions import ANY, Choice, Question, Reads, conversation
from assistant.wording import messages_care as care
from assistant.wording import messages_talk as m
from assistant.wording.message import Message

_WAIT = Choice("wait", care.DO_WAIT)
_FILL = Choice("fill", care.DO_FILL)
_AGAIN = Choice("again", care.DO_AGAIN)
_KEEP = Choice("keep", care.DO_NOTHING)
DECISIONS = (_WAIT, _FILL, _AGAIN, _KEEP)
_GOES = {
    "wait": "!stand_wait",
    "fill": "!stand_fill",
    "again": "!stand_again",
    "keep": "!stand_keep",
}


def _decide(step: str, asks: Message, *choices: Choice) -> Question:
    """The farmer decides; what is advised stands first."""
    return Question(
        step,
        asks=asks,
        reads=Reads.CHOICE,
        keeps="decided",
        choices=choices,
        goes={choice.code: _GOES[choice.code] for choice in choices},
        help=asks,
        again=m.AGAIN_CHOICE,
    )


EMERGENCE = conversation(
    "emergence",
    1,
    Question(
        "nursery",
        asks=m.ASK_NURSERY,
        reads=Reads.NURSERY,
        keeps="nursery",
        goes={ANY: "shoots"},
        help=m.HELP,
        again=m.AGAIN_CHOICE,
    ),
    Question(
        "shoots",
        explains=(care.SQUARE_HOW,),
        asks=care.ASK_SHOOTS,
        reads=Reads.SHOOTS,
        keeps="shoots",
        goes={"enough": "!stand_good", "wait": "wait", "fill": "fill", "again": "again"},
        help=care.SQUARE_HOW,
        again=care.AGAIN_SHOOTS,
    ),
    _decide("wait", care.STAND_WAIT, _WAIT, _FILL, _AGAIN),
    _decide("fill", care.STAND_FILL, _FILL, _KEEP, _AGAIN),
    _decide("again", care.STAND_AGAIN, _AGAIN, _FILL, _WAIT),
)
