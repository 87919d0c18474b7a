"""Seed arithmetic against worked examples and ranges that others published.

Each row or test names its source: publisher, title, year where one is printed.
"""

import pytest

from assistant.agronomy import constants as c
from assistant.agronomy import seed
from assistant.agronomy.errors import AgronomyError
from assistant.agronomy.field import FieldInputs
from assistant.agronomy.quantities import WarningCode, quantities
from tests.reference.sourced import ARITHMETIC, INDEPENDENT, PRACTICE, RANGE, source

HECTARE = 10_000.0
ACRE_M2 = 4046.8564224  # international acre, by definition
POUND_KG = 0.45359237  # by definition


def _grams_per_1000(grains_per_kg: float) -> float:
    return 1e6 / grains_per_kg


@source("PhilRice-40kg", "DA-2022", kind=INDEPENDENT)
@pytest.mark.parametrize(
    ("grains_per_kg", "seedlings"),
    [
        # DA-PhilRice, "40kg of high-quality rice seeds enough for 1-ha field", 2021:
        # 40 kg of 45,000 grains are 1.8 million; 85 % leaves more than 1.5 million.
        (45_000, 1_530_000),
        # Philippine Department of Agriculture, 5 May 2022: 1.6 million seeds; prints "1.3 M".
        (40_000, 1_360_000),
    ],
)
def test_forty_kilograms_give_the_seedlings_philrice_counts(grains_per_kg, seedlings):
    """Grains in 40 kg times 85 % germination."""
    grains = seed.seeds_in(40, _grams_per_1000(grains_per_kg))
    assert grains * 0.85 == pytest.approx(seedlings)


@source("DA-2022", kind=INDEPENDENT)
def test_spare_seedlings_of_forty_kilograms():
    """Philippine Department of Agriculture, 2022: about 600,000 to spare beside 750,000."""
    field = FieldInputs(HECTARE, 0.85, seedlings_per_hill=3)
    spare = seed.seeds_in(40, _grams_per_1000(40_000)) * 0.85 - seed.seedlings(field)
    assert spare == pytest.approx(610_000)


@source("PhilRice-40kg", "AsiaDHRRA", kind=INDEPENDENT)
@pytest.mark.parametrize(
    ("per_hill", "seedlings"),
    [
        (3, 750_000),  # DA-PhilRice, 2021, as above
        (2, 500_000),  # AsiaDHRRA quoting PhilRice, "40-kg technology ..."
    ],
)
def test_seedlings_for_a_hectare_at_20_by_20(per_hill, seedlings):
    """250,000 hills (DA-PhilRice, 2021) times seedlings in each."""
    field = FieldInputs(HECTARE, 0.85, seedlings_per_hill=per_hill)
    assert seed.hills(field) == pytest.approx(250_000)
    assert seed.seedlings(field) == pytest.approx(seedlings)


@source("ICAR-transplanting", "KR-Ryu", kind=INDEPENDENT)
@pytest.mark.parametrize(
    ("row_cm", "hill_cm", "low", "high"),
    [
        # ICAR, "Transplanting", part 1: 25 hills at 20x20; "40-50" at 20x10 or 15x15.
        (20, 20, 25, 25),
        (20, 10, 40, 50),
        (15, 15, 40, 50),
        # Korean production notes (Ryu, 2010): 23-30 hills at 30x12 and 30x14.
        (30, 12, 23, 30),
        (30, 14, 23, 30),
    ],
)
def test_hills_on_a_square_metre(row_cm, hill_cm, low, high):
    """Spacing gives the hills that the publishers print."""
    assert low <= seed.hills_per_m2(row_cm, hill_cm) <= high


@source("PAU-transplanting", kind=INDEPENDENT)
@pytest.mark.parametrize(("row_cm", "hill_cm", "printed"), [(20, 15, 33), (15, 15, 44)])
def test_hills_of_a_punjab_field(row_cm, hill_cm, printed):
    """33 hills on a square metre as usual, 44 for a late planting, when hills stand closer."""
    assert int(seed.hills_per_m2(row_cm, hill_cm)) == printed


