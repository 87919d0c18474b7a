"""A cry is answered in the language that it was written in; a digit behind a word that opened
nothing answers nothing; a denial and a day to come beside a deed."""

from dataclasses import replace

import pytest

from assistant.dialogue.turns import turn
from assistant.dialogue.values import RaiseAlarm
from tests.corpus.talk.judging import DEEDS, outcome
from tests.corpus.talk.moments import MOMENTS


@pytest.mark.parametrize(
    ("enrolled", "text", "answered"),
    [
        ("en", "nyoka kamuuma mtoto wangu", "sw"),
        ("sw", "mon fils a été mordu par un serpent", "fr"),
        ("en", "मेरे बेटे को सांप ने काट लिया", "hi"),
        ("id", "con rắn cắn con tôi", "vi"),
        ("en", "my child was bitten by a snake", None),
        ("fr", "mon fils a été mordu par un serpent", None),
    ],
)
def test_a_cry_is_answered_in_the_language_it_was_written_in(
    enrolled: str, text: str, answered: str | None
) -> None:
    """None: in the person's own."""
    heard = turn(text, MOMENTS["sow"](enrolled))
    assert any(isinstance(change, RaiseAlarm) for change in heard.changes)
    assert heard.language == answered


@pytest.mark.parametrize(
    ("language", "text"),
    [("en", "snake"), ("sw", "nyoka"), ("fr", "serpent"), ("bn", "সাপ"), ("vi", "rắn")],
)
def test_a_bare_word_of_danger_is_asked_about_and_a_person_knows(
    language: str, text: str
) -> None:
    """Nobody texts it at night for nothing."""
    assert "harm" in outcome(turn(text, MOMENTS["night"](language))).reached


def test_rain_that_fell_three_times_is_no_third_pail() -> None:
    """The word opened nothing, so that the digit behind it is no answer to what was asked."""
    known = MOMENTS["signup"]("sw")
    for text in ("ekari 1", "80%"):
        known = replace(known, session=turn(text, known).session)
    session = turn("mvua imenyesha mara 3", known).session
    assert session is not None
    assert "pail" not in session.answers


@pytest.mark.parametrize(
    ("language", "moment", "text"),
    [
        ("hi", "soak", "बीज पानी में नहीं है"),
        ("pt", "soak", "a semente nao esta na agua"),
        ("vi", "transplant", "chồng tôi thứ sáu cấy"),
        ("sw", "uncover", "maji yameingia kitaluni"),
        ("id", "sow", "tetangga saya sudah tabur"),
        ("en", "uncover", "the wind removed the cover last night"),
        ("hi", "drain", "मजदूरों को पानी दिया"),
        ("hi", "uncover", "पानी क्यारी में आ गया बीज बह गया"),
        ("bn", "sow", "জমি চাষ শেষ"),
    ],
)
def test_what_was_denied_or_done_by_another_is_no_deed(
    language: str, moment: str, text: str
) -> None:
    """A denial beside the words of a deed, a day to come, a neighbour, the wind, a flood."""
    assert not outcome(turn(text, MOMENTS[moment](language))).written & DEEDS


@pytest.mark.parametrize(
    ("language", "moment", "text"),
    [
        ("en", "uncover", "we removed the cover and flooded"),
        ("en", "cover", "i put stones on the sheet so the wind wont take it"),
        ("en", "sow", "sowed today with two neighbours"),
        ("fr", "drain", "jai ouvert, toute l'eau est partie"),
        ("sw", "fill", "nimepanda tena sehemu zilizokosa"),
        ("id", "uncover", "tutup sy buka trus kasih air"),
        ("hi", "transplant", "ropai somvar ko khatam ho gayi"),
        ("bn", "fill", "ফাঁকা জায়গায় আবার চারা দিয়েছি"),
        ("vi", "soak", "giống nằm trong nước rồi"),
        ("fil", "fill", "nagtanim ulit ako sa mga bakante"),
        ("pt", "uncover", "tirei a palha e meti agua"),
    ],
)
def test_a_deed_in_natural_words_is_taken_at_once(
    language: str, moment: str, text: str
) -> None:
    """With who, when, why and how beside it."""
    at = {"cover": "warning"}.get(moment, moment)
    assert outcome(turn(text, MOMENTS[at](language))).written & DEEDS


@pytest.mark.parametrize(
    ("language", "text"),
    [
        ("en", "my son is helping me on the farm"),
        ("sw", "mtoto yuko shambani ananisaidia"),
        ("fr", "mon oncle a acheté une chevre"),
        ("vi", "con trau cay ca ngay"),
        ("id", "kerbau membajak seharian"),
        ("fil", "natutulog si lola"),
        ("hi", "dadi so rahi hai"),
        ("bn", "chacha chagol kinse"),
        ("pt", "a minha vaca teve um bezerro"),
    ],
)
def test_kin_and_animals_at_ordinary_things_ring_no_alarm(language: str, text: str) -> None:
    """They stand in every cry, and in every day."""
    reached = outcome(turn(text, MOMENTS["nothing"](language))).reached
    assert not reached & {"harm", "die", "danger", "refuse"}
