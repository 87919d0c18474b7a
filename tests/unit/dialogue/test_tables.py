"""Every table of questions is walked: no dead end, each target exists, each can be helped."""

from dataclasses import replace
from pathlib import Path

import pytest
from _pytest.mark.structures import ParameterSet

from assistant import dialogue
from assistant.agronomy.calendar import TaskCode
from assistant.dialogue import conversations as talks
from assistant.dialogue.answering import ENDINGS
from assistant.dialogue.questions import ANY, Choice, Conversation, Question, Reads, faults
from assistant.dialogue.readers import READERS
from assistant.dialogue.values import Kept, Session
from assistant.wording import messages_talk as m
from tests.talk import TODAY, Phone, item, nursery
from tests.valley import like, numbered

ENDS = frozenset(ENDINGS)

RAINS: dict[str, Kept] = {
    "village_id": 1,
    "village": "Kijani",
    "starts_at": "2026-06-01T14:00:00+03:00",
    "ends_at": "2026-06-01T20:00:00+03:00",
    "from_time": "14:00",
    "to_time": "20:00",
    "sowing": "2026-06-01",
    "phones": 2,
    "young": 2,
    "soon": 1,
}
TELLING: dict[str, Kept] = {
    "farmer_id": 1,
    "name": "Amina",
    "phone": "+447700900101",
    "words": "Keep the cover on",
}

# What a session holds by the time its later questions are asked.
GIVEN: dict[str, dict[str, Kept]] = {
    "plan": {
        "area": 4000.0,
        "area_words": "0.4 ha",
        "germination_heard": 30.0,
        "germination": 85.0,
        "pail": 10.0,
        "sowing": "2026-05-28",
    },
    "when_sow": {"water": "2026-06-01", "ripens": 115},
    "tin": {"nursery": 1},
    "close": {"nursery": 1},
    "dates": {"nursery": 1, "sowing": "2026-05-28"},
    "sow_then": {"nursery": 1, "sowing": "2026-05-28"},
    "plant_then": {"nursery": 1, "transplanting": "2026-06-28"},
    "uncovered_then": {"nursery": 1, "day": "2026-06-01"},
    "planted_then": {"nursery": 1, "day": "2026-06-01"},
    "asked": {"words": "how much?"},
    "uncovered_early": {"nursery": 1},
    "leaves": {"nursery": 1},
    "planting": {"nursery": 1},
    "recount": {"nursery": 1},
    "trouble": {"nursery": 1},
    "seed_test": {"nursery": 1},
    "emergence": {"nursery": 1, "shoots": 20},
    "result": {"nursery": 1},
    "soaking": {"nursery": 1},
    "uncovered": {"nursery": 1, "task": "1:uncover_flood:2026-06-01"},
    "if_lost": {"words": "all is gone"},
    "seed_used": {"season": 1, "label": "A", "practice": "mat", "seed": 9.1},
    "stopping": {"reading": "stop"},
    "invited": {"officer": "Asha"},
    "invited_free": {"officer": "Asha"},
    "adding": {
        "phone": "+447700900105",
        "name": "Amina",
        "village": "Kijani",
        "speaks": "English",
        "speaks_code": "en",
    },
    "telling": TELLING,
    "telling_later": {**TELLING, "time": "05:30"},
    "rain_warning": RAINS,
    "danger_warning": {**RAINS, "danger": "cold"},
    "days_warning": {**RAINS, "danger": "pests", "best_last": "2026-06-07"},
}


QUESTIONS = [
    (table, question)
    for table in talks.TABLES.values()
    for question in table.questions.values()
]


def _row(table: Conversation, question: Question) -> ParameterSet:
    return pytest.param(table, question, id=f"{table.name}.{question.step}")


ROWS = [_row(table, question) for table, question in QUESTIONS]


def open_at(table: Conversation, question: Question) -> Phone:
    """A farmer with two nurseries, a task of each open, to whom a question was put."""
    phone = Phone.enrolled(nursery("A", sow=TODAY), nursery("B", sow=TODAY))
    if table is talks.WHICH:
        phone.asked(item(TaskCode.SOW), item(TaskCode.SOW, nursery_id=2))
    given = {k: v for k, v in GIVEN.get(table.name, {}).items() if k != question.keeps}
    session = Session(table.name, table.version, question.step, answers=given)
    if table is talks.SIGNUP:
        phone = Phone.new()
    phone.known = replace(phone.known, session=session)
    return phone


def test_no_table_has_a_fault() -> None:
    """No way to nowhere, no dead end, no question that nobody reaches."""
    found = [fault for table in talks.TABLES.values() for fault in faults(table, ENDS)]
    assert found == []


