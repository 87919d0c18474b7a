"""Work that has begun is neither done nor put off: its question stays open."""

import pytest

from assistant.dialogue.turns import turn
from assistant.wording.messages_tasks import UNDER_WAY
from tests.corpus.talk.judging import outcome
from tests.corpus.talk.moments import MOMENTS

BEGUN = [
    ("en", "transplant", "we are planting now"),
    ("en", "uncover", "removing the straw now"),
    ("en", "transplant", "we started planting today"),
    ("sw", "transplant", "tunapandikiza sasa"),
    ("sw", "sow", "tunasia sasa hivi"),
    ("fr", "transplant", "on repique en ce moment"),
    ("fr", "uncover", "je suis en train de découvrir"),
    ("hi", "sow", "अभी बो रहे हैं"),
    ("hi", "transplant", "abhi ropai chal rahi hai"),
    ("bn", "transplant", "এখন রোপণ করতেছি"),
    ("id", "sow", "sedang tabur"),
    ("vi", "transplant", "đang cấy"),
    ("pt", "transplant", "estamos a transplantar agora"),
    ("fil", "transplant", "nagtatanim kami ngayon"),
]
OTHER = [
    ("en", "transplant", "on friday we are planting"),
    ("en", "transplant", "my neighbour is planting now"),
    ("en", "transplant", "we are planting maize now"),
    ("en", "transplant", "are we planting now?"),
    ("en", "sow", "we are planting now"),
]


@pytest.mark.parametrize(("language", "moment", "text"), BEGUN)
def test_work_that_goes_on_stays_asked(language: str, moment: str, text: str) -> None:
    known = MOMENTS[moment](language)
    answer = turn(text, known)
    assert [say.message for text_ in answer.texts for say in text_.says] == [UNDER_WAY]
    assert not outcome(answer).written
    assert answer.texts[0].focus is not None
    assert answer.texts[0].focus.items == known.items


@pytest.mark.parametrize(("language", "moment", "text"), OTHER)
def test_other_work_is_not_the_one_that_was_asked(
    language: str, moment: str, text: str
) -> None:
    says = [say for each in turn(text, MOMENTS[moment](language)).texts for say in each.says]
    assert UNDER_WAY not in [say.message for say in says]


def test_seed_that_goes_into_water_is_soaked() -> None:
    assert outcome(turn("we are soaking it now", MOMENTS["soak"]("en"))).written == {"done"}
