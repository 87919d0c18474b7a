"""Numbers around the plan: seed in hand, poor emergence, lateness, learning, labour.

As in `constants`: each stands here once, with its source or an honest word.
"""

from assistant.agronomy.sourced import sources as s
from assistant.agronomy.sourced.constant import Constant, HowSure, chosen, practice, published

# --- the seed lot in hand ---------------------------------------------------------------------

SEED_CHECK_D = chosen(
    "seed_check_d",
    3,
    "days",
    note="before a failed bed is sown again; common practice, no source: living seed shows a "
    "root by then where it is warm",
)
NO_SEED_WAITS_D = chosen(
    "no_seed_waits_d",
    7,
    "days",
    note="sowing waits where seed has to be found; chosen, the farmer may name another day",
)
SEED_CHECK_SEEDS = chosen(
    "seed_check_seeds", 50, "seeds", note="of seed that is left; common practice, no source"
)
SCALE_STEP_G = chosen("scale_step_g", 1.0, "g", note="what a kitchen scale shows")
BRINE_DENSITY_KG_PER_L = published(
    "brine_density_kg_per_l",
    1.10,
    "kg per L",
    s.TAMAGAWA,
    s.ICAR_NEH,
    low=1.05,
    high=1.13,
    note="salt water in which sound paddy sinks; an egg that just floats shows the low end, "
    "about 1.06; 1.13 in Japan and Korea",
)
BRINE_SEED_KG_PER_L = chosen(
    "brine_seed_kg_per_l",
    0.5,
    "kg of dry seed per L of salt water",
    s.BOGURA,
    how_sure=HowSure.JUDGEMENT,
    note="so that it can be stirred; 10 kg in 10 L is published for the urea method",
)
BRINE_FILL = chosen(
    "brine_fill",
    0.5,
    "fraction of the pail",
    note="half full: room for the seed and for stirring, and light enough to lift",
)
BRINE_MINUTES = published(
    "brine_minutes", 5, "minutes", s.ECHO_164, high=10, note="not long; then rinse at once"
)
BRINE_RINSES = published("brine_rinses", 3, "times", s.BOGURA, low=3, high=4)

NO_SPROUT_D = practice(
    "no_sprout_d",
    2,
    "days moist and warm",
    note="no root by then: warmer water is tried, and after as many days more other seed",
)

# --- water by hand ----------------------------------------------------------------------------

WATERING_L_PER_M2 = chosen(
    "watering_l_per_m2",
    3.0,
    "L per m2, each time",
    how_sure=HowSure.FROM_MEMORY,
    low=2.0,
    high=4.0,
    note="a wet surface loses 5-7 mm on a warm day (FAO, Irrigation and Drainage Paper 56, "
    "1998, not seen); two waterings bring as much",
)

# --- open beds --------------------------------------------------------------------------------

OPEN_BED_LENGTH_M = published("open_bed_length_m", 20, "m", s.PHILRICE_BULLETIN, low=5, high=20)
OPEN_BED_WIDTH_M = published(
    "open_bed_width_m",
    1,
    "m",
    s.PHILRICE_BULLETIN,
    low=1,
    high=2,
    note="1.2 m in Indian and Bangladeshi advice: both sides are reached without stepping in",
)

# --- making the bed ---------------------------------------------------------------------------

MAKE_BED_DAY = practice(
    "make_bed_day",
    -1,
    "day",
    note="while the soaked seed sprouts: the bed waits for the seed, not it for the bed",
)
TRAY_RIM_M = practice(
    "tray_rim_m",
    0.01,
    "m",
    note="on each side: a tray of 58 x 28 cm inside is 60 x 30 cm outside",
)
STRIP_WIDTH_M = practice(
    "strip_width_m",
    1.2,
    "m",
    low=1.0,
    high=1.5,
    note="an arm reaches its middle from either side; Indian open beds are as wide "
    "(Directorate of Rice Research, see dry_bed)",
)
PATH_WIDTH_M = practice(
    "path_width_m",
    0.5,
    "m",
    low=0.3,
    high=0.5,
    note="room for a foot and a pail between two strips",
)

DRY_BED_HEIGHT_M = practice(
    "dry_bed_height_m", 0.15, "m", note="so that rain runs off; see share in dry_bed"
)
DRAINED_DRIES_D = practice(
    "drained_dries_d", 2, "days", note="mats that were drained for planting crack after that"
)

