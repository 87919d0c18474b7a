"""STOP is obeyed at once, in any language, and START undoes it."""

import pytest

from assistant.people import Village
from assistant.wording import messages_talk as m
from assistant.wording import messages_tasks as t
from tests.valley import AMINA, Staged, Valley, like, settle


def to_amina(valley: Valley) -> None:
    """Amina sows on 10 June."""
    settle(valley)
    valley.enrol(AMINA)
    valley.plan(AMINA, "10 June")
    valley.go("9 Jun 20:30")
    valley.heard(AMINA)


@pytest.fixture
def amina(staged: Staged) -> Valley:
    """At the end of that way."""
    return staged(to_amina)


# English, Swahili (a word list of ours), with a sign, in a sentence
STOPS = ("STOP", "stop.", "Please stop", "stop the messages", "unsubscribe", "acha", "simama")


@pytest.mark.parametrize("word", STOPS)
def test_stop_is_obeyed_at_once_by_words_of_any_language(amina: Valley, word: str) -> None:
    """Her language is English; nothing comes the next morning."""
    assert amina.text(AMINA, word) == [like(m.STOPPED)]
    amina.go("12 Jun 12:00")
    assert amina.heard(AMINA) == []


NOT_STOPS = ("stop the rain", "how do I stop the rats", "it does not stop raining")


@pytest.mark.parametrize("words", NOT_STOPS)
def test_a_question_about_rats_is_no_stop(amina: Valley, words: str) -> None:
    """She is helped, and still gets her texts."""
    assert amina.text(AMINA, words) != [like(m.STOPPED)]
    amina.go("10 Jun 06:00")
    assert len(amina.heard(AMINA)) == 1


def test_what_waits_is_taken_back(amina: Valley) -> None:
    """The operator was down; the prompt of this morning does not come after STOP."""
    amina.operator.down = True
    amina.go("10 Jun 06:00")
    amina.post(AMINA, "STOP")
    amina.operator.down = False
    amina.go("10 Jun 12:00")
    assert amina.heard(AMINA) == [like(m.STOPPED)]


def test_a_stopped_farmer_is_told_how_to_begin_again(amina: Valley) -> None:
    """Whatever she sends; nothing else is done with it."""
    amina.text(AMINA, "STOP")
    for sends in ("hello", "STOP", "MENU", "done"):  # a machine would go on: see floods
        assert amina.text(AMINA, sends) == [like(m.YOU_ARE_STOPPED)]


def test_start_begins_again_with_the_day_as_it_is(amina: Valley) -> None:
    """What was missed meanwhile is caught up, not sent one by one."""
    amina.text(AMINA, "STOP")
    amina.go("12 Jun 12:00")
    assert amina.text(AMINA, "START") == [like(m.STARTED_AGAIN)]
    amina.go("12 Jun 12:05")
    (text,) = amina.heard(AMINA)
    assert text == like(t.HEAD(label="A", day=2), t.CATCH_UP, t.P_SOW, t.ASK_DONE)


def test_start_takes_up_the_talk_that_stop_broke_off(valley: Valley, kijani: Village) -> None:
    """She was asked for the germination."""
    valley.enrol(AMINA)
    valley.text(AMINA, "0.4 ha")
    valley.text(AMINA, "STOP")
    assert valley.text(AMINA, "START")[-1] == like(..., m.ASK_GERMINATION)
    assert valley.text(AMINA, "85") == [like(m.ASK_PAIL, ...)]


def test_a_phone_that_nobody_knows_may_stop_and_then_begin(
    valley: Valley, kijani: Village
) -> None:
    """There is nothing to stop, and it is said all the same."""
    assert valley.text(AMINA, "STOP") == [like(m.STOPPED)]
    assert valley.text(AMINA, "hello") == [like(m.ASK_LANGUAGE, ...)]
