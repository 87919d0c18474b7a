"""Season results: by village, by nursery, and as files."""

import csv
from dataclasses import replace
from datetime import datetime
from io import BytesIO, StringIO

import pytest
from openpyxl import load_workbook

from assistant.service.season.results import results
from assistant.service.season.results_lines import Ended
from assistant.service.sight import Sight, sight_of
from tests.unit.web.conftest import Browser, NewBrowser, give_password, nowhere
from tests.valley import AMINA, BARAKA, LEAD, OFFICER, ZAWADI, Valley


def way(valley: Valley) -> None:
    """Three seasons in Kijani and one in Mto Mwanga, all of 0.4 ha at 85 %.

    Amina sows on 10 June as planned, uncovers on the 15th, plants on the 28th (day 18), has 27
    of 267 mats left. Zawadi plants nine tenths of the field and runs short. Baraka, of the
    other village, stops all texts on the day of sowing. Nobody else tells anything.
    """
    kijani = valley.add_village("Kijani")
    valley.add_village("Mto Mwanga")
    valley.add_officer(kijani)
    valley.add_officer(phone=LEAD, lead=True)
    for phone in (OFFICER, LEAD):
        give_password(valley, phone)
    for phone, village in ((AMINA, 1), (ZAWADI, 1), (BARAKA, 2)):
        valley.enrol(phone, village)
        valley.plan(phone, "10 June")
    _name(valley, AMINA, '=HYPERLINK("http://example.org")')
    valley.go("10 Jun 08:00")
    for phone in (AMINA, ZAWADI, BARAKA):
        valley.text(phone, "done")
    valley.text(BARAKA, "STOP")
    valley.go("15 Jun 08:00")
    for phone in (AMINA, ZAWADI):
        valley.text(phone, "done")
    valley.go("28 Jun 08:00")
    for phone in (AMINA, ZAWADI):
        valley.text(phone, "done")
    valley.go("6 Jul 08:00")
    for words in ("1", "27", "2"):  # left over, so many, nothing sown again
        valley.text(AMINA, words)
    for words in ("3", "90%", "2"):  # too few, planted so much, nothing sown again
        valley.text(ZAWADI, words)


@pytest.fixture
def ended(valley: Valley) -> Valley:
    """The valley where the way ends."""
    return valley


def _name(valley: Valley, phone: str, name: str) -> None:
    with valley.house.store.work() as work:
        farmer = work.people.farmer(phone)
        assert farmer is not None
        work.people.save_farmer(replace(farmer, name=name))


def _sight(valley: Valley, phone: str = LEAD) -> Sight:
    with valley.house.store.look() as work:
        officer = work.people.officer(phone)
        assert officer is not None
        return sight_of(work, officer)


def test_the_sums_are_those_of_the_nurseries(ended: Valley) -> None:
    """By hand: two fields of 4,000 m2 were told of, one planted whole and one to 0.9: 7,600 m2.
    Seed 4,000 x 25 hills x 2 x 25 g / 1000 / (0.85 x 0.65) = 9.05 kg each, so 22.6 kg/ha by the
    plan and 18.1 / 0.76 = 23.8 kg/ha planted; on the mats 9.05 x 240/267 + 9.05 = 17.2 kg.
    Establishment seen: 0.65 / (240/267) = 0.723 and 0.65 x 0.9 = 0.585; by mats used
    (0.723 x 240 + 0.585 x 267) / 507 = 0.650."""
    model = results(ended.house, _sight(ended), ended.now)
    kijani, mwanga = model.by_village
    sums = kijani.sums
    assert kijani.village is not None and kijani.village.name == "Kijani"
    assert (sums.field_m2, sums.planted_m2) == pytest.approx((8000.0, 7600.0))
    assert sums.seed_told_kg == pytest.approx(18.10, abs=0.01)
    assert sums.seed_used_kg == pytest.approx(17.18, abs=0.01)
    assert kijani.planned_rate == pytest.approx(22.62, abs=0.01)
    assert kijani.used_rate == pytest.approx(23.82, abs=0.01)
    assert kijani.establishment == pytest.approx(0.650, abs=0.001)
    assert (sums.mats_left, sums.short, sums.resown) == (27.0, 1, 0)
    assert (kijani.ended[Ended.TOLD], mwanga.ended[Ended.UNDER_WAY]) == (2, 1)
    assert kijani.sowing == kijani.uncovering == kijani.transplanting == (2, 2)
    assert mwanga.transplanting == (0, 0)
    assert model.in_all.sums.nurseries == 3


def test_a_result_that_never_came_is_shown_as_that(
    ended: Valley, new_browser: NewBrowser
) -> None:
    """Baraka's bed, 45 days and 28 more after sowing: 22 August is the last day, by hand."""
    ended.go("23 Aug 07:00")
    lead = new_browser()
    lead.sign_in(LEAD)
    model = results(ended.house, _sight(ended), ended.now, season="2026-01")
    assert model.by_village[1].ended[Ended.NO_RESULT] == 1
    assert "No result" in lead.open("/results?village=2&season=2026-01")
    assert "nobody reported how it went" in lead.open("/nurseries/3")


