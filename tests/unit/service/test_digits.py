"""What a bare digit answers: the last numbered text that reached the phone."""

import pytest

from assistant.agronomy.calendar import TaskCode
from assistant.channel import Outgoing
from assistant.people import Village
from assistant.reminders.values import State
from assistant.wording import messages_rain as r
from assistant.wording import messages_talk as m
from assistant.wording import messages_tasks as t
from tests.valley import AMINA, CODE, KIJANI, OFFICER, Staged, Valley, day, like, settle


def to_amina(valley: Valley) -> None:
    """It is the morning of sowing. A plan for a second field was begun the day before, and
    its question for the pail stands. No receipt has come for any text."""
    settle(valley)
    valley.operator.receipts = False
    valley.enrol(AMINA)
    valley.plan(AMINA, "10 June")
    valley.go("9 Jun 19:00")
    valley.heard(AMINA)
    for sends in ("NEW", "1 acre", "85"):
        valley.text(AMINA, sends)
    valley.go("10 Jun 06:00")
    valley.heard(AMINA)


@pytest.fixture
def amina(staged: Staged) -> Valley:
    """At the end of that way."""
    return staged(to_amina)


def texts(valley: Valley) -> tuple[Outgoing, Outgoing]:
    """The question for the pail and the prompt to sow."""
    question, prompt = valley.operator.delivered[-2:]
    assert question.text == like(m.ASK_PAIL, ...)
    assert prompt.text == like(t.HEAD, t.P_SOW, t.ASK_DONE)
    return question, prompt


def sow_state(valley: Valley) -> State:
    with valley.house.store.work() as work:
        reminder = work.reminders.by_item(1, TaskCode.SOW, day("10 Jun"))
    assert reminder is not None
    return reminder.state


SOWN = [like(m.SOWN_NOTED), like(m.KEPT_SO_FAR, m.ASK_PAIL, ...)]
NEXT = [like(m.ASK_SOWING)]


def test_without_receipts_the_text_that_was_sent_last_is_answered(amina: Valley) -> None:
    """The operator has both."""
    texts(amina)
    assert amina.text(AMINA, "1") == SOWN
    assert sow_state(amina) is State.DONE


def test_the_text_that_arrived_last_is_answered(amina: Valley) -> None:
    """The receipts come in the order of the texts."""
    question, prompt = texts(amina)
    amina.deliver(question)
    amina.leap("10 Jun 06:02")
    amina.deliver(prompt)
    assert amina.text(AMINA, "1") == SOWN


def test_a_text_that_was_held_up_is_the_last_when_it_arrives(amina: Valley) -> None:
    """The question of yesterday evening comes after the prompt of this morning."""
    question, prompt = texts(amina)
    amina.deliver(prompt)
    amina.leap("10 Jun 06:02")
    amina.deliver(question)
    assert amina.text(AMINA, "1") == NEXT
    assert sow_state(amina) is State.SENT


def test_a_text_that_never_arrived_is_not_answered(amina: Valley) -> None:
    """Only the question reached the phone."""
    question, _ = texts(amina)
    amina.deliver(question)
    assert amina.text(AMINA, "1") == NEXT
    assert sow_state(amina) is State.SENT


def test_a_word_that_only_one_of_them_can_take_goes_there(amina: Valley) -> None:
    """Done is no pail, and 20 litres are no sowing."""
    assert amina.text(AMINA, "20 litres") == NEXT
    assert amina.text(AMINA, "done")[0] == like(m.SOWN_NOTED)


def test_a_prompt_that_still_waits_is_not_answered(valley: Valley, kijani: Village) -> None:
    """The operator is down, and she texts a 1 for no reason."""
    valley.enrol(AMINA)
    valley.plan(AMINA, "10 June")
    valley.go("9 Jun 19:00")
    valley.operator.down = True
    valley.go("10 Jun 06:00")
    valley.post(AMINA, "1")
    assert sow_state(valley) is State.SENT


