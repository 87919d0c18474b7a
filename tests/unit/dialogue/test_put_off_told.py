"""A reason beside work that was done puts nothing off; half a field with a day to come is no
whole one; a yes to an invitation is no refusal, whatever it weighs."""

import pytest

from assistant.dialogue.turns import turn
from assistant.dialogue.values import AnswerItem, Decline, Enrol, RaiseAlarm, StopTexts
from tests.corpus.talk.judging import DEEDS, outcome
from tests.corpus.talk.moments import MOMENTS


@pytest.mark.parametrize(
    ("language", "moment", "text"),
    [
        ("vi", "transplant", "cay het ruong hom nay luc 3h chieu, muon 5 nguoi"),
        ("bn", "transplant", "কামলা লইয়া রোয়া শেষ করলাম জোহরের আজানের আগেই"),
        ("sw", "drain", "kijana amefungua mdomo wa mfereji jana jioni maji yametoka yoote"),
        ("en", "transplant", "we planted it all with five hired hands before the rain came"),
    ],
)
def test_a_reason_beside_work_that_was_done_puts_nothing_off(
    language: str, moment: str, text: str
) -> None:
    told = turn(text, MOMENTS[moment](language))
    assert "not_yet" not in {c.answer for c in told.changes if isinstance(c, AnswerItem)}


@pytest.mark.parametrize(
    ("language", "text"),
    [
        ("fil", "kalahati p lng natanim, naubusan ng tao, sa lunes ulit"),
        ("en", "half is planted, we ran out of people, again on monday"),
    ],
)
def test_half_a_field_and_a_day_to_come_is_not_planted(language: str, text: str) -> None:
    told = turn(text, MOMENTS["transplant"](language))
    assert "done" not in {c.answer for c in told.changes if isinstance(c, AnswerItem)}


@pytest.mark.parametrize(
    ("language", "text"),
    [
        ("fr", "oui dac vous pouvez m inscrire eka"),
        ("bn", "হ্যাঁ হ্যাঁ আমাকেও নিন, শিখব"),
        ("en", "yes put my name also"),
    ],
)
def test_a_yes_to_an_invitation_is_no_refusal(language: str, text: str) -> None:
    changes = turn(text, MOMENTS["consent"](language)).changes
    assert not any(isinstance(each, Decline) for each in changes)
    assert any(isinstance(each, Enrol) for each in changes)


def test_yes_and_a_plain_refusal_is_a_refusal() -> None:
    changes = turn("yes yes, stop sending me messages", MOMENTS["consent"]("en")).changes
    assert not any(isinstance(each, Enrol) for each in changes)


@pytest.mark.parametrize("moment", ["soak", "sow", "uncover"])
def test_a_cry_made_of_the_words_of_work_is_no_work(moment: str) -> None:
    changes = turn("water has entered the bed seed all floating", MOMENTS[moment]("en")).changes
    assert any(isinstance(each, RaiseAlarm) for each in changes)
    assert not any(isinstance(each, AnswerItem) for each in changes)


@pytest.mark.parametrize(
    ("language", "moment", "text"),
    [
        ("fr", "fill", "fini !! enfin... fini le mariage de ma cousine, repiquage c lundi"),
        ("fr", "drain", "la pirogue est revenue vide"),
    ],
)
def test_something_else_that_is_over_is_no_work(language: str, moment: str, text: str) -> None:
    changes = turn(text, MOMENTS[moment](language)).changes
    assert not any(isinstance(each, AnswerItem) for each in changes)


@pytest.mark.parametrize(
    ("language", "text", "leaves"),
    [
        ("en", "two leafs each, most of them", "2"),
        ("pt", "duas folhinhas cada", "2"),
        ("sw", "kila mche una majani mawili hv", "2"),
        ("hi", "दो ठो पत्ता निकला है हर पौधा में", "2"),
    ],
)
def test_so_many_leaves_each_are_leaves(language: str, text: str, leaves: str) -> None:
    changes = turn(text, MOMENTS["leaves"](language)).changes
    assert leaves in {each.answer for each in changes if isinstance(each, AnswerItem)}


@pytest.mark.parametrize("text", ["2 buckets each", "2 goats each house"])
def test_so_many_of_something_else_each_are_none(text: str) -> None:
    changes = turn(text, MOMENTS["leaves"]("en")).changes
    assert not any(isinstance(each, AnswerItem) for each in changes)


@pytest.mark.parametrize(
    ("language", "text"),
    [
        ("fr", "ok je suis partant inscrivez"),
        ("fil", "cge go aq dyan, isama nyo ko"),
        ("id", "yo gelem, daftarin sy"),
    ],
)
def test_an_ok_to_an_invitation_is_no_refusal(language: str, text: str) -> None:
    changes = turn(text, MOMENTS["consent"](language)).changes
    assert not any(isinstance(each, Decline) for each in changes)


@pytest.mark.parametrize(
    ("language", "text"),
    [
        ("bn", "আমরার ইতা লাগতো নায়"),
        ("hi", "हमरा ई सब झमेला में नै पड़ना"),
        ("id", "moh, ora melu2 ngono kuwi"),
        ("pt", "n ka misti es kusa"),
    ],
)
def test_an_invitation_is_refused_in_dialect(language: str, text: str) -> None:
    changes = turn(text, MOMENTS["consent"](language)).changes
    assert any(isinstance(each, Decline) for each in changes)


@pytest.mark.parametrize(
    ("language", "moment", "text"),
    [
        ("hi", "drain", "paani kaadh diya"),
        ("bn", "uncover", "খ্যাড় তুলসি"),
        ("fil", "transplant", "natnim n lahat"),
        ("sw", "warning", "tushafinika"),
        ("sw", "drain", "maji yashatoka"),
        ("id", "drain", "wes asat"),
        ("pt", "sow", "semiei dja"),
        ("en", "transplant", "planted all tdy ji"),
    ],
)
def test_a_plain_deed_in_dialect_is_taken(language: str, moment: str, text: str) -> None:
    assert outcome(turn(text, MOMENTS[moment](language))).written & DEEDS


def test_bells_that_stop_are_no_refusal() -> None:
    changes = turn("the bells just stop near my nursery", MOMENTS["night"]("en")).changes
    assert not any(isinstance(each, StopTexts) for each in changes)
