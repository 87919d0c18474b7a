"""Wet bed, dry bed and trays against the handbooks they are taken from; sources on each."""

from typing import Any

import pytest

from assistant.agronomy import mat, seed
from assistant.agronomy.constants import ESTABLISHMENT, NURSERY_SHARE
from assistant.agronomy.constants_work import OPEN_BED_LENGTH_M, OPEN_BED_WIDTH_M
from assistant.agronomy.field import FieldInputs
from assistant.agronomy.practices import Practice
from assistant.agronomy.quantities import Quantities, quantities
from assistant.agronomy.tasks import TaskCode
from assistant.wiring.practices import open_practices
from tests.reference.sourced import INDEPENDENT, RANGE, source

HECTARE, ACRE_M2, CENT_M2 = 10_000.0, 4046.8564224, 40.468564224
PRACTICES = open_practices()
WET, DRY, TRAY = (PRACTICES[code] for code in ("wet_bed", "dry_bed", "tray"))
BOX_M2 = 0.58 * 0.28  # inner Japanese box, uitec.net


def _planned(
    practice: Practice, field_m2: float, germination: float, **given: float
) -> Quantities:
    """A field planted as the practice usually is, but for what is given."""
    p = practice.planting
    usual: dict[str, Any] = {
        "spacing_row_cm": p.row_cm.value,
        "spacing_hill_cm": p.hill_cm.value,
        "seedlings_per_hill": int(p.seedlings_per_hill.value),
        "establishment": p.establishment.value,
    }
    return quantities(FieldInputs(field_m2, germination, **{**usual, **given}), practice)


@source("RDA-Korea")
def test_trays_and_soil_of_a_tenth_of_a_hectare():
    """1,000 m2 take 30 trays and 150 L of soil; 165 L with a tenth to spare."""
    q = _planned(TRAY, 1000, 0.9)
    assert q.mats == 30
    assert q.soil_mix_m3 * 1000 == pytest.approx(150, rel=0.002)
    assert q.soil_mix_m3 * 1000 * 1.1 == pytest.approx(165, rel=0.002)


@source("RDA-Korea", "KR-Ryu", kind=INDEPENDENT)
@pytest.mark.parametrize("germination", [0.80, 0.85, 0.95])
def test_seed_on_a_tray_of_the_machines_rows(germination):
    """30 x 14 cm with 4 seedlings a hill put 110-150 g on a tray and 33-45 kg on a hectare,
    though neither figure went into the arithmetic."""
    q = _planned(TRAY, HECTARE, germination)
    assert 110 <= q.seed_per_mat_g <= 155
    assert 33 <= q.seed_kg <= 46


@source("Yamagata", "KR-Ryu", kind=INDEPENDENT)
def test_hills_and_seedlings_of_a_machine():
    """20 hills with 4-5 seedlings are about 100 on a square metre; Korea plants 23-30 hills."""
    q = _planned(TRAY, 1, 0.9)
    assert 23 <= q.hills <= 30
    assert q.seedlings == pytest.approx(100, rel=0.06)


@source("Yamagata", "RDA-Korea", "gengzhongbang")
@pytest.mark.parametrize("trays", [250, 300, 375, 480])
def test_published_trays_for_a_hectare_lie_in_the_stated_range(trays):
    """25 boxes for 10 a in Yamagata; 300 in Korea; 25-32 for a mu in China."""
    assert TRAY.bed.share.holds(trays * BOX_M2 / HECTARE)


@source("SCIRP-113057", "IJNES-64", "Yamagata", "RDA-Korea")
@pytest.mark.parametrize("grams", [90, 100, 150, 180])
def test_published_tray_densities_lie_in_the_stated_range(grams):
    """Trials from Bangladesh and India, handbooks of Japan and Korea, at 25 g for 1000."""
    assert TRAY.bed.max_seeds_per_cm2.holds(grams / 25 * 1000 / (BOX_M2 * 10_000))


@source("Gunma", "RDA-Korea", "gengzhongbang")
@pytest.mark.parametrize("depth_mm", [18, 21, 24, 25, 30.8])
def test_published_soil_of_a_tray_lies_in_the_stated_depth(depth_mm):
    """11 + 7 mm at the least and 17 + 7 as usual in Gunma; 18-20 + 3-5 in China; 4-5 L in Korea
    and Japan."""
    assert TRAY.bed.depth_m.holds(depth_mm / 1000)


