"""Every number of the trade that the program uses: value, range, source, how sure.

Each number stands here once, with its unit in its name; formulas elsewhere use the names.
`SOURCES.md` beside this file is generated from these rows.
"""

from assistant.agronomy.sourced import sources as s
from assistant.agronomy.sourced.constant import Constant, HowSure, chosen, practice, published

# --- seed -----------------------------------------------------------------------------------

GOOD_GERMINATION = published(
    "good_germination",
    0.80,
    "fraction",
    s.BOGURA,
    s.PHILRICE_RCEF,
    low=0.80,
    high=0.85,
    note="Bangladesh advice 80 %; the Philippines ask 85 % of certified seed",
)
WEAK_GERMINATION = chosen(
    "weak_germination",
    0.60,
    "fraction",
    how_sure=HowSure.JUDGEMENT,
    note="below this a seed lot is better replaced than sown thicker",
)
ESTABLISHMENT = chosen(
    "establishment",
    0.65,
    "fraction",
    s.ARKANSAS_FSA2157,
    s.MISSISSIPPI_2013,
    low=0.50,
    high=0.67,
    note="living seedlings planted out of seeds that germinate; chosen so that the rule of "
    "12-25 kg per hectare comes out at 80 % germination (a consistency check); field reports "
    "of 15-20 plants from 30 seeds per square foot give the range",
)
GRAIN_WEIGHT_G = published(
    "grain_weight_g",
    25.0,
    "g per 1000 grains",
    s.DSSAT_RICE,
    s.DA_2022,
    low=15.0,
    high=30.0,
    note="40,000 grains in a kilogram",
)
SPACING_CM = published(
    "spacing_cm",
    20.0,
    "cm",
    s.PHILRICE_40KG,
    s.ICAR_HILLS,
    low=10.0,
    high=30.0,
)
SEEDLINGS_PER_HILL = published(
    "seedlings_per_hill",
    2,
    "seedlings",
    s.ASIADHRRA,
    s.ICAR_IRRIGATED,
    low=1,
    high=6,
    note="1-2 hybrid, 2-3 inbred, 5-6 when late or old",
)
SPROUTED_PER_DRY = published(
    "sprouted_per_dry",
    1.25,
    "kg per kg",
    s.SPROUT_JAPAN,
    s.SPROUT_CHINA,
    low=1.2,
    high=1.3,
    note="middle of 1.2-1.3; 70 g dry gave about 90 g; plain pages, but two countries agree",
)
SEED_RATE_LOW_KG_PER_HA = published(
    "seed_rate_low_kg_per_ha",
    10.0,
    "kg per ha",
    s.PHILRICE_DAPOG,
    low=10.0,
    high=12.0,
    note="hybrid seed on nets 10-12, inbred 12-15; asked again below",
)
SINGLE_SEED_RATE_LOW_KG_PER_HA = practice(
    "single_seed_rate_low_kg_per_ha",
    5.0,
    "kg per ha",
    low=5.0,
    high=8.0,
    note="one seedling a hill; asked again below",
)
SEED_RATE_HIGH_KG_PER_HA = published(
    "seed_rate_high_kg_per_ha",
    60.0,
    "kg per ha",
    s.ICAR_WET,
    low=50.0,
    high=60.0,
    note="coarse grain on wet or dry beds; asked again above",
)
SOAK_H = published(
    "soak_h",
    24,
    "h",
    s.LANKA_WET,
    s.BOGURA,
    s.PHILRICE_DAPOG,
    low=12,
    high=48,
    note="longer for slow varieties and cool water",
)
INCUBATE_H = published(
    "incubate_h",
    24,
    "h",
    s.LANKA_DAPOG,
    low=24,
    high=72,
    note="moist and covered after draining; 40-48 h in the cool season, up to 72 h",
)
SOAK_WARMTH_C_D = published(
    "soak_warmth_c_d",
    100.0,
    "degree-days C",
    s.RDA_KOREA,
    s.KUBOTA,
    low=80,
    high=120,
    note="summed water temperature, for cool water only",
)
SOAK_COOL_BELOW_C = chosen(
    "soak_cool_below_c",
    20.0,
    "C",
    how_sure=HowSure.JUDGEMENT,
    note="from here on a day of soaking is practice, and summed warmth asks too much",
)
SOAK_HARMFUL_C = published(
    "soak_harmful_c", 5.0, "C", s.JCS_90_269, note="seed soaked this cold fails"
)
ROOT_LOW_MM = practice("root_low_mm", 2, "mm", note="sow when the root is this long")
ROOT_HIGH_MM = practice("root_high_mm", 3, "mm", note="longer roots break and tangle")

# --- bed ------------------------------------------------------------------------------------

