"""Several lines: who wrote by which, parts under the operator's ids, whose the connections are;
on both databases."""

from collections.abc import Callable
from dataclasses import replace
from datetime import datetime, timedelta

from assistant.channel import Fate
from assistant.dialogue.values import Focus
from assistant.people import Farmer
from assistant.store import OutboxText, Store

MakeText = Callable[..., OutboxText]
MINUTE = timedelta(minutes=1)


def test_the_line_that_a_phone_last_wrote_by(store: Store, now: datetime) -> None:
    """A later text by another line counts."""
    with store.work() as work:
        work.lines.heard("+447700900101", "north", now)
        work.lines.heard("+447700900102", "north", now)
        work.lines.heard("+447700900101", "desk", now + MINUTE)
    with store.work() as work:
        asked = ["+447700900101", "+447700900102", "+447700900103"]
        assert work.lines.heard_by(asked) == {
            "+447700900101": "desk",
            "+447700900102": "north",
        }


def test_a_text_arrived_once_all_its_parts_did(store: Store, now: datetime) -> None:
    """And not before; the time is that of the last part."""
    with store.work() as work:
        assert work.lines.keep_parts("north", ["a", "b"], "t-1", now) is None
        assert work.lines.settle("north", "b", Fate.DELIVERED, now + MINUTE, "") is None
    with store.work() as work:
        settled = work.lines.settle("north", "a", Fate.DELIVERED, now, "")
    assert settled is not None
    assert (settled.message_id, settled.fate) == ("t-1", Fate.DELIVERED)
    assert settled.at == now + MINUTE


def test_one_lost_part_loses_the_text(store: Store, now: datetime) -> None:
    """Half a text is none."""
    with store.work() as work:
        work.lines.keep_parts("north", ["a", "b"], "t-1", now)
        settled = work.lines.settle("north", "a", Fate.FAILED, now, "no such number")
    assert settled is not None
    assert (settled.fate, settled.detail) == (Fate.FAILED, "no such number")


def test_a_receipt_may_be_faster_than_the_hand_over(store: Store, now: datetime) -> None:
    """It is kept without its text, and found when the text is written down."""
    with store.work() as work:
        assert work.lines.settle("north", "a", Fate.DELIVERED, now, "") is None
    with store.work() as work:
        settled = work.lines.keep_parts("north", ["a"], "t-1", now + MINUTE)
    assert settled is not None and settled.fate is Fate.DELIVERED


def test_an_id_that_an_operator_gives_again_means_the_latest_text(
    store: Store, now: datetime
) -> None:
    """A modem counts to 255 and begins anew; another line's ids are others."""
    with store.work() as work:
        work.lines.keep_parts("desk", ["7"], "t-1", now)
        work.lines.keep_parts("desk", ["7"], "t-2", now + MINUTE)
        work.lines.keep_parts("north", ["7"], "t-3", now + MINUTE)
        settled = work.lines.settle("desk", "7", Fate.DELIVERED, now + MINUTE, "")
    assert settled is not None and settled.message_id == "t-2"


def test_old_parts_are_forgotten(store: Store, now: datetime) -> None:
    """No receipt comes after so long."""
    with store.work() as work:
        work.lines.keep_parts("desk", ["7"], "t-1", now - timedelta(days=9))
        work.lines.keep_parts("desk", ["8"], "t-2", now)
        assert work.lines.forget_parts(now) == 1


def test_one_process_has_the_connections(store: Store, now: datetime) -> None:
    """Until its time is over, or it gives them back."""
    with store.work() as work:
        assert work.lines.own("one", now, now + MINUTE)
        assert work.lines.own("one", now, now + MINUTE)
        assert not work.lines.own("two", now, now + MINUTE)
    with store.work() as work:
        assert work.lines.own("two", now + MINUTE, now + 2 * MINUTE)
        assert not work.lines.own("one", now + MINUTE, now + 2 * MINUTE)
        work.lines.disown("two", now + MINUTE)
        assert work.lines.own("one", now + MINUTE, now + 2 * MINUTE)


def test_a_text_put_off_waits_without_counting_as_tried(
    store: Store, farmer: Farmer, make_text: MakeText, now: datetime
) -> None:
    """And what a line took is counted for its quota."""
    with store.work() as work:
        work.outbox.add(replace(make_text("t-1", phone=farmer.phone), due_at=now, segments=2))
        assert len(work.outbox.claim(now, 9, MINUTE)) == 1
        work.lines.put_off(["t-1"], now + MINUTE, "no credit")
    with store.work() as work:
        assert not work.outbox.claim(now, 9, MINUTE)
        assert work.running.waiting_since(now) == now and work.running.waiting(now) == 1
        (again,) = work.outbox.claim(now + MINUTE, 9, MINUTE)
        assert again.attempts == 0 and again.detail == "no credit"
        work.outbox.accepted(["t-1"], now + MINUTE)
        work.lines.took(["t-1"], "desk")
        assert work.lines.used("desk", now) == 2
        assert work.lines.used("desk", now + 2 * MINUTE) == 0
        assert work.lines.used("north", now) == 0


def test_a_text_held_until_morning_is_not_one_that_waits(
    store: Store, farmer: Farmer, make_text: MakeText, now: datetime
) -> None:
    """Though a line had put it off in the evening before."""
    with store.work() as work:
        work.outbox.add(replace(make_text("t-1", phone=farmer.phone), due_at=now))
        work.outbox.claim(now, 9, MINUTE)
        work.lines.put_off(["t-1"], now + MINUTE)
        work.outbox.claim(now + MINUTE, 9, MINUTE)
        work.lines.hold(["t-1"], now + 8 * MINUTE)
        assert work.running.waiting(now + 7 * MINUTE) == 0
        assert work.running.waiting_since(now + 9 * MINUTE) == now + 8 * MINUTE


def test_a_text_that_may_have_left_offers_its_digits(
    store: Store, farmer: Farmer, make_text: MakeText, now: datetime
) -> None:
    """It waits to go again, and a phone may show it already; one that never left does not."""
    with store.work() as work:
        for name in ("t-1", "t-2"):
            asks = make_text(name, phone=farmer.phone, focus=Focus(question="plan.area"))
            work.outbox.add(replace(asks, due_at=now))
        work.outbox.claim(now, 9, MINUTE)
        work.lines.put_off(["t-1", "t-2"], now + MINUTE)
        work.lines.doubt(["t-1"], now)
        assert [each.message_id for each in work.outbox.numbered(farmer.phone)] == ["t-1"]
