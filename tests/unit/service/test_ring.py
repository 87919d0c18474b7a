"""A missed call is a call for help."""

from datetime import timedelta

from assistant.channel import Channel, Incoming
from assistant.people import Village
from assistant.service.ring import take_ring
from assistant.wording import messages_officer as o
from assistant.wording import messages_talk as m
from tests.valley import AMINA, BARAKA, CODE, OFFICER, Valley, like


def _ring(valley: Valley, phone: str, gateway_id: str) -> list[str]:
    """A phone rings and hangs up; what it hears then."""
    incoming = Incoming(gateway_id, phone, "", Channel.RING, valley.now)
    take_ring(valley.house, incoming, valley.now)
    valley.send()
    return valley.heard(phone)


def _calls(valley: Valley) -> list[str]:
    with valley.house.store.look() as work:
        return [call.about for call in work.calls.open()]


def test_who_rings_is_called_back(valley: Valley, kijani: Village) -> None:
    """The officer is told, and the farmer hears that."""
    valley.add_officer(kijani)
    valley.enrol(AMINA)
    assert _ring(valley, AMINA, "ring-1") == [like(m.RING_NOTED)]
    assert valley.heard(OFFICER) == [like(o.HELP_NOTICE_BARE)]
    assert _calls(valley) == ["ring"]


def test_ringing_again_soon_is_the_same_call(valley: Valley, kijani: Village) -> None:
    """Nobody is told three times; the next day it is another."""
    valley.add_officer(kijani)
    valley.enrol(AMINA)
    _ring(valley, AMINA, "ring-1")
    assert _ring(valley, AMINA, "ring-2") == []
    valley.go("2 Jun 08:00")
    assert _ring(valley, AMINA, "ring-3") == [like(m.RING_NOTED)]
    assert _calls(valley) == ["ring", "ring"]


def test_a_ring_that_the_operator_tells_of_twice_counts_once(
    valley: Valley, kijani: Village
) -> None:
    """By the operator's own id."""
    valley.enrol(AMINA)
    _ring(valley, AMINA, "ring-1")
    valley.go("3 Jun 08:00")
    assert _ring(valley, AMINA, "ring-1") == []
    assert _calls(valley) == ["ring"]


def test_a_number_that_nobody_enrolled_hears_nothing(valley: Valley, kijani: Village) -> None:
    """It may have been dialled by mistake."""
    assert _ring(valley, BARAKA, "ring-1") == []
    assert _calls(valley) == []


def test_who_stopped_texts_is_still_called_back(valley: Valley, kijani: Village) -> None:
    """But gets no text."""
    valley.enrol(AMINA)
    valley.text(AMINA, "STOP")
    assert _ring(valley, AMINA, "ring-1") == []
    assert _calls(valley) == ["ring"]


def test_ringing_twice_in_a_minute_tells_the_officer_once(
    valley: Valley, kijani: Village
) -> None:
    """People let it ring, hang up, and try again."""
    valley.add_officer(kijani)
    valley.enrol(AMINA)
    _ring(valley, AMINA, "ring-1")
    valley.heard(OFFICER)
    valley.leap(valley.now + timedelta(seconds=20))
    assert _ring(valley, AMINA, "ring-2") == []
    assert valley.heard(OFFICER) == []
    with valley.house.store.work() as work:
        work.calls.handle(1, valley.now)  # rung back; what now rings is new
    assert _ring(valley, AMINA, "ring-3") == [like(m.RING_NOTED)]


def test_a_ring_while_a_warning_stands_does_not_wait_for_the_morning(
    valley: Valley, kijani: Village
) -> None:
    """Who has no credit in a storm rings; without a warning the officer sleeps."""
    valley.add_officer(kijani)
    valley.enrol(AMINA)
    valley.sow(AMINA, "1 June")
    valley.leap("1 Jun 21:00")
    _ring(valley, AMINA, "ring-1")
    assert valley.heard(OFFICER) == []
    valley.text(OFFICER, f"RAIN {CODE} Kijani 22-24")
    valley.text(OFFICER, "1")
    valley.leap("1 Jun 22:30")
    valley.heard(OFFICER)
    _ring(valley, AMINA, "ring-2")
    assert valley.heard(OFFICER) == [like(o.HELP_NOTICE_BARE, o.GO_SAFELY)]
    assert _calls(valley) == ["ring", "ring_rain"]
    _ring(valley, AMINA, "ring-3")
    assert valley.heard(OFFICER) == []


def test_who_has_not_agreed_yet_is_called_back_and_gets_no_text(
    valley: Valley, kijani: Village
) -> None:
    """An officer enrolled them; a call is no text. Who said no is left alone."""
    valley.add_officer(kijani)
    for phone, name in ((AMINA, "Amina"), (BARAKA, "Baraka")):
        valley.text(OFFICER, f"ADD {CODE} {phone} Kijani {name}")
        valley.text(OFFICER, "1")
        valley.heard(phone)
    valley.text(BARAKA, "2")
    valley.heard(OFFICER)
    assert _ring(valley, AMINA, "ring-1") == []
    assert _ring(valley, BARAKA, "ring-2") == []
    assert valley.heard(OFFICER) == [like(o.HELP_NOTICE_BARE)]
    assert _calls(valley) == ["ring"]
