"""Official alerts, from the message to the phone: by the officer's word, or by the setting."""

from dataclasses import replace
from itertools import permutations
from typing import Any

import pytest

from assistant.places import Geocode
from assistant.service.alerts.taking import take_alert
from assistant.service.storms import drafts
from assistant.store import AlertCertainty, Became, Decision, Draft, DraftSource, KeptAlert
from assistant.wording import messages_officer as o
from assistant.wording import messages_talk as m
from tests.cap import SENDER, Raw, area, cap, code, info
from tests.valley import (
    AMINA,
    KIJANI,
    LEAD,
    MWANGA,
    OFFICER,
    ZAWADI,
    Staged,
    Valley,
    like,
    settle,
)

LWS = "Lindara weather service"
FIRST = f"{SENDER},LWS-1,2026-06-01T06:00:00+03:00"
SECOND = f"{SENDER},LWS-2,2026-06-01T07:00:00+03:00"
BOTH, ONLY_KIJANI = [code("WARD", "1"), code("WARD", "2")], code("WARD", "1")


def to_two_beds(valley: Valley) -> None:
    """Amina in Kijani and Zawadi in Mto Mwanga sowed two days ago; Asha serves both villages,
    and a lead sees all. It is six in the morning of 1 June."""
    settle(valley)
    valley.add_officer(KIJANI, MWANGA)
    valley.add_officer(phone=LEAD, lead=True)
    with valley.house.store.work() as work:
        for village, ward in ((KIJANI, "1"), (MWANGA, "2")):
            work.alerts.set_geocodes(village.id, [Geocode("WARD", ward)])
    for phone, place in ((AMINA, 1), (ZAWADI, 2)):
        valley.enrol(phone, place)
        valley.sow(phone, "30 May")
    valley.go("1 Jun 08:00")
    for phone in (AMINA, ZAWADI, OFFICER, LEAD):
        valley.heard(phone)


@pytest.fixture
def beds(staged: Staged) -> Valley:
    return staged(to_two_beds)


@pytest.fixture
def sending(beds: Valley) -> Valley:
    """The same with the setting that asks nobody."""
    beds.house = replace(beds.house, alerts_go_out=True)
    return beds


def rain(
    hours: tuple[str, str] = ("14", "20"), wards: Any = BOTH, day: str = "01", **more: Any
) -> Raw:
    onset, expires = (f"2026-06-{day}T{hour}:00:00+03:00" for hour in hours)
    held = area(polygon=None, geocode=wards)
    return info(**{"onset": onset, "expires": expires, "area": held, **more})


def first(**changes: Any) -> bytes:
    return cap(**{"sent": FIRST.split(",")[2], "info": rain(), **changes})


def later(kind: str, number: int, references: str, **changes: Any) -> bytes:
    head = {
        "identifier": f"LWS-{number}",
        "sent": f"2026-06-01T0{5 + number}:00:00+03:00",
        "msgType": kind,
        "references": references,
        "info": rain() if kind == "Update" else None,
    }
    return cap(**{**head, **changes})


def take(valley: Valley, raw: bytes, source: str = LWS) -> KeptAlert | None:
    return take_alert(valley.house, raw, source, valley.now)


def became(valley: Valley, raw: bytes) -> Became:
    kept = take(valley, raw)
    assert kept is not None
    return kept.became


def drafted(valley: Valley) -> tuple[Draft, ...]:
    with valley.house.store.look() as work:
        return work.drafts.open(valley.now)


def send(valley: Valley, draft: Draft) -> None:
    with valley.house.store.work() as work:
        officer = work.people.officer(OFFICER)
        assert drafts.send(work, valley.house, draft.id, valley.now, officer)
    valley.send()


def standing(valley: Valley, village_id: int) -> int:
    with valley.house.store.look() as work:
        return len(work.warnings.standing(village_id, valley.now))


def test_an_alert_is_drafted_for_the_officer_who_is_told_by_text(beds: Valley) -> None:
    """No farmer hears of it before the officer says so; the service's word is kept."""
    kept = take(beds, first())
    assert kept and kept.became is Became.DRAFTED and kept.source == LWS
    assert kept.village_ids == (KIJANI.id, MWANGA.id)
    (draft,) = drafted(beds)
    assert (draft.source, draft.alert_id, draft.made_by) == (DraftSource.ALERT, kept.id, None)
    assert (draft.hazard, draft.certainty) == ("Heavy rain", AlertCertainty.LIKELY)
    assert draft.village_ids == kept.village_ids
    beds.send()
    assert beds.heard(OFFICER) == [like(o.ALERT_DRAFTED)]
    assert beds.heard(LEAD) == beds.heard(AMINA) == beds.heard(ZAWADI) == []