@source("PhilRice-bulletin-40")
@pytest.mark.parametrize(
    ("length_m", "width_m", "beds"), [(20, 2, 10), (20, 1, 20), (5, 2, 40)]
)
def test_a_wet_bed_is_laid_out_as_the_bulletin_lays_it(length_m, width_m, beds):
    """400 m2 for a hectare are 10 beds of 2 x 20 m, 20 of 1 x 20 or 40 of 2 x 5."""
    area = mat.plain_area_m2(HECTARE, WET)
    assert area == pytest.approx(400)
    assert mat.beds(area, length_m, width_m) == beds
    told = (OPEN_BED_LENGTH_M.value, OPEN_BED_WIDTH_M.value)
    assert told in ((20, 2), (20, 1), (5, 2))


@source("PhilRice-bulletin-40", "Bogura")
def test_a_wet_bed_is_never_sown_thicker_than_published():
    """1 kg on 10 m2, that is 100 g/m2; 80-100 in Bangladesh."""
    q = _planned(WET, HECTARE, 0.4)
    assert 80 <= mat.seed_g_per_m2(q.seed_kg, q.nursery_area_m2) <= 100.001


@source("PhilRice-bulletin-40")
def test_a_wet_bed_gets_its_manure():
    """200 kg of organic matter on 400 m2; compost weighs some 0.5 kg/L (0.475-0.712)."""
    q = _planned(WET, HECTARE, 0.85)
    assert (q.soil_pails, q.manure_pails * q.pail_litres) == (0, 400)
    assert 0.475 <= 200 / (q.soil_mix_m3 * 1000) <= 0.712


@source("PhilRice-40kg", "PhilRice-bulletin-40")
def test_forty_kilograms_on_a_wet_bed_plant_a_hectare_with_three_a_hill():
    """The publisher's rate comes out of its own counts: 45,000 grains in a kilogram, 85 %, and
    the 0.49 of them that its 750,000 planted seedlings are of 1,530,000."""
    q = _planned(WET, HECTARE, 0.85, seedlings_per_hill=3, grain_weight_g=1e6 / 45_000)
    assert q.seed_kg == pytest.approx(40, rel=0.002)


@source("PhilRice-40kg", "MSU-2013")
def test_a_wet_bed_loses_about_half():
    """750,000 of 1,530,000; about two seeds for each plant in the field."""
    assert WET.planting.establishment.value == pytest.approx(750_000 / 1_530_000, abs=0.005)
    assert WET.planting.establishment.holds(0.5)
    assert WET.planting.establishment.value < ESTABLISHMENT.value


@source("IIRR-LEI", "agropedia", "AsiaDHRRA", "Lanka")
@pytest.mark.parametrize("day", [20, 21, 25])
def test_wet_bed_seedlings_are_planted_at_published_ages(day):
    """20-25 days (agropedia, AsiaDHRRA), 16-25 by variety, 12-21 in Sri Lanka."""
    window = WET.window
    assert window.first.value <= day <= window.last.value
    assert window.earliest.value == 12


@source("agropedia", "IIRR-LEI", "Bogura")
def test_water_is_let_into_a_wet_bed_after_the_first_days():
    """Saturated for five days, then rising to 5 cm; from day 4 2-3 cm; 2.5-5 cm."""
    assert WET.days.uncover.holds(5) and WET.days.uncover.holds(4)
    assert all(WET.bed.flood_depth_m.holds(cm / 100) for cm in (2, 2.5, 3, 5))


@source("ICAR-NEH", "Lanka", "Bogura", "IIRR-LEI")
@pytest.mark.parametrize("share", [0.10, 0.05, 0.035])
def test_published_wet_beds_lie_in_the_stated_range(share):
    """A tenth of the field (India, Sri Lanka), a twentieth (Bangladesh), 350-500 m2."""
    assert WET.bed.share.holds(share)


@source("KAU-mat", kind=RANGE)
def test_two_cents_of_mat_stand_for_ten_cents_of_bed():
    """On an acre: 80.9 and 404.7 m2. The mat's range holds 2 %, the bed's 10 %; and the plan's
    own beds keep a ratio of at least four."""
    assert 2 * CENT_M2 == pytest.approx(80.9, abs=0.05)
    assert 10 * CENT_M2 == pytest.approx(404.7, abs=0.05)
    assert NURSERY_SHARE.holds(2 * CENT_M2 / ACRE_M2)
    assert WET.bed.share.holds(10 * CENT_M2 / ACRE_M2)
    beds = [mat.plain_area_m2(ACRE_M2, practice) for practice in (PRACTICES["mat"], WET)]
    assert beds[1] / beds[0] >= 4


