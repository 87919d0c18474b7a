"""A number that counts something else is never kept as what was asked for."""

import pytest

from assistant.dialogue import conversations as talks
from assistant.dialogue.engine import begin
from assistant.dialogue.questions import Conversation, Question, Reads
from assistant.dialogue.readers import hear
from tests.talk import Phone, nursery

COUNTS = frozenset(
    {Reads.LITRES, Reads.CAN, Reads.SHOOTS, Reads.MATS, Reads.LOST, Reads.LEAVES}
)
ASKED = [
    pytest.param(table, question, id=f"{table.name}.{question.step}")
    for table in talks.TABLES.values()
    for question in table.questions.values()
    if question.reads in COUNTS
]


@pytest.mark.parametrize(("table", "question"), ASKED)
@pytest.mark.parametrize("text", ["it rained 3 times", "my son is 4 years old", "2 cows died"])
def test_another_number_is_not_taken(
    table: Conversation, question: Question, text: str
) -> None:
    """It is read back or refused."""
    known = Phone.enrolled(nursery()).known
    session = begin(table, None, nursery=1)
    assert not hear(text, question, session, known).sure