def test_hours_over_several_days_are_told_with_both_days(beds: Valley) -> None:
    """From Monday afternoon to Wednesday evening is no six hours of one day."""
    onset, expires = "2026-06-01T14:00:00+03:00", "2026-06-03T20:00:00+03:00"
    take(beds, first(info=rain(onset=onset, expires=expires)))
    beds.send()
    (told,) = beds.heard(OFFICER)
    assert told == like(o.ALERT_DRAFTED_DAYS)
    assert "Mon 1 Jun 14:00 to Wed 3 Jun 20:00" in told


def test_by_the_setting_it_is_sent_at_once(sending: Valley) -> None:
    """Farmers are warned, the officer is told, and the trail says that nobody was asked."""
    assert became(sending, first()) is Became.SENT
    sending.send()
    for phone in (AMINA, ZAWADI):
        assert sending.heard(phone) == [like(m.WARNING, ...)]
    assert sending.heard(OFFICER) == [like(o.ALERT_SENT)]
    with sending.house.store.look() as work:
        acts = {line.act: line.officer for line in work.audit.latest(3)}
    assert acts == {"alert_taken": None, "warned": None}


def test_the_officer_is_told_in_their_language(beds: Valley) -> None:
    """With the service's word in it, where the service has one."""
    with beds.house.store.work() as work:
        asha = work.people.officer(OFFICER)
        assert asha is not None
        work.accounts.set_language(asha.id, "sw")
    take(beds, first(info=[rain(), rain(language="sw", event="Mvua kubwa")]))
    beds.send()
    (told,) = beds.heard(OFFICER)
    assert told == like(o.ALERT_DRAFTED, language="sw") and "Mvua kubwa" in told


def test_farmers_hear_the_services_headline_in_their_language(sending: Valley) -> None:
    """Beside our own words; in English where the service does not write theirs."""
    take(sending, first(info=[rain(), rain(language="sw", headline="Mvua kubwa bondeni")]))
    sending.send()
    (told,) = sending.heard(AMINA)
    assert "Weather service: Orange: heavy rain in the Lindara valley" in told
    assert "Mvua" not in told


LEAD_TO_NOTHING: dict[str, tuple[bytes, Became]] = {
    "no CAP": (b"<html/>", Became.FAULTY),
    "faulty": (first(sent="2026-06-01T03:00:00Z"), Became.FAULTY),
    "a test": (first(status="Test"), Became.NOT_ACTUAL),
    "an exercise": (first(status="Exercise"), Became.NOT_ACTUAL),
    "a draft of the service": (first(status="Draft"), Became.NOT_ACTUAL),
    "for some only": (first(scope="Private", addresses="a"), Became.NOT_PUBLIC),
    "an acknowledgement": (first(msgType="Ack"), Became.NO_WARNING),
    "over": (first(info=rain(("05", "07"))), Became.EXPIRED),
    "below the thresholds": (first(info=rain(severity="Minor")), Became.BELOW),
    "another danger": (first(info=rain(category="Geo")), Became.OTHER_HAZARD),
    "elsewhere": (first(info=rain(wards=code("WARD", "9"))), Became.ELSEWHERE),
    "an area in words": (first(info=info(area=area(polygon=None))), Became.ONLY_WORDS),
}


@pytest.mark.parametrize(("raw", "what"), LEAD_TO_NOTHING.values(), ids=LEAD_TO_NOTHING)
def test_what_leads_to_nothing_is_kept_with_its_reason(
    sending: Valley, raw: bytes, what: Became
) -> None:
    """Even where alerts are sent without asking; the message itself is kept as it came."""
    kept = take(sending, raw)
    assert kept and kept.became is what
    sending.send()
    assert drafted(sending) == () and sending.heard(OFFICER) == []
    with sending.house.store.look() as work:
        assert work.alerts.raw(kept.id) == raw
    assert take(sending, raw) is None


def test_the_same_alert_is_taken_once_whatever_its_source(beds: Valley) -> None:
    """The same sender, identifier and time are the same message, however it is written."""
    assert take(beds, first()) is not None
    assert take(beds, first(), "a folder") is None
    assert take(beds, first(note="passed on"), "a folder") is None
    assert len(drafted(beds)) == 1
    assert take(beds, first(identifier="LWS-1b")) is not None


