"""Wrong codes by text close that way in for an hour."""

from assistant.people import Village
from assistant.wording import messages_officer as o
from tests.valley import CODE, OFFICER, Valley, like


def _guess(valley: Valley, times: int) -> list[str]:
    heard = []
    for number in range(times):
        heard = valley.text(OFFICER, f"WHO {number:06}")
    return heard


def test_five_wrong_codes_shut_the_line_for_an_hour(valley: Valley, kijani: Village) -> None:
    """Then even the right code is not looked at, and the text says until when."""
    valley.add_officer(kijani)
    assert _guess(valley, 4) == [like(o.NEED_CODE)]
    assert _guess(valley, 1) == [like(o.CODE_LOCKED)]
    assert valley.text(OFFICER, f"WHO {CODE}") == [like(o.CODE_LOCKED)]
    valley.go("1 Jun 09:01")
    assert valley.text(OFFICER, f"WHO {CODE}") == [like(o.NOBODY_TO_SEE)]


def test_a_right_code_forgets_the_wrong_ones(valley: Valley, kijani: Village) -> None:
    """Slips of the finger do not add up."""
    valley.add_officer(kijani)
    for _ in range(3):
        _guess(valley, 4)
        assert valley.text(OFFICER, f"WHO {CODE}") == [like(o.NOBODY_TO_SEE)]


def test_a_text_without_a_code_is_no_guess(valley: Valley, kijani: Village) -> None:
    """Who forgets the code is only reminded of it."""
    valley.add_officer(kijani)
    for _ in range(6):
        assert valley.text(OFFICER, "WHO") == [like(o.NEED_CODE)]


def test_the_lock_leaves_a_line_in_the_trail(valley: Valley, kijani: Village) -> None:
    """One line for the fifth wrong code, not one for each text after it."""
    valley.add_officer(kijani)
    _guess(valley, 8)
    with valley.house.store.look() as work:
        assert [(line.officer, line.act) for line in work.audit.latest(9)] == [
            ("Asha", "code_locked")
        ]