# --- water for a dry bed ----------------------------------------------------------------------

WET_SURFACE_LOSS_MM_D = chosen(
    "wet_surface_loss_mm_d",
    6.0,
    "mm a day",
    how_sure=HowSure.FROM_MEMORY,
    low=5.0,
    high=7.0,
    note="what a wet surface loses on a warm day, in litres on each m2 (FAO, Irrigation and "
    "Drainage Paper 56, 1998, not seen)",
)
BY_HAND_MOST_L = chosen(
    "by_hand_most_l",
    1000.0,
    "L each time",
    note="a hundred pails of 10 L: more than a family carries in a morning beside other work",
)

# --- the field's first days -------------------------------------------------------------------

FIELD_WATER_LOW_M = published(
    "field_water_low_m", 0.02, "m", s.PHILRICE_TRANSPLANT, note="after transplanting"
)
FIELD_WATER_HIGH_M = published(
    "field_water_high_m",
    0.03,
    "m",
    s.PHILRICE_TRANSPLANT,
    s.ARFAN_2017,
    note="after transplanting; apple snails did most harm in 5 cm, and to seedlings of 14 days",
)
YOUNG_FIELD_D = chosen(
    "young_field_d", 1, "days after transplanting", note="snails come in the first nights"
)
FIRST_WEEDING_D = practice(
    "first_weeding_d",
    18,
    "days after transplanting",
    low=15,
    high=21,
    note="while weeds are small",
)
GAP_FILL_D = chosen(
    "gap_fill_d",
    4,
    "days after transplanting",
    low=4,
    high=5,
    note="dead hills show by then, and three days are left to the last that is published",
)
FIRST_FEED_D = chosen(
    "first_feed_d",
    7,
    "days after transplanting",
    note="when to ask what to feed the field; what, how much and when is local advice",
)
PLOUGH_DEPTH_CM = practice("plough_depth_cm", 12, "cm", low=10, high=15)
PLANT_DEPTH_CM = practice("plant_depth_cm", 2.5, "cm", low=2, high=3)
GRAIN_DRIES_D = practice("grain_dries_d", 3, "days of sun", low=2, high=4, note="thin, turned")
DUCKS_AFTER_WEEKS = practice(
    "ducks_after_weeks", 3, "weeks after transplanting", note="fish and ducks, once rooted"
)
SPARE_LOW = practice("spare_low", 0.05, "fraction of the mats", note="raised for gaps")
SPARE_HIGH = practice("spare_high", 0.10, "fraction of the mats", note="raised for gaps")

# --- poor emergence ---------------------------------------------------------------------------

SQUARE_CM = chosen(
    "square_cm", 10.0, "cm", note="a square of sticks; three of them are counted"
)
SQUARES_COUNTED = chosen(
    "squares_counted", 3, "squares", note="at usual places of the bed: one alone may mislead"
)
EMERGENCE_WAIT_D = chosen(
    "emergence_wait_d",
    8,
    "day",
    low=5,
    high=14,
    how_sure=HowSure.JUDGEMENT,
    note="shoots may still come before; official tests count at 5 and at 14 days (14 seen, 5 "
    "from memory)",
)
EMERGENCE_ENOUGH = chosen(
    "emergence_enough",
    0.80,
    "fraction of the seeds that germinate",
    how_sure=HowSure.JUDGEMENT,
    note="of those some never come up, and of the shoots some are lost in lifting and parting; "
    "4 of 5 shoots are taken to be planted, no source, so that these plant the field",
)
EMERGENCE_FILL = chosen(
    "emergence_fill",
    0.40,
    "fraction of the seeds that germinate",
    how_sure=HowSure.JUDGEMENT,
    note="half of what plants the field: from there on one a hill, or mats are added; below it "
    "the bed is sown again",
)

# --- old seedlings ----------------------------------------------------------------------------