@source("arithmetic", kind=ARITHMETIC)
@pytest.mark.parametrize(
    ("row_cm", "hill_cm", "hills"),
    [(20, 15, 333_333), (25, 25, 160_000), (22.5, 22.5, 197_531)],  # plain arithmetic
)
def test_hills_on_a_hectare(row_cm, hill_cm, hills):
    """Ten thousand square metres over the ground of one hill."""
    field = FieldInputs(HECTARE, 0.9, spacing_row_cm=row_cm, spacing_hill_cm=hill_cm)
    assert seed.hills(field) == pytest.approx(hills, abs=0.5)


@source("PhilRice-40kg", "DA-2022", "PhilRice-KC4", kind=RANGE)
@pytest.mark.parametrize(("grains_per_kg", "kg"), [(45_000, 19.6), (40_000, 22.1)])
def test_least_seed_agrees_with_philrices_own_floor(grains_per_kg, kg):
    """Derived from both PhilRice examples with no loss after germination; PhilRice, Key
    Check 4, asks 20-40 kg for a hectare."""
    field = FieldInputs(
        HECTARE,
        0.85,
        seedlings_per_hill=3,
        grain_weight_g=_grams_per_1000(grains_per_kg),
        establishment=1.0,
    )
    assert seed.seed_kg(field) == pytest.approx(kg, abs=0.05)
    assert 19 <= seed.seed_kg(field) <= 40


@source("Grainews", kind=ARITHMETIC)
def test_the_cereal_identity():
    """300 plants/m2 of 25 g per 1000 at 80 % are 93.75 kg/ha: the extension formula plants x
    weight / (100 x survival), from memory, its concept seen in Grainews. Twelve times the
    seed of 25 single plants on a square metre (20 x 20 cm)."""
    field = FieldInputs(HECTARE, 0.80, seedlings_per_hill=1, establishment=1.0)
    assert seed.seed_kg(field) * 12 == pytest.approx(93.75)


# DSSAT Foundation, RICER048.CUL (CERES-Rice), coefficient G2 x 1000.
DSSAT_GRAINS = {
    "PR114": 23, "Basmati 385": 22, "Basmati-515": 21, "RD23": 22, "BR11": 24, "BR3": 25,
    "BR22": 25, "BR14": 26, "Jaya": 30, "Pant-4": 30, "KDML105": 27.0, "Niew Sanpatong": 27.7,
    "Suphanburi 60": 28.0, "Chainat 1": 27.8, "DOA 1": 27.5, "CICA8": 27, "Zheng Dao 9380": 27,
    "Lemont": 20.7, "RN12": 19.9, "UPLRi5": 22,
}  # fmt: skip


@source("DSSAT-RICER048")
@pytest.mark.parametrize("variety", DSSAT_GRAINS)
def test_grain_weights_of_real_varieties_pass_without_a_word(variety):
    """Every plausible row of the file is taken and not called unusual."""
    q = quantities(FieldInputs(HECTARE, 0.9, grain_weight_g=DSSAT_GRAINS[variety]))
    assert WarningCode.GRAIN_WEIGHT_UNUSUAL not in q.warnings


@source("DSSAT-RICER048", kind=RANGE)
def test_a_known_slip_in_the_published_file_is_refused():
    """The same file lists KS-282 at 50 g, beyond its own maximum of 30."""
    with pytest.raises(AgronomyError, match="grain_weight_g"):
        FieldInputs(HECTARE, 0.9, grain_weight_g=50)


@source("DSSAT-RICER048", "DA-2022")
def test_the_default_grain_is_the_published_default():
    """DSSAT: default 25, range 15-30 g; PhilRice: 40,000 grains in a kilogram."""
    assert c.GRAIN_WEIGHT_G.value == 25
    assert (c.GRAIN_WEIGHT_G.low, c.GRAIN_WEIGHT_G.high) == (15, 30)
    assert seed.seeds_in(1, c.GRAIN_WEIGHT_G.value) == pytest.approx(40_000)


