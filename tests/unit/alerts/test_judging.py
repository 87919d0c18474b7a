"""Whether an alert matters here: thresholds, time and area, for an invented valley."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.alert_terms import CERTAINTIES, SEVERITIES, URGENCIES, MessageType, Rules, Status
from assistant.alerts import Alert, AlertOutcome, judge, read_alert
from assistant.places import Geocode, Point, VillagePlace
from tests.cap import SENDER, Raw, area, cap, code, info

RULES = Rules()
NOW = datetime(2026, 6, 12, 5, 0, tzinfo=UTC)
KIJANI, MTO, HILL, UNMARKED = 1, 2, 3, 4
PLACES = {
    KIJANI: VillagePlace(Point(-1.0, 37.0)),
    MTO: VillagePlace(Point(-1.05, 37.05), frozenset({Geocode("WARD", "7")})),
    HILL: VillagePlace(Point(-2.0, 38.0)),
    UNMARKED: VillagePlace(),
}


def read(**changes: Any) -> Alert:
    found = read_alert(cap(**changes))
    assert isinstance(found, Alert), found
    return found


def outcome(rules: Rules = RULES, now: datetime = NOW, **changes: Any) -> AlertOutcome:
    return judge(read(**changes), rules, PLACES, now).outcome


def test_a_danger_reaches_the_villages_in_its_area() -> None:
    """From its onset to its end, with the service's own words."""
    (threat,) = judge(read(), RULES, PLACES, NOW).threats
    assert threat.place_ids == (KIJANI, MTO)
    assert threat.starts_at == datetime(2026, 6, 12, 11, 0, tzinfo=UTC)
    assert threat.ends_at == datetime(2026, 6, 12, 17, 0, tzinfo=UTC)
    assert threat.certainty == "Likely"
    assert threat.told("sw").headline == "Orange: heavy rain in the Lindara valley"


HEADS: dict[str, tuple[dict[str, Any], AlertOutcome]] = {
    "a test is shown and never sent": ({"status": "Test"}, AlertOutcome.NOT_ACTUAL),
    "so is an exercise": ({"status": "Exercise"}, AlertOutcome.NOT_ACTUAL),
    "so is what systems say to each other": ({"status": "System"}, AlertOutcome.NOT_ACTUAL),
    "so is a draft": ({"status": "Draft"}, AlertOutcome.NOT_ACTUAL),
    "what is not for the public": (
        {"scope": "Restricted", "restriction": "x"},
        AlertOutcome.NOT_PUBLIC,
    ),
    "what is for some": ({"scope": "Private", "addresses": "x"}, AlertOutcome.NOT_PUBLIC),
    "an acknowledgement": ({"msgType": "Ack"}, AlertOutcome.NO_WARNING),
    "a report of an error": ({"msgType": "Error"}, AlertOutcome.NO_WARNING),
    "an alert that says nothing": ({"info": None}, AlertOutcome.NO_WARNING),
    "a cancel": ({"msgType": "Cancel", "info": None}, AlertOutcome.CANCELS),
    "an update is judged as an alert": ({"msgType": "Update"}, AlertOutcome.MATTERS),
    "a test of a cancel cancels nothing": (
        {"status": "Test", "msgType": "Cancel"},
        AlertOutcome.NOT_ACTUAL,
    ),
}


@pytest.mark.parametrize(("changes", "expected"), HEADS.values(), ids=HEADS)
def test_the_head_tells_what_an_alert_is_for(
    changes: dict[str, Any], expected: AlertOutcome
) -> None:
    """Status, scope and msgType of CAP 1.2, 3.2.1."""
    assert outcome(**changes) is expected


DANGERS: dict[str, tuple[dict[str, Any], AlertOutcome]] = {
    "over": ({"expires": "2026-06-12T08:00:00+03:00"}, AlertOutcome.EXPIRED),
    "the service says it is over": ({"responseType": "AllClear"}, AlertOutcome.ALL_CLEAR),
    "an earthquake": ({"category": "Geo"}, AlertOutcome.OTHER_HAZARD),
    "weather among others": ({"category": ["Health", "Met"]}, AlertOutcome.MATTERS),
    "no known threat": ({"severity": "Minor"}, AlertOutcome.BELOW),
    "nobody knows how bad": ({"severity": "Unknown"}, AlertOutcome.BELOW),
    "a possible threat": ({"severity": "Moderate"}, AlertOutcome.MATTERS),
    "less likely than not": ({"certainty": "Possible"}, AlertOutcome.BELOW),
    "seen": ({"certainty": "Observed"}, AlertOutcome.MATTERS),
    "past": ({"urgency": "Past"}, AlertOutcome.BELOW),
    "tomorrow": ({"urgency": "Future"}, AlertOutcome.MATTERS),
    "no area": ({"area": None}, AlertOutcome.ONLY_WORDS),
    "an area in words": ({"area": area(polygon=None)}, AlertOutcome.ONLY_WORDS),
    "far away": ({"area": area(polygon=None, circle="40,-120 50")}, AlertOutcome.ELSEWHERE),
    "a code": ({"area": area(polygon=None, geocode=code("ward", "7"))}, AlertOutcome.MATTERS),
}


