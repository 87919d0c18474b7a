"""Practices are files: read, checked whole, and planned with; a new one needs no code."""

import tomllib
from datetime import date, timedelta
from importlib.resources import files
from pathlib import Path
from typing import Any

import pytest

from assistant.agronomy.calendar import Anchors, calendar
from assistant.agronomy.field import FieldInputs
from assistant.agronomy.practices import MAT, PieceKind
from assistant.agronomy.quantities import quantities
from assistant.agronomy.sourced.constant import HowSure
from assistant.agronomy.tasks import TaskCode
from assistant.people import LANGUAGES
from assistant.wiring.practice_file import read_practice
from assistant.wiring.practices import PracticeError, open_practices

SOW = date(2026, 6, 10)
# A fifth practice, of its own source: nothing in the program knows it.
FLOATING = """
[name]
en = "floating bed"
sw = "kitalu kinachoelea"

[bed]
share = { value = 0.02, sure = "published", sources = ["trial"] }
max_seeds_per_cm2 = "max_seeds_per_cm2"
depth_m = { value = 0.03, sure = "published", sources = ["trial"] }
soil_parts = { value = 1, sure = "common practice" }
manure_parts = { value = 3, sure = "common practice" }
hull_parts = { value = 0, sure = "common practice" }
flood_depth_m = { value = 0, sure = "design choice", note = "it floats" }

[planting]
row_cm = "spacing_cm"
hill_cm = "spacing_cm"
seedlings_per_hill = "seedlings_per_hill"
establishment = { value = 0.6, low = 0.5, high = 0.7, sure = "from memory", note = "a guess" }

[window]
first = { value = 12, sure = "published", sources = ["trial"] }
last = { value = 16, sure = "published", sources = ["trial"] }
assumed = { value = 14, sure = "design choice", note = "the middle" }
earliest = { value = 10, sure = "common practice" }
latest = { value = 30, sure = "common practice" }
leaves_first = "leaves_first"
leaves_last = "leaves_last"

[days]
uncover = { value = 4, sure = "common practice" }
uncover_latest = { value = 9, sure = "common practice" }
drain_before = { value = 0, sure = "common practice" }

[labour]
raise_h_per_m2 = { value = 0.5, sure = "common practice" }
lift_h_per_ha = { value = 50, sure = "common practice" }
plant_h_per_ha = "planting_h_per_ha"

[[task]]
code = "soak"
from = "sow"
days = -2

[[task]]
code = "drain_seed"
from = "sow"
days = -1

[[task]]
code = "sow"
from = "sow"

[[task]]
code = "water"
from = "sow"
until = "uncover"
every = 2

[[task]]
code = "uncover_flood"
from = "uncover"

[[task]]
code = "colour_check"
from = "sow"
days = 7

[[task]]
code = "leaf_count"
from = "transplant"
days = -3
sure = "published"
sources = ["trial"]

[[task]]
code = "choose_day"
from = "transplant"
days = -3

[sources.trial]
publisher = "An invented society"
title = "Beds that float"
year = "2020"
"""


def _table(**changed: Any) -> dict[str, Any]:
    """The fifth practice as a parsed file, with some sections changed."""
    table = tomllib.loads(FLOATING)
    for name, changes in changed.items():
        table[name] = {**table[name], **changes} if isinstance(changes, dict) else changes
    return table


def _faults(**changed: Any) -> str:
    practice, faults = read_practice("floating", _table(**changed))
    assert (practice is None) == bool(faults)
    return "\n".join(faults)


def test_the_house_has_four_practices_and_the_mat_is_first():
    """What is read from the files of the house."""
    assert list(open_practices()) == ["mat", "dry_bed", "tray", "wet_bed"]


def test_the_house_names_its_practices_in_every_language():
    """A programme's own may have English alone, which then stands for the others."""
    for practice in open_practices().values():
        assert dict(practice.names).keys() == LANGUAGES.keys(), practice.code


