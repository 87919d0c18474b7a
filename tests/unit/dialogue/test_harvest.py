"""The harvest is told once, after the season: kept with the result, and said back."""

from dataclasses import replace
from datetime import date

import pytest

from assistant.agronomy.season.outcome import SeasonOutcome
from assistant.dialogue import values as v
from assistant.dialogue.turns import turn
from assistant.wiring.catalogues import open_catalogue
from assistant.wiring.lexicons import open_lexicons
from assistant.wording import messages_result as r
from tests.talk import Phone, nursery
from tests.valley import like

SEASON = SeasonOutcome(1, 1, date(2026, 3, 1), 4000.0, 4000.0, 267, 3.0, False, 0.65)


def farmer(**told: object) -> Phone:
    """Whose last season of 0.4 ha is over."""
    phone = Phone.enrolled()
    phone.known = replace(phone.known, seasons=(replace(SEASON, **told),))  # type: ignore[arg-type]
    return phone


@pytest.mark.parametrize(
    ("language", "text"),
    [
        ("en", "harvest 1600 kg"),
        ("en", "we harvested 1,600 kg"),
        ("en", "yield 1.6 tonnes"),
        ("sw", "mavuno 1600 kg"),
        ("fr", "récolte 1600 kg"),
        ("pt", "colheita 1600 kg"),
        ("fil", "ani 1600 kg"),
        ("hi", "उपज 1600 kg"),
        ("bn", "ফলন ১৬০০ কেজি"),
        ("id", "panen 1600 kg"),
        ("vi", "gặt 1600 kg"),
    ],
)
def test_a_harvest_is_kept_with_its_season(language: str, text: str) -> None:
    """1600 kg from 0.4 ha are 4000 kg from a hectare. What a text tells to send is read."""
    known = replace(
        farmer().known, catalogue=open_catalogue(language), lexicons=open_lexicons()
    )
    got = turn(text, known)
    assert [each.message for each in got.texts[0].says] == [r.YIELD_KEPT]
    assert dict(got.texts[0].says[0].slots) == {"kg": 1600, "per_ha": 4000}
    assert got.changes == (v.KeepSeason(replace(SEASON, yield_kg=1600.0)),)


@pytest.mark.parametrize("text", ["harvest 5 kg", "harvest 90000 kg", "harvest 30 bags"])
def test_what_no_field_gives_is_asked_again(text: str) -> None:
    """Bags are of any size."""
    phone = farmer(yield_asked=date(2026, 6, 1))
    assert phone.hears(text) == [like(r.AGAIN_YIELD)]
    assert phone.changes == []


def test_a_harvest_is_not_told_twice_nor_before_a_season_is_over() -> None:
    assert farmer(yield_kg=1500.0).hears("harvest 1600 kg") != [like(r.YIELD_KEPT)]
    assert Phone.enrolled(nursery()).hears("harvest 1600 kg") != [like(r.YIELD_KEPT)]


@pytest.mark.parametrize("text", ["we harvested 30 bags", "harvested 12 sacks"])
def test_a_harvest_in_bags_that_nobody_asked_reaches_a_person(text: str) -> None:
    """Also of a season that was closed without a result, or with one whose harvest was not
    asked yet; the weight is asked for."""
    for phone in (Phone.enrolled(), farmer()):
        assert phone.hears(text) == [like(r.YIELD_IN_BAGS, ...)]
        calls = [each for each in phone.changes if isinstance(each, v.CallForHelp)]
        assert [each.words for each in calls] == [text]
