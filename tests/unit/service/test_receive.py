"""What comes in: once, twice, out of order, nonsense, and when we fail ourselves."""

import logging
from datetime import timedelta

import pytest
from sqlalchemy import inspect

from assistant.alphabet import fits_screen
from assistant.channel import Channel, Fate, Incoming, Receipt
from assistant.dialogue import turns
from assistant.dialogue import values as v
from assistant.people import Village
from assistant.service import receive as receiving
from assistant.service import replan
from assistant.service.dispatch import take_receipt
from assistant.service.receive import believed, receive
from assistant.store import DatabaseFailedError
from assistant.wording import messages_officer as o
from assistant.wording import messages_talk as m
from tests.valley import (
    AMINA,
    BARAKA,
    CODE,
    OFFICER,
    Staged,
    Valley,
    like,
    numbered,
    settle,
)

YES_NO = numbered(m.YES, m.NO)


def to_amina(valley: Valley) -> None:
    """Amina is enrolled and is asked for her field."""
    settle(valley)
    valley.enrol(AMINA)


@pytest.fixture
def amina(staged: Staged) -> Valley:
    """At the end of that way."""
    return staged(to_amina)


# --- the same message again -------------------------------------------------------------------


def test_a_text_that_comes_twice_is_answered_once(amina: Valley) -> None:
    """The operator delivers it again a minute later; nothing happens the second time."""
    assert amina.text(AMINA, "0.4 ha", gateway_id="x1") == [like(m.ASK_GERMINATION)]
    amina.leap(amina.now + timedelta(minutes=1))
    assert amina.text(AMINA, "0.4 ha", gateway_id="x1") == []
    assert amina.text(AMINA, "85") == [like(m.ASK_PAIL, ...)]


def test_the_last_yes_that_comes_twice_opens_one_nursery(amina: Valley) -> None:
    """It would be the dearest repeat."""
    for sends in ("0.4 ha", "85", "10", "10 June"):
        amina.text(AMINA, sends)
    assert len(amina.text(AMINA, "1", gateway_id="yes")) == 1
    assert amina.text(AMINA, "1", gateway_id="yes") == []
    with amina.house.store.work() as work:
        assert work.nurseries.count() == 1


def test_the_same_words_in_a_new_message_are_a_new_message(amina: Valley) -> None:
    """Only the operator's id makes a repeat."""
    amina.text(AMINA, "TODAY", gateway_id="x1")
    assert amina.text(AMINA, "TODAY", gateway_id="x2") != []


def test_texts_that_overtook_each_other_each_get_an_answer_and_none_is_lost(
    amina: Valley,
) -> None:
    """She sent the field and then the seed; the seed came first."""
    likely = numbered("85 acres", "85 m2")
    assert amina.text(AMINA, "85") == [like(m.WHICH_READING, *likely)]
    assert amina.text(AMINA, "0.4 ha") == [like(m.ASK_GERMINATION)]
    assert amina.text(AMINA, "85") == [like(m.ASK_PAIL, ...)]


def test_a_receipt_for_a_text_that_is_not_ours_changes_nothing(amina: Valley) -> None:
    """The operator mixed us up."""
    receipt = Receipt("strange", Fate.DELIVERED, amina.now)
    assert not take_receipt(amina.house, receipt, amina.now)


# --- nonsense ---------------------------------------------------------------------------------

NONSENSE = {
    "nothing": "",
    "blanks": "   \n\t ",
    "a row of letters": "asdfgh jkl",
    "two thousand characters": "rice " * 400,
    "one word of two thousand letters": "x" * 2000,
    "emoji": "🌾🌧️👩‍🌾",
    "half an emoji, as the wire gives it": "\N{REPLACEMENT CHARACTER}",
    "another script": "नमस्ते भाई",
    "right to left": "مشتل الأرز",
    "braces": "{label} {0} %s %(x)s",
    "a query": "'; SELECT 1; --",
    "markup": "<script>alert(1)</script>",
    "a formula": "=SUM(A1:A9)",
    "infinity": "inf ha",
    "not a number": "nan",
    "a huge number": "9" * 400,
    "a negative number": "-3 ha",
    "an exponent": "1e309 ha",
}


