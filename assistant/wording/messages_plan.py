"""Texts of the plan page: the shopping list and calendar that an officer prints at a desk.

They are read on paper or a screen, not on a phone; a line may be as long as two texts.
"""

from assistant.wording.message import Message

# --- the head -------------------------------------------------------------------------------
TITLE = Message(
    "Nursery plan for a field of {area} m2 ({typed})",
    note="Heading; {typed} is the field as it was written, such as '0.4 ha'.",
)
COMPUTED_FROM = Message(
    "Computed from: germination {percent}%, spacing {row} x {hill} cm, {seedlings} seedlings a "
    "hill, {grams} g for 1000 grains, pails of {litres} L.",
    note="What the figures stand on, so that a mistake can be seen.",
    segments=2,
)
HILLS = Message("About {hills} hills, {seedlings} seedlings.", note="Rounded counts.")
RAISED_AS = Message(
    "Raised as: {name}.",
    note="{name} is a way of raising seedlings, such as 'wet bed'; the mat is not named.",
)
ESTABLISHMENT = Message(
    "Counted on: {percent} of 100 germinated seeds become seedlings that are planted.",
    note="A figure that the officer gave.",
)
GAPS = Message("{percent}% more seedlings are raised to fill gaps.", note="Asked for.")
VARIETY = Message(
    "Grain weight of {name} as published: {low} to {high} g for 1000 grains. Weigh your own "
    "seed if you can.",
    note="{name} is a variety. The two weights may be the same.",
)

# --- warnings -------------------------------------------------------------------------------
WARNINGS = Message("Take care", note="Heading above warnings about this plan.")
W_DO_NOT_SOW = Message(
    "Only {percent}% of the seed germinates: do not sow it. Get other seed and test that. The "
    "figures are for comparison only.",
    note="Germination under 60 %.",
    segments=2,
)
W_WEAK_SEED = Message(
    "Weak seed ({percent}%): the figures count in more seed. Seed of {good}% or more is safer.",
    note="Germination 60 to 79 %.",
)
W_BED_ENLARGED = Message(
    "The bed is larger than usual, so that no more than {most} seeds lie on 1 cm2.",
    note="Much seed for the field.",
)
W_SMALL_MIX = Message(
    "The soil mix is less than one batch of pails: measure 7 soil, 2 manure and 1 rice hull with "
    "a tin or bowl of {litres} L.",
    note="A very small bed.",
    segments=2,
)
W_SMALL_PARTS = Message(
    "What is brought onto the bed is less than one batch of pails: measure its parts with a tin "
    "or bowl of {litres} L.",
    note="A very small bed that is no mat.",
)
W_GRAIN_WEIGHT = Message(
    "{grams} g for 1000 grains is unusual ({low} to {high} g): count and weigh again.",
    note="Grain weight outside the published range.",
)
W_SEED_RATE = Message(
    "{rate} kg of seed for a hectare is unusual ({low} to {high} kg): check the figures.",
    note="Seed rate outside the published range.",
)
W_PAST_DATE = Message(
    "The sowing day {sow} is past. The dates are shown as they were, not moved.",
    note="{sow} is a date such as 2025-06-10.",
)

