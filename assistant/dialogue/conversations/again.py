"""A bed that is sown again: what happened to the seed, and which seed is sown now."""

from dataclasses import replace

from assistant.dialogue.questions import ANY, Choice, Question, Reads, conversation
from assistant.wording import messages_again as a
from assistant.wording import messages_talk as m

_NURSERY = Question(
    "nursery",
    asks=m.ASK_NURSERY,
    reads=Reads.NURSERY,
    keeps="nursery",
    goes={ANY: "cause"},
    help=m.HELP,
    again=m.AGAIN_CHOICE,
)

_SEEDS = (
    Choice("seed_same", a.SAME),
    Choice("seed_other", a.OTHER),
    Choice("seed_none", a.NONE),
)

AGAIN = conversation(
    "again",
    1,
    _NURSERY,
    Question(
        "cause",
        asks=a.ASK_CAUSE,
        reads=Reads.CHOICE,
        keeps="cause",
        choices=(
            Choice("cause_dead", a.DEAD),
            Choice("cause_rotten", a.ROTTEN),
            Choice("cause_deep", a.DEEP),
            Choice("cause_washed", a.WASHED),
            Choice("cause_eaten", a.EATEN),
            Choice("cause_unsure", a.UNSURE),
        ),
        goes={ANY: "seed"},
        help=a.ASK_CAUSE,
        again=m.AGAIN_CHOICE,
    ),
    Question(
        "seed",
        asks=a.ASK_SEED,
        reads=Reads.CHOICE,
        keeps="seed",
        choices=_SEEDS,
        goes={ANY: "!again"},
        help=a.ASK_SEED,
        again=m.AGAIN_CHOICE,
    ),
)

NO_SEED = conversation(
    "no_seed",
    1,
    replace(_NURSERY, goes={ANY: "seed"}),
    Question(
        "seed",
        asks=a.ASK_SEED,
        reads=Reads.CHOICE,
        keeps="seed",
        choices=_SEEDS,
        goes={ANY: "!seed_now"},
        help=a.ASK_SEED,
        again=m.AGAIN_CHOICE,
    ),
)

SOWN_AGAIN = conversation(
    "sown_again",
    1,
    Question(
        "all",
        asks=a.ASK_ALL,
        reads=Reads.YES_NO,
        keeps="all",
        goes={"yes": "!sown_again", "no": "!some_again"},
        help=a.ASK_ALL,
        again=m.AGAIN_YES_NO,
    ),
)

UNCOVERED_EARLY = conversation(
    "uncovered_early",
    1,
    Question(
        "up",
        asks=a.ASK_UP,
        reads=Reads.YES_NO,
        keeps="up",
        goes={"yes": "!up_early", "no": "!cover_again"},
        help=a.ASK_UP,
        again=m.AGAIN_YES_NO,
    ),
)