def test_the_file_of_the_mat_says_what_the_core_says():
    """Numbers stand once, in the constants; their places in the practice are compared here."""
    text = (files("assistant.agronomy") / "practices" / "mat.toml").read_text(encoding="utf-8")
    assert read_practice("mat", tomllib.loads(text)) == (MAT, ())


def test_a_fifth_practice_is_a_file_and_nothing_else(tmp_path: Path) -> None:
    """A programme's folder with one file: quantities and calendar follow it, worked by hand.

    0.4 ha at 80 %: 80 m2; 200,000 x 25 / 1e6 / (0.8 x 0.6) = 10.417 kg; 2.4 m3 are 60 batches
    of 4 pails of 10 L.
    """
    (tmp_path / "floating.toml").write_text(FLOATING, encoding="utf-8")
    floating = open_practices(tmp_path)["floating"]
    q = quantities(FieldInputs(4000, 0.8, establishment=0.6), floating)
    assert q.nursery_area_m2 == pytest.approx(80)
    assert q.seed_kg == pytest.approx(10.4167, rel=1e-4)
    assert (q.soil_pails, q.manure_pails, q.rice_hull_pails) == (60, 180, 0)
    assert (q.mats, q.seed_per_mat_g, q.sheet_m2, q.flood_water_l) == (0, 0, 0, 0)

    tasks = {task.code: task for task in calendar(Anchors(SOW, practice=floating))}
    assert tasks[TaskCode.TRANSPLANT].until == SOW + timedelta(16)
    assert tasks[TaskCode.LEAF_COUNT].day == 11
    assert (tasks[TaskCode.WATER].until, tasks[TaskCode.WATER].every_d) == (
        SOW + timedelta(4),
        2,
    )
    assert TaskCode.DRAIN_BED not in tasks
    assert floating.name("sw") == "kitalu kinachoelea"
    assert floating.name("hi") == "floating bed"


def test_numbers_of_a_file_carry_their_source():
    """Value, range, how sure and source come from the file, or with the constant it names."""
    practice, _ = read_practice("floating", _table())
    assert practice is not None
    establishment = practice.planting.establishment
    assert (establishment.low, establishment.high) == (0.5, 0.7)
    assert establishment.how_sure is HowSure.FROM_MEMORY
    assert practice.bed.share.sources[0].title == "Beds that float"
    assert practice.bed.share.name == "floating.bed.share"
    assert practice.bed.max_seeds_per_cm2 is MAT.bed.max_seeds_per_cm2


def test_a_tray_is_counted_in_trays():
    """Its piece is no mat of 50 x 30 cm."""
    tray = open_practices()["tray"]
    assert tray.bed.piece is not None and tray.bed.piece.kind is PieceKind.TRAY


