"""The service's headline on its way to farmers: their language, and never at a high price."""

from datetime import UTC, datetime

import pytest

from assistant.places import Geocode
from assistant.service.alerts.taking import take_alert
from assistant.service.storms.headline import NO_HEADLINE, Headline, headline
from assistant.store import Draft
from tests.cap import Raw, area, cap, code, info
from tests.valley import KIJANI, Valley

HERE = area(polygon=None, geocode=code("WARD", "1"))
ENGLISH = info(area=HERE)
ORANGE = "Orange: heavy rain in the Lindara valley"


def said(language: str, words: str) -> Raw:
    return info(language=language, headline=words, area=HERE)


def of_draft(valley: Valley, *infos: Raw) -> Headline:
    """The headline for the draft that such an alert leads to."""
    with valley.house.store.work() as work:
        work.alerts.set_geocodes(KIJANI.id, [Geocode("WARD", "1")])
    valley.leap("12 Jun 08:00")
    kept = take_alert(valley.house, cap(info=list(infos)), "LWS", valley.now)
    assert kept is not None
    with valley.house.store.look() as work:
        return headline(work, work.drafts.of_alert(kept.id)[0])


def test_each_gets_the_headline_of_their_language(valley: Valley) -> None:
    """English for those whose language the service does not write; in plain letters."""
    found = of_draft(valley, said("sw-KE", "Mvua  kubwa\n“leo”"), ENGLISH)
    assert found == Headline({"sw": 'Mvua kubwa "leo"', "en": ORANGE})
    assert [found.told(each) for each in ("sw", "en", "fr", None)] == [
        'Mvua kubwa "leo"',
        ORANGE,
        ORANGE,
        ORANGE,
    ]


@pytest.mark.parametrize(
    ("language", "words"),
    [
        ("sw", "m" * 101),
        ("sw", "Mvua \N{UMBRELLA WITH RAIN DROPS}"),
        ("sw", " "),
        ("fr", "भारी"),
    ],
)
def test_a_headline_that_makes_a_text_dear_is_left_out(
    valley: Valley, language: str, words: str
) -> None:
    """Another language's stands in, or none."""
    assert of_draft(valley, said(language, words), ENGLISH) == Headline({"en": ORANGE})


def test_letters_of_a_languages_own_are_no_reason(valley: Valley) -> None:
    """Its texts have them anyway."""
    found = of_draft(valley, said("hi", "भारी बारिश"))
    assert found == Headline({"hi": "भारी बारिश"})
    assert found.told("sw") == ""  # it would halve the room of a Swahili text


def test_two_dangers_in_one_alert_have_no_common_headline(valley: Valley) -> None:
    """It might be the wrong one."""
    assert of_draft(valley, ENGLISH, info(severity="Extreme", area=HERE)) == NO_HEADLINE


def test_an_officers_own_draft_has_none(valley: Valley) -> None:
    """Nobody but the officer speaks there."""
    noon = datetime(2026, 6, 12, 9, tzinfo=UTC)
    draft = Draft(village_ids=(1,), starts_at=noon, ends_at=noon, created_at=noon)
    with valley.house.store.look() as work:
        assert headline(work, draft) == NO_HEADLINE
