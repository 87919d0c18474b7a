"""Half a wish for no more texts: the daily ones rest, warnings go on, an officer rings."""

import pytest

from assistant.channel import Channel
from assistant.dialogue.values import Change, PauseTexts, ResumeTexts, StartTexts, StopTexts
from assistant.people import Village
from assistant.service.effects import Scene, carry_out
from assistant.wording import messages_aid as aid
from assistant.wording import messages_officer as o
from assistant.wording import messages_talk as m
from tests.stages import stage
from tests.valley import AMINA, BARAKA, CODE, KIJANI, OFFICER, Valley, like


def change(valley: Valley, *changes: Change, phone: str = AMINA) -> None:
    """What a turn of the dialogue changes."""
    with valley.house.store.work() as work:
        carry_out(changes, Scene(work, valley.house, phone, Channel.SMS, valley.now))
    valley.send()


@stage
def bed(valley: Valley) -> None:
    """Amina has sown today; an officer serves her village."""
    valley.add_officer(KIJANI)
    valley.enrol(AMINA)
    valley.sow(AMINA, "1 June")
    valley.heard(AMINA)


def test_daily_texts_rest_and_the_officer_rings(bed: Valley) -> None:
    """Told once, in the farmer's words, by day."""
    change(bed, PauseTexts("too many of these"), PauseTexts("I said too many"))
    assert bed.heard(OFFICER) == [like(o.HELP_NOTICE)]
    bed.go("4 Jun 20:00")
    assert bed.heard(AMINA) == []
    with bed.house.store.look() as work:
        assert [call.about for call in work.calls.open()] == ["refused"]


def test_warnings_go_on(bed: Valley) -> None:
    """Until a clear word."""
    change(bed, PauseTexts("too many of these"))
    bed.text(OFFICER, f"RAIN {CODE} Kijani 14-20")
    bed.text(OFFICER, "1")
    assert len(bed.heard(AMINA)) == 1


@pytest.mark.parametrize("word", [ResumeTexts(), StartTexts()])
def test_a_clear_word_brings_them_back(bed: Valley, word: Change) -> None:
    """From that day on, with what was missed."""
    change(bed, PauseTexts("too many of these"))
    bed.go("2 Jun 08:00")
    assert bed.heard(AMINA) == []
    change(bed, word)
    bed.go("2 Jun 12:00")
    assert len(bed.heard(AMINA)) == 1


@pytest.mark.parametrize("word", ["no", "NO", "go on", "yes continue", "2", "START"])
def test_the_answer_may_come_days_later(bed: Valley, word: str) -> None:
    """The question stands as long as the texts rest; "yes continue" is no yes to it."""
    bed.text(AMINA, "not for us")
    bed.go("4 Jun 12:00")
    bed.text(AMINA, word)
    with bed.house.store.look() as work:
        farmer = work.people.farmer(AMINA)
    assert farmer is not None and farmer.paused_at is None and farmer.stopped_at is None


def test_a_screen_asks_whether_to_stop_and_not_for_the_work_of_the_day(bed: Valley) -> None:
    bed.text(AMINA, "not for us")
    bed.go("6 Jun 12:00")  # day 5: to be uncovered
    assert aid.ASK_STOP.text in bed.dial(AMINA).text
    assert bed.heard(AMINA) == []


def test_words_of_covering_answer_a_warning_while_texts_rest(bed: Valley) -> None:
    """A warning that came after the question goes before it, with its digits too."""
    bed.text(AMINA, "not for us")
    bed.text(OFFICER, f"RAIN {CODE} Kijani 14-20")
    bed.text(OFFICER, "1")
    assert bed.text(AMINA, "1")[-1] == like(m.WARNING_COVERED)


def test_stop_wins(bed: Valley) -> None:
    """No warning then; START brings all back."""
    change(bed, PauseTexts("too many of these"), StopTexts())
    with bed.house.store.look() as work:
        farmer = work.people.farmer(AMINA)
    assert farmer is not None and farmer.stopped_at and farmer.paused_at is None
    change(bed, PauseTexts("leave me"))
    with bed.house.store.look() as work:
        assert work.people.farmer(AMINA) == farmer


def test_an_invitation_that_may_be_unwanted_is_not_sent_again(
    valley: Valley, kijani: Village
) -> None:
    """Nobody rings; who then says yes has agreed."""
    valley.add_officer(kijani)
    valley.text(OFFICER, f"ADD {CODE} {BARAKA} Kijani Baraka")
    valley.text(OFFICER, "1")
    for phone in (BARAKA, OFFICER):
        valley.heard(phone)
    change(valley, PauseTexts("who gave you my number"), phone=BARAKA)
    valley.go("20 Jun 12:00")
    assert valley.heard(BARAKA) == valley.heard(OFFICER) == []
    with valley.house.store.look() as work:
        farmer = work.people.farmer(BARAKA)
        assert farmer is not None
        enrolment = work.enrolments.get(farmer.id)
        assert enrolment is not None and enrolment.answer == "unsure"
        assert work.enrolments.listed([BARAKA])[BARAKA].refused
    valley.text(BARAKA, "1")
    with valley.house.store.look() as work:
        agreed = work.people.farmer(BARAKA)
    assert agreed is not None and agreed.consent_at is not None


def test_a_stranger_can_ask_for_nothing_to_rest(valley: Valley) -> None:
    """There is nothing."""
    change(valley, PauseTexts("stop it"), ResumeTexts(), phone=BARAKA)
    with valley.house.store.look() as work:
        assert work.people.farmer(BARAKA) is None


def test_texts_only_on_days_with_work(bed: Valley) -> None:
    """What is the same each day is said on its first day; a word brings the rest back."""
    assert bed.text(AMINA, "send only work days") == [like(m.ONLY_WORK)]
    bed.go("1 Jun 20:00")
    bed.heard(AMINA)
    bed.go("4 Jun 20:00")
    assert bed.heard(AMINA) == []
    bed.text(OFFICER, f"RAIN {CODE} Kijani 21-23")
    bed.text(OFFICER, "1")
    assert len(bed.heard(AMINA)) == 1
    bed.go("6 Jun 07:00")
    assert any("ncover" in text for text in bed.heard(AMINA))
    assert bed.text(AMINA, "every day") == [like(m.EVERY_DAY)]


def test_fewer_texts_are_the_way_out_of_stopping(bed: Valley) -> None:
    """Asked whether all shall stop, a farmer may ask for fewer; they rest no longer."""
    change(bed, PauseTexts("you disturb me"))
    bed.text(AMINA, "WORK DAYS")
    with bed.house.store.look() as work:
        farmer = work.people.farmer(AMINA)
    assert farmer is not None
    assert (farmer.only_work, farmer.paused_at) == (True, None)
