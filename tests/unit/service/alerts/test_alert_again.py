"""Alerts that came before a village was placed, or before the thresholds were lowered."""

from dataclasses import replace

import pytest

from assistant.places import Geocode
from assistant.service.alerts.again import judge_again
from assistant.service.alerts.taking import take_alert
from assistant.store import Became
from assistant.wording import messages_officer as o
from tests.cap import SENDER, area, cap, code, info
from tests.valley import KIJANI, MWANGA, OFFICER, Staged, Valley, like, settle

BOTH = area(polygon=None, geocode=[code("WARD", "1"), code("WARD", "2")])


@pytest.fixture
def told(staged: Staged) -> Valley:
    """Heavy rain was announced for both wards; only Kijani's is known."""
    valley = staged(settle)
    valley.add_officer(KIJANI, MWANGA)
    place(valley, KIJANI.id, "1")
    valley.leap("12 Jun 08:00")
    take_alert(valley.house, cap(info=info(area=BOTH)), "LWS", valley.now)
    valley.send()
    valley.heard(OFFICER)
    return valley


def place(valley: Valley, village_id: int, ward: str) -> None:
    with valley.house.store.work() as work:
        work.alerts.set_geocodes(village_id, [Geocode("WARD", ward)])


def drafted(valley: Valley) -> list[tuple[int, ...]]:
    with valley.house.store.look() as work:
        return [draft.village_ids for draft in work.drafts.open(valley.now)]


def test_a_village_that_is_placed_later_gets_a_draft_of_its_own(told: Valley) -> None:
    """Once; the officer is told, and the alert names both villages."""
    assert judge_again(told.house, told.now) == ()
    place(told, MWANGA.id, "2")
    (kept,) = judge_again(told.house, told.now)
    assert kept.village_ids == (KIJANI.id, MWANGA.id) and kept.became is Became.DRAFTED
    assert judge_again(told.house, told.now) == ()
    assert drafted(told) == [(KIJANI.id,), (MWANGA.id,)]
    told.send()
    assert told.heard(OFFICER) == [like(o.ALERT_DRAFTED)]


def test_lower_thresholds_find_what_was_below_them(told: Valley) -> None:
    """With its hours from then on."""
    minor = cap(identifier="minor", info=info(severity="Minor", area=BOTH))
    assert take_alert(told.house, minor, "LWS", told.now)
    rules = replace(told.house.alert_rules, severities=frozenset({"Minor", "Severe"}))
    told.house = replace(told.house, alert_rules=rules)
    (kept,) = judge_again(told.house, told.now)
    assert (kept.identifier, kept.became) == ("minor", Became.DRAFTED)
    assert kept.starts_at and kept.ends_at


@pytest.mark.parametrize("case", ["replaced", "over", "a test"])
def test_what_no_longer_counts_is_left(told: Valley, case: str) -> None:
    """A message whose place was taken, one that is over, one that never counted."""
    if case == "replaced":
        named = f"{SENDER},LWS-1,2026-06-12T06:00:00+03:00"
        later = "2026-06-12T07:00:00+03:00"
        raw = cap(identifier="2", sent=later, msgType="Cancel", references=named, info=None)
        take_alert(told.house, raw, "LWS", told.now)
    elif case == "a test":
        raw = cap(identifier="t", status="Test", info=info(area=BOTH))
        take_alert(told.house, raw, "LWS", told.now)
    if case == "over":
        told.leap("12 Jun 21:00")
    before = drafted(told)
    place(told, MWANGA.id, "2")
    judged = judge_again(told.house, told.now)
    assert [kept.identifier for kept in judged] == (["LWS-1"] if case == "a test" else [])
    assert len(drafted(told)) == len(before) + len(judged)
