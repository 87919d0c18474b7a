"""What the operator says of a text, in whatever order it comes."""

from collections.abc import Callable
from dataclasses import replace
from datetime import datetime, timedelta

import pytest

from assistant.channel import Fate
from assistant.store import OutboxText, Store, TextState

MakeText = Callable[..., OutboxText]

_MINUTE = timedelta(minutes=1)
_ENDS = {
    Fate.DELIVERED: TextState.DELIVERED,
    Fate.FAILED: TextState.FAILED,
    Fate.EXPIRED: TextState.EXPIRED,
}


@pytest.fixture
def claimed(store: Store, make_text: MakeText, now: datetime) -> OutboxText:
    """A text in a dispatcher's hands."""
    with store.work() as work:
        work.outbox.add(make_text("m1"))
        (text,) = work.outbox.claim(now, 1, _MINUTE)
    return text


def _told(store: Store, now: datetime, *fates: Fate) -> OutboxText:
    """The text after the operator said these, one a minute, each in its own transaction."""
    for minute, fate in enumerate(fates):
        with store.work() as work:
            text = work.outbox.record("m1", fate, now + minute * _MINUTE)
    assert text is not None
    return text


@pytest.mark.parametrize("end", _ENDS)
def test_a_receipt_after_the_hand_over_ends_the_text(
    store: Store, claimed: OutboxText, now: datetime, end: Fate
) -> None:
    """The usual order; said twice it changes nothing."""
    once = _told(store, now, Fate.ACCEPTED, end)
    assert (once.state, once.accepted_at) == (_ENDS[end], now)
    assert _told(store, now, Fate.ACCEPTED, end) == once


@pytest.mark.parametrize("end", _ENDS)
def test_a_receipt_before_the_hand_over_was_recorded_stands(
    store: Store, claimed: OutboxText, now: datetime, end: Fate
) -> None:
    """The receipt overtook our own record; what was sent is filled in afterwards."""
    _told(store, now, end)
    with store.work() as work:
        text = work.outbox.record("m1", Fate.ACCEPTED, now, encoding="gsm7", segments=2)
    assert text is not None
    assert (text.state, text.accepted_at) == (_ENDS[end], now)
    assert (text.encoding, text.segments) == ("gsm7", 2)


def test_a_put_off_text_waits_again_until_its_time(
    store: Store, claimed: OutboxText, now: datetime
) -> None:
    """The lease ends with the try."""
    retry_at = now + 5 * _MINUTE
    with store.work() as work:
        text = work.outbox.record("m1", Fate.TRY_LATER, now, detail="busy", retry_at=retry_at)
        assert text is not None
        assert (text.state, text.attempts, text.detail) == (TextState.WAITING, 1, "busy")
        assert work.outbox.claim(now + 4 * _MINUTE, 1, _MINUTE) == ()
        (again,) = work.outbox.claim(retry_at, 1, _MINUTE)
        assert (again.message_id, again.attempts) == ("m1", 1)


def test_a_late_try_later_does_not_send_an_accepted_text_again(
    store: Store, claimed: OutboxText, now: datetime
) -> None:
    """Another dispatcher had taken over and was told that the operator has it."""
    text = _told(store, now, Fate.ACCEPTED, Fate.TRY_LATER)
    assert (text.state, text.attempts) == (TextState.ACCEPTED, 0)


def test_a_receipt_for_a_text_that_is_not_ours_is_nothing(store: Store, now: datetime) -> None:
    """Operators mix up accounts."""
    with store.work() as work:
        assert work.outbox.record("stranger", Fate.DELIVERED, now) is None


def test_a_text_we_gave_up_can_still_turn_out_delivered(
    store: Store, claimed: OutboxText, now: datetime
) -> None:
    """The dispatcher died after sending; the receipt knows better."""
    late = claimed.not_after
    with store.work() as work:
        assert [text.state for text in work.outbox.expire(late)] == [TextState.EXPIRED]
    text = _told(store, late, Fate.DELIVERED)
    assert (text.state, text.delivered_at, text.ended_at) == (TextState.DELIVERED, late, None)


_BEFORE: tuple[tuple[Fate, ...], ...] = (
    (),
    (Fate.TRY_LATER,),
    (Fate.ACCEPTED,),
    (Fate.FAILED,),
    (Fate.EXPIRED,),
    (Fate.DELIVERED,),
    (Fate.FAILED, Fate.DELIVERED),
)


@pytest.mark.parametrize("withdrawn", [False, True])
@pytest.mark.parametrize("earlier", [-1, 5])
def test_many_that_are_taken_together_are_as_each_by_itself(
    store: Store, make_text: MakeText, now: datetime, earlier: int, withdrawn: bool
) -> None:
    """Whatever was said of them before, and whenever."""
    at = now + earlier * _MINUTE
    kept: dict[str, list[object]] = {"one": [], "all": []}
    for way, found in kept.items():
        names = [f"{way} {number}" for number, _ in enumerate(_BEFORE)]
        with store.work() as work:
            work.outbox.add_all(make_text(name) for name in names)
            work.outbox.claim(now, len(names), _MINUTE)
            for name, fates in zip(names, _BEFORE, strict=True):
                for fate in fates:
                    work.outbox.record(name, fate, now)
            if withdrawn:
                work.outbox.withdraw(now, phone="+447700900101")
        with store.work() as work:
            if way == "all":
                work.outbox.accepted(names, at)
            for name in names:
                if way == "one":
                    work.outbox.record(name, Fate.ACCEPTED, at)
        with store.work() as work:
            texts = [work.outbox.get(name) for name in names]
            found += [replace(each, id=0, message_id="") for each in texts if each]
    assert kept["all"] == kept["one"]
    assert len(kept["all"]) == len(_BEFORE)