@source("PhilRice-dapog", kind=RANGE)
def test_nets_are_thicker_sown_on_less_ground_than_a_mat():
    """26-28 nets of 1.5 x 0.75 m are 29.25-31.5 m2 for a hectare at 400-500 g/m2: less ground
    than the least that is called a mat here (40 m2)."""
    assert (26 * 1.5 * 0.75, 28 * 1.5 * 0.75) == (29.25, 31.5)
    assert not NURSERY_SHARE.holds(31.5 / HECTARE)


@source("ICAR-dry", "ICAR-wet", "ICAR-NEH")
def test_a_dry_bed_is_sown_as_thin_as_published():
    """1,000 m2 for a hectare and 50-60 kg of seed: 50-60 g/m2 at the most; 20-25 g at least."""
    assert mat.plain_area_m2(HECTARE, DRY) == pytest.approx(1000)
    for germination in (0.9, 0.4):
        q = _planned(DRY, HECTARE, germination)
        assert 20 <= mat.seed_g_per_m2(q.seed_kg, q.nursery_area_m2) <= 60


@source("ICAR-dry")
def test_a_dry_bed_gets_its_manure_and_its_water():
    """30 kg on 15 m2 (4 L at 0.5 kg/L on each); watered once in 2 or 3 days; 20-25 days."""
    assert DRY.bed.depth_m.value * 1000 * 0.5 == pytest.approx(30 / 15)
    watering = next(rule for rule in DRY.days.tasks if rule.code is TaskCode.WATER)
    assert watering.every_d in (2, 3)
    assert (DRY.window.first.value, DRY.window.last.value) == (20, 25)


@source("UArk", "MSU-2013")
def test_a_dry_bed_stands_as_seed_in_dry_soil_does():
    """15-20 plants of 30 seeds; two seeds for a plant."""
    assert all(DRY.planting.establishment.holds(share) for share in (15 / 30, 0.5, 0.66))


@source("Engineer314", "Jaffna-8215", "gansulong")
@pytest.mark.parametrize("day", [15, 16, 20, 22])
def test_tray_seedlings_are_planted_at_published_ages(day):
    """Young seedlings 15-22 days (Japan), 16 best of 8-22 (Sri Lanka), 13-20 (China)."""
    assert TRAY.window.first.value <= day <= TRAY.window.last.value


@source("JCS-88-27", "gansulong", "Yamagata")
@pytest.mark.parametrize("leaves", [2.5, 2.7, 3.0, 3.5, 3.6])
def test_tray_seedlings_are_planted_at_published_leaves(leaves):
    """About 2.5 leaves (Yamagata), 2.7-3.5 (China), 3.0-3.6 (Japan, dense)."""
    window = TRAY.window
    assert window.leaves_first.value <= leaves <= window.leaves_last.value


@source("IIRR-LEI", "ICAR-dry", kind=RANGE)
def test_one_weak_spray_serves_every_practice():
    """6.9 g of nitrogen on a square metre: between the dry bed's 0.2 kg on 150 m2 and the wet
    bed's 20-40 g of urea."""
    for code in PRACTICES:
        q = _planned(PRACTICES[code], HECTARE, 0.85)
        grams = q.urea_g / q.nursery_area_m2 * 0.46  # of urea, by its safety data sheet
        assert 200 / 150 <= grams <= 20 * 0.46


@source("PhilRice-KC4", "PhilRice-dapog", "ICAR-wet", "RDA-Korea", kind=RANGE)
@pytest.mark.parametrize("code", PRACTICES)
def test_every_practice_sows_a_published_seed_rate(code):
    """From 10 kg a hectare (nets, hybrid) to 60 (coarse grain); most within 20-45."""
    q = _planned(PRACTICES[code], HECTARE, 0.85)
    assert 10 <= q.seed_kg <= 60
    assert seed.seed_rate_kg_per_ha(FieldInputs(HECTARE, 0.85)) == pytest.approx(22.6, abs=0.1)