def test_a_faulty_message_that_was_mended_is_taken(beds: Valley) -> None:
    """Under the same name."""
    assert became(beds, first(scope="Some")) is Became.FAULTY
    assert became(beds, first()) is Became.DRAFTED


def test_an_update_takes_the_place_of_a_draft(beds: Valley) -> None:
    """The officer sees one draft, the later one."""
    take(beds, first())
    assert became(beds, later("Update", 2, FIRST, info=rain(("16", "22")))) is Became.DRAFTED
    (draft,) = drafted(beds)
    assert draft.starts_at.hour == 13  # 16:00 in Nairobi
    with beds.house.store.look() as work:
        assert [each.decision for each in work.drafts.of_alert(1)] == [Decision.DROPPED]
        (old,) = work.alerts.replaced(2)
    assert old.identifier == "LWS-1"


def test_a_cancel_calls_a_draft_back(beds: Valley) -> None:
    """Nobody was warned; nobody has to be told."""
    take(beds, first())
    assert became(beds, later("Cancel", 2, FIRST)) is Became.CANCELS
    assert drafted(beds) == ()


def test_after_a_cancel_a_warning_stands_until_the_officer_ends_it(beds: Valley) -> None:
    """The officer is told which villages wait for an all-clear."""
    take(beds, first())
    send(beds, drafted(beds)[0])
    beds.heard(AMINA), beds.heard(OFFICER)
    take(beds, later("Cancel", 2, FIRST))
    beds.send()
    assert standing(beds, KIJANI.id) == 1
    assert beds.heard(OFFICER) == [like(o.ALERT_OVER)]
    assert beds.heard(AMINA) == []


def test_by_the_setting_a_cancel_gives_the_all_clear(sending: Valley) -> None:
    """Once to each who was warned."""
    take(sending, first())
    sending.send()
    sending.heard(AMINA)
    take(sending, later("Cancel", 2, FIRST))
    sending.send()
    assert sending.heard(AMINA) == [like(m.ALL_CLEAR, ...)]
    assert sending.heard(OFFICER)[-1:] == [like(o.ALERT_CLEARED)]
    assert standing(sending, KIJANI.id) == standing(sending, MWANGA.id) == 0


def test_an_update_that_says_the_same_texts_nobody_again(sending: Valley) -> None:
    """A service may update each hour; hours that are past do not make a warning a new one."""
    take(sending, first())
    sending.send()
    sending.heard(AMINA)
    sending.go("1 Jun 15:00")
    sending.heard(AMINA)
    update = later("Update", 2, FIRST, info=rain(("15", "20"), headline="Still raining"))
    assert became(sending, update) is Became.UNCHANGED
    sending.send()
    assert sending.heard(AMINA) == []
    assert standing(sending, KIJANI.id) == 1


def test_an_update_with_other_hours_and_fewer_villages(sending: Valley) -> None:
    """Who is still in danger is warned anew, of the new hours only; who is not gets the
    all-clear."""
    take(sending, first())
    sending.send()
    for phone in (AMINA, ZAWADI):
        sending.heard(phone)
    take(sending, later("Update", 2, FIRST, info=rain(("16", "22"), ONLY_KIJANI)))
    sending.send()
    assert sending.heard(AMINA) == [like(m.WARNING, ...)]
    assert sending.heard(ZAWADI) == [like(m.ALL_CLEAR, ...)]
    assert (standing(sending, KIJANI.id), standing(sending, MWANGA.id)) == (1, 0)


def test_an_update_below_the_thresholds_ends_the_warning(sending: Valley) -> None:
    """The service no longer sees a danger that is worth a warning."""
    take(sending, first())
    assert (
        became(sending, later("Update", 2, FIRST, info=rain(severity="Minor"))) is Became.BELOW
    )
    sending.send()
    assert standing(sending, KIJANI.id) == 0


def test_an_officers_update_ends_the_warning_that_it_replaces(beds: Valley) -> None:
    """When the new draft is sent, not before; and one all-clear is for the rest."""
    take(beds, first())
    send(beds, drafted(beds)[0])
    take(beds, later("Update", 2, FIRST, info=rain(("16", "22"), ONLY_KIJANI)))
    assert (standing(beds, KIJANI.id), standing(beds, MWANGA.id)) == (1, 1)
    send(beds, drafted(beds)[0])
    assert (standing(beds, KIJANI.id), standing(beds, MWANGA.id)) == (1, 1)
    with beds.house.store.look() as work:
        (only,) = work.warnings.standing(KIJANI.id, beds.now)
    assert only.ends_at.hour == 19  # 22:00 in Nairobi


