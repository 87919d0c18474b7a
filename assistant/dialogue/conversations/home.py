"""The menu and the short talks that it leads to."""

from assistant.dialogue.questions import ANY, Choice, Question, Reads, conversation
from assistant.wording import messages_aid as aid
from assistant.wording import messages_care as care
from assistant.wording import messages_talk as m
from assistant.wording import messages_tasks as t

MENU = conversation(
    "menu",
    1,
    Question(
        "menu",
        asks=m.ASK_MENU,
        reads=Reads.CHOICE,
        choices=(
            Choice("today", m.MENU_TODAY),
            Choice("quantities", m.MENU_QUANTITIES),
            Choice("date", m.MENU_DATE),
            Choice("problem", m.MENU_PROBLEM),
            Choice("officer", m.MENU_OFFICER),
            Choice("new", m.MENU_NEW),
            Choice("close", m.MENU_CLOSE),
            Choice("language", m.MENU_LANGUAGE),
            Choice("more", care.MENU_MORE),
        ),
        goes={
            "today": "!today",
            "quantities": "!quantities",
            "date": "!dates",
            "problem": "!problem",
            "officer": "!officer",
            "new": "!plan",
            "close": "!close",
            "language": "!language",
            "more": "!more",
        },
        help=m.HELP,
        again=m.AGAIN_CHOICE,
    ),
)

LANGUAGE = conversation(
    "language",
    1,
    Question(
        "language",
        asks=m.ASK_LANGUAGE,
        reads=Reads.LANGUAGE,
        keeps="language",
        goes={ANY: "!set_language"},
        help=m.HELP,
        again=m.AGAIN_CHOICE,
    ),
)

CLOSE = conversation(
    "close",
    1,
    Question(
        "nursery",
        asks=m.ASK_NURSERY,
        reads=Reads.NURSERY,
        keeps="nursery",
        goes={ANY: "sure"},
        help=m.HELP,
        again=m.AGAIN_CHOICE,
    ),
    Question(
        "sure",
        asks=m.ASK_CLOSE,
        reads=Reads.YES_NO,
        goes={"yes": "!closed", "no": "!kept"},
        help=m.HELP,
        again=m.AGAIN_YES_NO,
    ),
)

STOPPING = conversation(
    "stopping",
    1,
    Question(
        "sure",
        asks=m.CONFIRM_READING,
        reads=Reads.YES_NO,
        goes={"yes": "!stop", "no": "!kept"},
        help=m.HELP,
        again=m.AGAIN_YES_NO,
    ),
)

OFFICER = conversation(
    "officer",
    1,
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

WHICH = conversation(
    "which",
    1,
    Question(
        "task",
        asks=m.WHICH_TASK,
        reads=Reads.TASK,
        keeps="task",
        goes={ANY: "state"},
        help=m.HELP,
        again=m.AGAIN_CHOICE,
    ),
    Question(
        "state",
        asks=m.ASK_STATE,
        reads=Reads.CHOICE,
        keeps="answer",
        choices=(Choice("done", t.DONE), Choice("not_yet", t.NOT_YET)),
        goes={ANY: "!which_done"},
        help=m.HELP,
        again=m.AGAIN_CHOICE,
    ),
)

UNCOVERED = conversation(
    "uncovered",
    1,
    Question(
        "uncovered",
        asks=aid.UP_SO_UNCOVER,
        reads=Reads.CHOICE,
        keeps="answer",
        choices=(Choice("done", t.DONE), Choice("not_yet", t.NOT_YET)),
        goes={ANY: "!uncovered"},
        help=aid.UP_SO_UNCOVER,
        again=m.AGAIN_CHOICE,
    ),
)
