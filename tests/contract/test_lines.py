"""One contract for every line, out and in, against the simulated operator at its other end."""

import time
from collections.abc import Iterator
from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from assistant.channel import Channel, Fate, Handover, Incoming, Outgoing, Receipt, Screen, Step
from gateway_sim import Busy, EntryKind, Fail, Refuse
from tests.contract.lines import LINES, Line

AMINA, JOSE = "+447700900101", "+447700900102"
# Two segments of UCS-2: a line must neither cut nor garble them.
LONG = "রোপণের আগে বীজতলা ভালো করে ভিজিয়ে নিন, তারপর চারা তুলুন। 🌾 " * 2 + "end"
SCRIPTS = (
    "Open the cover: 1 cm {about 40 pails} [A] ~ 2 € ^ | \\",
    "Ñandú, é, ü, ß, Ø, Σ; it's @home?",
    "বীজ বপন করা হয়েছে, ৫ দিন",
    "धान की नर्सरी — 3 दिन",
    "Đã gieo mạ hôm qua",
    "STOP",
)


@pytest.fixture(params=LINES)
def line(request: pytest.FixtureRequest) -> Iterator[Line]:
    with LINES[request.param]() as opened:
        yield opened


def now() -> datetime:
    return datetime.now(UTC)


def text(words: str, message_id: str = "t-41", phone: str = AMINA) -> Outgoing:
    return Outgoing(message_id, phone, words, now() + timedelta(hours=10), "prompt")


def offered(line: Line, outgoing: Outgoing, seconds: float = 60) -> Handover:
    """What a line says of a text, offered again as the service does while it says nothing: on a
    machine at work a modem may be silent for longer than it is waited for."""
    end = time.monotonic() + seconds
    handover = line.gateway.send(outgoing, now())
    while (not handover.answered or handover.put_off_until) and time.monotonic() < end:
        time.sleep(0.1)
        handover = line.gateway.send(outgoing, now())
    return handover


def shown(line: Line, phone: str, count: int = 1) -> list[str]:
    """What the phone shows, once it shows so many texts."""
    held = line.operator.phone(phone)
    assert held.wait_for(count, 60), line.operator.record
    return held.texts


# --- out --------------------------------------------------------------------------------------


@pytest.mark.parametrize("words", SCRIPTS)
def test_a_text_arrives_as_it_was_written(line: Line, words: str) -> None:
    """In every alphabet that we send."""
    assert offered(line, text(words)).fate is Fate.ACCEPTED
    assert shown(line, AMINA) == [words]


def test_a_long_text_arrives_whole(line: Line) -> None:
    """However many segments it takes, and whoever joins them."""
    assert offered(line, text(LONG)).fate is Fate.ACCEPTED
    assert shown(line, AMINA) == [LONG]


def test_a_text_offered_twice_arrives_once(line: Line) -> None:
    """The same id is the same text, and both offers are answered alike."""
    first = offered(line, text("once"))
    assert offered(line, text("once")).fate is first.fate is Fate.ACCEPTED
    offered(line, text("then this", "t-42"))
    assert shown(line, AMINA, 2) == ["once", "then this"]


def test_two_texts_alike_both_arrive(line: Line) -> None:
    """Only the id makes a repeat."""
    offered(line, text("same"))
    offered(line, text("same", "t-42"))
    assert shown(line, AMINA, 2) == ["same", "same"]


def test_a_refused_text_is_lost_and_says_why(line: Line) -> None:
    """It is not offered again."""
    line.operator.handler = Refuse()
    handover = offered(line, text("no"))
    assert handover.fate is Fate.FAILED and handover.detail


def test_a_busy_operator_is_left_in_peace(line: Line) -> None:
    """The text is offered later, and so are all others; then it is taken."""
    line.operator.handler = Busy(first=1)
    handover = offered(line, text("later"))
    assert handover.fate is Fate.TRY_LATER and handover.answered
    assert handover.rest is not None and handover.rest > timedelta(0)
    assert offered(line, text("later")).fate is Fate.ACCEPTED
    assert shown(line, AMINA) == ["later"]


