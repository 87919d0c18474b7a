"""The second menu: seed, tips for the day's work, and the season's result."""

from assistant.dialogue.questions import Choice, Question, Reads, conversation
from assistant.wording import messages_care as c
from assistant.wording import messages_planting as g
from assistant.wording import messages_talk as m

MORE = conversation(
    "more",
    1,
    Question(
        "more",
        asks=c.ASK_MORE,
        reads=Reads.CHOICE,
        choices=(
            Choice("test", c.T_TEST),
            Choice("salt", c.T_SALT),
            Choice("soak", c.T_SOAK),
            Choice("site", c.T_SITE),
            Choice("water", c.T_WATER),
            Choice("plant", c.T_PLANT),
            Choice("spare", c.T_SPARE),
            Choice("result", c.T_RESULT),
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