# --- the shopping list ----------------------------------------------------------------------
SHOPPING = Message("Shopping list", note="Heading.")
SEED = Message(
    "Seed: {dry} dry, which is about {sprouted} when sprouted.", note="Shopping list."
)
BED = Message(
    "Bed: {bed} m2, level, near water and the house, for {mats} of 50 x 30 cm.",
    note="Shopping list.",
)
BED_MATS = Message(
    "Bed: {bed} m2, level, near water and the house, for {mats} of {length} x {width} cm.",
    note="Shopping list, for trays, or mats of another size than usual.",
)
GROUND = Message(
    "Ground with paths: about {ground} m2, in strips {strip} m wide.",
    note="Shopping list, after the bed: nobody can reach into a wide one.",
)
BED_OPEN = Message(
    "Bed: {bed} m2 of tilled ground, level, near water.",
    note="Shopping list, where seedlings are pulled from the bed.",
)
BEDS_OPEN = Message(
    "That is {count} beds of {length} x {width} m.", note="After the line of the bed."
)
SHEET = Message(
    "Plastic sheet or banana leaves: {sheet} m2, with something over for the edges.",
    note="Shopping list; roots must not go through into the ground.",
)
MIX = Message(
    "Soil mix: {mix} m3, 4 cm deep: {soil} pails of soil, {manure} of well-rotted manure, {hull} "
    "of rice hull.",
    note="Shopping list; pails are the person's own. Rice hull is the husk of the grain.",
    segments=2,
)
MIX_SMALL = Message(
    "Soil mix: {mix} L, 4 cm deep: 7 parts soil, 2 well-rotted manure, 1 rice hull.",
    note="Shopping list, for a very small bed.",
)
MIX_DEEP = Message(
    "Soil mix: {mix} m3, {depth} cm deep, in pails: {parts}.",
    note="Shopping list, for a bed that is no mat of ours; pails are the person's own. {parts} is "
    "a list, such as '20 of soil, 10 of rotted manure'.",
)
MIX_DEEP_SMALL = Message(
    "Soil mix: {mix} L, {depth} cm deep, by parts: {parts}.",
    note="The same for a very small bed.",
)
MANURE = Message(
    "Well-rotted manure: {mix}, spread evenly over the bed.",
    note="Shopping list, where nothing else is brought onto the bed.",
)
FRAME = Message(
    "A frame of 50 x 30 cm, 4 cm deep, or banana stalks and pegs for a fence.",
    note="Shopping list; it shapes the mats.",
)
FRAME_SIZE = Message(
    "A frame of {length} x {width} cm, {depth} cm deep.",
    note="Shopping list, for mats of another size than usual; it shapes them.",
)
COVER = Message(
    "Leaves or straw to cover the bed, fine soil for a cover of {low} to {high} mm.",
    note="Shopping list.",
)
WATER = Message(
    "Water: {water} to stand 1 cm deep once; more to top it up.",
    note="Shopping list.",
)
WATER_DEEP = Message(
    "Water: {water} to stand {depth} cm deep once; more to top it up.",
    note="Shopping list, for a bed that is no mat.",
)
WATERING = Message(
    "Watering by hand: about {water} each time.",
    note="Shopping list.",
)
UREA = Message(
    "Urea, only if leaves are yellow: {urea} for {water} L of water.",
    note="Shopping list; {urea} is a weight such as '600 g'.",
)

# --- sowing and carrying --------------------------------------------------------------------
SHARING = Message("Sowing and carrying", note="Heading.")
HEAPS = Message(
    "Share out the sprouted seed: {heaps}.",
    note="How to share out the seed; {heaps} is such as '267 equal heaps of 42 g, one a mat'.",
)
SOW_OPEN = Message(
    "Sow about {grams} g of sprouted seed on each m2, evenly.",
    note="How to share out the seed on a bed without mats.",
)
LOADS = Message(
    "A wet mat weighs about {mat} kg; a full pail of {litres} L of mix {low} to {high} kg. "
    "Half-fill pails and share the load.",
    note="So that nobody lifts too much.",
    segments=2,
)
LOADS_TRAY = Message(
    "A wet tray weighs about {mat} kg; a full pail of {litres} L of mix {low} to {high} kg. "
    "Half-fill pails and share the load.",
    note="So that nobody lifts too much.",
)
LOADS_PAIL = Message(
    "A full pail of {litres} L weighs up to {high} kg. Half-fill pails and share the load.",
    note="So that nobody lifts too much.",
)

# --- labour ---------------------------------------------------------------------------------
LABOUR = Message("Labour and loads, by published or usual figures", note="Heading.")
HOURS = Message("{hours} person-hours", note="Inside a sentence about labour.")
HOURS_SPAN = Message("{low} to {high} person-hours", note="Inside a sentence about labour.")
RAISE = Message("Making and sowing the bed: {time}.", note="{time} is '16 person-hours'.")
LIFT = Message("Cutting and lifting the mats: {time}.", note="{time} is '16 person-hours'.")
LIFT_TRAYS = Message("Lifting the trays: {time}.", note="{time} is '16 person-hours'.")
PULL = Message("Pulling and bundling the seedlings: {time}.", note="Where there are no mats.")
PLANT = Message("Planting the field: {time}.", note="{time} is '16 person-hours'.")
PLANT_SHARED = Message(
    "With {hands} people planting it takes {low} to {high} hours.", note="After 'Planting'."
)
PAIL_WALKS = Message("Half pails to carry to the bed: {count}.", note="Half-filled pails.")
MAT_WALKS = Message(
    "{mats} mats or trays to carry, {most} at a time: {count} walks. The planters need {low} to "
    "{high} in an hour.",
    note="{most} is how many one person should carry at once.",
)