@source("UArk", "MSU-2013")
def test_establishment_lies_where_field_reports_put_it():
    """University of Arkansas, FSA2157: 15-20 plants stand of 30 seeds; Mississippi State
    University, 2013: about two seeds for each plant."""
    assert 15 / 30 <= c.ESTABLISHMENT.value <= 20 / 30


@source("consistency", kind=PRACTICE)
@pytest.mark.parametrize(("per_hill", "kg"), [(1, 12), (2, 24)])
def test_consistency_with_the_12_to_25_kg_rule(per_hill, kg):
    """A consistency check, no evidence: establishment was chosen so that the growers' rule
    (12-25 kg of 80 % seed for a hectare, 1-2 seedlings; common practice, no source) holds."""
    field = FieldInputs(HECTARE, 0.80, seedlings_per_hill=per_hill)
    assert 12 <= seed.seed_kg(field) <= 25
    assert seed.seed_kg(field) == pytest.approx(kg, rel=0.005)


@source("PhilRice-dapog", "ICAR-wet", kind=RANGE)
@pytest.mark.parametrize(
    ("germination", "per_hill"), [(0.85, 1), (0.85, 2), (0.95, 1), (0.80, 3)]
)
def test_ordinary_plans_lie_in_published_seed_rates(germination, per_hill):
    """From PhilRice, modified dapog (10-12 kg/ha hybrid, 12-15 inbred), to ICAR, wet nursery
    (50-60 kg/ha coarse grain): an ordinary plan is not called unusual."""
    q = quantities(FieldInputs(HECTARE, germination, seedlings_per_hill=per_hill))
    assert 10 <= q.seed_kg <= 60
    assert WarningCode.SEED_RATE_UNUSUAL not in q.warnings


@source("PhilRice-dapog")
@pytest.mark.parametrize(
    ("per_hill", "germination", "unusual"),
    [(2, 0.85, False), (2, 0.90, True), (1, 0.85, False), (1, 0.95, True)],
)
def test_less_seed_than_anybody_prints_is_asked_about(per_hill, germination, unusual):
    """Nets take 10 kg at the least; single seedlings 5 (common practice, no source): at 30 x 30
    cm these are 10.05 and 9.5, 5.03 and 4.5 kg."""
    q = quantities(FieldInputs(HECTARE, germination, 30, 30, seedlings_per_hill=per_hill))
    assert (WarningCode.SEED_RATE_UNUSUAL in q.warnings) == unusual


@source("agropedia", kind=RANGE)
def test_classic_dapog_rates_are_called_unusual():
    """Agropedia, dapog method: 3 kg/m2 on 25-30 m2 are 75-90 kg/ha, beyond the band."""
    dense = FieldInputs(HECTARE, 0.85, 10, 12, seedlings_per_hill=2)
    q = quantities(dense)
    assert q.seed_kg == pytest.approx(75.4, abs=0.1)
    assert WarningCode.SEED_RATE_UNUSUAL in q.warnings


@source("Engineer314", "gowu797")
@pytest.mark.parametrize(
    ("dry_g", "low_g", "high_g"),
    [
        (120, 144, 156),  # Engineer314, Japan: sprouted is 1.2-1.3 times dry
        (70, 70 * 1.2, 90),  # gowu797, China: 70 g dry are about 90 g
    ],
)
def test_sprouted_seed_weighs_what_two_countries_print(dry_g, low_g, high_g):
    """The middle of the published ratios lies inside both."""
    assert low_g <= seed.sprouted_kg(dry_g) <= high_g


@source("Bogura", "PhilRice-RCEF", "ICAR-germination")
def test_the_good_mark_is_a_published_minimum():
    """Bangladesh farmers' advice asks 80 %; PhilRice (RCEF) and ICAR hybrid seed 85 %."""
    assert c.GOOD_GERMINATION.value == 0.80
    assert quantities(FieldInputs(HECTARE, 0.82)).warnings == ()
    assert c.GOOD_GERMINATION.high == 0.85
