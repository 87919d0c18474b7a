"""How seedlings are planted and what the seed weighs; and leaves counted once more."""

from dataclasses import replace

from assistant.dialogue.questions import ANY, Choice, Question, Reads, conversation
from assistant.wording import messages_planting as g
from assistant.wording import messages_talk as m
from assistant.wording import messages_tasks as t
from assistant.wording.message import Message


def _number(step: str, asks: Message, reads: Reads) -> Question:
    """One number or two; what is asked says how to send them."""
    return Question(
        step,
        asks=asks,
        reads=reads,
        keeps=step,
        goes={ANY: "!planted_so"},
        help=asks,
        again=asks,
    )


_NURSERY = Question(
    "nursery",
    asks=m.ASK_NURSERY,
    reads=Reads.NURSERY,
    keeps="nursery",
    goes={ANY: "what"},
    help=m.HELP,
    again=m.AGAIN_CHOICE,
)

PLANTING = conversation(
    "planting",
    1,
    _NURSERY,
    Question(
        "what",
        asks=g.ASK_WHAT,
        reads=Reads.CHOICE,
        choices=(
            Choice("spacing", g.SPACING),
            Choice("hill", g.SEEDLINGS),
            Choice("grains", g.GRAINS),
            Choice("gaps", g.GAPS),
        ),
        goes={"spacing": "spacing", "hill": "hill", "grains": "grains", "gaps": "gaps"},
        help=g.ASK_WHAT,
        again=m.AGAIN_CHOICE,
    ),
    _number("spacing", g.ASK_SPACING, Reads.SPACING),
    _number("hill", g.ASK_SEEDLINGS, Reads.HILL),
    replace(_number("grains", g.ASK_GRAINS, Reads.GRAINS), again=g.AGAIN_GRAINS),
    _number("gaps", g.ASK_GAPS, Reads.GAPS),
)

SOAKING = conversation(
    "soaking",
    1,
    replace(_NURSERY, goes={ANY: "how"}),
    Question(
        "how",
        asks=g.ASK_SOAK,
        reads=Reads.CHOICE,
        keeps="how",
        choices=(
            Choice("cool", g.COOL_WATER),
            Choice("slow", g.SLOW_SEED),
            Choice("both", g.COOL_AND_SLOW),
            Choice("usual", g.AS_USUAL),
        ),
        goes={ANY: "!soak_so"},
        help=g.ASK_SOAK,
        again=m.AGAIN_CHOICE,
    ),
)

RECOUNT = conversation(
    "recount",
    1,
    Question(
        "nursery",
        asks=m.ASK_NURSERY,
        reads=Reads.NURSERY,
        keeps="nursery",
        goes={ANY: "leaves"},
        help=m.HELP,
        again=m.AGAIN_CHOICE,
    ),
    Question(
        "leaves",
        asks=m.ASK_LEAVES,
        reads=Reads.LEAVES,
        keeps="leaves",
        goes={ANY: "!recounted"},
        help=t.P_LEAVES,
        again=m.AGAIN_COUNT,
    ),
)

VARIETY_OF = conversation(
    "variety_of",
    1,
    replace(_NURSERY, goes={ANY: "!variety_of"}),
)
