"""The texts of a warning on their way: taken back, let go, counted; on both databases."""

from collections.abc import Callable
from dataclasses import replace
from datetime import datetime, timedelta

import pytest

from assistant.channel import Fate
from assistant.dialogue.values import Kind, Standing
from assistant.people import Farmer, Officer, Village
from assistant.store import (
    Broadcast,
    Group,
    OutboxText,
    Progress,
    Reader,
    Silent,
    Store,
    TextState,
)

MakeText = Callable[..., OutboxText]

_HOUR, _LEASE = timedelta(hours=1), timedelta(minutes=1)
_PHONES = ("+447700900101", "+447700900102", "+447700900103", "+447700900104")


@pytest.fixture
def warning(
    store: Store, village: Village, officer: Officer, make_text: MakeText, now: datetime
) -> Standing:
    """Four texts: delivered, with the operator, claimed, waiting."""
    with store.work() as work:
        given = work.warnings.add(village.id, officer.id, now, now + 6 * _HOUR, now)
        work.warnings.ask(given.id, _PHONES)
        for number, phone in enumerate(_PHONES):
            due = now + number * timedelta(seconds=1)
            text = make_text(f"w{number}", phone=phone, kind=Kind.WARNING, warning_id=given.id)
            work.outbox.add(replace(text, due_at=due, created_at=now, not_after=now + _HOUR))
        work.outbox.record("w0", Fate.DELIVERED, now)
        work.outbox.record("w1", Fate.ACCEPTED, now)
        work.outbox.claim(now + 2 * timedelta(seconds=1), 1, _LEASE)
    return given


def test_what_has_not_left_is_taken_back(
    store: Store, warning: Standing, now: datetime
) -> None:
    """The text in a dispatcher's hands may not leave any more, and never again."""
    with store.work() as work:
        assert work.sending.progress([warning.id]) == Progress(queued=2, sent=1, received=1)
        assert work.sending.may_leave(["w2", "w9"], now) == {"w2"}
        assert work.sending.take_back(warning.id, now) == 1
        assert not work.sending.may_leave(["w2"], now)
        assert work.sending.told(warning.id) == {
            _PHONES[0]: TextState.DELIVERED,
            _PHONES[1]: TextState.ACCEPTED,
            _PHONES[2]: TextState.CLAIMED,
        }
    with store.work() as work:
        work.outbox.record("w2", Fate.TRY_LATER, now)
        assert work.outbox.claim(now + _HOUR / 2, 10, _LEASE) == ()
        assert [text.message_id for text in work.outbox.expire(now)] == ["w2"]


def test_a_text_that_is_let_go_was_taken_back(
    store: Store, warning: Standing, now: datetime
) -> None:
    """It counts with those that never left."""
    with store.work() as work:
        work.sending.take_back(warning.id, now)
        work.sending.let_go(["w2"], now)
        work.sending.let_go(["w0"], now)  # it is on the phone: nothing undoes that
    with store.look() as work:
        assert work.sending.progress([warning.id]) == Progress(0, 1, 1, 0, 2)


def test_who_answered_on_a_screen_was_told(
    store: Store, warning: Standing, now: datetime
) -> None:
    """Whatever became of the text."""
    with store.work() as work:
        work.sending.take_back(warning.id, now)
        work.warnings.answer(warning.id, _PHONES[3], "covered", now)
        assert work.sending.told(warning.id)[_PHONES[3]] is None


def test_the_silent_are_asked_again_once_but_for_those_not_asked_yet(
    store: Store, warning: Standing, now: datetime
) -> None:
    """Two have the text or may have it; of two it has not left."""
    with store.work() as work:
        assert set(work.warnings.ask_again(warning.id, now)) == set(_PHONES[:2])
        assert work.warnings.ask_again(warning.id, now) == ()


def test_the_silent_are_listed_with_what_they_have(
    store: Store, warning: Standing, farmer: Farmer, now: datetime
) -> None:
    """Only farmers that are kept."""
    with store.look() as work:
        silent = work.warnings.silent([warning.id])
    expected = Silent(
        farmer.id,
        farmer.phone,
        None,
        farmer.village_id,
        has_it=True,
        asked_again=False,
        unsent=False,
    )
    assert silent == (expected,)


def test_a_warning_is_ended_once(store: Store, warning: Standing, now: datetime) -> None:
    """By an all-clear or by calling it back, whichever came first."""
    with store.work() as work:
        assert work.warnings.clear(warning.id, now, recalled=True)
        assert not work.warnings.clear(warning.id, now + _HOUR)
        assert work.warnings.standing(warning.village_id, now) == ()


def test_a_broadcast_is_sent_once_and_followed(
    store: Store,
    village: Village,
    officer: Officer,
    farmer: Farmer,
    make_text: MakeText,
    now: datetime,
) -> None:
    """Its texts are known by their ids."""
    wanted = Broadcast(officer.id, "Seed {x}", (village.id,), now, Group.YOUNG, "mat")
    with store.work() as work:
        made = work.broadcasts.add(wanted)
        assert made == replace(wanted, id=made.id)
        (reader,) = work.broadcasts.readers([village.id])
        assert reader == Reader(farmer.phone, "sw", village.id, may_be_texted=True)
        assert work.broadcasts.send(made.id, now)
        assert not work.broadcasts.send(made.id, now)
        work.outbox.add(make_text("b1", phone=farmer.phone, kind=Kind.LETTER))
        work.broadcasts.went_to(made.id, [(farmer.phone, "b1")])
        assert work.broadcasts.states(made.id) == {TextState.WAITING: 1}
        assert work.broadcasts.take_back(made.id, now) == 1
        assert work.broadcasts.states(made.id) == {TextState.WITHDRAWN: 1}
        assert work.broadcasts.latest(5) == (replace(made, sent_at=now),)
        assert work.broadcasts.latest(5, officer.id + 1) == ()
