"""What a farmer sees that is wrong; only plain want of nitrogen is answered with a spray."""

from assistant.dialogue.questions import ANY, Choice, Question, Reads, conversation
from assistant.wording import messages_care as c
from assistant.wording import messages_talk as m

SIGNS = (
    Choice("spots", m.S_SPOTS),
    Choice("insects", m.S_INSECTS),
    Choice("young_leaves", m.S_YOUNG),
    Choice("cold", m.S_COLD),
    Choice("salt", m.S_SALT),
    Choice("water", m.S_WATER),
    Choice("unsure", m.S_UNSURE),
    Choice("none", m.S_NONE),
    Choice("pale", c.S_PALE),
)
LEAVES = (
    Choice("tip", c.L_TIP),
    Choice("base", c.L_BASE),
    Choice("all", c.L_ALL),
    Choice("new", c.L_NEW),
    Choice("leaves_unsure", c.L_UNSURE),
)
PLACES = (
    Choice("even", c.W_EVEN),
    Choice("patches", c.W_PATCHES),
    Choice("edges", c.W_EDGES),
    Choice("smell", c.W_SMELL),
)

TROUBLE = conversation(
    "trouble",
    1,
    Question(
        "nursery",
        asks=m.ASK_NURSERY,
        reads=Reads.NURSERY,
        keeps="nursery",
        goes={ANY: "problem"},
        help=m.HELP,
        again=m.AGAIN_CHOICE,
    ),
    Question(
        "problem",
        asks=m.ASK_PROBLEM,
        reads=Reads.PROBLEM,
        keeps="problem",
        choices=(
            Choice("yellow", m.P_YELLOW),
            Choice("not_up", m.P_NOT_UP),
            Choice("seed", m.P_SEED),
            Choice("animals", m.P_ANIMALS),
            Choice("water", m.P_WATER),
            Choice("other", m.P_OTHER),
        ),
        goes={
            "yellow": "signs",
            "yellow_early": "!too_early",
            "not_up": "!not_up",
            "seed": "!seed",
            "animals": "!animals",
            "water": "weather",
            "other": "words",
        },
        help=m.HELP,
        again=m.AGAIN_CHOICE,
    ),
    Question(
        "signs",
        asks=m.ASK_SIGNS,
        reads=Reads.CHOICE,
        keeps="signs",
        choices=SIGNS,
        goes={"none": "leaves", "pale": "!light", ANY: "!look_alike"},
        help=m.ASK_SIGNS,
        again=m.AGAIN_CHOICE,
    ),
    Question(
        "leaves",
        asks=c.ASK_WHICH_LEAVES,
        reads=Reads.CHOICE,
        keeps="leaves",
        choices=LEAVES,
        goes={"tip": "place", ANY: "!look_alike"},
        help=c.ASK_WHICH_LEAVES,
        again=m.AGAIN_CHOICE,
    ),
    Question(
        "place",
        asks=c.ASK_WHERE,
        reads=Reads.CHOICE,
        keeps="place",
        choices=PLACES,
        goes={"even": "can", ANY: "!look_alike"},
        help=c.ASK_WHERE,
        again=m.AGAIN_CHOICE,
    ),
    Question(
        "can",
        asks=c.ASK_CAN,
        reads=Reads.CAN,
        keeps="can",
        goes={ANY: "!urea"},
        help=m.HELP_PAIL,
        again=c.AGAIN_CAN,
    ),
    Question(
        "weather",
        asks=c.ASK_WATER,
        reads=Reads.CHOICE,
        keeps="weather",
        choices=(
            Choice("rain", c.P_RAIN),
            Choice("flood", c.P_FLOOD),
            Choice("dry", c.P_DRY),
            Choice("cold", c.P_COLD),
        ),
        goes={"rain": "!rain", "flood": "!flood", "dry": "!dry", "cold": "!cold"},
        help=c.ASK_WATER,
        again=m.AGAIN_CHOICE,
    ),
    Question(
        "words",
        asks=m.ASK_WORDS,
        reads=Reads.WORDS,
        keeps="words",
        goes={ANY: "!call"},
        help=m.ASK_WORDS,
        again=m.AGAIN_WORDS,
    ),
)