# --- cost -----------------------------------------------------------------------------------
COST = Message("Cost by this price list, in {currency}", note="Heading.")
COST_SEED = Message("Seed: {amount}", note="A line of the cost; {amount} is money.")
COST_MIX = Message("Soil, manure and rice hull: {amount}", note="A line of the cost.")
COST_MIX_PLAIN = Message("Soil mix: {amount}", note="A line of the cost; no rice hull in it.")
COST_MANURE = Message("Manure: {amount}", note="A line of the cost, where there is no other.")
COST_SHEET = Message("Sheet: {amount}", note="A line of the cost.")
COST_LABOUR = Message(
    "Labour until the seedlings are lifted, {days} person-days: {amount}",
    note="A line of the cost.",
)
COST_WITHOUT = Message(
    "Not counted: planting the field, or hire of a machine for it.",
    note="A line of the cost, the last.",
)
COST_TOTAL = Message("Together: {amount}", note="A line of the cost.")
COST_UREA = Message("Urea, only if leaves are yellow: {amount}", note="A line of the cost.")
BESIDE = Message(
    "A wet bed for the same field: {bed} m2, {seed} of seed, {days} person-days, {amount} "
    "together.",
    note="To compare; {amount} is money.",
)
BESIDE_LESS = Message(
    "By these prices that is {amount} more than here.", note="After 'A wet bed'."
)
BESIDE_MORE = Message(
    "By these prices that is {amount} less than here.", note="After 'A wet bed'."
)
BESIDE_SEED = Message(
    "The seed differs since {own} of 100 germinated seeds are counted on here and {usual} on a "
    "wet bed: assumptions until your own results tell.",
    note="Why the seed of the two is not the same.",
)
NO_PROMISE = Message(
    "A sum by this price list, no promise. In a published trial ({source}) seedlings for a hectare "
    "cost {mats} US dollars on mats in plastic frames and {wet} on a wet bed. Frames, trays and "
    "land are not counted here.",
    note="{source} is a journal.",
)

# --- the calendar ---------------------------------------------------------------------------
CALENDAR = Message(
    "Calendar, from sowing on {sow}",
    note="Heading; {sow} is a date such as 2026-06-10. Day 0 is the day of sowing.",
)
ON_DAY = Message(
    "{date}, day {day}: {what}", note="A row of the calendar; {what} is a task, such as 'sow'."
)
ON_DAYS = Message(
    "{date} to {until}, day {day} to {last}: {what}", note="A row of the calendar that lasts."
)
WAS = Message("{row} (past)", note="A row of the calendar whose date is over.")
N_MAKE_BED = Message("make the bed", note="A task, inside a row of the calendar.")
N_WET_MUD = Message("keep the mud wet", note="A task, inside a row of the calendar.")
N_WATER_EVERY = Message("water every {days} days", note="A task, inside a row.")
N_STRAW_OFF = Message("take the straw off", note="A task, inside a row of the calendar.")
N_LET_IN = Message("let in water", note="A task, inside a row of the calendar.")
N_KEEP_DEEP = Message("keep {depth} cm of water", note="A task, inside a row.")

# --- cautions -------------------------------------------------------------------------------
CAUTIONS = Message(
    "Cautions. Local rules and your officer come first.",
    note="Heading above the cautions.",
)
C_SEED = Message(
    "Treated seed is no food and no feed: keep it from children and animals, wash hands, never "
    "use the bag again.",
    note="Caution.",
    segments=2,
)
C_PAIL = Message(
    "Small children drown in a pail of water: cover the soaking pail, empty pails that stand "
    "about.",
    note="Caution.",
)
C_MIX = Message(
    "Wash hands after handling manure. Char rice hull outdoors only, and quench it fully.",
    note="Caution.",
)
C_RAIN = Message(
    "Rain: people first. In when it thunders, out {minutes} minutes after the last thunder. Then "
    "cover the mats and drain surplus water.",
    note="Caution.",
    segments=2,
)
C_RAIN_BED = Message(
    "Rain: people first. In when it thunders, out {minutes} minutes after the last thunder. Then "
    "cover the bed if you can and drain surplus water.",
    note="Caution, for a bed that is no mat.",
    segments=2,
)
C_WATER = Message(
    "Keep small children away from standing water. Mosquitoes breed in water that stands for a "
    "week.",
    note="Caution.",
)
C_UREA = Message(
    "Yellow leaves are often short of nitrogen, but first look for spots, insects, yellow on "
    "young leaves only, cold nights, salt or standing water; if any, ask the officer.",
    note="Caution.",
    segments=2,
)
C_UREA_SPRAY = Message(
    "Urea: once, never stronger than {grams} g in each litre, in the evening, then rinse leaves "
    "with clean water. Keep off eyes and hands (rinse eyes {minutes} minutes), away from children "
    "and animals.",
    note="Caution.",
    segments=2,
)
C_MANURE = Message(
    "Wash hands after handling manure.", note="Caution, where there is no rice hull in the mix."
)
C_LOAD = Message(
    "Mats and pails are heavy: lift with bent knees, two to a load.", note="Caution."
)
C_LOAD_BED = Message(
    "Full pails and wet loads are heavy: lift with bent knees, two to a load.",
    note="Caution, for a bed that is no mat.",
)
