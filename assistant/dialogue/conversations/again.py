"""A bed that is sown again: what happened to the seed, and which seed is sown now."""

from dataclasses import replace

from assistant.dialogue.questions import ANY, Choice, Question, Reads, conversation
from assistant.wording import messages_again as again_texts
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
    Choice("seed_same", again_texts.SAME),
    Choice("seed_other", again_texts.OTHER),
    Choice("seed_none", again_texts.NONE),
)

AGAIN = conversation(
    "again",
    1,
    _NURSERY,
    Question(
        "cause",
        asks=again_texts.ASK_CAUSE,
        reads=Reads.CHOICE,
        keeps="cause",
        choices=(
            Choice("cause_dead", again_texts.DEAD),
            Choice("cause_rotten", again_texts.ROTTEN),
            Choice("cause_deep", again_texts.DEEP),
            Choice("cause_washed", again_texts.WASHED),
            Choice("cause_eaten", again_texts.EATEN),
            Choice("cause_unsure", again_texts.UNSURE),
        ),
        goes={ANY: "seed"},
        help=again_texts.ASK_CAUSE,
        again=m.AGAIN_CHOICE,
    ),
    Question(
        "seed",
        asks=again_texts.ASK_SEED,
        reads=Reads.CHOICE,
        keeps="seed",
        choices=_SEEDS,
        goes={ANY: "!again"},
        help=again_texts.ASK_SEED,
        again=m.AGAIN_CHOICE,
    ),
)

NO_SEED = conversation(
    "no_seed",
    1,
    replace(_NURSERY, goes={ANY: "seed"}),
    Question(
        "seed",
        asks=again_texts.ASK_SEED,
        reads=Reads.CHOICE,
        keeps="seed",
        choices=_SEEDS,
        goes={ANY: "!seed_now"},
        help=again_texts.ASK_SEED,
        again=m.AGAIN_CHOICE,
    ),
)

SOWN_AGAIN = conversation(
    "sown_again",
    1,
    Question(
        "all",
        asks=again_texts.ASK_ALL,
        reads=Reads.YES_NO,
        keeps="all",
        goes={"yes": "!sown_again", "no": "!some_again"},
        help=again_texts.ASK_ALL,
        again=m.AGAIN_YES_NO,
    ),
)

UNCOVERED_EARLY = conversation(
    "uncovered_early",
    1,
    Question(
        "up",
        asks=again_texts.ASK_UP,
        reads=Reads.YES_NO,
        keeps="up",
        goes={"yes": "!up_early", "no": "!cover_again"},
        help=again_texts.ASK_UP,
        again=m.AGAIN_YES_NO,
    ),
)
