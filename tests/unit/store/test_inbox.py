"""Incoming messages are taken once."""

from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from datetime import datetime, timedelta
from threading import Event

from assistant.channel import Channel, Incoming, Screen, Step
from assistant.store import Seen, Store

_PHONE = "+447700900101"
_SCREEN = Screen("1 English\n2 Kiswahili", more=True)


def _dialled(at: datetime, gateway_id: str = "u1") -> Incoming:
    return Incoming(gateway_id, _PHONE, "", Channel.USSD, at, Step.BEGIN, "s1")


def _text(at: datetime, gateway_id: str) -> Incoming:
    return Incoming(gateway_id, _PHONE, "DONE", Channel.SMS, at)


def test_a_repeat_gets_the_screen_of_the_first_time(store: Store, now: datetime) -> None:
    """The gateway asks again when our answer was lost."""
    with store.work() as work:
        assert work.inbox.take(_dialled(now), "", now) == Seen(new=True)
        work.inbox.keep_answer("u1", _SCREEN)
    with store.work() as work:
        assert work.inbox.take(_dialled(now), "", now) == Seen(new=False, answer=_SCREEN)


def test_a_repeated_text_has_no_screen_to_get(store: Store, now: datetime) -> None:
    """Its answer went out by itself."""
    with store.work() as work:
        work.inbox.take(_text(now, "t1"), "DONE", now)
        assert work.inbox.take(_text(now, "t1"), "DONE", now) == Seen(new=False)
        assert work.inbox.take(_text(now, "t2"), "DONE", now) == Seen(new=True)


def test_a_message_whose_turn_was_undone_is_new_again(store: Store, now: datetime) -> None:
    """Storing and turning are one transaction; the failure is then kept in another."""
    try:
        with store.work() as work:
            work.inbox.take(_dialled(now), "", now)
            raise RuntimeError("the talk failed")
    except RuntimeError:
        pass
    with store.work() as work:
        assert work.inbox.take(_dialled(now), "", now).new
        work.inbox.mark_failed("u1")
        work.inbox.keep_answer("u1", _SCREEN)
    with store.work() as work:
        assert work.inbox.take(_dialled(now), "", now) == Seen(new=False, answer=_SCREEN)


def test_a_repeat_during_the_first_turn_waits_for_its_answer(
    store: Store, now: datetime
) -> None:
    """Two web threads get the same message at once."""
    taken = Event()

    def repeat() -> Seen:
        taken.wait(timeout=60)
        with store.work() as work:
            return work.inbox.take(_dialled(now), "", now)

    with ThreadPoolExecutor(1) as pool:
        with store.work() as work:
            work.inbox.take(_dialled(now), "", now)
            second = pool.submit(repeat)
            taken.set()
            work.inbox.keep_answer("u1", _SCREEN)
        assert second.result(timeout=60) == Seen(new=False, answer=_SCREEN)


def test_the_latest_text_of_a_phone_is_the_latest_sent_not_the_latest_come(
    store: Store, now: datetime
) -> None:
    """Texts overtake each other on the way; dialling is no text."""
    minute = timedelta(minutes=1)
    with store.work() as work:
        assert work.inbox.last_text_at(_PHONE) is None
        work.inbox.take(_text(now + minute, "t2"), "DONE", now + 2 * minute)
        work.inbox.take(_text(now, "t1"), "DONE", now + 3 * minute)
        work.inbox.take(_dialled(now + 4 * minute), "", now + 4 * minute)
        other = replace(_text(now + 5 * minute, "t3"), phone="+447700900102")
        work.inbox.take(other, "DONE", now + 5 * minute)
        assert work.inbox.last_text_at(_PHONE) == now + minute