@pytest.mark.parametrize(
    ("changed", "fault"),
    [
        ({"bed": {"share": None}}, "[bed] share: is missing"),
        ({"bed": {"share": 0.02}}, "[bed] share: write a table with value and sure"),
        ({"bed": {"share": "nursery_sharr"}}, "no constant is called 'nursery_sharr'"),
        ({"bed": {"share": {"value": 2, "sure": "common practice"}}}, "expected 0.0005 to 0.3"),
        ({"bed": {"share": {"value": True, "sure": "common practice"}}}, "write a number"),
        ({"bed": {"share": {"value": float("nan"), "sure": "common practice"}}}, "got nan"),
        ({"bed": {"share": {"value": 0.02, "sure": "certain"}}}, "write one of common"),
        ({"bed": {"share": {"value": 0.02, "sure": "published"}}}, "at least one source"),
        ({"bed": {"share": {"value": 0.02, "sure": "published", "sources": ["x"]}}},
         "no [sources.x] stands in this file"),
        ({"bed": {"share": {"value": 0.02, "sure": "common practice", "sources": ["trial"]}}},
         "what a source prints is published"),
        ({"bed": {"share": {"value": 0.02, "sure": "judgement"}}}, "say why"),
        ({"bed": {"share": {"value": 0.02, "low": 0.03, "sure": "common practice"}}},
         "outside its own low and high"),
        ({"bed": {"share": {"value": 0.02, "sure": "common practice", "unit": "m2"}}},
         "[bed] share unit: is not known"),
        ({"bed": {"shares": 1}}, "[bed] shares: is not known"),
        ({"bed": {"soil_parts": {"value": 0.5, "sure": "common practice"}}}, "whole pails"),
        ({"bed": {"piece": {"kind": "crate"}}}, "[bed.piece] kind: write one of mat, tray"),
        ({"bed": {"has_frame": "yes"}}, "write true or false"),
        ({"window": {"last": {"value": 40, "sure": "common practice"}}}, "in rising order"),
        ({"window": {"leaves_last": {"value": 2, "sure": "common practice"}}}, "leaves_first"),
        ({"days": {"uncover": {"value": 12, "sure": "common practice"}}}, "uncover_latest"),
        ({"planting": {"seedlings_per_hill": {"value": 1.5, "sure": "common practice"}}},
         "whole number"),
        ({"name": {"en": ""}}, "write words in quotes"),
        ({"name": {}}, ""),
        ({"task": []}, "[[task]] soak: is missing"),
        ({"task": "soak"}, "[[task]]: is missing"),
        ({"sources": {"trial": {"publisher": "x"}}}, "write publisher, title, year in quotes"),
        ({"colour": {"leaf": "green"}}, "colour: is not known"),
    ],
)  # fmt: skip
def test_each_fault_says_where_it_is_and_what_to_write(changed, fault):
    """A file that is wrong makes no practice."""
    extra: dict[str, object] = {name: {} for name in changed if name == "colour"}
    table = tomllib.loads(FLOATING) | extra
    for name, changes in changed.items():
        table[name] = {**table[name], **changes} if isinstance(changes, dict) else changes
    practice, faults = read_practice("floating", table)
    assert (practice is None) == bool(fault)
    assert fault in "\n".join(faults)


@pytest.mark.parametrize(
    ("row", "fault"),
    [
        ({"code": "harvest", "from": "sow"}, "[[task]] harvest: write a code of seed_test"),
        ({"code": "transplant", "from": "sow"}, "[[task]] transplant: write a code of"),
        ({"code": "mix", "from": "sowing"}, "[[task]] mix from: write one of sow"),
        ({"code": "mix", "from": "sow", "days": 400}, "expected -90 to 90"),
        ({"code": "mix", "from": "sow", "days": "mix"}, "no constant is called 'mix'"),
        ({"code": "mix", "from": "sow", "every": 0}, "whole number of days"),
        ({"code": "mix", "from": "sow", "until": "sow", "until_days": -1}, "until is before"),
        ({"code": "sow", "from": "sow"}, "[[task]] sow: stands here twice"),
        ({"code": "mix", "from": "sow", "sure": "published"}, "at least one source"),
        ({"code": "mix", "from": "sow", "at": 6}, "[[task]] mix at: is not known"),
    ],
)
def test_a_task_that_cannot_be_is_named(row, fault):
    """Its code stands beside the fault."""
    assert fault in _faults(task=[*_table()["task"], row])


def test_all_faults_of_all_files_are_told_together(tmp_path: Path) -> None:
    """Whoever writes the files mends them in one go."""
    (tmp_path / "one.toml").write_text("name = 1", encoding="utf-8")
    (tmp_path / "two.toml").write_text("no TOML at all", encoding="utf-8")
    (tmp_path / "Three Beds.toml").write_text(FLOATING, encoding="utf-8")
    (tmp_path / "mat.toml").write_text(FLOATING, encoding="utf-8")
    with pytest.raises(PracticeError) as told:
        open_practices(tmp_path)
    for words in (
        "one.toml: [bed]: is missing",
        "one.toml: [[task]]",
        "two.toml: cannot be read",
        "Three Beds.toml: name the file",
        "mat.toml: the mat stands",
    ):
        assert words in str(told.value)


def test_a_folder_that_is_not_there_is_named(tmp_path: Path) -> None:
    """No silence about a slip in a setting."""
    with pytest.raises(PracticeError, match="is no folder"):
        open_practices(tmp_path / "nowhere")
