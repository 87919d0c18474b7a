"""What needs a person."""

from dataclasses import replace
from datetime import datetime, timedelta

from assistant.agronomy.nursery import Nursery
from assistant.people import Farmer, Village
from assistant.store import Call, Store, UnreadText


def test_calls_are_open_until_somebody_handles_them(
    store: Store, farmer: Farmer, nursery: Nursery, village: Village, now: datetime
) -> None:
    """The oldest first, with or without a nursery."""
    with store.work() as work:
        later = work.calls.add(farmer.id, None, "officer", "njoo", now + timedelta(hours=1))
        first = work.calls.add(farmer.id, nursery.id, "spots", "brown spots", now)
        calls = work.calls.open([village.id])
        assert calls == (
            Call(first, farmer, nursery, "spots", "brown spots", now),
            Call(later, farmer, None, "officer", "njoo", now + timedelta(hours=1)),
        )
        work.calls.handle(first, now)
        assert work.calls.open([village.id]) == calls[1:]


def test_an_officer_sees_the_calls_of_their_villages_only(
    store: Store, farmer: Farmer, village: Village, now: datetime
) -> None:
    """Without a list of villages all are seen, those of farmers without a village too."""
    with store.work() as work:
        nowhere = replace(farmer, id=0, phone="+447700900102", village_id=None)
        work.calls.add(work.people.save_farmer(nowhere).id, None, "officer", "", now)
        call = work.calls.add(farmer.id, None, "officer", "", now)
        assert [each.id for each in work.calls.open([village.id])] == [call]
        assert work.calls.open([]) == ()
        assert len(work.calls.open()) == 2


def test_unread_replies_are_kept_with_who_wrote_them(
    store: Store, farmer: Farmer, now: datetime
) -> None:
    """And counted until one of that phone is read, or somebody wants nothing kept."""
    lately = now - timedelta(days=1)

    def unread_of(phone: str) -> int:
        with store.work() as work:
            return work.at_hand.of(phone, now, lately).unread

    with store.work() as work:
        work.calls.unread("sw", "plan.area", "nusu shamba hivi", now, farmer.phone, farmer.id)
    assert unread_of(farmer.phone) == 1
    assert unread_of("+447700900199") == 0
    with store.work() as work:
        (unread,) = work.ledger.unread(9)
        assert unread == UnreadText(
            unread.id, "sw", "plan.area", "nusu shamba hivi", now, farmer.phone, farmer
        )
        assert work.ledger.unread(9, scope=[]) == ()
        work.calls.read_again(farmer.phone)
    assert unread_of(farmer.phone) == 0
    with store.work() as work:
        work.calls.forget_unread(farmer.phone)
        (unread,) = work.ledger.unread(9)
    assert unread == UnreadText(unread.id, "sw", "plan.area", "nusu shamba hivi", now)
