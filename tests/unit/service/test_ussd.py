"""The same talks on a screen: pages, broken sessions, and across to SMS."""

from typing import Any

import pytest

from assistant.agronomy.calendar import TaskCode
from assistant.alphabet import fits_screen
from assistant.channel import Screen
from assistant.dialogue.conversations import MENU
from assistant.people import Village
from assistant.reminders.values import State
from assistant.wording import messages_talk as m
from assistant.wording import messages_tasks as t
from assistant.wording.message import Message
from tests.valley import (
    AMINA,
    BARAKA,
    CODE,
    OFFICER,
    Staged,
    Valley,
    day,
    like,
    numbered,
    settle,
)


def to_amina(valley: Valley) -> None:
    """Amina is enrolled, and has no nursery."""
    settle(valley)
    valley.enrol(AMINA)


@pytest.fixture
def amina(staged: Staged) -> Valley:
    """At the end of that way."""
    return staged(to_amina)


def open_screen(*parts: Message | object) -> object:
    """A screen that waits for a reply."""
    return (like(*parts), True)  # type: ignore[arg-type]


def seen(screen: Screen) -> tuple[str, bool]:
    return screen.text, screen.more


def ended(message: Message) -> tuple[Any, bool]:
    """A screen that says this, and waits for nothing."""
    return like(message), False


def test_sign_up_and_plan_by_screen(valley: Valley, kijani: Village) -> None:
    """The same questions, each on one screen; 0 goes back."""
    language = open_screen(m.ASK_LANGUAGE, *numbered("English", "Kiswahili"))
    assert seen(valley.dial(AMINA)) == language
    village = open_screen(m.ASK_VILLAGE, *numbered("Kijani", "Mto Mwanga", m.OTHER_VILLAGE))
    assert seen(valley.key(AMINA, "1")) == village
    consent = open_screen(m.ASK_CONSENT, *numbered(m.YES, m.NO))
    assert seen(valley.key(AMINA, "1")) == consent
    assert seen(valley.key(AMINA, "0")) == village
    valley.key(AMINA, "1")
    area = open_screen(m.ENROLLED, m.ASK_AREA, m.BACK_HINT)
    assert seen(valley.key(AMINA, "1")) == area
    valley.send()
    assert valley.heard(AMINA) == []


def test_who_does_not_agree_ends_the_session(valley: Valley, kijani: Village) -> None:
    """There is nothing more to ask."""
    valley.dial(AMINA)
    valley.key(AMINA, "1")
    valley.key(AMINA, "1")
    assert seen(valley.key(AMINA, "2")) == ended(m.NO_CONSENT)


def test_quantities_given_by_screen_are_also_sent_as_texts(amina: Valley) -> None:
    """A screen vanishes. What nobody looks at is not sent."""
    amina.dial(AMINA)
    for key in ("0.4 ha", "85", "10", "10 June"):
        amina.key(AMINA, key)
    screen = amina.key(AMINA, "1")
    assert screen.more and "1 Next step" in screen.text
    amina.send()
    assert amina.heard(AMINA) == [like(m.PLANNED)]
    amina.key(AMINA, "1")
    amina.send()
    assert amina.heard(AMINA) == [like(m.RESULT_SEED)]


def test_a_long_answer_is_paged_by_nine_and_nought(amina: Valley) -> None:
    """Every page fits; 9 leads on and stays at the last; 0 leads back."""
    amina.plan(AMINA, "10 June")
    amina.dial(AMINA)
    first = amina.key(AMINA, "2")
    pages = [first.text]
    while pages[-1].splitlines()[-1] == "9 More" or "9 More" in pages[-1]:
        pages.append(amina.key(AMINA, "9").text)
    assert len(pages) > 2
    assert all(fits_screen(page) for page in pages)
    assert amina.key(AMINA, "9").text == pages[-1]
    for page in reversed(pages[:-1]):
        assert amina.key(AMINA, "0").text == page
    words = " ".join(" ".join(pages).replace("9 More", "").replace("0 Back", "").split())
    (seed, mix) = amina.text(AMINA, "QUANTITIES")[-2:]
    assert f"{' '.join(seed.split())} {' '.join(mix.split())}" in words


def test_nought_on_the_first_page_is_the_menu(amina: Valley) -> None:
    """There is no page before it."""
    amina.plan(AMINA, "10 June")
    amina.dial(AMINA)
    amina.key(AMINA, "2")
    assert amina.key(AMINA, "0").text == like(m.ASK_MENU, ...)


def test_the_menu_is_on_the_first_screen_of_who_has_a_nursery(amina: Valley) -> None:
    """All of it."""
    amina.plan(AMINA, "10 June")
    labels = [choice.label for choice in MENU.questions["menu"].choices]
    assert seen(amina.dial(AMINA)) == open_screen(m.ASK_MENU, *numbered(*labels))


# --- broken off and taken up ------------------------------------------------------------------


def test_a_dropped_session_loses_nothing(amina: Valley) -> None:
    """No end was told; the next session begins where the last broke off."""
    amina.dial(AMINA)
    amina.key(AMINA, "0.4 ha")
    assert amina.dial(AMINA).text == like(m.ASK_GERMINATION, m.BACK_HINT)
    amina.key(AMINA, "85")
    amina.hang_up(AMINA)
    assert amina.dial(AMINA).text == like(m.ASK_PAIL, ...)


