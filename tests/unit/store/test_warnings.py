"""Rain warnings from the officer's word to the all-clear."""

from collections.abc import Callable
from dataclasses import replace
from datetime import datetime, timedelta

import pytest

from assistant.channel import Fate
from assistant.dialogue.values import Kind, Standing
from assistant.people import Farmer, Officer, Village
from assistant.store import OutboxText, Store

MakeText = Callable[..., OutboxText]

_HOUR = timedelta(hours=1)
_PHONES = ("+447700900101", "+447700900102", "+447700900103")


@pytest.fixture
def warning(store: Store, village: Village, officer: Officer, now: datetime) -> Standing:
    """Rain in two hours, for four hours."""
    with store.work() as work:
        return work.warnings.add(village.id, officer.id, now + 2 * _HOUR, now + 6 * _HOUR, now)


def test_a_warning_stands_until_it_is_over(
    store: Store, warning: Standing, village: Village, now: datetime
) -> None:
    """Also before the rain begins."""
    with store.work() as work:
        assert work.warnings.standing(village.id, now) == (warning,)
        assert work.warnings.standing(village.id, now + 5.9 * _HOUR) == (warning,)
        assert work.warnings.standing(village.id, now + 6 * _HOUR) == ()
        assert work.warnings.standing(village.id + 1, now) == ()
        assert work.warnings.get(warning.id) == warning


def test_a_cleared_warning_stands_no_more(
    store: Store, warning: Standing, village: Village, now: datetime
) -> None:
    """It can still be asked for by its id."""
    with store.work() as work:
        work.warnings.clear(warning.id, now + _HOUR)
    with store.work() as work:
        assert work.warnings.standing(village.id, now + _HOUR) == ()
        assert work.warnings.get(warning.id) == warning


def test_a_phone_sees_the_latest_warning_with_its_own_answer(
    store: Store, warning: Standing, village: Village, officer: Officer, now: datetime
) -> None:
    """The last answer of a phone counts; an older warning's answer is not the newer's."""
    mine, theirs, _ = _PHONES

    def standing_for(phone: str, village_id: int | None, at: datetime) -> Standing | None:
        with store.work() as work:
            known = work.people.farmer(phone) or Farmer(0, phone, None, None, None, None)
            work.people.save_farmer(replace(known, village_id=village_id))
        with store.work() as work:
            return work.at_hand.of(phone, at, at).warning

    with store.work() as work:
        work.warnings.ask(warning.id, _PHONES)
        work.warnings.answer(warning.id, mine, "covered", now)
        work.warnings.answer(warning.id, mine, "help", now + _HOUR)
    answered = replace(warning, answer="help")
    assert standing_for(mine, village.id, now) == answered
    assert standing_for(theirs, village.id, now) == warning
    assert standing_for(mine, None, now) is None
    with store.work() as work:
        newer = work.warnings.add(village.id, officer.id, now, now + _HOUR, now + _HOUR / 2)
    assert standing_for(mine, village.id, now) == newer
    assert standing_for(mine, village.id, now + _HOUR) == answered


def test_asking_the_same_phones_again_counts_them_once(
    store: Store, warning: Standing, now: datetime
) -> None:
    """And keeps what they answered."""
    with store.work() as work:
        assert work.warnings.ask(warning.id, _PHONES[:2]) == 2
        work.warnings.answer(warning.id, _PHONES[0], "covered", now)
        assert work.warnings.ask(warning.id, _PHONES) == 1
        assert work.warnings.asked(warning.id) == _PHONES
        assert work.warnings.tally(warning.id) == (3, 0, 1, 0)


def test_the_tally_counts_phones_not_texts(
    store: Store, warning: Standing, make_text: MakeText, now: datetime
) -> None:
    """The all-clear is a text of the warning too, and says nothing of who was warned."""
    with store.work() as work:
        work.warnings.ask(warning.id, _PHONES)
        for name, phone, kind in (
            ("w1", _PHONES[0], Kind.WARNING),
            ("w1 again", _PHONES[0], Kind.WARNING),
            ("w2", _PHONES[1], Kind.WARNING),
            ("clear", _PHONES[2], Kind.ALL_CLEAR),
        ):
            work.outbox.add(make_text(name, phone=phone, kind=kind, warning_id=warning.id))
            work.outbox.record(name, Fate.ACCEPTED if name == "w2" else Fate.DELIVERED, now)
        work.warnings.answer(warning.id, _PHONES[0], "help", now)
        work.warnings.answer(warning.id, _PHONES[2], "covered", now)
        tally = work.warnings.tally(warning.id)
    assert (tally.asked, tally.delivered, tally.covered, tally.need_help) == (3, 1, 1, 1)
