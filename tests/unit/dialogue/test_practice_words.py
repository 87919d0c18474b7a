"""Every text of a bed fits the bed: no mats where there are none, nothing that is "0 of"."""

import re
from dataclasses import replace
from datetime import date, timedelta

import pytest

from assistant.wiring.practices import open_practices
from tests.talk import Phone, nursery

PRACTICES = open_practices()
NO_MATS = ("wet_bed", "dry_bed", "tray")
SOW = date(2026, 6, 10)
STAGES = (-20, -2, 0, 3, 6, 11, 18, 24, 31)
TALKS = (
    ("TODAY",),
    ("QUANTITIES",),
    ("RAIN",),
    ("MENU", "9", "2"),
    *(("MENU", "9", digit) for digit in "34567"),
    *(("PROBLEM", "5", digit) for digit in "1234"),
    *(("PROBLEM", "2"), ("PROBLEM", "4")),
    ("PROBLEM", "1", "6"),
    ("PROBLEM", "1", "4"),
)
_NOTHING = re.compile(r"(?<![\d.,])0 (of|pails|L|kg|g|m2|mats|trays|half)\b")


def bed(code: str, day: int, area_m2: float = 4000.0) -> Phone:
    """A farmer's phone on a day of a bed that is raised by a practice."""
    plain, practice = nursery(sow=SOW), PRACTICES[code]
    usual = practice.planting
    inputs = replace(
        plain.inputs,
        field_area_m2=area_m2,
        spacing_row_cm=usual.row_cm.value,
        spacing_hill_cm=usual.hill_cm.value,
        seedlings_per_hill=int(usual.seedlings_per_hill.value),
        establishment=usual.establishment.value,
    )
    kept = replace(plain, practice=practice, inputs=inputs, sown=day > 0, uncovered=day > 5)
    return Phone.enrolled(kept).on(SOW + timedelta(days=day))


@pytest.mark.parametrize("code", NO_MATS)
@pytest.mark.parametrize("day", STAGES)
def test_no_tip_or_trouble_of_another_bed_speaks_of_mats(code: str, day: int) -> None:
    """Whatever is asked, on every day of the season."""
    for talk in TALKS:
        phone = bed(code, day)
        told = [text for reply in talk for text in phone.hears(reply)]
        assert not [text for text in told if re.search(r"\bmats?\b", text)], talk


@pytest.mark.parametrize("code", sorted(PRACTICES))
@pytest.mark.parametrize("area_m2", [40.0, 4000.0])
def test_what_there_is_none_of_is_left_out(code: str, area_m2: float) -> None:
    """A tray takes soil and manure 2 : 1 and no hull (Kerala Agricultural University, 2003)."""
    for day in STAGES:
        for talk in TALKS:
            phone = bed(code, day, area_m2)
            told = "\n".join(text for reply in talk for text in phone.hears(reply))
            assert not _NOTHING.search(told), (talk, told)
    if code == "tray":
        told = bed(code, -20, area_m2).hears("QUANTITIES")[1]
        assert "2 of soil, 1 of rotted manure." in told and "hull" not in told


def test_a_dry_bed_is_never_told_to_hold_water() -> None:
    """It is watered, not flooded (Indian Council of Agricultural Research, Dry nursery)."""
    for day in STAGES:
        for talk in TALKS:
            phone = bed("dry_bed", day)
            told = " ".join(text for reply in talk for text in phone.hears(reply))
            told = told.replace("Main field: let in water", "")
            assert not re.search(r"\b0 cm|keep 1 cm|[Ll]et in (deeper )?water", told), talk


def test_the_straw_of_a_dry_bed_comes_off_when_shoots_are_up() -> None:
    """Day 5, asked as uncovering is; the water of the day is still told."""
    told = bed("dry_bed", 5).hears("TODAY")[0]
    assert "Take the straw off" in told


@pytest.mark.parametrize(
    ("code", "told"), [("mat", "1 cm"), ("tray", "1 cm"), ("wet_bed", "2.5 cm")]
)
def test_watering_tells_of_the_water_that_stands_once_there_is_some(
    code: str, told: str
) -> None:
    """2.5 cm on a wet bed lie within the 1.5 to 5 cm of Indian and Bangladeshi advice."""
    phone = bed(code, 11)
    for reply in ("MENU", "9"):
        phone.says(reply)
    assert f"keep {told} of water" in phone.hears("5")[0]


def test_a_farmer_of_two_kinds_of_bed_is_told_of_both() -> None:
    """Lifting mats is one text, pulling seedlings another; rain on young beds likewise."""
    wet, mat = bed("wet_bed", 2).known.nurseries[0], bed("mat", 2).known.nurseries[0]
    phone = Phone.enrolled(mat, replace(wet, label="B")).on(SOW + timedelta(days=2))
    phone.says("MENU")
    assert "7 Spare mats, gaps" in phone.hears("9")[0]
    lifts = phone.hears("6")
    assert "not rolled" in lifts[0] and "Pull gently" in lifts[1] and len(lifts) == 4
    rain = phone.hears("RAIN")
    assert "cover the mats" in rain[0] and "cover the bed" in rain[1]


def test_where_no_bed_is_a_mat_the_menu_says_so() -> None:
    """The tip is about seedlings."""
    phone = bed("wet_bed", 2)
    phone.says("MENU")
    assert "7 Spares and gaps" in phone.hears("9")[0]


def test_mats_of_another_size_are_told_with_their_own_numbers() -> None:
    """Frames of 58 x 28 x 2 cm (machine mats, Punjab) with soil and dung 2 : 1 (Kerala thesis):
    a wet mat of 3.2 L at 1.2 kg/L weighs about 4 kg."""
    house = PRACTICES["mat"]
    assert house.bed.piece is not None
    piece = replace(
        house.bed.piece,
        length_m=replace(house.bed.piece.length_m, value=0.58),
        width_m=replace(house.bed.piece.width_m, value=0.28),
    )
    parts = {
        name: replace(getattr(house.bed, name), value=value, low=None, high=None)
        for name, value in (("soil_parts", 2), ("manure_parts", 1), ("hull_parts", 0))
    }
    depth = replace(house.bed.depth_m, value=0.02, low=None, high=None)
    made = replace(
        house, code="frame", bed=replace(house.bed, piece=piece, depth_m=depth, **parts)
    )
    for day in STAGES:
        for talk in TALKS:
            phone = bed("mat", day)
            kept = replace(phone.known.nurseries[0], practice=made)
            phone.known = replace(phone.known, nurseries=(kept,))
            told = "\n".join(text for reply in talk for text in phone.hears(reply))
            assert not re.search(r"50 x 30|4 cm deep|hull|7 kg|7 pails|tray", told), (
                talk,
                told,
            )
            if talk == ("MENU", "9", "6"):
                assert "A wet mat weighs about 4 kg" in told
