"""Alarms: who is to be told next, and who may see what."""

from collections.abc import Callable
from dataclasses import replace
from datetime import datetime, timedelta

import pytest

from assistant.people import Farmer, Officer, Village
from assistant.store import AlarmTold, OutboxText, Store, TextState

MakeText = Callable[..., OutboxText]
TEN = timedelta(minutes=10)


def _alarm(store: Store, farmer: Farmer, now: datetime, about: str = "poison") -> int:
    with store.work() as work:
        call = work.calls.add(farmer.id, None, about, "help", now)
        work.alarms.add(call, farmer.village_id, True, now)
    return call


@pytest.fixture
def other(store: Store, village: Village) -> Officer:
    """A second officer of the same village."""
    with store.work() as work:
        return work.people.add_officer("+447700900002", "Bakari", "hash", "en", [village.id])


@pytest.fixture
def lead(store: Store) -> Officer:
    with store.work() as work:
        return work.people.add_officer("+447700900003", "Lea", "hash", "en", [], is_lead=True)


def test_an_alarm_is_due_from_its_time_until_somebody_has_seen_to_it(
    store: Store, farmer: Farmer, now: datetime
) -> None:
    """With the phone to be locked."""
    call = _alarm(store, farmer, now)
    with store.work() as work:
        assert work.alarms.due(now - TEN) == ()
        assert work.alarms.due(now) == ((call, farmer.phone),)
        work.alarms.change(call, next_at=now + TEN)
        assert work.alarms.due(now) == ()
        work.calls.handle(call, now)
        assert work.alarms.due(now + TEN) == ()
        assert work.alarms.get(call) is None
        assert work.alarms.courses([call])[call].next_at is None


def test_who_was_told_is_kept_in_order(
    store: Store, farmer: Farmer, officer: Officer, other: Officer, now: datetime
) -> None:
    """And by which text, so that a lost one is known."""
    call = _alarm(store, farmer, now)
    with store.work() as work:
        work.alarms.add_told(call, other.id, 1, "text-1", now)
        work.alarms.add_told(call, officer.id, 1, "text-2", now + TEN)
        assert work.alarms.told([call]) == (
            AlarmTold(call, other.id, "Bakari", 1, "text-1", now),
            AlarmTold(call, officer.id, "Asha", 1, "text-2", now + TEN),
        )
        found = work.alarms.told_by("text-2")
        assert found is not None and found.call.id == call
        assert work.alarms.told_by("text-3") is None


def test_the_alarms_of_a_farmer_stand_by_kind(
    store: Store, farmer: Farmer, now: datetime
) -> None:
    """The latest first."""
    first, bed, last = (_alarm(store, farmer, now, about) for about in ("eyes", "lost", "eyes"))
    with store.work() as work:
        standing = work.alarms.standing(farmer.id, {"eyes", "poison"})
        assert [each.call.id for each in standing] == [last, first]
        assert [each.call.id for each in work.alarms.standing(farmer.id, {"lost"})] == [bed]


def test_what_is_private_is_seen_by_who_was_told_first_and_by_leads(
    store: Store,
    farmer: Farmer,
    officer: Officer,
    other: Officer,
    lead: Officer,
    village: Village,
    now: datetime,
) -> None:
    """In every list and one by one; the house itself sees it."""
    call = _alarm(store, farmer, now, "die")
    with store.work() as work:
        work.alarms.add_told(call, officer.id, 1, "text-1", now)
        work.alarms.add_told(call, other.id, 1, "text-2", now)
        for each, scope, sees in (
            (officer, [village.id], True),
            (other, [village.id], False),
            (lead, None, True),
            (lead, [village.id], True),
            (None, None, True),
        ):
            assert bool(work.calls.open(scope, each)) is sees
            assert bool(work.story.call(call, scope, each)) is sees
            assert bool(work.story.calls_of(farmer.id, each)) is sees


def test_who_was_told_sees_an_alarm_of_elsewhere(
    store: Store, farmer: Farmer, officer: Officer, other: Officer, now: datetime
) -> None:
    """Such as of a stranger; nobody else of that village does."""
    with store.work() as work:
        stranger = work.people.save_farmer(
            replace(farmer, id=0, phone="+447700900199", village_id=None, consent_at=None)
        )
    call = _alarm(store, stranger, now)
    with store.work() as work:
        work.alarms.add_told(call, officer.id, 1, "text-1", now)
        assert [each.id for each in work.calls.open([], officer)] == [call]
        assert work.calls.open([], other) == ()


def test_a_person_of_whom_only_a_cry_is_kept_is_on_no_roll(
    store: Store, farmer: Farmer, now: datetime
) -> None:
    """Until somebody enrols them, or they stop texts."""
    with store.work() as work:
        bare = Farmer(0, "+447700900199", None, None, None, None)
        kept = work.people.save_farmer(bare)
        assert work.people.on_roll(kept.phone) is None
        assert work.roll.farmers(None, "", 9) == (farmer,)
        assert work.roll.count(None) == 1
        assert None not in work.roll.counts_by_village()
        assert work.enrolments.listed([kept.phone]) == {}
        work.people.save_farmer(replace(kept, stopped_at=now))
        assert work.people.on_roll(kept.phone) is not None


def test_private_messages_are_listed_without_their_words(
    store: Store, farmer: Farmer, make_text: MakeText, now: datetime
) -> None:
    """On whatever page; the text itself goes out whole."""
    with store.work() as work:
        work.outbox.add(make_text("text-1", private=True, text="Secret"))
        (sent,) = work.story.sent(farmer.phone, 9)
        assert (sent.text, sent.private) == ("", True)
        (claimed,) = work.outbox.claim(now, 9, TEN)
        assert claimed.text == "Secret"


def test_notices_that_wait_can_be_taken_back(
    store: Store, make_text: MakeText, now: datetime
) -> None:
    """Those that have left stay as they are."""
    with store.work() as work:
        for name in ("text-1", "text-2"):
            work.outbox.add(make_text(name))
        work.outbox.claim(now, 1, TEN)
        assert work.outbox.take_back(["text-1", "text-2"], now) == 1
        states = {each.message_id: each.state for each in work.outbox.of_phone("+447700900101")}
        assert sorted(states.values()) == [TextState.CLAIMED, TextState.WITHDRAWN]
