"""Wrong codes by text close that way in for a day, but for who reads what is sent to the phone;
codes are renewed."""

import re
from dataclasses import replace

from assistant.people import Village
from assistant.service import way_back
from assistant.store.queries.spans import TimeSpan
from assistant.wording import messages_officer as o
from tests.valley import AMINA, CODE, OFFICER, Valley, at, like


def _guess(valley: Valley, times: int) -> list[str]:
    heard = []
    for number in range(times):
        heard = valley.text(OFFICER, f"WHO {number:06}")
    return heard


def _digits(text: str, count: int) -> str:
    found = re.search(rf"(?<!\d)\d{{{count}}}(?!\d)", text)
    assert found is not None, text
    return found[0]


def test_five_wrong_codes_shut_the_line_for_a_day(valley: Valley, kijani: Village) -> None:
    """Then even the right code is not looked at."""
    valley.add_officer(kijani)
    assert _guess(valley, 4) == [like(o.NEED_CODE)]
    assert _guess(valley, 1) == [like(o.CODE_WAY_BACK)]
    assert valley.text(OFFICER, f"WHO {CODE}") == [like(o.CODE_LOCKED)]
    valley.go("2 Jun 07:59")
    assert valley.text(OFFICER, f"WHO {CODE}") == [like(o.CODE_WAY_BACK)]
    valley.go("2 Jun 08:01")
    assert valley.text(OFFICER, f"WHO {CODE}") == [like(o.NOBODY_TO_SEE)]


def test_a_forger_cannot_keep_an_officer_from_warning(valley: Valley, kijani: Village) -> None:
    """Whoever reads the phone has the code that goes through, and the lock is gone with it."""
    valley.add_officer(kijani)
    (answer,) = _guess(valley, 5)
    code = _digits(answer, 8)
    _guess(valley, 20)  # the forger goes on, and at the eight digits too
    for number in range(20):
        valley.text(OFFICER, f"WHO {number:08}")
    assert valley.text(OFFICER, f"WHO {code}") == [like(o.NOBODY_TO_SEE)]
    assert valley.text(OFFICER, f"WHO {CODE}") == [like(o.NOBODY_TO_SEE)]
    _guess(valley, 5)
    assert valley.text(OFFICER, f"WHO {code}") != [like(o.NOBODY_TO_SEE)]  # good once


def test_the_eight_digits_are_kept_nowhere_in_clear(valley: Valley, kijani: Village) -> None:
    """Neither as they were sent, to who looks at messages, nor as they came back."""
    valley.add_officer(kijani)
    (answer,) = _guess(valley, 5)
    code = _digits(answer, 8)
    valley.text(OFFICER, f"WHO {code}")
    with valley.house.store.look() as work:
        span = TimeSpan(at("1 Jun 00:00"), at("3 Jun 00:00"), (), everybody=True)
        sent, heard = work.ledger.latest_sent(span, 50), work.ledger.latest_heard(span, 50)
        kept = work.accounts.one_time(OFFICER)
    assert len(sent) == 6 and len(heard) == 6 and kept is None
    assert code not in str((sent, heard))


def test_a_code_is_renewed_after_a_few_uses(valley: Valley, kijani: Village) -> None:
    """The old one is good until the new one is used, since a text may be lost."""
    valley.house = replace(valley.house, code_uses=2, hash_code=lambda code: f"hash of {code}")
    valley.add_officer(kijani)
    assert len(valley.text(OFFICER, f"WHO {CODE}")) == 1
    first = valley.text(OFFICER, f"WHO {CODE}")
    second = valley.text(OFFICER, f"WHO {CODE}")
    assert [first[0], second[0]] == [like(o.NEXT_CODE, ...)] * 2
    lost, fresh = _digits(first[0], 6), _digits(second[0], 6)
    assert valley.text(OFFICER, f"WHO {fresh}")[-1] == like(o.NOBODY_TO_SEE)
    assert valley.text(OFFICER, f"WHO {CODE}") == [like(o.NEED_CODE)]
    assert valley.text(OFFICER, f"WHO {lost}") == [like(o.NEED_CODE)]


def test_a_farmer_gets_no_code(valley: Valley, kijani: Village) -> None:
    """Codes are an officer's."""
    valley.enrol(AMINA)
    valley.heard(AMINA)
    for number in range(6):
        assert valley.text(AMINA, f"WHO {number:06}") != [like(o.CODE_WAY_BACK)]


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


def test_the_texts_say_how_long_and_how_many() -> None:
    """What is typed in them is what holds."""
    minutes = round(way_back.LASTS.total_seconds() / 60)
    assert all(f"{minutes} minutes" in text.text for text in (o.CODE_WAY_BACK, o.PAGE_CODE))
    assert f"{way_back.DIGITS} digits" in o.CODE_LOCKED.text
