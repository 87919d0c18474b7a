"""An officer answers calls for help by SMS: TELL and SEEN."""

from dataclasses import replace

import pytest

from assistant.alphabet import cost
from assistant.wording import messages_officer as o
from assistant.wording import messages_talk as m
from assistant.wording import messages_tell as t
from tests.valley import (
    AMINA,
    BARAKA,
    CODE,
    KIJANI,
    MWANGA,
    OFFICER,
    ZAWADI,
    Staged,
    Valley,
    like,
    numbered,
    settle,
)

YES_NO = numbered(m.YES, m.NO)
OTHER_OFFICER = "+447700900003"


def to_calls(valley: Valley) -> None:
    """Amina (+44 7700 900101) and Baraka (...102) of Kijani called for help; Zawadi is of Mto
    Mwanga, which is another's. It is eight in the morning."""
    settle(valley)
    valley.add_officer(KIJANI)
    valley.add_officer(MWANGA, phone=OTHER_OFFICER)
    for phone, village in ((AMINA, 1), (BARAKA, 1), (ZAWADI, 2)):
        valley.enrol(phone, village=village)
        valley.plan(phone, "5 June")
        valley.text(phone, "OFFICER")
        valley.text(phone, "Come and see my seed")
    for phone in (AMINA, BARAKA, ZAWADI, OFFICER):
        valley.heard(phone)


@pytest.fixture
def called(staged: Staged) -> Valley:
    """At the end of that way."""
    return staged(to_calls)


def _open(valley: Valley) -> list[str]:
    with valley.house.store.look() as work:
        return [call.farmer.phone for call in work.calls.open()]


@pytest.mark.parametrize(
    "number", [AMINA, "00447700900101", "+44 7700 900 101", "0101", "900101,"]
)
def test_words_are_shown_back_then_go_out_and_end_the_call(called: Valley, number: str) -> None:
    """By the whole number or by its end, however it is written."""
    shown = called.text(OFFICER, f"TELL {CODE} {number} Fence the bed, I come at 10.")
    asked = t.ASK_TELL(name="-", phone=AMINA, words="Fence the bed, I come at 10.")
    assert shown == [like(asked, *YES_NO)]
    assert called.heard(AMINA) == []
    assert called.text(OFFICER, "1") == [like(t.TOLD_NOW(phone=AMINA))]
    (heard,) = called.heard(AMINA)
    assert heard.startswith("From Asha, your officer: Fence the bed, I come at 10.")
    assert _open(called) == [BARAKA, ZAWADI]
    with called.house.store.look() as work:
        assert work.audit.latest(1)[0].act == "call_answered"
        assert work.story.calls_of(1)[0].handled_by == "Asha"
        assert work.story.own_words(call_ids=[1])[0].words == "Fence the bed, I come at 10."


def test_a_no_sends_nothing(called: Valley) -> None:
    """And the call stays."""
    called.text(OFFICER, f"TELL {CODE} 0101 Fence the bed.")
    called.text(OFFICER, "2")
    assert called.heard(AMINA) == []
    assert AMINA in _open(called)


def test_words_that_begin_with_a_number_are_no_part_of_the_phone(called: Valley) -> None:
    """The longest number that is somebody's is the number."""
    (shown,) = called.text(OFFICER, f"TELL {CODE} 0101 10 kg of ash round the bed")
    assert shown == like(
        t.ASK_TELL(name="-", phone=AMINA, words="10 kg of ash round the bed"), *YES_NO
    )


def test_a_call_is_closed_without_words(called: Valley) -> None:
    """The officer rang back."""
    assert called.text(OFFICER, f"SEEN {CODE} 0102") == [like(t.SEEN_TO(phone=BARAKA))]
    assert called.heard(BARAKA) == []
    assert _open(called) == [AMINA, ZAWADI]
    for number in (BARAKA, "0102"):  # the end of it is still known
        closed = called.text(OFFICER, f"seen {CODE} {number}")
        assert closed == [like(t.NO_CALL_OPEN(phone=BARAKA))]
    with called.house.store.look() as work:
        assert work.audit.latest(1)[0].act == "call_handled"