# --- what became of it ------------------------------------------------------------------------


def receipt(line: Line, message_id: str, parts: tuple[str, ...]) -> Receipt:
    """The first receipt, which must be of this text, by our id or the operator's."""
    found = line.heard.of(Receipt, max(len(parts), 1))[0]
    assert isinstance(found, Receipt), line.operator.record
    assert found.message_id == message_id or found.part in parts
    return found


def test_a_text_that_arrived_is_reported(line: Line) -> None:
    """Under our id, or one that the hand-over told."""
    handover = offered(line, text("read me"))
    assert receipt(line, "t-41", handover.parts).fate is Fate.DELIVERED


def test_every_part_of_a_long_text_is_reported(line: Line) -> None:
    """Where the operator reports by parts; else the text as a whole."""
    handover = offered(line, text(LONG))
    expected = max(len(handover.parts), 1)
    found = line.heard.of(Receipt, expected)
    assert len(found) == expected
    assert all(isinstance(each, Receipt) and each.fate is Fate.DELIVERED for each in found)
    if handover.parts:
        told = {each.part for each in found if isinstance(each, Receipt)}
        assert told == set(handover.parts)


def test_a_text_that_never_will_is_reported(line: Line) -> None:
    """As failed."""
    line.operator.handler = Fail()
    handover = offered(line, text("gone"))
    assert receipt(line, "t-41", handover.parts).fate is Fate.FAILED


def test_a_text_whose_time_ran_out_is_reported(line: Line) -> None:
    """The phone is off until then."""
    if not line.minutes:
        pytest.skip("the shortest time that this line can tell is five minutes")
    line.operator.phone(AMINA).power(False)
    late = Outgoing("t-41", AMINA, "late", now() + timedelta(seconds=0.2), "prompt")
    handover = offered(line, late)
    assert receipt(line, "t-41", handover.parts).fate is Fate.EXPIRED


# --- in ---------------------------------------------------------------------------------------


@pytest.mark.parametrize("words", [*SCRIPTS, LONG])
def test_a_phones_words_are_brought_as_they_were_written(line: Line, words: str) -> None:
    """Whole, or in pieces that say how they belong together."""
    line.operator.phone(AMINA).text(words)
    first = line.heard.of(Incoming, 1)[0]
    assert isinstance(first, Incoming)
    count = first.piece.parts if first.piece else 1
    found = [each for each in line.heard.of(Incoming, count) if isinstance(each, Incoming)]
    found.sort(key=lambda each: each.piece.part if each.piece else 1)
    assert "".join(each.text for each in found) == words
    assert {each.phone for each in found} == {AMINA}
    assert len({each.piece.ref for each in found if each.piece}) <= 1
    assert abs(found[0].at - now()) < timedelta(minutes=2)


def test_two_texts_alike_are_two(line: Line) -> None:
    """A phone may answer 1 twice: each has an id of its own. Where the operator names none, the
    same words within a second or three are one text that came twice."""
    for _ in range(2):
        line.operator.phone(AMINA).text("1")
        assert line.heard.of(Incoming, 1)
        line.apart()
    ids = {each.gateway_id for each in line.heard.of(Incoming, 2) if isinstance(each, Incoming)}
    assert len(ids) == 2


def test_what_was_not_kept_is_brought_again(line: Line) -> None:
    """Nobody's STOP is lost while the database is away."""
    line.heard.away = True
    line.operator.phone(AMINA).text("STOP")
    line.operator.phone(JOSE).text("help")
    called = [EntryKind.CALLED]
    with line.operator.network.core.changed:
        line.operator.network.core.changed.wait_for(
            lambda: len(line.operator.recorded(*called)) >= 1, 10
        )
    assert not line.heard.news
    line.heard.away = False
    found = line.heard.of(Incoming, 2)
    assert sorted(each.text for each in found if isinstance(each, Incoming)) == ["STOP", "help"]