@pytest.mark.parametrize(("changes", "expected"), DANGERS.values(), ids=DANGERS)
def test_thresholds_time_and_area_decide(
    changes: dict[str, Any], expected: AlertOutcome
) -> None:
    """Each by itself, with the rest as in a heavy-rain alert."""
    assert outcome(info=info(**changes)) is expected


EVENTS: dict[str, tuple[tuple[str, ...], dict[str, Any], bool]] = {
    "any weather where none is named": ((), {"event": "Heat"}, True),
    "a word of the event": (("rain",), {}, True),
    "a word of the headline": (("MVUA",), {"event": "x", "headline": "Mvua kubwa"}, True),
    "none of the words": (("rain", "hail"), {"event": "Heat", "headline": "Hot"}, False),
    "a code": (("HAZ=RR2",), {"event": "x", "eventCode": code("haz", "rr2")}, True),
    "another code": (("HAZ=RR2",), {"eventCode": code("haz", "rr1")}, False),
}


@pytest.mark.parametrize(("events", "changes", "matters"), EVENTS.values(), ids=EVENTS)
def test_a_programme_may_name_its_dangers(
    events: tuple[str, ...], changes: dict[str, Any], matters: bool
) -> None:
    """By words of the service or by its codes, capitals or not."""
    expected = AlertOutcome.MATTERS if matters else AlertOutcome.OTHER_HAZARD
    assert outcome(replace(RULES, events=events), info=info(**changes)) is expected


def test_blocks_in_several_languages_are_one_danger() -> None:
    """And each is told to those who read it; to others in English, else as it came first."""
    swahili = info(language="sw", event="Mvua kubwa", headline="Mvua kubwa bondeni")
    judged = judge(read(info=[swahili, info(language="en-GB")]), RULES, PLACES, NOW)
    (threat,) = judged.threats
    assert threat.told("sw").event == "Mvua kubwa"
    assert threat.told("en").event == threat.told("fr").event == "Heavy rain"
    only = judge(read(info=swahili), RULES, PLACES, NOW).threats[0]
    assert only.told("fr").event == "Mvua kubwa"


def test_two_dangers_of_one_alert_are_kept_apart() -> None:
    """Each with its own villages and hours; what is under the thresholds falls away."""
    hill = area(polygon=None, circle="-2,38 5")
    judged = judge(
        read(info=[info(), info(severity="Extreme", area=hill), info(severity="Minor")]),
        RULES,
        PLACES,
        NOW,
    )
    assert [threat.place_ids for threat in judged.threats] == [(KIJANI, MTO), (HILL,)]


def test_an_alert_without_an_end_holds_for_a_day() -> None:
    """CAP 1.2, 3.2.2 <expires>: each recipient sets its own policy."""
    endless = info(onset=None, expires=None)
    (threat,) = judge(read(info=endless), RULES, PLACES, NOW).threats
    assert threat.starts_at == datetime(2026, 6, 12, 3, 0, tzinfo=UTC)
    assert threat.ends_at == threat.starts_at + timedelta(hours=24)
    assert outcome(now=NOW + timedelta(days=1), info=endless) is AlertOutcome.EXPIRED


def test_an_alert_that_expires_before_the_danger_begins_still_warns_of_it() -> None:
    """The service means to say more by then; else the danger is taken to last a day."""
    early = info(onset="2026-06-13T14:00:00+03:00", expires="2026-06-12T20:00:00+03:00")
    (threat,) = judge(read(info=early), RULES, PLACES, NOW).threats
    assert threat.ends_at - threat.starts_at == timedelta(hours=24)
    assert outcome(now=NOW + timedelta(hours=13), info=early) is AlertOutcome.EXPIRED


def test_references_are_read_for_what_follows() -> None:
    """Several, with any blanks between them."""
    named = Raw(f"{SENDER},a,2026-06-11T06:00:00+03:00\n  {SENDER},b,2026-06-11T07:00:00+03:00")
    assert [each.identifier for each in read(references=named).references] == ["a", "b"]


MOMENTS = st.sampled_from(
    [
        None,
        "1900-01-01T00:00:00+14:00",
        "2999-12-31T24:00:00-14:00",
        "2026-06-12T06:00:00+03:00",
        "2026-06-12T24:00:00+03:00",
    ]
)
ODD = st.fixed_dictionaries(
    {
        "category": st.sampled_from(["Met", "Geo"]),
        "severity": st.sampled_from(SEVERITIES),
        "urgency": st.sampled_from(URGENCIES),
        "certainty": st.sampled_from(CERTAINTIES),
        "effective": MOMENTS,
        "onset": MOMENTS,
        "expires": MOMENTS,
    }
)


@given(
    st.lists(ODD, max_size=3), st.sampled_from(list(MessageType)), st.sampled_from(list(Status))
)
def test_whatever_is_read_can_be_judged(
    odd: list[dict[str, Any]], kind: MessageType, status: Status
) -> None:
    """Also at the ends of the calendar; what matters has places and hours that end."""
    alert = read_alert(
        cap(msgType=kind, status=status, info=[info(**each) for each in odd] or None)
    )
    assert isinstance(alert, Alert), alert
    judged = judge(alert, RULES, PLACES, NOW)
    assert (judged.outcome is AlertOutcome.MATTERS) == bool(judged.threats)
    for threat in judged.threats:
        assert threat.place_ids and threat.starts_at < threat.ends_at
