"""Messages counted and listed, on both databases."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta
from typing import Any

import pytest

from assistant.channel import Channel, Fate, Incoming, Step
from assistant.people import Farmer, Village
from assistant.store import Store, TextState
from assistant.store.queries.ledger import TimeSpan
from assistant.store.values_books import HeardCounts, LostTexts, TextCounts
from tests.unit.store.conftest import MakeText

JUNE = (datetime(2026, 6, 1, tzinfo=UTC), datetime(2026, 7, 1, tzinfo=UTC))
STRANGER = "+447700900999"


@pytest.fixture
def june(village: Village) -> TimeSpan:
    """All of June, all phones."""
    return TimeSpan(*JUNE, (village.id,), everybody=True)


@pytest.fixture
def sent(store: Store, farmer: Farmer, make_text: MakeText, now: datetime) -> Store:
    """Two delivered (1 and 2 segments), one refused, one late, one waiting, one to a stranger,
    and one of July."""
    with store.work() as work:
        texts: dict[str, dict[str, Any]] = {
            "one": {"segments": 1},
            "two": {"segments": 2},
            "refused": {"segments": 1},
            "late": {"segments": 3},
            "waiting": {"segments": 1},
            "stranger": {"segments": 1, "phone": STRANGER},
            "july": {"segments": 1, "due_at": JUNE[1]},
        }
        for name, given in texts.items():
            work.outbox.add(make_text(name, **given))
        for name in ("one", "two", "stranger"):
            work.outbox.record(name, Fate.DELIVERED, now)
        work.outbox.record("refused", Fate.FAILED, now, detail="422 no such number")
        work.outbox.record("late", Fate.ACCEPTED, now)
        work.outbox.record("late", Fate.EXPIRED, now)
    return store


def test_texts_are_counted_by_village_and_what_became_of_them(
    sent: Store, june: TimeSpan, village: Village
) -> None:
    """Segments are counted of what the operator has or delivered; a stranger's apart."""
    with sent.look() as work:
        counts = work.ledger.sent(june)
    assert counts == (
        TextCounts(village.id, 1, 0, 2, 1, 1, 0, segments=3),
        TextCounts(None, 0, 0, 1, 0, 0, 0, segments=1),
    )


def test_an_officer_counts_only_the_villages_that_are_theirs(
    sent: Store, june: TimeSpan
) -> None:
    """None of a stranger's, and nothing where there is no village."""
    with sent.look() as work:
        own = replace(june, everybody=False)
        assert [each.village_id for each in work.ledger.sent(own)] == list(june.villages)
        assert work.ledger.sent(replace(own, villages=())) == ()
        assert work.ledger.latest_sent(replace(own, villages=()), 9) == ()


def test_why_texts_were_lost_is_told_with_the_operators_words(
    sent: Store, june: TimeSpan, village: Village
) -> None:
    """One it never took, one it had."""
    with sent.look() as work:
        lost = set(work.ledger.lost(june))
    assert lost == {
        LostTexts(village.id, TextState.FAILED, False, "422 no such number", 1, 1),
        LostTexts(village.id, TextState.EXPIRED, True, "", 1, 3),
    }


def test_what_passed_before_a_village_was_named_is_counted_for_it(
    store: Store, village: Village, make_text: MakeText, now: datetime, june: TimeSpan
) -> None:
    """As in signing up; and it stays there when the farmer moves."""
    with store.work() as work:
        incoming = Incoming("in-1", STRANGER, "hi", Channel.SMS, now)
        work.inbox.take(incoming, "hi", now)
        work.outbox.add(make_text("ask", phone=STRANGER, segments=1))
        new = work.people.save_farmer(Farmer(0, STRANGER, "en", village.id, now, None))
        other = work.people.add_village("Kijani", "Africa/Nairobi")
        work.people.save_farmer(replace(new, village_id=other.id))
    with store.look() as work:
        assert [each.village_id for each in work.ledger.sent(june)] == [village.id]
        assert work.ledger.heard(june) == (HeardCounts(village.id, 1, 0, 0),)


def test_a_dialled_session_counts_once_however_many_keys(
    store: Store, farmer: Farmer, village: Village, now: datetime, june: TimeSpan
) -> None:
    """And its keys stand in the list, its beginning does not."""
    with store.work() as work:
        for number, step in enumerate((Step.BEGIN, Step.ANSWER, Step.ANSWER, Step.END)):
            at = now + timedelta(seconds=number)
            work.inbox.take(
                Incoming(f"u-{number}", farmer.phone, "1", Channel.USSD, at, step, "s"), "1", at
            )
        work.inbox.take(Incoming("r", farmer.phone, "", Channel.RING, now), "", now)
    with store.look() as work:
        assert work.ledger.heard(june) == (HeardCounts(village.id, 0, 1, 1),)
        assert [each.gateway_id for each in work.ledger.latest_heard(june, 9)] == [
            "u-2",
            "u-1",
            "r",
        ]


@pytest.mark.parametrize("everybody", [True, False])
def test_a_list_is_paged_by_its_last_line_and_loses_none(
    store: Store,
    farmer: Farmer,
    make_text: MakeText,
    now: datetime,
    june: TimeSpan,
    everybody: bool,
) -> None:
    """Also where several were due in the same moment, and some in the next month."""
    with store.work() as work:
        for number in range(7):
            work.outbox.add(make_text(f"t{number}", due_at=now + timedelta(hours=number // 3)))
    span, before, seen = replace(june, everybody=everybody), None, []
    while True:
        with store.look() as work:
            page = work.ledger.latest_sent(span, 2, before=before)
        if not page:
            break
        seen += [each.id for each in page]
        before = (page[-1].due_at, page[-1].id)
    assert seen == [7, 6, 5, 4, 3, 2, 1]


def test_incoming_messages_are_paged_in_the_same_way(
    store: Store, farmer: Farmer, now: datetime, june: TimeSpan
) -> None:
    """By time, then by the gateway's id."""
    with store.work() as work:
        for number in range(5):
            at = now + timedelta(minutes=number // 2)
            work.inbox.take(Incoming(f"g{number}", farmer.phone, "1", Channel.SMS, at), "1", at)
    with store.look() as work:
        first = work.ledger.latest_heard(june, 2)
        place = (first[-1].at, first[-1].gateway_id)
        more = work.ledger.latest_heard(june, 9, before=place)
    assert [each.gateway_id for each in (*first, *more)] == ["g4", "g3", "g2", "g1", "g0"]


def test_a_list_can_be_held_to_a_state(sent: Store, june: TimeSpan) -> None:
    """With the farmer's name and where they live now."""
    with sent.look() as work:
        (line,) = work.ledger.latest_sent(june, 9, states=[TextState.FAILED])
    assert (line.detail, line.farmer_id, line.lives_in) == ("422 no such number", 1, 1)


def test_unread_replies_are_counted_by_language(store: Store, now: datetime) -> None:
    """Most first; the list is the latest first."""
    with store.work() as work:
        for language, text in (("sw", "moja"), ("en", "wun"), ("sw", "mbilii")):
            work.calls.unread(language, "area", text, now)
    with store.look() as work:
        assert work.ledger.unread_by_language() == {"sw": 2, "en": 1}
        assert [each.text for each in work.ledger.unread(9)] == ["mbilii", "wun", "moja"]
        assert [each.text for each in work.ledger.unread(9, language="sw", before=3)] == [
            "moja"
        ]