def test_each_kind_of_question_has_its_reader() -> None:
    """A question without one could never be answered."""
    assert set(READERS) == set(Reads)


def test_every_ending_is_led_to() -> None:
    """An ending that no question leads to is dead code."""
    led_to = {
        target
        for table in talks.TABLES.values()
        for question in table.questions.values()
        for target in question.goes.values()
        if target.startswith("!")
    }
    assert led_to == ENDS


@pytest.mark.parametrize(("table", "question"), ROWS)
def test_each_question_can_be_asked_and_helped(table: Conversation, question: Question) -> None:
    """HELP says the question's own help and puts it again; once, where they are the same."""
    phone = open_at(table, question)
    outcome = phone.says("HELP")
    (text,) = outcome.texts
    said = list(dict.fromkeys((question.help, question.asks)))
    assert [say.message for say in text.says][: len(said)] == said
    assert phone.known.session is not None
    assert phone.known.session.step == question.step


@pytest.mark.parametrize(("table", "question"), ROWS)
def test_each_question_can_be_left_for_the_menu_or_sign_up(
    table: Conversation, question: Question
) -> None:
    """MENU is a way out of all of them; who is not enrolled has sign-up for a menu."""
    phone = open_at(table, question)
    outcome = phone.says("MENU")
    asked = {say.message for text in outcome.texts for say in text.says}
    assert (m.ASK_MENU if table is not talks.SIGNUP else question.asks) in asked


@pytest.mark.parametrize(("table", "question"), ROWS)
def test_each_question_can_be_gone_back_from(table: Conversation, question: Question) -> None:
    """BACK leads to the question before, or to the menu; never to a failure."""
    phone = open_at(table, question)
    assert phone.says("BACK").texts


@pytest.mark.parametrize(("table", "question"), ROWS)
def test_each_question_can_be_stopped(table: Conversation, question: Question) -> None:
    """STOP is obeyed at once, wherever it is said."""
    phone = open_at(table, question)
    assert phone.hears("STOP") == [like(m.STOPPED)]


READ = [
    _row(table, question) for table, question in QUESTIONS if question.reads is not Reads.WORDS
]


@pytest.mark.parametrize(("table", "question"), READ)
def test_nonsense_is_answered_with_what_to_send(
    table: Conversation, question: Question
) -> None:
    """The question's own refusal, and the question again or its example; where words are asked
    for, any are an answer."""
    phone = open_at(table, question)
    outcome = phone.says("qwrtz plmnk")
    asked = {say.message for text in outcome.texts for say in text.says}
    only_offers = table is talks.STEPS
    assert (m.DID_NOT_UNDERSTAND if only_offers else question.again) in asked
    assert phone.known.session is not None and phone.known.session.step == question.step


def test_a_table_with_every_fault_is_told_all_of_them() -> None:
    """The walk itself can fail."""

    def question(step: str, goes: dict[str, str], *codes: str) -> Question:
        choices = tuple(Choice(code, m.YES) for code in codes)
        return Question(
            step, m.HELP, Reads.CHOICE, goes, m.HELP, m.AGAIN_CHOICE, choices=choices
        )

    broken = Conversation(
        "broken",
        1,
        "first",
        {
            "first": question("first", {"a": "nowhere", "b": "!never"}, "a", "b", "c"),
            "stuck": question("stuck", {}),
            "fine": question("fine", {ANY: "stuck"}),
        },
    )
    assert faults(broken, frozenset({"!open"})) == [
        "broken.first: a choice has no way on",
        "broken.first goes to the unknown 'nowhere'",
        "broken.first goes to the unknown '!never'",
        "broken.stuck leads nowhere",
        "broken.fine is never reached",
    ]


def test_choices_are_numbered_from_one() -> None:
    """The menu, as a farmer reads it."""
    phone = Phone.enrolled(nursery())
    labels = [choice.label for choice in talks.MENU.questions["menu"].choices]
    assert phone.hears("MENU") == [like(m.ASK_MENU, *numbered(*labels))]


def test_every_answer_that_is_kept_is_used() -> None:
    """Who adds a question is told where its answer is still missing."""
    room = Path(dialogue.__file__).parent
    code = "".join(path.read_text("utf-8") for path in room.glob("*.py"))
    unused = [
        f"{table.name}.{question.step} keeps {question.keeps!r}, which no ending reads"
        for table in talks.TABLES.values()
        for question in table.questions.values()
        if question.keeps
        and set(question.goes) == {ANY}  # else the answer has done its work by where it leads
        and f'"{question.keeps}"' not in code
    ]
    assert unused == []
