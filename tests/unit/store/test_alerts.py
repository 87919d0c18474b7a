"""Official alerts as they are kept, and the places that they name."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from assistant.alert_terms import Reference
from assistant.people import Village
from assistant.places import Geocode, VillagePlace
from assistant.store import AlertWords, Became, DatabaseFailedError, KeptAlert, Store

SENT = datetime(2026, 6, 12, 3, 0, tzinfo=UTC)
KEY = Reference("weather@lindara.example.org", "LWS-1", SENT)
TOLD = AlertWords(
    "en", "Heavy rain", "Orange", "Expected", "Severe", "Likely", "the valley", "LWS"
)
ALERT = KeptAlert(
    source="LWS",
    received_at=SENT + timedelta(minutes=2),
    became=Became.DRAFTED,
    sender=KEY.sender,
    identifier=KEY.identifier,
    sent=KEY.sent,
    status="Actual",
    kind="Alert",
    scope="Public",
    told=(TOLD,),
    starts_at=SENT + timedelta(hours=8),
    ends_at=SENT + timedelta(hours=14),
)
UPDATE = replace(ALERT, kind="Update", identifier="LWS-2", sent=SENT + timedelta(hours=1))


def test_an_alert_comes_back_as_it_was_kept(store: Store, village: Village) -> None:
    """With the message itself, byte for byte."""
    with store.work() as work:
        kept = work.alerts.add(replace(ALERT, village_ids=(village.id,)), b"<a\xff\0>", "d1")
    with store.look() as work:
        assert work.alerts.get(kept.id) == work.alerts.of(KEY) == kept
        assert kept == replace(ALERT, id=kept.id, village_ids=(village.id,))
        assert work.alerts.raw(kept.id) == b"<a\xff\0>"
        assert work.alerts.has_digest("d1") and not work.alerts.has_digest("d2")
        assert work.alerts.latest(5) == (kept,)
        assert work.alerts.latest(5, became=[Became.FAULTY]) == ()
        assert work.alerts.latest(5, before_id=kept.id) == ()


def test_the_same_message_is_kept_once(store: Store) -> None:
    """Whatever two processes do at once."""
    with store.work() as work:
        work.alerts.add(ALERT, b"a", "d1")
    with pytest.raises(DatabaseFailedError), store.work() as work:
        work.alerts.add(ALERT, b"a", "d1")


def test_a_faulty_message_does_not_stand_for_its_name(store: Store) -> None:
    """The service may mend it and send it again."""
    with store.work() as work:
        work.alerts.add(replace(ALERT, became=Became.FAULTY), b"a", "d1")
        assert work.alerts.of(KEY) is None
        mended = work.alerts.add(ALERT, b"b", "d2")
        assert work.alerts.of(KEY) == mended


def test_what_takes_the_place_of_an_alert_is_found_before_the_alert_comes(store: Store) -> None:
    """Messages may come out of order; what is not actual replaces nothing."""
    with store.work() as work:
        work.alerts.add(replace(UPDATE, status="Test"), b"t", "t", [KEY])
        work.alerts.add(replace(UPDATE, kind="Ack"), b"k", "k", [KEY])
        assert work.alerts.replacing(KEY) is None
        update = work.alerts.add(UPDATE, b"b", "d2", [KEY, KEY])
        assert work.alerts.replacing(KEY) == update.id
        assert work.alerts.replacing(replace(KEY, identifier="LWS-9")) is None


def test_the_first_to_replace_an_alert_counts(store: Store) -> None:
    """What is replaced is found from what took its place."""
    with store.work() as work:
        kept = work.alerts.add(ALERT, b"a", "d1")
        first, second = (work.alerts.add(UPDATE, b"b", d, [KEY]) for d in ("d2", "d3"))
        for by in (first, second):
            work.alerts.replace(kept.id, by.id)
        assert work.alerts.replaced(first.id) == (replace(kept, replaced_by=first.id),)
        assert work.alerts.replaced(second.id) == ()


def test_only_what_led_to_nothing_is_forgotten(store: Store, village: Village) -> None:
    """Nor what takes the place of another, or whose place was taken."""
    late = SENT + timedelta(days=100)
    with store.work() as work:
        nothing = replace(ALERT, became=Became.ELSEWHERE, village_ids=(village.id,))
        work.alerts.add(nothing, b"a", "1", [KEY])
        work.alerts.add(ALERT, b"b", "2")
        work.alerts.add(replace(ALERT, became=Became.FAULTY), b"c", "3")
        work.alerts.add(replace(nothing, received_at=late), b"d", "4")
        old, new = (work.alerts.add(nothing, b"e", d) for d in ("5", "6"))
        work.alerts.replace(old.id, new.id)
        assert work.alerts.prune(late) == 1
        assert [kept.id for kept in work.alerts.latest(9)] == [6, 5, 4, 3, 2]
        assert work.alerts.prune(late) == 0


def test_villages_are_places_with_codes(store: Store, village: Village) -> None:
    """As alerts compare them; the last list given is the one that counts."""
    with store.work() as work:
        assert work.alerts.places() == {village.id: VillagePlace()}
        work.alerts.set_geocodes(village.id, [Geocode("ward", "1")])
        work.alerts.set_geocodes(village.id, [Geocode("ward ", "7"), Geocode("WARD", "7")])
        codes = (Geocode("WARD", "7"),)
        assert work.alerts.geocodes() == {village.id: codes}
        assert work.alerts.places() == {village.id: VillagePlace(None, frozenset(codes))}


def test_one_process_looks_at_a_source_at_a_time(store: Store) -> None:
    """And what a server said last time is there for the next look."""
    every = timedelta(minutes=5)
    with store.work() as work:
        first = work.alert_sources.take("LWS", SENT, every)
        assert first and first.etag == ""
        assert work.alert_sources.take("LWS", SENT + timedelta(minutes=4), every) is None
        work.alert_sources.looked(replace(first, etag='"7"', trouble="404"))
    with store.work() as work:
        again = work.alert_sources.take("LWS", SENT + every, every)
        assert again and (again.etag, again.trouble) == ('"7"', "404")
        assert work.alert_sources.all() == (again,)
