"""The season's result: mats left or short, the field planted, sown again or not."""

from assistant.dialogue.questions import ANY, Choice, Question, Reads, conversation
from assistant.wording import messages_practice as p
from assistant.wording import messages_result as r
from assistant.wording import messages_talk as m

SEED_USED = conversation(
    "seed_used",
    1,
    Question(
        "used",
        asks=r.ASK_SEED_USED,
        reads=Reads.SEED_KG,
        keeps="used",
        choices=(Choice("planned", r.AS_PLANNED),),
        goes={ANY: "!seed_used"},
        help=r.AGAIN_SEED_USED,
        again=r.AGAIN_SEED_USED,
    ),
)

RESULT = conversation(
    "result",
    1,
    Question(
        "nursery",
        asks=m.ASK_NURSERY,
        reads=Reads.NURSERY,
        keeps="nursery",
        goes={ANY: "mats"},
        help=m.HELP,
        again=m.AGAIN_CHOICE,
    ),
    Question(
        "mats",
        asks=r.ASK_MATS,
        reads=Reads.SUFFICED,
        keeps="sufficed",
        choices=(
            Choice("left", r.MATS_LEFT),
            Choice("enough", r.JUST_ENOUGH),
            Choice("short", r.TOO_FEW),
        ),
        goes={"left": "left", "bed_left": "bed_left", "enough": "resown", "short": "planted"},
        help=r.ASK_MATS,
        again=m.AGAIN_CHOICE,
    ),
    Question(
        "left",
        asks=r.ASK_LEFT,
        reads=Reads.MATS,
        keeps="left",
        goes={ANY: "resown"},
        help=r.ASK_LEFT,
        again=m.AGAIN_COUNT,
    ),
    Question(
        "bed_left",
        asks=p.ASK_BED_LEFT,
        reads=Reads.CHOICE,
        keeps="bed_left",
        choices=(
            Choice("10", p.A_LITTLE),
            Choice("25", r.A_QUARTER),
            Choice("50", r.HALF),
        ),
        goes={ANY: "resown"},
        help=p.ASK_BED_LEFT,
        again=m.AGAIN_CHOICE,
    ),
    Question(
        "planted",
        asks=r.ASK_PLANTED,
        reads=Reads.PLANTED,
        keeps="planted",
        choices=(
            Choice("90", r.NEARLY_ALL),
            Choice("75", r.THREE_QUARTERS),
            Choice("50", r.HALF),
            Choice("25", r.A_QUARTER),
        ),
        goes={ANY: "resown"},
        help=r.AGAIN_PLANTED,
        again=r.AGAIN_PLANTED,
    ),
    Question(
        "resown",
        asks=r.ASK_RESOWN,
        reads=Reads.DEED,
        keeps="resown",
        goes={"yes": "!result", "no": "!result"},
        help=r.ASK_RESOWN,
        again=m.AGAIN_YES_NO,
    ),
)