def test_seasons_begin_with_the_months_that_are_set(ended: Valley) -> None:
    """By default with January and July; here long rains from March, short from October."""
    ended.house = replace(ended.house, season_months=(3, 10))
    (season,) = results(ended.house, _sight(ended), ended.now).seasons
    assert (season.start.isoformat(), season.last.isoformat()) == ("2026-03-01", "2026-09-30")
    ended.house = replace(ended.house, season_months=(1, 7))
    keys = [each.key for each in results(ended.house, _sight(ended), ended.now).seasons]
    assert keys == ["2026-07", "2026-01"]
    ended.house = replace(ended.house, season_months=(11,))
    (season,) = results(ended.house, _sight(ended), ended.now).seasons
    assert (season.start.isoformat(), season.last.isoformat()) == ("2025-11-01", "2026-10-31")


def test_the_latest_season_that_was_sown_is_shown_first(ended: Valley) -> None:
    """On 6 July nobody has sown in the one from July; the one before is looked at."""
    assert results(ended.house, _sight(ended), ended.now).season.key == "2026-01"


def test_an_officer_sees_what_was_learned_of_a_village(
    ended: Valley, new_browser: NewBrowser
) -> None:
    """With the range in which it likely lies; nothing of villages of others."""
    officer = new_browser()
    officer.sign_in(OFFICER)
    shown = officer.open("/results?village=1&season=2026-01")
    assert "Learned in Kijani from 2 seasons: 65 of 100" in shown
    assert "Mto Mwanga" not in shown
    assert "Learned of" not in officer.open("/results?village=2&season=2026-01")


def test_the_files_hold_each_nursery_with_numbers_and_dates(
    ended: Valley, new_browser: NewBrowser
) -> None:
    """A name that looks like a formula is words in both; units stand in the heads."""
    lead = new_browser()
    lead.sign_in(LEAD)
    lead.open("/results.csv?season=2026-01")
    text = lead.page.get_data().decode("utf-8-sig")
    amina = next(row for row in csv.DictReader(StringIO(text)) if row["Mats left"] == "27.0")
    assert amina["Farmer"] == """'=HYPERLINK("http://example.org")"""
    assert (amina["Field (ha)"], amina["Seed planned (kg)"]) == ("0.4", "9.05")
    assert (amina["Sown on"], amina["Transplanted on"]) == ("2026-06-10", "2026-06-28")
    assert amina["Age at transplanting (days)"] == "18"
    lead.open("/results.xlsx?season=2026-01")
    sheet = load_workbook(BytesIO(lead.page.get_data())).worksheets[0]
    head, *rows = [[cell.value for cell in row] for row in sheet.iter_rows()]
    in_book = next(dict(zip(head, row, strict=True)) for row in rows if row[15] == 27)
    assert in_book["Farmer"] == '=HYPERLINK("http://example.org")'
    assert in_book["Seed planned (kg)"] == pytest.approx(9.05, abs=0.01)
    assert in_book["Sown on"] == datetime(2026, 6, 10)
    assert len(rows) == 3


def test_who_took_a_file_stands_in_the_trail(ended: Valley, new_browser: NewBrowser) -> None:
    """Names and numbers of people leave with it; an officer gets only their own."""
    officer, lead = new_browser(), new_browser()
    officer.sign_in(OFFICER)
    officer.open("/results.csv?season=2026-01")
    assert BARAKA not in officer.page.text and ZAWADI in officer.page.text
    assert 'filename="season-2026-01.csv"' in officer.page.headers["Content-Disposition"]
    lead.sign_in(LEAD)
    assert "downloaded the season results" in lead.open("/trail")


@pytest.mark.parametrize("query", ["season=x", "season=1999-01", "village=9", "village=x"])
def test_an_address_that_makes_no_sense_shows_the_latest_season(
    ended: Valley, new_browser: NewBrowser, query: str
) -> None:
    """Typed by hand, or old."""
    lead = new_browser()
    lead.sign_in(LEAD)
    lead.open(f"/results?{query}")
    assert lead.page.status_code == 200


@pytest.mark.parametrize("way", [nowhere])
def test_before_the_first_nursery_there_is_nothing(valley: Valley) -> None:
    """And nothing breaks."""
    valley.add_officer(phone=LEAD, lead=True)
    model = results(valley.house, _sight(valley), valley.now)
    assert (model.lines, model.in_all.establishment, len(model.seasons)) == ((), None, 1)


def test_a_browser_is_not_needed_to_be_signed_in_for_nothing(new_browser: NewBrowser) -> None:
    """Closed to strangers, files too."""
    stranger: Browser = new_browser()
    assert "Sign in" in stranger.open("/results.csv")
