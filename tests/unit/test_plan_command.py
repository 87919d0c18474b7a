"""`nursery plan` as an officer types it: page, data, and refusals of one line."""

import json
import re
from collections.abc import Mapping
from datetime import date, timedelta
from gettext import NullTranslations
from importlib.resources import files
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner, Result
from freezegun import freeze_time
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.agronomy.calendar import Anchors, TaskCode, calendar
from assistant.agronomy.field import FieldInputs
from assistant.agronomy.life.rows import TASKS
from assistant.agronomy.quantities import WarningCode, quantities
from assistant.commands.plan import command
from assistant.people import LANGUAGES
from assistant.wording.plan_page import CAUTIONS, Plan, warning_say
from assistant.wording.render import Catalogue, render

PLAIN = {"--area": "0.4 ha", "--germination": "85", "--sow": "2026-06-10"}

KEYS = (
    "field_area_m2 hills seedlings seed_kg sprouted_seed_kg nursery_area_m2 seeds_per_cm2 mats "
    "seed_per_mat_g soil_mix_m3 pail_litres soil_pails manure_pails rice_hull_pails sheet_m2 "
    "flood_water_l urea_g spray_water_l warnings calendar"
).split()

CODES = (
    "seed_test collect mix soak drain_seed sow water rain_watch uncover_flood keep_water "
    "colour_check leaf_count choose_day drain_bed transplant overdue field_flood field_plough "
    "field_puddle field_level"
).split()


@pytest.fixture(scope="module", autouse=True)
def june():
    """The first of June, for all of them: to freeze the clock takes longer than the command."""
    with freeze_time("2026-06-01"):
        yield


def _run(options: Mapping[str, str | None], *flags: str) -> Result:
    args = [
        part for name, typed in options.items() if typed is not None for part in (name, typed)
    ]
    return CliRunner().invoke(command, [*args, *flags])


def _data(**changed: str | None) -> dict[str, Any]:
    options = PLAIN | {"--" + name.replace("_", "-"): typed for name, typed in changed.items()}
    result = _run(options, "--json")
    assert (result.exit_code, result.stderr) == (0, "")
    data: dict[str, Any] = json.loads(result.stdout)
    return data


def _codes(data: dict[str, Any]) -> list[str]:
    return [warning["code"] for warning in data["warnings"]]


def test_the_data_has_the_agreed_keys():
    """Keys, in their order, and integers where things are counted."""
    data = _data()
    assert list(data) == [*KEYS, "mix_told_l"]
    for name in ("mats", "soil_pails", "manure_pails", "rice_hull_pails"):
        assert type(data[name]) is int


@pytest.mark.parametrize(
    ("area", "litres"),
    [("525 m2", 20), ("260 m2", 10), ("10 m2", 10), ("0.4 ha", 10), ("50 ha", 1)],
)
def test_the_data_says_how_much_mix_the_words_amount_to(area, litres):
    """Within a tenth of the mix, where whole batches of pails were up to twice of it."""
    data = _data(area=area, pail_litres=str(litres))
    assert data["mix_told_l"] == pytest.approx(data["soil_mix_m3"] * 1000, rel=0.10)


def test_the_data_is_exact():
    """0.4 ha at 85 %: 200,000 x 25 / 1e6 / (0.85 x 0.65) = 9.049774 kg, worked by hand."""
    data = _data()
    assert data["seed_kg"] == pytest.approx(9.0497738, rel=1e-7)
    assert data["sprouted_seed_kg"] == pytest.approx(11.3122172, rel=1e-7)
    assert (data["field_area_m2"], data["mats"], data["urea_g"]) == (4000, 267, 600)


def test_the_calendar_holds_every_task_once_in_date_order():
    """Each row is date = sowing + day, in ISO form."""
    rows = _data()["calendar"]
    assert sorted(row["task"] for row in rows) == sorted(CODES)
    assert [row["date"] for row in rows] == sorted(row["date"] for row in rows)
    for row in rows:
        assert date.fromisoformat(row["date"]) == date(2026, 6, 10) + timedelta(row["day"])
        assert row["until"] is None or row["until"] >= row["date"]


def test_a_wished_day_gives_the_same_plan_as_its_sowing():
    """Transplanting on 28 June means sowing on 10 June."""
    assert _data(sow=None, transplant="2026-06-28") == _data()