def test_a_digit_that_answers_nothing_is_not_understood(
    valley: Valley, kijani: Village
) -> None:
    """Nothing is open, and nothing is changed."""
    valley.enrol(AMINA)
    valley.plan(AMINA, "10 June")
    assert valley.text(AMINA, "1") == [like(m.DID_NOT_UNDERSTAND)]


# --- under a rain warning ---------------------------------------------------------------------


def to_warned(valley: Valley) -> None:
    """Day 2 of Amina's nursery; the pail of a second field is asked; rain is warned of."""
    settle(valley)
    valley.add_officer(KIJANI)
    valley.enrol(AMINA)
    valley.sow(AMINA, "30 May")
    valley.go("1 Jun 09:00")
    for sends in ("NEW", "1 acre", "85"):
        valley.text(AMINA, sends)
    valley.text(OFFICER, f"RAIN {CODE} Kijani 14-20")
    valley.text(OFFICER, "1")
    assert valley.heard(AMINA) == [like(m.WARNING, r.COVERED_OR_HELP)]


@pytest.fixture
def warned(staged: Staged) -> Valley:
    """At the end of that way."""
    return staged(to_warned)


COVERED = [like(m.WARNING_COVERED), like(m.KEPT_SO_FAR, m.ASK_PAIL, ...)]
HELP = [like(m.WARNING_HELP), like(m.KEPT_SO_FAR, m.ASK_PAIL, ...)]

# what she sends to the warning: what she hears
TO_WARNING = {
    "1": COVERED,
    "covered": COVERED,
    "2": HELP,
    "need help": HELP,
    "help": HELP,
    "15 litres": NEXT,
    "1 acre": [like(m.CORRECTED(reading="1 acre"), ...)],
}


@pytest.mark.parametrize(("sends", "hears"), TO_WARNING.items(), ids=TO_WARNING.keys())
def test_the_warning_is_answered_first(warned: Valley, sends: str, hears: list[object]) -> None:
    """What was recorded is shown back, and the open question stands again."""
    assert warned.text(AMINA, sends) == hears


def test_the_next_digit_answers_what_stands_again(warned: Valley) -> None:
    """The warning is answered once."""
    warned.text(AMINA, "1")
    assert warned.text(AMINA, "1") == NEXT


def test_covered_can_become_need_help_in_words(warned: Valley) -> None:
    """The storm is worse than she thought; the latest answer counts."""
    warned.text(AMINA, "1")
    assert warned.text(AMINA, "need help") == HELP
    count = warned.text(OFFICER, f"COUNT {CODE} Kijani")[-1]
    assert "0 covered, 1 need help" in count


def test_a_warning_that_has_not_arrived_takes_no_digit(valley: Valley, kijani: Village) -> None:
    """It waits for the operator while she answers the pail."""
    valley.add_officer(kijani)
    valley.enrol(AMINA)
    valley.sow(AMINA, "30 May")
    for sends in ("NEW", "1 acre", "85"):
        valley.text(AMINA, sends)
    valley.post(OFFICER, f"RAIN {CODE} Kijani 14-20")
    valley.post(OFFICER, "1")
    valley.post(AMINA, "1")
    valley.send()
    assert like(m.ASK_SOWING) in valley.heard(AMINA)


# --- a bed that was sown again ----------------------------------------------------------------


def test_what_a_bed_that_is_gone_was_asked_takes_no_digit(valley: Valley) -> None:
    """Its colour was asked on day 7 and never answered; now it is sown again, and the receipt
    of the text that asks for the soaking has yet to come."""
    valley.enrol(AMINA)
    valley.sow(AMINA, "26 May")
    valley.go("4 Jun 09:00")
    for sends in ("PROBLEM", "2", "8", "1", "5"):
        valley.text(AMINA, sends)
    valley.operator.receipts = False
    valley.text(AMINA, "1")
    valley.go("4 Jun 09:10")
    (soak,) = valley.heard(AMINA)
    assert soak.endswith("1 Done 2 Not yet")
    assert valley.text(AMINA, "1") == [like(m.DONE_NOTED)]