@pytest.mark.parametrize("text", NONSENSE.values(), ids=NONSENSE.keys())
def test_nonsense_gets_a_short_helpful_reply_and_loses_nothing(
    amina: Valley, text: str
) -> None:
    """One text that says what to send; the question stands."""
    (reply,) = amina.text(AMINA, text)
    assert len(reply) <= 160
    assert amina.text(AMINA, "0.4 ha") == [like(m.ASK_GERMINATION)]


@pytest.mark.parametrize("text", NONSENSE.values(), ids=NONSENSE.keys())
def test_nonsense_on_a_screen_gets_a_screen(amina: Valley, text: str) -> None:
    """It fits, and the question stands."""
    amina.dial(AMINA)
    assert fits_screen(amina.key(AMINA, text).text)
    assert amina.key(AMINA, "0.4 ha").text == like(m.ASK_GERMINATION, m.BACK_HINT)


@pytest.mark.parametrize("text", NONSENSE.values(), ids=NONSENSE.keys())
def test_nonsense_from_a_phone_that_nobody_knows_begins_sign_up(
    valley: Valley, kijani: Village, text: str
) -> None:
    """There is no wrong first text."""
    assert valley.text(BARAKA, text) == [
        like(m.ASK_LANGUAGE, *numbered("English", "Kiswahili"))
    ]


def test_what_could_not_be_read_is_kept_without_the_phone(amina: Valley) -> None:
    """So that somebody can teach the reader."""
    amina.text(AMINA, "bigger than the mosque")
    with amina.house.store.work() as work:
        (unread,) = work.calls.unread_list()
    assert (unread.language, unread.asked, unread.text) == (
        "en",
        "area",
        "bigger than the mosque",
    )


def test_the_farmers_own_words_reach_the_officer_as_they_are(
    amina: Valley, kijani: Village
) -> None:
    """Braces in them are no slots."""
    amina.add_officer(kijani)
    amina.text(AMINA, "OFFICER")
    amina.text(AMINA, "{phone} rats! 100%")
    (notice,) = amina.heard(OFFICER)
    assert '"{phone} rats! 100%"' in notice


# --- our own failures -------------------------------------------------------------------------


@pytest.fixture
def broken(amina: Valley, monkeypatch: pytest.MonkeyPatch) -> Valley:
    """The dialogue fails on "crash", after it has read it."""

    def turn(text: str, known: v.Known) -> v.Turn:
        if text == "crash":
            raise RuntimeError("a fault of ours")
        return turns.turn(text, known)

    monkeypatch.setattr(receiving, "turn", turn)
    return amina


def test_a_failing_talk_apologises_keeps_the_message_and_is_logged(
    broken: Valley, caplog: pytest.LogCaptureFixture
) -> None:
    """Nothing is raised; what was open stands."""
    with caplog.at_level(logging.ERROR):
        assert broken.text(AMINA, "crash", gateway_id="bad") == [like(m.SORRY_TROUBLE)]
    (record,) = caplog.records
    assert "bad" in record.getMessage()
    assert record.exc_info is not None and record.exc_info[0] is RuntimeError
    assert AMINA not in caplog.text and "crash" not in record.getMessage()
    assert broken.text(AMINA, "0.4 ha") == [like(m.ASK_GERMINATION)]


def test_what_our_fault_kept_from_being_read_goes_to_a_person(
    broken: Valley, kijani: Village
) -> None:
    """It may be a cry for help; a key that was pressed is none."""
    broken.add_officer(kijani)
    broken.text(AMINA, "crash", gateway_id="bad")
    (notice,) = broken.heard(OFFICER)
    assert notice == like(o.HELP_NOTICE) and '"crash"' in notice
    with broken.house.store.look() as work:
        assert [(call.about, call.words) for call in work.calls.open()] == [
            ("question", "crash")
        ]


def test_a_failing_talk_that_is_repeated_stays_quiet(broken: Valley) -> None:
    """One apology is enough."""
    broken.text(AMINA, "crash", gateway_id="bad")
    assert broken.text(AMINA, "crash", gateway_id="bad") == []


def test_a_failing_screen_apologises_the_same_way_twice(broken: Valley) -> None:
    """And the session is over."""
    broken.dial(AMINA)
    once = broken.key(AMINA, "crash", gateway_id="bad")
    assert once.text == like(m.SORRY_TROUBLE) and not once.more
    assert broken.key(AMINA, "crash", gateway_id="bad") == once