NURSERY_SHARE = practice(
    "nursery_share",
    0.01,
    "m2 of bed per m2 of field",
    low=0.004,
    high=0.02,
    note="100 m2 per hectare; published mats run from 40 (Yamagata prefecture) to 200 m2 "
    "per hectare (Kerala Agricultural University)",
)
MAX_SEEDS_PER_CM2 = chosen(
    "max_seeds_per_cm2",
    2.0,
    "seeds per cm2",
    s.PHILRICE_DAPOG,
    how_sure=HowSure.JUDGEMENT,
    note="all seeds, dry, over the bed: 500 g/m2 at 25 g; PhilRice nets carry 400-500",
)
FULL_SEEDS_PER_CM2 = published(
    "full_seeds_per_cm2",
    1.0,
    "seeds per cm2",
    s.ICAR_PUNJAB,
    low=1.0,
    high=2.0,
    note="a mat holds together from 1-2 on; a bed that is made smaller is sown so",
)
MAT_LENGTH_M = practice("mat_length_m", 0.50, "m", note="inside of the frame")
MAT_WIDTH_M = practice("mat_width_m", 0.30, "m", note="inside of the frame")
MAT_DEPTH_M = practice(
    "mat_depth_m",
    0.04,
    "m",
    low=0.018,
    high=0.04,
    note="frame filled almost to the top; published mats, for machines, run from 18 to 31 mm",
)
SOIL_PARTS = practice("soil_parts", 7, "pails per batch", note="70-80 % of the mix")
MANURE_PARTS = practice("manure_parts", 2, "pails per batch", note="15-20 %, well decomposed")
HULL_PARTS = practice("hull_parts", 1, "pails per batch", note="5-10 %, fresh or charred")
PAIL_LITRES = chosen("pail_litres", 10.0, "L", note="asked; this unless the person says")
COVER_LOW_MM = chosen(
    "cover_low_mm",
    3,
    "mm",
    s.RDA_KOREA,
    s.JCS_73_389,
    how_sure=HowSure.JUDGEMENT,
    note="from published 3-5, 4.6-5.5 and 7 mm",
)
COVER_HIGH_MM = chosen(
    "cover_high_mm",
    10,
    "mm",
    s.JCS_73_389,
    s.JCS_90_382,
    how_sure=HowSure.JUDGEMENT,
    note="establishment falls sharply beyond 40 mm in the field",
)
SHEET_ALLOWANCE = chosen(
    "sheet_allowance",
    0.10,
    "fraction of the bed",
    low=0.05,
    high=0.15,
    note="overlap and edges; no source found",
)
FLOOD_DEPTH_M = practice(
    "flood_depth_m",
    0.01,
    "m",
    low=0.01,
    high=0.03,
    note="around the mats; 2-3 cm is published for nets",
)

# --- care -----------------------------------------------------------------------------------

UREA_PERCENT = practice(
    "urea_percent",
    0.5,
    "% (10 g per L of water each)",
    note="5 g per L, only if yellow, once, never stronger; 2 % is for field crops",
)
SPRAY_L_PER_M2 = practice("spray_l_per_m2", 3.0, "L per m2", note="300 L on 100 m2")

# --- days of the calendar, counted from sowing ------------------------------------------------

SEED_TEST_DAY = chosen(
    "seed_test_day", -15, "day", note="a home test takes 7 days; leaves time to buy other seed"
)
SEED_TEST_COUNT_D = published(
    "seed_test_count_d",
    7,
    "days after the test began",
    s.ICAR_GERMINATION,
    low=5,
    high=14,
    note="home test; official tests count at 5 (from memory) and at 14 days",
)
COLLECT_DAY = practice("collect_day", -7, "day")
MIX_DAY = practice("mix_day", -3, "day")
SOAK_DAY = practice("soak_day", -2, "day", note="24 h soak and 24 h moist before sowing")
DRAIN_SEED_DAY = practice("drain_seed_day", -1, "day")
RAIN_WATCH_LAST_DAY = practice(
    "rain_watch_last_day", 5, "day", note="days 0 to 5, both included"
)
UNCOVER_DAY = published(
    "uncover_day",
    5,
    "day",
    s.PHILRICE_DAPOG,
    note="straw off on day 5; watering twice a day ends the day before",
)
UNCOVER_LATEST_DAY = chosen(
    "uncover_latest_day",
    14,
    "day",
    note="a bed still bare then has failed: a case for the officer",
)
NIGHT_WATER_CM = practice(
    "night_water_cm",
    3,
    "cm",
    low=2,
    high=3,
    note="let in at dusk before a cold night, off again in the morning; that it holds warmth "
    "over night: AgFax, Comments about flooding Louisiana rice for frost protection, 2007",
)
COLOUR_CHECK_DAY = practice("colour_check_day", 7, "day")
PALE_AFTER_UNCOVERING_D = practice(
    "pale_after_uncovering_d",
    3,
    "days",
    note="shoots that were just uncovered are pale, and the seed still feeds them",
)
LEAF_COUNT_DAY = chosen("leaf_count_day", 12, "day", note="three days before the window opens")
DRAIN_BEFORE_TRANSPLANT_D = practice("drain_before_transplant_d", 2, "days", low=1, high=2)
TRANSPLANT_FIRST_DAY = published(
    "transplant_first_day",
    15,
    "day",
    s.ASSAM_MAT,
    low=10,
    high=20,
    note="15-20 days in the warm season",
)
TRANSPLANT_LAST_DAY = published(
    "transplant_last_day",
    20,
    "day",
    s.ASSAM_MAT,
    low=20,
    high=30,
    note="20-25 days in the cool season",
)
TRANSPLANT_ASSUMED_DAY = chosen(
    "transplant_assumed_day", 18, "day", note="until a day is chosen; inside 15-20"
)
TRANSPLANT_EARLIEST_DAY = published(
    "transplant_earliest_day", 8, "day", s.RDA_KOREA, note="infant seedlings, 8-12 days"
)
TRANSPLANT_LATEST_DAY = chosen(
    "transplant_latest_day",
    45,
    "day",
    s.SAHA_2018,
    how_sure=HowSure.JUDGEMENT,
    note="the yield falls steadily to 40 days, where trials stop",
)

