"""`nursery plan` asked when to sow, for a variety of a file, for the sowing day, by own tin."""

import json
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner, Result

from assistant.commands.plan import command
from assistant.people import LANGUAGES
from assistant.settings import SettingsError
from assistant.wiring.varieties import open_varieties

VARIETIES = Path("scenarios/district/varieties.toml")
FIELD = ("--area", "0.4 ha", "--germination", "85")


def _run(*args: str) -> Result:
    return CliRunner().invoke(command, [*FIELD, *args])


def _data(*args: str) -> dict[str, Any]:
    result = _run(*args, "--json")
    assert result.exit_code == 0, result.output
    data: dict[str, Any] = json.loads(result.stdout)
    return data


def test_days_to_sow_come_by_their_own_keys():
    """The plan is made for the middle one; a day that was written stays."""
    asked = ("--days", "120", "--harvest-before", "2030-06-01", "--water-from", "2030-01-05")
    data = _data(*asked)
    assert (data["sow_from"], data["sow_until"]) == ("2030-01-10", "2030-02-01")
    assert [day["reason"] for day in data["sowing_days"]] == ["field_ready", "in_hand", "last"]
    sown = next(row for row in data["calendar"] if row["task"] == "sow")
    assert sown["date"] == data["sowing_days"][1]["sow"] == "2030-01-21"
    assert _data(*asked, "--sow", "2030-01-15")["sowing_days"] == data["sowing_days"]


def test_without_these_options_nothing_is_new():
    """None of their keys."""
    new = {"sow_from", "sowing_days", "sowing_day", "measures", "usual_nursery_area_m2"}
    assert not new & set(_data("--sow", "2030-01-15"))


def test_no_day_that_fits_is_refused_with_what_is_missing():
    """53 days; with a sowing day the plan stands and says so."""
    late = ("--days", "140", "--water-from", "2030-03-01", "--harvest-before", "2030-06-01")
    refused = _run(*late)
    assert refused.exit_code == 2 and "53 days are missing" in refused.output
    page = _run(*late, "--sow", "2030-03-06").output
    assert "No day fits: 53 days are missing." in page


def test_days_of_the_variety_are_asked_for_where_they_are_needed():
    """A harvest cannot be reckoned without."""
    refused = _run("--harvest-before", "2030-06-01")
    assert refused.exit_code == 2 and "--days 115" in refused.output


def test_a_variety_of_the_programme_brings_days_weight_and_age():
    """Mwanga of the invented district: 110 days, 24 g, planted on days 14-18."""
    args = ("--varieties", str(VARIETIES), "--variety", "MWANGA")
    data = _data(*args, "--harvest-before", "2030-06-01")
    assert data["variety"]["age_days"] == [14, 18]
    planting = next(row for row in data["calendar"] if row["task"] == "transplant")
    assert planting["day"] == 14
    assert data["sow_until"] == "2030-02-11"
    page = _run(
        "--varieties", str(VARIETIES), "--variety", "bibi", "--sow", "2030-01-15"
    ).output
    assert "150 days from sowing" in page and "length of the day" in page


def test_an_unknown_code_names_those_of_the_file():
    """And the near published names."""
    refused = _run("--varieties", str(VARIETIES), "--variety", "nope", "--sow", "2030-01-15")
    assert refused.exit_code == 2 and "mwanga, kijani" in refused.output


def test_the_sowing_day_is_told_for_the_hands():
    """Needs hands; too few are told how many it takes."""
    day = ("--sow", "2030-01-15", "--day-begins", "06:00")
    assert _run(*day).exit_code == 2
    data = _data(*day, "--hands", "6")["sowing_day"]
    assert (data["ends"], data["days"]) == (["09:30", "13:30"], 1)
    assert "get 6 people for one day" in _run(*day, "--hands", "2").output


def test_seed_and_urea_by_the_own_tin():
    """25 tins in the pail: 0.4 L; 4 spoons are 45 g, a tenth below 50 g in 10 L, never more."""
    data = _data("--sow", "2030-01-15", "--tins-in-pail", "25")["measures"]
    assert data["tin_l"] == pytest.approx(0.4)
    assert data["urea_for_10_l"] == {"measure": "spoon", "count": 4}
    page = _run("--sow", "2030-01-15", "--tin-litres", "0.4").output
    assert "One tin of 0.4 L of sprouted seed sows about 5.5 mats" in page


@pytest.mark.parametrize("language", LANGUAGES)
def test_all_of_it_is_told_in_every_language(language):
    """No slot unfilled."""
    args = (
        "--varieties",
        str(VARIETIES),
        "--variety",
        "bibi",
        "--harvest-before",
        "2030-09-01",
    )
    more = ("--hands", "2", "--day-begins", "06:00", "--tin-litres", "0.4", "--smaller-bed")
    page = _run(*args, *more, "--lang", language).output
    assert "{" not in page and "Error" not in page


def test_faults_of_a_file_are_all_named(tmp_path):
    """With what to write."""
    path = tmp_path / "varieties.toml"
    path.write_text(
        '[[variety]]\ncode = "a"\nname = "A"\ndays = 20\nkind = "wild"\n'
        '[[variety]]\ncode = "A"\nname = "B"\ndays = 100\nkind = "hybrid"\nage_first = 15\n'
    )
    with pytest.raises(SettingsError) as told:
        open_varieties(path)
    for words in (
        "variety 1: days: cannot take 20",
        "inbred, hybrid",
        "both age_first",
        "twice",
    ):
        assert words in str(told.value)
