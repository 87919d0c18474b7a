"""A cry of few words that a rule knows is no talk of something else, whatever it weighs."""

import pytest

from assistant.dialogue.turns import turn
from assistant.dialogue.values import RaiseAlarm
from assistant.hearing import Kind
from tests.corpus.talk.moments import MOMENTS


@pytest.mark.parametrize("moment", ["nothing", "stopped", "night", "sow"])
@pytest.mark.parametrize("language", ["sw", "en"])
def test_a_snake_bite_in_two_words_is_sure(language: str, moment: str) -> None:
    changes = turn("nyoka kaniuma", MOMENTS[moment](language)).changes
    alarm = next(each for each in changes if isinstance(each, RaiseAlarm))
    assert alarm.kind is Kind.SNAKE and alarm.sure