def test_a_talk_begun_by_text_goes_on_by_screen_and_back(amina: Valley) -> None:
    """One talk for each phone."""
    amina.text(AMINA, "0.4 ha")
    assert amina.dial(AMINA).text == like(m.ASK_GERMINATION, m.BACK_HINT)
    amina.key(AMINA, "85")
    assert amina.text(AMINA, "20") == [like(m.ASK_SOWING)]
    assert amina.dial(AMINA).text == like(m.ASK_SOWING, m.BACK_HINT)


def test_an_answer_in_a_session_that_nobody_knows_gets_the_open_question(
    amina: Valley,
) -> None:
    """The first turn of it was lost on the way."""
    amina.dial(AMINA)
    amina.hang_up(AMINA)
    assert amina.key(AMINA, "85").text == like(m.ASK_AREA, m.BACK_HINT)


def test_a_turn_that_is_repeated_gets_the_same_screen_and_counts_once(amina: Valley) -> None:
    """The operator asked twice."""
    amina.dial(AMINA)
    once = amina.key(AMINA, "0.4 ha", gateway_id="turn-7")
    again = amina.key(AMINA, "0.4 ha", gateway_id="turn-7")
    assert once == again
    assert once.text == like(m.ASK_GERMINATION, m.BACK_HINT)
    assert amina.key(AMINA, "85").text == like(m.ASK_PAIL, ...)


# --- what a screen's digits answer ------------------------------------------------------------


@pytest.fixture
def sowing_day(amina: Valley) -> Valley:
    """The prompt to sow reached her phone this morning."""
    amina.plan(AMINA, "10 June")
    amina.go("10 Jun 08:00")
    amina.heard(AMINA)
    return amina


def sow_state(valley: Valley) -> State:
    with valley.house.store.work() as work:
        reminder = work.reminders.by_item(1, TaskCode.SOW, day("10 Jun"))
    assert reminder is not None
    return reminder.state


def test_the_task_that_waits_is_on_the_first_screen(sowing_day: Valley) -> None:
    """Its digits answer it there."""
    screen = sowing_day.dial(AMINA)
    assert screen.text == like(t.HEAD(label="A", day=0), t.P_SOW, t.ASK_DONE, m.MENU_HINT)
    assert sowing_day.key(AMINA, "1").text == like(m.SOWN_NOTED, m.MENU_HINT)
    assert sow_state(sowing_day) is State.DONE


def test_a_digit_on_a_screen_never_answers_a_text(sowing_day: Valley) -> None:
    """1 is the first choice of the menu there, not "done"; on a screen without digits it is
    nothing."""
    sowing_day.dial(AMINA)
    sowing_day.key(AMINA, "0")
    assert sowing_day.key(AMINA, "1").text == like(t.HEAD, t.P_SOW, ...)
    sowing_day.key(AMINA, "1")
    assert sow_state(sowing_day) is State.SENT


def test_a_warning_is_on_the_first_screen_until_it_is_answered(
    valley: Valley, kijani: Village
) -> None:
    """People first."""
    valley.add_officer(kijani)
    valley.enrol(AMINA)
    valley.sow(AMINA, "30 May")
    valley.text(OFFICER, f"RAIN {CODE} Kijani 14-20")
    valley.text(OFFICER, "1")
    screen = valley.dial(AMINA)
    asked = numbered(m.W_COVERED, m.W_HELP)
    assert screen.text == like(m.WARNING_STANDS, *asked, m.MENU_HINT)
    assert valley.key(AMINA, "1").text == like(m.WARNING_COVERED, m.MENU_HINT)
    assert valley.dial(AMINA).text == like(m.ASK_MENU, ...)


def test_a_warning_does_not_take_the_digits_of_another_screen(
    valley: Valley, kijani: Village
) -> None:
    """She wants to see the menu first; its 1 is not "covered"."""
    valley.add_officer(kijani)
    valley.enrol(AMINA)
    valley.sow(AMINA, "30 May")
    valley.text(OFFICER, f"RAIN {CODE} Kijani 14-20")
    valley.text(OFFICER, "1")
    valley.dial(AMINA)
    assert valley.key(AMINA, "0").text == like(m.ASK_MENU, ...)
    assert valley.key(AMINA, "1").text == like(t.HEAD, t.P_WATER, ...)
    (count,) = valley.text(OFFICER, f"COUNT {CODE} Kijani")
    assert "0 covered" in count


def test_stop_by_screen_ends_the_session_and_the_texts(sowing_day: Valley) -> None:
    """START begins again."""
    sowing_day.dial(AMINA)
    assert seen(sowing_day.key(AMINA, "STOP")) == ended(m.STOPPED)
    assert seen(sowing_day.dial(AMINA)) == ended(m.YOU_ARE_STOPPED)


def test_a_session_belongs_to_its_phone(amina: Valley) -> None:
    """Operators use their ids again; nobody gets the pages of another, nor ends them."""
    amina.dial(AMINA)
    shown = amina.key(AMINA, "3")
    amina._sessions[BARAKA] = amina._sessions[AMINA]
    assert amina.key(BARAKA, "9") != shown
    amina.hang_up(BARAKA)
    with amina.house.store.look() as work:
        assert work.talks.ussd(amina._sessions[AMINA]) is not None