def test_the_apology_is_in_the_farmers_language(
    broken: Valley, kijani: Village, caplog: pytest.LogCaptureFixture
) -> None:
    """As far as it is known."""
    broken.enrol(BARAKA, language=2)
    assert broken.text(BARAKA, "crash") == [like(m.SORRY_TROUBLE, language="sw")]


def test_a_change_that_fails_undoes_the_whole_turn(
    amina: Valley, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The nursery is not half there, and the talk is where it was."""
    for sends in ("0.4 ha", "85", "10", "10 June"):
        amina.text(AMINA, sends)

    def fails(*_: object, **__: object) -> None:
        raise RuntimeError("a fault of ours")

    with monkeypatch.context() as patch:
        patch.setattr(replan, "planned", fails)
        assert amina.text(AMINA, "1") == [like(m.SORRY_TROUBLE)]
    with amina.house.store.work() as work:
        assert work.nurseries.count() == 0
    assert len(amina.text(AMINA, "1")) == 1


def test_a_database_that_is_gone_is_the_gateways_to_try_again(
    amina: Valley, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Nothing was kept, so nothing is claimed to be."""

    def gone() -> None:
        raise DatabaseFailedError("the disk is full")

    monkeypatch.setattr(amina.house.store, "work", gone)
    incoming = Incoming("x", AMINA, "0.4 ha", Channel.SMS, amina.now)
    with pytest.raises(DatabaseFailedError):
        receive(amina.house, incoming, amina.now)


# --- codes are not written down ---------------------------------------------------------------

WITH_CODE = {
    "a warning": f"RAIN {CODE} Kijani 14-20",
    "a code glued to its word": f"rain{CODE} Kijani",
    "a wrong word": f"RAINN {CODE} Kijani 14-20",
    "a code at the end": f"Kijani rain {CODE}",
    "a code in halves": "COUNT 246 810 Kijani",
}


def dump_of(valley: Valley, without: str) -> str:
    """All that is written down, but for one table."""
    engine = valley.house.store._engine
    names = [name for name in inspect(engine).get_table_names() if name != without]
    with engine.connect() as connection:
        rows = [
            row
            for name in names
            for row in connection.exec_driver_sql(f'SELECT * FROM "{name}"').all()
        ]
    return str(rows)


@pytest.mark.parametrize("text", WITH_CODE.values(), ids=WITH_CODE.keys())
def test_an_officers_code_is_written_down_nowhere(
    valley: Valley, kijani: Village, text: str, caplog: pytest.LogCaptureFixture
) -> None:
    """Not in the inbox, not among what could not be read, not in a text of ours."""
    valley.add_officer(kijani)
    valley.enrol(OFFICER)
    valley.text(OFFICER, text)
    valley.text(OFFICER, text)
    dump = dump_of(valley, without="officer")  # which holds the hash
    assert AMINA not in dump and OFFICER in dump
    assert CODE not in dump and "246 810" not in dump
    assert CODE not in caplog.text


def test_a_wrong_code_gets_no_farther(valley: Valley, kijani: Village) -> None:
    """Known by number and code: the number alone is not enough, nor is the code."""
    valley.add_officer(kijani)
    valley.enrol(AMINA)
    valley.sow(AMINA, "30 May")
    assert valley.text(OFFICER, "RAIN 000000 Kijani 14-20") == [like(o.NEED_CODE)]
    assert valley.text(OFFICER, "RAIN Kijani 14-20") == [like(o.NEED_CODE)]
    valley.text(AMINA, f"RAIN {CODE} Kijani 14-20")
    assert like(o.ASK_WARN, ...) not in valley.heard(AMINA)
    with valley.house.store.work() as work:
        assert work.warnings.standing(kijani.id, valley.now) == ()


def test_a_time_that_no_delay_explains_is_not_believed(amina: Valley) -> None:
    """The hour it came counts; what an operator kept for a day has its own."""
    now = amina.now
    for days in (-9000, 9000):
        assert believed(now + timedelta(days=days), now) == now
    late = now - timedelta(days=1)
    assert believed(late, now) == late
    odd = Incoming("odd", AMINA, "0.4 ha", Channel.SMS, now + timedelta(days=9000))
    receive(amina.house, odd, now)
    with amina.house.store.look() as work:
        latest = work.story.heard(AMINA, 1)[0]
    assert (latest.text, latest.at) == ("0.4 ha", now)
