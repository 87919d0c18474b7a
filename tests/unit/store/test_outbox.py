"""Outgoing texts from writing to giving up."""

from collections.abc import Callable
from dataclasses import replace
from datetime import date, datetime, timedelta

import pytest

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.nursery import Nursery
from assistant.channel import Fate
from assistant.dialogue.values import Focus, Item, Kind
from assistant.people import Officer, Village
from assistant.store import Lane, OutboxText, Store, StoreError, TextState

MakeText = Callable[..., OutboxText]

_PHONE = "+447700900101"
_MINUTE = timedelta(minutes=1)
_FOCUS = Focus(question="plan.area")


def _ids(texts: tuple[OutboxText, ...]) -> list[str]:
    return [text.message_id for text in texts]


def test_a_text_comes_back_with_every_field(
    store: Store, nursery: Nursery, officer: Officer, village: Village, now: datetime
) -> None:
    """None of the values is a default, so that a forgotten field would show."""
    with store.work() as work:
        warning = work.warnings.add(village.id, officer.id, now, now + _MINUTE, now)
    full = OutboxText(
        message_id="m1",
        phone=_PHONE,
        text="Mvua kubwa inakuja.",
        kind=Kind.WARNING,
        due_at=now + _MINUTE,
        not_after=now + 2 * _MINUTE,
        created_at=now,
        focus=Focus(items=(Item(nursery.id, TaskCode.SOW, date(2026, 6, 10)),)),
        nursery_id=nursery.id,
        warning_id=warning.id,
        urgent=True,
        state=TextState.DELIVERED,
        attempts=2,
        encoding="gsm7",
        segments=2,
        accepted_at=now + 3 * _MINUTE,
        delivered_at=now + 4 * _MINUTE,
        ended_at=now + 5 * _MINUTE,
        detail="as told",
    )
    with store.work() as work:
        kept = work.outbox.add(full)
    with store.work() as work:
        assert work.outbox.get("m1") == kept == replace(full, id=kept.id)
        assert work.outbox.of_phone(_PHONE) == (kept,)
        assert work.outbox.get("m2") is None


def test_many_texts_are_kept_at_once(store: Store, make_text: MakeText) -> None:
    """Each comes back as it was written; none at all is no fault."""
    texts = [make_text(name, focus=focus) for name, focus in (("m1", None), ("m2", _FOCUS))]
    with store.work() as work:
        work.outbox.add_all(texts)
        work.outbox.add_all([])
    with store.work() as work:
        kept = work.outbox.of_phone(_PHONE)
    assert [replace(text, id=0) for text in kept] == texts


def test_each_lane_goes_before_the_next_and_in_it_the_oldest(
    store: Store, make_text: MakeText, now: datetime
) -> None:
    """A warning and an answer overtake the morning's prompts, those the lists."""
    with store.work() as work:
        work.outbox.add(make_text("list", due_at=now - 3 * _MINUTE, lane=Lane.LIST))
        work.outbox.add(make_text("newer", due_at=now - _MINUTE))
        work.outbox.add(make_text("older", due_at=now - 2 * _MINUTE))
        work.outbox.add(make_text("answer", lane=Lane.ANSWER))
        work.outbox.add(make_text("warning", lane=Lane.DANGER))
        assert _ids(work.outbox.claim(now, 3, _MINUTE)) == ["warning", "answer", "older"]
        assert _ids(work.outbox.claim(now, 3, _MINUTE)) == ["newer", "list"]


def test_only_what_is_due_and_still_in_time_is_claimed(
    store: Store, make_text: MakeText, now: datetime
) -> None:
    """A text is worthless from its own expiry on."""
    with store.work() as work:
        work.outbox.add(make_text("early", due_at=now + _MINUTE))
        work.outbox.add(make_text("late", due_at=now - 2 * _MINUTE, not_after=now))
        work.outbox.add(make_text("right"))
        claimed = work.outbox.claim(now, 10, _MINUTE)
    assert [(text.message_id, text.state) for text in claimed] == [("right", TextState.CLAIMED)]


def test_a_claimed_text_is_claimed_again_when_its_lease_ran_out(
    store: Store, make_text: MakeText, now: datetime
) -> None:
    """Its dispatcher died between claiming and recording."""
    with store.work() as work:
        work.outbox.add(make_text("m1"))
        assert _ids(work.outbox.claim(now, 10, _MINUTE)) == ["m1"]
        assert _ids(work.outbox.claim(now + 0.9 * _MINUTE, 10, _MINUTE)) == []
        assert _ids(work.outbox.claim(now + _MINUTE, 10, _MINUTE)) == ["m1"]
        work.outbox.record("m1", Fate.ACCEPTED, now + _MINUTE)
        assert _ids(work.outbox.claim(now + 9 * _MINUTE, 10, _MINUTE)) == []


