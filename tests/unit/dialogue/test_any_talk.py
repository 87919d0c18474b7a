"""No sequence of texts crashes the dialogue, or leaves it without a way back.

The texts are plausible replies, wishes, digits, an officer's words and any characters; between
them days go by, prompts and warnings arrive, receipts come in any order.
"""

from dataclasses import replace
from datetime import date, timedelta

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.life.rows import asked_tasks
from assistant.alphabet import plain
from assistant.channel import Channel
from assistant.dialogue import values as v
from assistant.dialogue.officer import code_in, verb_of
from assistant.people import Officer
from assistant.wording import messages_talk as m
from assistant.wording.message import Message
from assistant.wording.render import render, render_all
from assistant.wording.screens import Hints, Limits, pages
from tests.talk import TODAY, VILLAGES, Phone, item, nursery
from tests.valley import CATALOGUES, CODE

# The same examples on every run.
STEADY = settings(derandomize=True, deadline=None, max_examples=100, database=None)

REPLIES = (
    *("0.4 ha", "2 acres", "50 x 20 m", "half", "5000 ha", "1 acre no 2 acres", "10 steps"),
    *("85", "85%", "17 of 20", "NO", "not tested", "140", "40%", "0"),
    *("10", "20 litres", "a bucket", "10 June", "tomorrow", "28 May", "31 June", "12", "1999"),
    *("0.4 ha, 85%, 10 June", "yes", "no", "done", "DONE B", "not yet", "done yesterday"),
    *("3", "3.5 leaves", "green", "yellow", "insects", "none of these", "A", "B", "kijani"),
    *("covered", "need help", "english", "kiswahili", "sw"),
)
WISHES = (
    *("MENU", "HELP", "BACK", "TODAY", "QUANTITIES", "CHANGE DATE", "PROBLEM", "OFFICER"),
    *("LANGUAGE", "STOP", "stpo", "START", "START OVER", "NEW", "CLOSE", "rain", "?", "hello"),
    *("msaada", "acha", "menyu", "ndiyo", "hapana", "tayari"),
)
OFFICERS = (
    f"RAIN {CODE} Kijani 14-20",
    f"RAIN {CODE} TOMORROW 6-12",
    "RAIN 000000 Kijani 14-20",
    f"COUNT {CODE} Kijani",
    f"CLEAR {CODE}",
    f"WHO {CODE}",
)
ASKED = sorted(asked_tasks())

words = st.one_of(
    st.sampled_from(REPLIES),
    st.sampled_from(WISHES),
    st.sampled_from(OFFICERS),
    st.integers(0, 12).map(str),
    st.text(max_size=30),
)
events = st.one_of(
    st.tuples(st.just("days"), st.integers(1, 9)),
    st.tuples(st.just("prompt"), st.sampled_from(ASKED)),
    st.tuples(st.just("rain"), st.booleans()),
    st.tuples(st.just("dials"), st.none()),
    st.tuples(st.just("lost"), st.integers(0, 3)),
)
talks = st.lists(st.one_of(words, words, words, events), max_size=25)
Event = str | tuple[str, object]


def newcomer() -> Phone:
    return Phone.new()


def planner() -> Phone:
    return Phone.enrolled()


def grower() -> Phone:
    """Two nurseries, one on day 5 and one not sown yet."""
    return Phone.enrolled(
        nursery("A", sow=TODAY - timedelta(days=5), sown=True),
        nursery("B", sow=TODAY + timedelta(days=2)),
    )


def farming_officer() -> Phone:
    """An officer who has a nursery too."""
    phone = grower()
    phone.known = replace(phone.known, desk=desk())
    return phone


def officer_only() -> Phone:
    phone = Phone.new()
    phone.known = replace(phone.known, desk=desk())
    return phone


def desk() -> v.OfficerScope:
    """Two villages, one with a warning that stands, and somebody to see."""
    phone = Phone.new()
    officer = Officer(1, "+447700900001", "Asha", "hash", "en", (1, 2))
    reaches = tuple(v.Reach(village, 3, 2, 1) for village in VILLAGES)
    standing = v.Standing(9, 1, phone.known.now, phone.known.now + timedelta(hours=9))
    visit = v.Visit("+447700900102", "A", "Kijani", "no answer", TODAY)
    tally = v.Tally(standing, VILLAGES[0], 3, 2, 1, 0)
    return v.OfficerScope(officer, True, reaches, (tally,), (visit,) * 7)