@pytest.mark.parametrize("typed", ["85", "85%", "85 %", " 85.0 "])
def test_germination_is_read_with_or_without_its_sign(typed):
    """All of these are 85 of 100."""
    assert _data(germination=typed) == _data()


@pytest.mark.parametrize("typed", ["20x20", "20 x 20", "20X20", "20 × 20 cm", "20*20"])
def test_spacing_is_read_as_people_write_it(typed):
    """All of these are 20 cm by 20 cm."""
    assert _data(spacing=typed) == _data()


def test_other_options_reach_the_arithmetic():
    """Three seedlings at 30 x 14 cm of 20 g grain: 4000 / 0.042 x 3 x 20 / 1e6 / 0.5525."""
    data = _data(spacing="30x14", seedlings_per_hill="3", grain_weight="20", pail_litres="20")
    assert data["hills"] == pytest.approx(95_238.0952)
    assert data["seed_kg"] == pytest.approx(10.342599, rel=1e-6)
    assert (data["pail_litres"], data["soil_pails"]) == (20, 56)


@pytest.mark.parametrize(
    ("changed", "codes"),
    [
        ({}, []),
        ({"germination": "80"}, []),
        ({"germination": "79.9"}, ["weak_seed"]),
        ({"germination": "60"}, ["weak_seed"]),
        ({"germination": "59"}, ["do_not_sow"]),
        ({"sow": "2026-06-01"}, []),
        ({"sow": "2026-05-31"}, ["past_date"]),
        ({"sow": "1999-12-31"}, ["past_date"]),
        ({"sow": None, "transplant": "2026-06-10"}, ["past_date"]),
        ({"area": "100 m2"}, ["small_mix"]),
        ({"grain_weight": "35"}, ["grain_weight_unusual"]),
    ],
)
def test_warnings_stand_beside_the_figures(changed, codes):
    """Each warning has its code and words; the plan is computed all the same."""
    data = _data(**changed)
    assert _codes(data) == codes
    assert all(warning["text"].endswith(".") for warning in data["warnings"])


PRICES = """
currency = "KES"
seed_per_kg = 150
soil_per_pail = 20
manure_per_pail = 30
rice_hull_per_pail = 10
sheet_per_m2 = 60
urea_per_kg = 90
labour_per_day = 500
"""


@pytest.fixture
def prices(tmp_path: Path) -> str:
    """A price list of an invented programme."""
    path = tmp_path / "prices.toml"
    path.write_text(PRICES, encoding="utf-8")
    return str(path)


def test_nothing_new_is_told_of_what_was_not_asked():
    """The mat named or not is the same plan; naming it adds its code and nothing else."""
    named = _data(practice="mat")
    assert named.pop("practice") == "mat"
    assert named == _data()


def test_a_wet_bed_has_its_own_area_seed_and_days():
    """0.4 ha: 160 m2 (PhilRice bulletin, 2010: 400 m2 a hectare), sown at the 49 of 100 that
    PhilRice's 40 kg become (2021); transplanted on days 20-25 (AsiaDHRRA, quoting PhilRice)."""
    data = _data(practice="wet_bed")
    assert list(data) == [*KEYS, "mix_told_l", "practice"]
    assert data["nursery_area_m2"] == pytest.approx(160)
    assert data["seed_kg"] == pytest.approx(200_000 * 25 / 1e6 / (0.85 * 0.49))
    assert (data["mats"], data["sheet_m2"], data["soil_pails"]) == (0, 0, 0)
    rows = {row["task"]: row for row in data["calendar"]}
    assert (rows["transplant"]["day"], rows["overdue"]["day"]) == (20, 26)
    assert "drain_bed" not in rows
    assert list(rows["sow"]) == ["task", "day", "date", "until"]


def test_a_dry_bed_is_watered_every_second_day_and_never_flooded():
    """ICAR, dry nursery: once in 2 or 3 days."""
    data = _data(practice="dry_bed")
    watering = next(row for row in data["calendar"] if row["task"] == "water")
    assert (watering["every_days"], watering["until"]) == (2, "2026-07-01")
    assert data["flood_water_l"] == 0


