"""The second menu: seed, tips for the day's work, and the season's result."""

from assistant.dialogue.questions import Choice, Question, Reads, conversation
from assistant.wording import messages_care as care
from assistant.wording import messages_planting as g
from assistant.wording import messages_talk as m

MORE = conversation(
    "more",
    1,
    Question(
        "more",
        asks=care.ASK_MORE,
        reads=Reads.CHOICE,
        choices=(
            Choice("test", care.T_TEST),
            Choice("salt", care.T_SALT),
            Choice("soak", care.T_SOAK),
            Choice("site", care.T_SITE),
            Choice("water", care.T_WATER),
            Choice("plant", care.T_PLANT),
            Choice("spare", care.T_SPARE),
            Choice("result", care.T_RESULT),
            Choice("leaves", g.T_LEAVES),
        ),
        goes={
            "test": "!seed_test",
            "salt": "!salt",
            "soak": "!soaking",
            "site": "!site",
            "water": "!watering",
            "plant": "!planting",
            "spare": "!spare",
            "result": "!result_of",
            "leaves": "!recount",
        },
        help=m.HELP,
        again=m.AGAIN_CHOICE,
    ),
)