def test_texts_that_are_too_late_are_given_up_once(
    store: Store, make_text: MakeText, now: datetime
) -> None:
    """Waiting ones and those whose dispatcher never came back, none that is in hand."""
    soon = now + _MINUTE
    with store.work() as work:
        work.outbox.add(make_text("lost", not_after=soon, due_at=now - _MINUTE))
        work.outbox.claim(now, 1, 0.5 * _MINUTE)
        work.outbox.add(make_text("in hand", not_after=soon, due_at=now - _MINUTE))
        work.outbox.claim(now, 1, 5 * _MINUTE)
        work.outbox.add(make_text("waiting", not_after=soon))
        work.outbox.add(make_text("in time"))
        assert work.outbox.expire(now) == ()
        expired = work.outbox.expire(soon)
        assert work.outbox.expire(soon) == ()
    assert _ids(expired) == ["lost", "waiting"]
    assert {(text.state, text.ended_at) for text in expired} == {(TextState.EXPIRED, soon)}


def test_withdrawing_takes_back_only_what_waits(
    store: Store, make_text: MakeText, now: datetime
) -> None:
    """What a dispatcher has may be on its way already."""
    with store.work() as work:
        work.outbox.add(make_text("in hand"))
        work.outbox.claim(now, 1, _MINUTE)
        work.outbox.add(make_text("prompt"))
        work.outbox.add(make_text("reply", kind=Kind.REPLY))
        work.outbox.add(make_text("other phone", phone="+447700900102"))
        prompts = [Kind.PROMPT, Kind.SECOND]
        assert work.outbox.withdraw(now, phone=_PHONE, kinds=prompts) == 1
        states = {text.message_id: text.state for text in work.outbox.of_phone(_PHONE)}
        assert states == {
            "in hand": TextState.CLAIMED,
            "prompt": TextState.WITHDRAWN,
            "reply": TextState.WAITING,
        }


def test_texts_of_one_nursery_or_one_warning_can_be_taken_back(
    store: Store,
    make_text: MakeText,
    nursery: Nursery,
    officer: Officer,
    village: Village,
    now: datetime,
) -> None:
    """All terms given must hold."""
    with store.work() as work:
        warning = work.warnings.add(village.id, officer.id, now, now + _MINUTE, now)
        work.outbox.add(make_text("plain"))
        work.outbox.add(make_text("nursery", nursery_id=nursery.id))
        work.outbox.add(make_text("warning", warning_id=warning.id, nursery_id=nursery.id))
        both = work.outbox.withdraw(now, warning_id=warning.id, nursery_id=nursery.id)
        assert both == 1
        assert work.outbox.withdraw(now, nursery_id=nursery.id) == 1
        assert _ids(work.outbox.claim(now, 9, _MINUTE)) == ["plain"]


def test_withdrawing_everything_by_mistake_is_refused(store: Store, now: datetime) -> None:
    """A phone that turned out to be None must not empty the outbox."""
    with pytest.raises(StoreError, match="name one"), store.work() as work:
        work.outbox.withdraw(now, kinds=[Kind.PROMPT])


def test_numbered_texts_come_by_the_time_at_which_they_reached_the_phone(
    store: Store, make_text: MakeText, now: datetime
) -> None:
    """By the time of delivery, not of writing; without receipts, by the time of hand-over."""
    with store.work() as work:
        for name in ("waits", "fails", "a", "b", "c", "d"):
            work.outbox.add(make_text(name, focus=_FOCUS))
        work.outbox.add(make_text("no digits"))
        work.outbox.add(make_text("elsewhere", focus=_FOCUS, phone="+447700900102"))
        for minute, name in enumerate(("c", "a", "d", "b", "no digits", "elsewhere", "fails")):
            work.outbox.record(name, Fate.ACCEPTED, now + minute * _MINUTE)
        work.outbox.record("b", Fate.DELIVERED, now + 10 * _MINUTE)
        work.outbox.record("c", Fate.DELIVERED, now + 11 * _MINUTE)
        work.outbox.record("fails", Fate.FAILED, now + 12 * _MINUTE)
        work.outbox.record("no digits", Fate.DELIVERED, now + 13 * _MINUTE)
        work.outbox.add(make_text("latest, no receipt", focus=_FOCUS))
        work.outbox.record("latest, no receipt", Fate.ACCEPTED, now + 20 * _MINUTE)
        expected = ["latest, no receipt", "c", "b", "d", "a"]
        assert _ids(work.outbox.numbered(_PHONE)) == expected
        assert _ids(work.outbox.numbered(_PHONE, limit=2)) == ["latest, no receipt", "c"]
        assert work.outbox.numbered(_PHONE)[0].focus == _FOCUS