def test_trays_are_planted_in_the_rows_of_the_machine():
    """Korea (Ryu, 2010): 30 x 14 cm; 1,000 m2 are 30 trays (RDA)."""
    assert _data(practice="tray", area="1000 m2")["hills"] == pytest.approx(23_809.52)
    assert _data(practice="tray", area="1000 m2")["mats"] == 30
    assert _data(practice="tray", area="1000 m2", spacing="30x12")["hills"] > 27_000


def test_a_wished_day_is_counted_back_by_the_practice():
    """A wet bed is taken to day 21."""
    assert _data(practice="wet_bed", sow=None, transplant="2026-07-01") == _data(
        practice="wet_bed"
    )


def test_a_practice_of_the_programmes_own_needs_only_its_file(tmp_path: Path) -> None:
    """The folder is named beside it."""
    wet = files("assistant.agronomy") / "practices" / "wet_bed.toml"
    own = wet.read_text(encoding="utf-8").replace('en = "wet bed"', 'en = "river bed"')
    (tmp_path / "river_bed.toml").write_text(own, encoding="utf-8")
    options = PLAIN | {"--practice": "river_bed", "--practices-folder": str(tmp_path)}
    assert "Raised as: river bed." in _run(options).stdout


def test_a_learned_establishment_goes_into_the_seed():
    """200,000 x 25 / 1e6 / (0.85 x 0.8) = 7.352941 kg."""
    data = _data(establishment="80")
    assert data["seed_kg"] == pytest.approx(7.3529412)
    assert data["establishment_percent"] == pytest.approx(80)


def test_seedlings_for_gaps_go_into_seed_and_seedlings():
    """Five more of a hundred; the hills stay."""
    data, plain = _data(gap_filling="5"), _data()
    assert data["seedlings"] == pytest.approx(plain["seedlings"] * 1.05)
    assert data["seed_kg"] == pytest.approx(plain["seed_kg"] * 1.05)
    assert (data["hills"], data["gap_filling_percent"]) == (plain["hills"], 5)


def test_a_variety_brings_its_published_grain_weight():
    """DSSAT, RICER048.CUL: KDML105 27 g."""
    data = _data(variety="kdml 105")
    assert data["variety"]["grain_weight_g"] == 27
    assert "DSSAT" in data["variety"]["sources"][0]
    assert data["seed_kg"] == pytest.approx(_data(grain_weight="27")["seed_kg"])


def test_hands_tell_hours_and_loads():
    """126-320 person-hours for a hectare (IJNES 64; Kerala KVK) on 0.4 ha by six people."""
    labour = _data(hands="6")["labour"]
    assert labour["plant_hours"] == pytest.approx([8.4, 21.333333333333])
    assert (labour["hands"], labour["mats"], labour["mat_walks"]) == (6, 267, 134)


def test_a_price_list_tells_the_cost_and_both_sides_beside_a_wet_bed(prices):
    """At 85 %, by hand: 1357.47 + 2240 + 960 + 160 + 2640 + 2800, and for the wet bed
    1800.72 + 480 + 4400: here the mat is dearer, and says so."""
    cost = _data(prices=prices)["cost"]
    assert cost["total"] == pytest.approx(10157.466, rel=1e-6)
    assert cost["against_wet_bed"]["total"] == pytest.approx(6680.7203, rel=1e-6)
    assert cost["against_wet_bed"]["saved"] == pytest.approx(-3476.7458, rel=1e-6)
    assert "against_wet_bed" not in _data(prices=prices, practice="wet_bed")["cost"]


@pytest.mark.parametrize(
    ("options", "flags", "soak", "drain"),
    [
        ({}, (), -2, -1),
        ({"--water-c": "15"}, (), -9, -2),  # 100 degree-days (RDA, Korea): 6.7 days, so 7
        ({"--water-c": "24"}, (), -2, -1),
        ({}, ("--slow-seed",), -4, -2),  # 48 h and 48 h (Department of Agriculture, Sri Lanka)
    ],
)
def test_cool_water_and_slow_seed_are_soaked_earlier(options, flags, soak, drain):
    """And sown on the same day."""
    tasks = json.loads(_run(PLAIN | options, "--json", *flags).stdout)["calendar"]
    days = {task["task"]: task["day"] for task in tasks}
    assert (days["soak"], days["drain_seed"], days["sow"]) == (soak, drain, 0)