CHAIN = (
    first(),
    later("Update", 2, FIRST, info=rain(("15", "21"))),
    later("Cancel", 3, f"{FIRST} {SECOND}"),
)


@pytest.mark.parametrize("order", list(permutations(range(3))))
def test_a_chain_in_any_order_comes_to_the_same_end(
    beds: Valley, order: tuple[int, ...]
) -> None:
    """Alert, update and cancel: nothing is left to decide on."""
    for at in order:
        take(beds, CHAIN[at])
    assert drafted(beds) == ()


@pytest.mark.parametrize("order", list(permutations(range(3))))
def test_updates_that_name_only_the_last_one_in_any_order(
    beds: Valley, order: tuple[int, ...]
) -> None:
    """Each update names the one before it; the last one's hours are what is left."""
    third = later("Update", 3, SECOND, info=rain(("17", "23")))
    for at in order:
        take(beds, (CHAIN[0], CHAIN[1], third)[at])
    (draft,) = drafted(beds)
    assert draft.ends_at.hour == 20  # 23:00 in Nairobi


@pytest.mark.parametrize("order", list(permutations(range(3))))
def test_warnings_sent_from_a_chain_in_any_order_come_to_the_same_end(
    sending: Valley, order: tuple[int, ...]
) -> None:
    """One warning stands, of the last hours, where the danger still is; elsewhere none does."""
    chain = (
        first(),
        later("Update", 2, FIRST, info=rain(("15", "21"), ONLY_KIJANI)),
        later("Update", 3, SECOND, info=rain(("17", "23"), ONLY_KIJANI)),
    )
    for at in order:
        take(sending, chain[at])
        sending.send()
    assert standing(sending, MWANGA.id) == 0
    with sending.house.store.look() as work:
        (only,) = work.warnings.standing(KIJANI.id, sending.now)
    assert only.ends_at.hour == 20  # 23:00 in Nairobi


STRANGERS: dict[str, bytes] = {
    "another sender": later("Cancel", 2, FIRST, sender="prank@example.org"),
    "an earlier message": later("Cancel", 2, FIRST, sent="2026-06-01T05:00:00+03:00"),
    "a test": later("Cancel", 2, FIRST, status="Test"),
    "not for the public": later("Cancel", 2, FIRST, scope="Private", addresses="a"),
    "another message": later("Cancel", 2, FIRST.replace("LWS-1", "LWS-7")),
    "an error report": later("Error", 2, FIRST),
    "an alert that refers": later("Alert", 2, FIRST),
}


@pytest.mark.parametrize("raw", STRANGERS.values(), ids=STRANGERS)
def test_not_everybody_can_take_an_alert_back(beds: Valley, raw: bytes) -> None:
    """The draft stands."""
    take(beds, first())
    take(beds, raw)
    assert [draft.alert_id for draft in drafted(beds)] == [1]


def test_the_officer_hears_of_a_danger_in_the_night(beds: Valley) -> None:
    """As urgent as a warning itself: no setting holds it back."""
    beds.go("1 Jun 23:00")
    tonight = rain(("02", "05"), day="02")
    take(beds, first(sent="2026-06-01T22:50:00+03:00", info=tonight))
    beds.send()
    assert beds.heard(OFFICER)[-1:] == [like(o.ALERT_DRAFTED)]
    beds.house = replace(beds.house, urgent_breaks_quiet=False)
    take(beds, first(identifier="n", sent="2026-06-01T22:55:00+03:00", info=tonight))
    beds.send()
    assert beds.heard(OFFICER) == [like(o.ALERT_DRAFTED)]


def test_where_no_officer_serves_a_village_the_lead_is_told(staged: Staged) -> None:
    """Somebody must be."""
    valley = staged(settle)
    valley.add_officer(phone=LEAD, lead=True)
    with valley.house.store.work() as work:
        work.alerts.set_geocodes(KIJANI.id, [Geocode("WARD", "1")])
    valley.go("1 Jun 08:00")
    take(valley, first())
    valley.send()
    assert valley.heard(LEAD) == [like(o.ALERT_DRAFTED)]
