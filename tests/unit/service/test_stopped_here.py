"""A STOP, which anybody can forge, is seen by the officer while a bed stands."""

from assistant.people import Village
from assistant.service.sight import sight_of
from assistant.service.waiting.page import Waiting, waiting_for
from assistant.wording import messages_officer as o
from assistant.wording import messages_talk as m
from tests.valley import AMINA, CODE, OFFICER, Valley, like


def _waits(valley: Valley) -> Waiting:
    with valley.house.store.look() as work:
        officer = work.people.officer(OFFICER)
        assert officer is not None
        sight = sight_of(work, officer)
    return waiting_for(valley.house, sight, valley.now)


def _stops(valley: Valley) -> list[str]:
    return [each.farmer.phone for each in _waits(valley).others if each.about == "stopped"]


def test_the_officer_sees_it_and_is_sent_no_text(valley: Valley, kijani: Village) -> None:
    """One row, however often it is said; she can ring, and WHO tells it too."""
    valley.add_officer(kijani)
    valley.enrol(AMINA)
    valley.plan(AMINA, "5 June")
    valley.heard(OFFICER)
    assert valley.text(AMINA, "STOP") == [like(m.STOPPED)]
    valley.text(AMINA, "STOP")
    assert _stops(valley) == [AMINA]
    assert valley.heard(OFFICER) == []
    words = o.ABOUT_STOPPED.text
    assert any(words in text for text in valley.text(OFFICER, f"WHO {CODE}"))


def test_a_start_takes_the_row_away_and_a_stop_brings_it_back(
    valley: Valley, kijani: Village
) -> None:
    """Nothing of it keeps the farmer's own calls from being told."""
    valley.add_officer(kijani)
    valley.enrol(AMINA)
    valley.plan(AMINA, "5 June")
    for _ in range(5):
        valley.text(AMINA, "STOP")
        assert _stops(valley) == [AMINA]
        valley.text(AMINA, "START")
        assert _stops(valley) == []
    valley.heard(OFFICER)
    valley.text(AMINA, "officer, my seed is mouldy")
    assert len(valley.heard(OFFICER)) == 1


def test_who_has_no_bed_stops_unseen(valley: Valley, kijani: Village) -> None:
    """There is no work that would be missed."""
    valley.add_officer(kijani)
    valley.enrol(AMINA)
    valley.text(AMINA, "STOP")
    assert _stops(valley) == []