PHONES = (newcomer, planner, grower, farming_officer, officer_only)


def happens(phone: Phone, event: Event) -> v.Turn | None:
    """A text, or what comes between texts."""
    if isinstance(event, str):
        return says(phone, event)
    kind, detail = event
    match kind, detail:
        case "days", int(days):
            phone.on(phone.known.today + timedelta(days=days))
            phone.known = replace(phone.known, warning=None, raining=False)
        case "prompt", TaskCode() as task if phone.known.nurseries:
            prompted(phone, task)
        case "rain", bool(asked) if phone.known.farmer is not None:
            phone.warned() if asked else raining(phone)
        case "dials", _:
            phone.known = replace(phone.known, channel=Channel.USSD)
            return phone.dials()
        case "lost", int(count):
            phone.known = replace(phone.known, focuses=phone.known.focuses[count:])
    return None


def says(phone: Phone, text: str) -> v.Turn:
    """A text; the desk is open to an officer only where the right code came with it."""
    if phone.known.desk is not None:
        given = code_in(text) == CODE and verb_of(text) is not None
        phone.known = replace(phone.known, desk=replace(phone.known.desk, code_given=given))
    return phone.says(text)


def prompted(phone: Phone, task: TaskCode) -> None:
    """Each open nursery is asked about a task of today."""
    phone.asked(*(item(task, phone.known.today, each.id) for each in phone.known.nurseries))


def raining(phone: Phone) -> None:
    phone.known = replace(phone.known, raining=True)


def check(phone: Phone, outcome: v.Turn | None) -> None:
    """Something is said, and all of it fits its screens."""
    if outcome is None:
        return
    assert outcome.texts
    catalogue = CATALOGUES[outcome.language or "en"]
    says = [say for text in outcome.texts for say in text.says]
    text = plain(render_all(says, catalogue))
    assert text.strip()
    hints = Hints(render(m.MORE_HINT(), catalogue), render(m.BACK_HINT(), catalogue), "0 Menu")
    for page in pages(text, hints, Limits()):
        assert Limits().hold(page)


def messages(outcome: v.Turn) -> set[Message]:
    return {say.message for text in outcome.texts for say in text.says}


@pytest.mark.parametrize("who", PHONES, ids=lambda who: who.__name__)
@STEADY
@given(talk=talks)
@example(talk=["NEW", "1 acre", "85", "10", "28 May", "1", ("days", 3), "1", "DONE", "back"])
@example(talk=["CHANGE DATE", "1", "1", ("prompt", TaskCode.TRANSPLANT), "DONE A", "HELP"])
@example(talk=[("prompt", TaskCode.LEAF_COUNT), "3", "back", "HELP", ("days", 9), "CLOSE"])
@example(talk=[f"RAIN {CODE} Kijani 14-20", "LANGUAGE", "2", ("days", 1), "1", "STOP", "yes"])
def test_no_talk_fails_or_has_no_way_back(who: object, talk: list[Event]) -> None:
    """After any talk STOP stops, START starts, and MENU is the menu or sign-up."""
    phone: Phone = who()  # type: ignore[operator]
    for event in talk:
        check(phone, happens(phone, event))
    farmer = phone.known.farmer
    if farmer is None or farmer.stopped_at is None:
        assert m.STOPPED in messages(says(phone, "STOP"))
    started = messages(says(phone, "START"))
    if phone.known.farmer is None:
        assert m.ASK_LANGUAGE in started
        return
    assert m.STARTED_AGAIN in started
    assert phone.known.farmer.stopped_at is None
    assert m.ASK_MENU in messages(says(phone, "MENU"))


@STEADY
@given(text=st.text(max_size=600))
def test_any_text_is_answered_by_one_who_grows(text: str) -> None:
    """Of any characters, to a prompt, to a warning, to a question."""
    for phone in (grower(), grower().asked(item(TaskCode.UNCOVER_FLOOD)), grower().warned()):
        check(phone, phone.says(text))


@STEADY
@given(on=st.dates(date(2026, 5, 1), date(2026, 9, 1)), rain=st.booleans())
def test_todays_work_can_be_said_on_any_day(on: date, rain: bool) -> None:
    """Before, in and long after the season."""
    phone = grower().on(on)
    phone.known = replace(phone.known, raining=rain)
    for text in ("TODAY", "QUANTITIES", "PROBLEM", "2"):
        check(phone, phone.says(text))