@pytest.mark.parametrize(
    "text",
    [
        "TELL {code}",
        "TELL {code} Amina fence the bed",
        "TELL {code} 0101",
        "TELL {code} 0199 Fence the bed",
        "TELL {code} 101 Fence the bed",
        "SEEN {code} 0103",  # another officer's
        "TELL {code} +447700900103 Fence the bed",
    ],
)
def test_what_cannot_be_done_says_what_to_send(called: Valley, text: str) -> None:
    """No number, none of this officer's, or no words: nothing is lost, nothing is sent."""
    assert called.text(OFFICER, text.format(code=CODE)) == [like(t.TELL_HOW)]
    assert _open(called) == [AMINA, BARAKA, ZAWADI]


def test_two_numbers_with_the_same_end_are_asked_apart(called: Valley) -> None:
    """The last four digits are not always enough."""
    twin = "+447700910101"  # reserved for fiction are only 900xxx; never texted here
    with called.house.store.work() as work:
        farmer = work.people.farmer(BARAKA)
        assert farmer is not None
        work.people.save_farmer(replace(farmer, phone=twin))
    assert called.text(OFFICER, f"SEEN {CODE} 0101") == [like(t.TELL_SEVERAL(digits="0101"))]
    assert called.text(OFFICER, f"SEEN {CODE} {AMINA}") == [like(t.SEEN_TO(phone=AMINA))]


def test_at_night_words_wait_and_the_officer_is_told_until_when(called: Valley) -> None:
    """But for an answer to what is urgent."""
    called.text(BARAKA, "OFFICER")
    called.text(BARAKA, "a storm took the cover off")
    called.leap("1 Jun 22:00")
    called.heard(BARAKA)
    called.heard(OFFICER)
    (shown,) = called.text(OFFICER, f"TELL {CODE} 0101 Fence the bed.")
    asked = t.ASK_TELL_LATER(name="-", phone=AMINA, words="Fence the bed.", time="05:30")
    assert shown == like(asked, *YES_NO)
    (done,) = called.text(OFFICER, "1")
    assert done == like(t.TOLD_LATER(phone=AMINA, time="05:30"))
    called.text(OFFICER, f"TELL {CODE} 0102 Stay in, I come.")
    assert called.text(OFFICER, "1") == [like(t.TOLD_NOW(phone=BARAKA))]
    assert "Stay in" in called.heard(BARAKA)[-1]
    assert called.heard(AMINA) == []
    assert _open(called) == [ZAWADI]  # both of Baraka's are answered
    called.leap("2 Jun 05:31")
    assert any("Fence the bed" in text for text in called.heard(AMINA))


def test_who_takes_no_texts_is_to_be_rung(called: Valley) -> None:
    """After STOP."""
    called.text(AMINA, "STOP")
    said = called.text(OFFICER, f"TELL {CODE} 0101 Fence the bed.")
    assert said == [like(t.TELL_CANNOT(phone=AMINA))]
    said = called.text(OFFICER, f"TELL {CODE} 0102 {'w' * 301}")
    assert said == [like(t.TELL_LONG(n=300))]


def test_without_the_code_nothing_is_told(called: Valley) -> None:
    """A lost phone of an officer's, or somebody else's."""
    assert called.text(OFFICER, "TELL 999999 0101 Fence the bed.") == [like(o.NEED_CODE)]
    assert called.text(OFFICER, "TELL 0101 Fence the bed.") == [like(o.NEED_CODE)]
    assert _open(called) == [AMINA, BARAKA, ZAWADI]


def test_an_officer_who_farms_may_begin_a_text_with_tell(called: Valley) -> None:
    """Without a number it is no officer's word."""
    called.enrol(OFFICER)
    called.plan(OFFICER, "5 June")
    said = called.text(OFFICER, "tell me the quantities")
    assert said and like(o.NEED_CODE) not in said


def test_a_village_handed_over_meanwhile_is_not_written_to(called: Valley) -> None:
    """What was asked is looked at once more when it is decided."""
    called.text(OFFICER, f"TELL {CODE} 0101 Fence the bed.")
    with called.house.store.work() as work:
        officer, taker = work.people.officer(OFFICER), work.people.officer(OTHER_OFFICER)
        assert officer is not None and taker is not None
        work.story.hand_over(1, officer.id, taker.id, taker.id, "well", called.now)
    called.text(OFFICER, "1")
    assert called.heard(AMINA) == []
    assert AMINA in _open(called)


def test_the_help_for_officers_names_it_and_fits_three_segments(called: Valley) -> None:
    """TELL and SEEN stand with the other words."""
    (said,) = called.text(OFFICER, "?")
    assert "TELL code number words" in said and "SEEN code number" in said
    assert cost(said).segments <= 3