def test_a_missed_call_is_brought(line: Line) -> None:
    """Where the line can tell of one."""
    if not line.rings:
        pytest.skip("this line tells of no missed calls")
    line.operator.phone(AMINA).dial("+447700900000")
    (ring,) = line.heard.of(Incoming, 1)
    assert isinstance(ring, Incoming)
    assert (ring.channel, ring.phone, ring.text) == (Channel.RING, AMINA, "")


def test_a_menu_is_answered_step_by_step(line: Line) -> None:
    """Each step gets its screen, in any alphabet; the last closes the session."""
    if not line.menus:
        pytest.skip("this line serves no menus")
    phone = line.operator.phone(AMINA)
    line.heard.screen = Screen("Language?\n1 English\n2 বাংলা", more=True)
    assert phone.dial("*555*7#") == "Language?\n1 English\n2 বাংলা"
    line.heard.screen = Screen('Say "yes"?\n1 Yes', more=True)
    assert phone.answer("2") == 'Say "yes"?\n1 Yes'
    line.heard.screen = Screen("Done.", more=False)
    assert phone.answer("1") == "Done."
    assert not phone.in_session
    steps = [each for each in line.heard.of(Incoming, 3) if isinstance(each, Incoming)]
    assert [(each.step, each.text) for each in steps] == [
        (Step.BEGIN, ""),
        (Step.ANSWER, "2"),
        (Step.ANSWER, "1"),
    ]
    assert len({each.session_id for each in steps}) == 1
    assert len({each.gateway_id for each in steps}) == 3


def test_a_menu_that_is_given_up_is_told(line: Line) -> None:
    """So that the session does not stay open here."""
    if not line.menus:
        pytest.skip("this line serves no menus")
    phone = line.operator.phone(AMINA)
    line.heard.screen = Screen("Language?", more=True)
    phone.dial("*555*7#")
    line.heard.screen = None
    phone.hang_up()
    *_, last = line.heard.of(Incoming, 2)
    assert isinstance(last, Incoming) and last.step is Step.END


def test_a_menu_whose_time_is_over_is_told(line: Line) -> None:
    """The operator ends it; whoever dials again begins anew."""
    if not line.menus:
        pytest.skip("this line serves no menus")
    core, phone = line.operator.network.core, line.operator.phone(AMINA)
    core.limits = replace(core.limits, session_seconds=1)
    line.heard.screen = Screen("Language?", more=True)
    phone.dial("*555*7#")
    line.heard.screen = None
    *_, last = line.heard.of(Incoming, 2)
    assert isinstance(last, Incoming) and last.step is Step.END
    assert not phone.in_session and "time limit" in phone.ended
    line.heard.screen = Screen("Language?", more=True)
    assert phone.dial("*555*7#") == "Language?"
    begun = [each for each in line.heard.of(Incoming, 3) if isinstance(each, Incoming)]
    assert begun[2].step is Step.BEGIN and begun[2].session_id != begun[0].session_id


def test_a_phone_that_is_full_or_off_has_its_text_once_it_can(line: Line) -> None:
    """The operator keeps it; the receipt comes then and not before."""
    phone = line.operator.phone(AMINA)
    for away, back in ((phone.fill, True), (phone.power, False)):
        away(back)
        kept = text(f"kept {away.__name__}", away.__name__)
        assert offered(line, kept).fate is Fate.ACCEPTED
        assert not phone.texts or phone.texts[-1] != f"kept {away.__name__}"
        away(not back)
        assert phone.wait_for(1 if back else 2, 60), line.operator.record
        assert phone.texts[-1] == f"kept {away.__name__}"
    assert len(line.heard.of(Receipt, 2)) == 2