def test_weak_seed_is_held_against_the_countrys_least():
    """85 % of certified seed in the Philippines (PhilRice, RCEF seed)."""
    page = _run(PLAIN | {"--germination": "84", "--region": "ph"}).stdout
    assert "Good seed has 85% or more (Philippines)." in page
    assert "Weak seed" not in _run(PLAIN | {"--germination": "84"}).stdout


def test_the_page_promises_no_saving(prices):
    """Which side is cheaper is said as it comes out, with a trial in which mats cost more
    (Pertanika 8:205, 2000: 27.20 against 19.32 US dollars a hectare)."""
    page = _run(PLAIN | {"--prices": prices, "--hands": "6"}).stdout
    for words in ("Together: 10,157", "3,477 less than here", "no promise", "19.32", "KES",
                  "With 6 people planting it takes 8.4 to 21 hours"):  # fmt: skip
        assert words in page
    assert "more than here" not in page


@pytest.mark.parametrize("practice", ["mat", "wet_bed", "dry_bed", "tray"])
@pytest.mark.parametrize("area", ["100 m2", "0.4 ha", "40 ha"])
def test_every_practice_prints_a_page_that_fits_it(practice, area, prices):
    """No mats of 50 x 30 cm on a bed without them, nothing of none, no slot unfilled."""
    options = PLAIN | {"--practice": practice, "--area": area, "--prices": prices}
    page = _run(options | {"--hands": "3", "--gap-filling": "5"}).stdout
    assert "Cautions" in page and "{" not in page
    assert ("50 x 30 cm" in page) == (practice == "mat")
    assert ("uncover and flood" in page) == (practice in ("mat", "tray"))
    assert " 0 m2" not in page and " 0 of " not in page
    told = page.replace("US dollars on mats", "").replace("mats or trays", "")
    assert ("mats" in told) == (practice == "mat")


REFUSED = [
    ("--area", typed)
    for typed in ("", "0 ha", "-1 ha", "nan ha", "inf ha", "1e5 ha", "1_000 m2", "big", "0.4",
                  "999999999 ha", "😀", "x" * 2000, "1 bigha", "0.4\nha 2")
] + [
    ("--germination", typed)
    for typed in ("0", "0.85", "1", "101", "-5", "nan", "inf", "1e1", "8_5", "", "85%%", "٨٥",
                  "eighty", "85 of")
] + [
    ("--sow", typed)
    for typed in ("2026-02-30", "2026-13-01", "10/06/2026", "20260610", "2026-W24-3", "soon",
                  "", "0000-01-01", "0001-01-01", "9999-12-31", "2026-06-10T00:00")
] + [
    ("--spacing", typed)
    for typed in ("0x0", "20", "20x", "x", "20x20x20", "-20x20", "nanxnan", "1e1x20", "900x20",
                  "20.5.5x20", "")
] + [
    ("--seedlings-per-hill", typed) for typed in ("0", "-1", "1.5", "7", "nan", "two", "1_0")
] + [
    ("--grain-weight", typed) for typed in ("0", "-25", "50", "nan", "inf", "2_5", "25 g")
] + [
    ("--pail-litres", typed) for typed in ("0", "-10", "1e9", "nan", "ten", "1_0", "1000")
] + [
    ("--practice", typed) for typed in ("", "mats", "../mat", "WET BED", "x" * 500)
] + [
    ("--establishment", typed) for typed in ("0", "0.6", "101", "nan", "-5", "most")
] + [
    ("--gap-filling", typed) for typed in ("-1", "51", "nan", "five")
] + [
    ("--hands", typed) for typed in ("0", "-1", "2.5", "1e3", "many", "501")
] + [
    ("--variety", typed) for typed in ("", "Supa", "!", "x" * 500)
] + [
    ("--region", typed) for typed in ("XX-YY", "Kenya", "K", "IN-", "IN_WB", "", "x" * 500)
] + [
    ("--water-c", typed) for typed in ("5", "41", "-3", "nan", "cold", "")
] + [
    ("--prices", "nowhere.toml"),
    ("--practices-folder", "nowhere"),
    ("--lang", "xx"),
]  # fmt: skip