# --- main field, counted back from transplanting ----------------------------------------------

PLOUGH_BEFORE_D = published(
    "plough_before_d",
    21,
    "days",
    s.PHILRICE_FIELD_OPERATIONS,
    s.PHILRICE_PREPARE,
    low=10,
    high=28,
)
FLOOD_BEFORE_PLOUGH_D = published(
    "flood_before_plough_d",
    2,
    "days",
    s.PHILRICE_FIELD_OPERATIONS,
    s.PHILRICE_PREPARE,
    low=1,
    high=2,
)
HARROW_EVERY_D = published(
    "harrow_every_d",
    7,
    "days",
    s.PHILRICE_FIELD_OPERATIONS,
    note="first harrowing a week after ploughing, second a week later",
)
LEVEL_FIRST_BEFORE_D = published(
    "level_first_before_d", 2, "days", s.PHILRICE_FIELD_OPERATIONS, low=1, high=2
)
LEVEL_LAST_BEFORE_D = published(
    "level_last_before_d", 1, "days", s.PHILRICE_FIELD_OPERATIONS, low=1, high=2
)

GAP_FILL_LAST_D = published(
    "gap_fill_last_d",
    7,
    "days after transplanting",
    s.PHILRICE_TRANSPLANT,
    s.PHILRICE_KC4,
    low=3,
    high=15,
)

RIPENING_D = published(
    "ripening_d",
    30,
    "days from flowering to maturity",
    s.RICE_GROWTH,
    low=25,
    high=35,
    note="30 of the 120 days of a variety in the warm tropics; longer in cool or rainy weather",
)

# --- leaves ---------------------------------------------------------------------------------

PHYLLOCHRON_C_D = published(
    "phyllochron_c_d", 83.0, "degree-days C per leaf", s.DSSAT_RICE, low=55, high=90
)
LEAF_BASE_C = published("leaf_base_c", 9.0, "C", s.DSSAT_RICE, low=9, high=11)
LEAF_CAP_C = published(
    "leaf_cap_c", 26.0, "C", s.STRECK_2008, s.ELLIS_1993, note="no faster above"
)
LEAF_COLDEST_C = published(
    "leaf_coldest_c",
    11.0,
    "C",
    s.STRECK_2008,
    low=9,
    high=11,
    note="no leaf comes below; a mean that an officer enters must be at least this",
)
LEAF_HOTTEST_C = published(
    "leaf_hottest_c", 40.0, "C", s.STRECK_2008, note="and at most this: no leaf comes above"
)
WARMTH_HOLDS_D = chosen(
    "warmth_holds_d",
    10,
    "days",
    note="a mean temperature older than that says too little of the days to come",
)
LEAVES_FIRST = published(
    "leaves_first", 3, "open leaves", s.JCS_88_27, note="3.0-3.6 leaves on dense mats"
)
LEAVES_LAST = practice("leaves_last", 4, "open leaves")

# --- safety -----------------------------------------------------------------------------------

EYE_RINSE_MIN = published(
    "eye_rinse_min", 15, "minutes", s.UREA_SDS, note="urea dust or spray in the eyes"
)
THUNDER_WAIT_MIN = published(
    "thunder_wait_min", 30, "minutes", s.MISSOURI, note="after the last thunder"
)

CONSTANTS = tuple(value for value in tuple(globals().values()) if isinstance(value, Constant))
