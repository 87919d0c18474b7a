"""Answers of the work in hand, and what can be said at once of a trouble that is told."""

from dataclasses import replace

import pytest

from assistant.agronomy import constants
from assistant.dialogue import endings as e
from assistant.dialogue.advised import advised
from assistant.dialogue.answers import ANSWERS
from assistant.dialogue.values import CallForHelp
from assistant.hearing.matching import Likeness
from assistant.hearing.topics import Topic
from assistant.wording import messages_answers_more as more
from assistant.wording import messages_answers_work as work
from assistant.wording.figures import FIGURES
from assistant.wording.message import Message
from tests.talk import Phone, nursery
from tests.unit.dialogue.test_answers_more import COVERED, OPEN
from tests.valley import like


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("must I moisten the soil first or sow it dry", work.WET_FIRST),
        ("how many weeks before planting is the paddy ploughed", work.FIELD_PREP),
        ("can i soak the seed in a basket", work.SOAK_SACK),
        ("may i spread compost on the growing bed", work.MANURE_TOP),
        ("do i clip the leaf ends before planting", work.CUT_TIPS),
        ("which hour do i spray the urea", work.SPRAY_HOW),
        ("how do i store the plastic till next season", work.KEEP_THINGS),
        ("what does transplant mean", work.WHAT_WORD),
    ],
)
def test_a_question_of_the_work_in_hand_is_answered(text: str, said: Message) -> None:
    heard = Phone.enrolled(COVERED).says(text)
    assert [say.message for each in heard.texts for say in each.says] == [said]


def test_the_day_of_sowing_is_counted_back_also_without_a_plan() -> None:
    """From the ages at which seedlings are planted."""
    says = ANSWERS[Topic.COUNT_BACK]("", Phone.enrolled().known)
    assert says is not None and says[0].message is work.COUNT_BACK


def test_the_days_of_the_field_are_its_sources() -> None:
    """Ploughed as the manual has it; no text bears the number itself."""
    says = ANSWERS[Topic.FIELD_PREP]("", Phone.enrolled(nursery()).known)
    assert says is not None
    assert says[0].slots["plough_days"] == FIGURES["plough_days"]
    assert FIGURES["plough_days"].told == constants.PLOUGH_BEFORE_D.value


def test_a_text_that_was_not_sent_is_no_refusal() -> None:
    """Only the weights hear one: no credit, a text that failed."""
    phone = Phone.enrolled(COVERED)
    assert phone.hears("my message failed, do i pay again") == [like(work.NO_CREDIT)]
    assert not phone.changes


class Sure:
    """A table that hears one question and nothing else."""

    def __init__(self, topic: Topic) -> None:
        self._topic = topic

    def likest(self, text: str, ideas: object) -> tuple[Likeness, ...]:
        return Likeness(self._topic, 0.97), Likeness(None, 0.03)


def told(topic: Topic, **more_known: object) -> list[Message]:
    """What a trouble is answered with by a table that is sure of this question."""
    known = Phone.enrolled(OPEN).known
    ears = replace(known.ears, match=Sure(topic))  # type: ignore[arg-type]
    known = replace(known, ears=ears, **more_known)  # type: ignore[arg-type]
    words = "white fluff under the straw"
    turn = advised(words, e.trouble_told(words, known), known)
    assert [type(change) for change in turn.changes] == [CallForHelp]
    return [say.message for text in turn.texts for say in text.says]


def test_a_trouble_is_passed_on_and_answered_where_the_table_is_sure() -> None:
    """The person and the list stand as before; the answer goes first."""
    assert told(Topic.MOULD)[0] is more.MOULD
    assert told(Topic.MOULD)[1:] == told(Topic.UREA)


def test_no_advice_goes_before_a_storm() -> None:
    """There is other work."""
    assert more.MOULD not in told(Topic.MOULD, raining=True)