@pytest.mark.parametrize(("option", "typed"), REFUSED)
def test_what_cannot_be_read_is_refused_in_one_line(option, typed):
    """Exit 2, nothing on standard output, one line on standard error with an example."""
    options = PLAIN if option in PLAIN else PLAIN | {option: ""}
    result = _run(options | {option: typed}, "--json")
    assert (result.exit_code, result.stdout) == (2, "")
    assert len(result.stderr.splitlines()) == 1
    assert re.search(r"such as|write|not one of|does not exist", result.stderr)
    assert len(result.stderr) < 300


@pytest.mark.parametrize(
    ("options", "flags", "says"),
    [
        (PLAIN | {"--area": None}, (), '"0.4 ha"'),
        (PLAIN | {"--germination": None}, (), "85"),
        (PLAIN | {"--sow": None}, (), "--sow 2026-06-10"),
        (PLAIN | {"--transplant": "2026-06-28"}, (), "one of --sow and --transplant"),
        (PLAIN, ("--grain-weigh", "25"), "--grain-weight"),
        (PLAIN, ("more",), "more"),
        (PLAIN | {"--area": None}, ("--area",), "--area"),
        (PLAIN | {"--variety": "BR11"}, ("--grain-weight", "25"), "not both"),
    ],
)
def test_what_is_missing_or_too_much_is_named_in_one_line(options, flags, says):
    """Click's own refusals come in one line too."""
    result = _run(options, *flags)
    assert (result.exit_code, result.stdout) == (2, "")
    assert len(result.stderr.splitlines()) == 1
    assert says in result.stderr


@settings(deadline=None)  # a command takes as long as the machine is busy
@given(st.text(max_size=60))
def test_no_area_whatever_makes_it_fall(typed):
    """Any text is a plan or a refusal of one line, never an exception."""
    result = _run(PLAIN | {"--area": None}, f"--area={typed}", "--json")
    assert result.exit_code in (0, 2)
    assert result.exit_code == 0 or len(result.stderr.splitlines()) == 1


def test_the_page_is_rounded_as_people_measure():
    """An officer reads kilograms, pails and dates, not floats."""
    page = _run(PLAIN).stdout
    assert "Seed: 9.1 kg dry" in page
    assert "112 pails of soil, 32 of well-rotted manure, 16 of rice hull" in page
    assert "267 equal heaps" in page
    assert "Wed 10 Jun, day 0: sow" in page
    assert not re.search(r"\d\.\d{3}", page)


def test_the_page_marks_what_is_past():
    """On 1 June the seed test of 26 May is over, and says so."""
    page = _run(PLAIN).stdout
    assert "Tue 26 May, day -15: test the seed (past)" in page
    assert "sow (past)" not in page


def test_the_page_cautions_where_work_can_hurt():
    """Urea, pail, treated seed, rain and loads each have their caution on the page."""
    page = _run(PLAIN).stdout
    for words in ("only if leaves are yellow", "never stronger than 5 g", "evening", "rinse",
                  "children drown", "no food", "thunder", "Half-fill"):  # fmt: skip
        assert words in page


def test_each_hurtful_task_names_its_caution():
    """Soaking, draining, mixing, rain, water, urea and lifting."""
    hurtful = {
        TaskCode.MIX, TaskCode.SOAK, TaskCode.DRAIN_SEED, TaskCode.RAIN_WATCH,
        TaskCode.UNCOVER_FLOOD, TaskCode.COLOUR_CHECK, TaskCode.TRANSPLANT,
    }  # fmt: skip
    assert hurtful <= TASKS.codes(lambda row: bool(row.cautions))
    assert {code for task in TaskCode for code in TASKS[task].cautions} == set(CAUTIONS)


@pytest.mark.parametrize("language", LANGUAGES)
def test_every_language_prints_a_page(language):
    """No slot is left unfilled in any language."""
    page = _run(PLAIN | {"--germination": "30", "--area": "100 m2"}, "--lang", language)
    assert page.exit_code == 0
    assert "{" not in page.stdout


@pytest.mark.parametrize("code", WarningCode)
def test_every_warning_can_be_worded(code):
    """No code is without words, with every slot filled."""
    sow = date(2026, 6, 10)
    inputs = FieldInputs(4000, 0.7)
    plan = Plan("0.4 ha", inputs, quantities(inputs), calendar(Anchors(sow)), sow, sow)
    words = render(warning_say(code, plan), Catalogue("en", NullTranslations()))
    assert words.endswith(".") and "{" not in words
