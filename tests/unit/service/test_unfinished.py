"""A sign-up that was left open gets one kind text, and never a second."""

import pytest

from assistant.people import Village
from assistant.wording import messages_talk as m
from tests.valley import AMINA, Valley, like

NUDGED = like(m.NUDGE, m.ASK_VILLAGE, ...)


def test_a_sign_up_left_open_is_asked_once_more_after_two_days(
    valley: Valley, kijani: Village
) -> None:
    """By day, and never again."""
    valley.text(AMINA, "START")
    valley.text(AMINA, "1")
    valley.go("2 Jun 20:00")
    assert valley.heard(AMINA) == []
    valley.go("5 Jun 20:00")
    assert valley.heard(AMINA) == [NUDGED]
    valley.go("20 Jun 20:00")
    assert valley.heard(AMINA) == []
    assert valley.text(AMINA, "1") == [like(m.ASK_CONSENT, ...)]
    valley.go("30 Jun 20:00")
    assert valley.heard(AMINA) == []


@pytest.mark.parametrize("last", ["STOP", "2"])
def test_who_refused_or_stopped_hears_nothing(
    valley: Valley, kijani: Village, last: str
) -> None:
    for words in ("START", "1", "1", last):
        valley.text(AMINA, words)
    valley.go("20 Jun 20:00")
    assert valley.heard(AMINA) == []


def test_a_night_is_waited_for(valley: Valley, kijani: Village) -> None:
    """Begun late in the evening: not asked before the morning."""
    valley.go("1 Jun 21:00")
    valley.text(AMINA, "START")
    valley.go("4 Jun 05:00")
    assert valley.heard(AMINA) == []
    valley.go("4 Jun 07:00")
    assert len(valley.heard(AMINA)) == 1


def test_who_only_dialled_is_left_in_peace(valley: Valley, kijani: Village) -> None:
    valley.dial(AMINA)
    valley.key(AMINA, "1")
    valley.hang_up(AMINA)
    valley.go("10 Jun 20:00")
    assert valley.heard(AMINA) == []


def test_who_agreed_is_no_sign_up_left_open(valley: Valley, kijani: Village) -> None:
    valley.enrol(AMINA)
    valley.go("10 Jun 20:00")
    assert not any("did not finish" in text for text in valley.heard(AMINA))