EXTRA_SEEDLINGS_PER_WEEK = published(
    "extra_seedlings_per_week", 1, "seedlings per hill", s.PHILRICE_TRANSPLANT
)
MOST_SEEDLINGS_PER_HILL = published(
    "most_seedlings_per_hill", 6, "seedlings", s.ICAR_IRRIGATED, low=5, high=6
)
LOSS_PER_DAY = chosen(
    "loss_per_day",
    0.025,
    "fraction of the yield for each day late",
    s.NARC_2016,
    s.BIOLINE_11041,
    s.SAHA_2018,
    s.NARJ_2002,
    how_sure=HowSure.JUDGEMENT,
    low=0.0,
    high=0.0272,
    note="trials disagree: age of seedlings had no effect where the date of planting was kept "
    "apart from it (NARJ), which is the low end; the high end is straight between no delay and "
    "trials in which date, cold, density or feeding changed too: 38 % after 14 days, 44 and 47 "
    "% after 20",
)
MOST_LOSS = published(
    "most_loss",
    0.47,
    "fraction of the yield",
    s.BIOLINE_11041,
    note="where trials stop; 20-day seedlings, sown thin and fed, against 40-day ones, dense "
    "and unfed",
)

# --- learning from the season ----------------------------------------------------------------

ESTABLISHMENT_SPREAD = chosen(
    "establishment_spread",
    0.075,
    "fraction, standard deviation",
    s.ARKANSAS_FSA2157,
    s.MISSISSIPPI_2013,
    how_sure=HowSure.JUDGEMENT,
    note="how far farmers differ before anything is known of them: the low end of field "
    "reports, 0.50, then lies two deviations below the usual 0.65",
)
SEASON_WEIGHT_MATS = chosen(
    "season_weight_mats",
    20,
    "mats",
    note="a season counts as its mats, at most as these, half of what is believed before: "
    "seeds on one mat share their fate, and so do the mats of one season",
)
MAT_SIZE_M2 = chosen(
    "mat_size_m2", 0.15, "m2", note="what counts as one mat on a bed that has none"
)

# --- weights ----------------------------------------------------------------------------------

MIX_KG_PER_L = chosen(
    "mix_kg_per_l",
    1.2,
    "kg per L",
    s.SPROUT_CHINA,
    low=1.1,
    high=1.3,
    how_sure=HowSure.JUDGEMENT,
    note="wet and packed; 100 kg of soil in 25-28 trays at 18-20 mm is 1.22 kg/L; "
    "makes a wet mat some 7 kg and a full 20 L pail 22-26 kg",
)
PADDY_KG_PER_L = published(
    "paddy_kg_per_l",
    0.58,
    "kg per L",
    s.USDA_TEST_WEIGHT,
    s.PUNJAB_PADDY_2015,
    low=0.55,
    high=0.62,
)

# --- labour -----------------------------------------------------------------------------------

HOURS_PER_DAY = chosen("hours_per_day", 8, "hours", note="a person-day of published figures")
PLANTING_H_PER_HA = published(
    "planting_h_per_ha",
    250.0,
    "person-hours per ha",
    s.KERALA_KVK,
    s.IJNES_64,
    low=126,
    high=320,
    note="by hand; 126 in one trial, 40 workers of 8 hours in another",
)
MAT_RAISE_H_PER_M2 = published(
    "mat_raise_h_per_m2",
    0.80,
    "person-hours per m2 of bed",
    s.ASABE_2017,
    low=0.49,
    high=1.11,
    note="derived by volume: 50 trays, 162 L of soil at 2 cm, took 2 person-hours with scooped "
    "mud, 4.5 with crushed soil; a mat is 40 L on each m2. Fetching and watering are not in it",
)
MACHINE_CREW = published(
    "machine_crew", 3, "people", s.KERALA_KVK, note="plant a hectare in a day with one machine"
)
MAT_LIFT_H_PER_HA = published(
    "mat_lift_h_per_ha",
    32.0,
    "person-hours per ha of field",
    s.NARC_METHODS,
    note="four people in a day cut the mats for a hectare; a day taken as 8 hours",
)
CARRY_KG = chosen(
    "carry_kg",
    16.0,
    "kg",
    how_sure=HowSure.FROM_MEMORY,
    low=16.0,
    high=25.0,
    note="at waist height (Health and Safety Executive, manual handling: 16 kg for women, "
    "25 for men; the page that was seen says that these are no safe limits)",
)

WORK_CONSTANTS = tuple(
    value for value in tuple(globals().values()) if isinstance(value, Constant)
)
