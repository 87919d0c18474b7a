"""Texts of the daily work: one sentence a task, its short name, and what may be answered.

Digits in a text are what the farmer may answer; keep them.
"""

from assistant.wording.message import Message

# --- short names, as in "A: soak the seed done" ---------------------------------------------
N_SEED_TEST = Message("test the seed", note="Short name of a task, inside a sentence.")
N_SEED_COUNT = Message("count the seed test", note="Short name of a task.")
N_SEED_HELD = Message("get other seed", note="Short name of a task.")
N_COLLECT = Message("collect material", note="Short name of a task.")
N_MIX = Message("mix the soil", note="Short name of a task.")
N_SOAK = Message("soak the seed", note="Short name of a task.")
N_DRAIN_SEED = Message("drain the seed", note="Short name of a task.")
N_SOW = Message("sow", note="Short name of a task.")
N_WATER = Message("water twice", note="Short name of a task.")
N_RAIN_WATCH = Message("watch for rain", note="Short name of a task.")
N_UNCOVER = Message("uncover and flood", note="Short name of a task.")
N_KEEP_WATER = Message("keep the water level", note="Short name of a task.")
N_COLOUR = Message("look at leaf colour", note="Short name of a task.")
N_LEAVES = Message("count leaves", note="Short name of a task.")
N_CHOOSE = Message("choose the transplanting day", note="Short name of a task.")
N_DRAIN_BED = Message("drain the bed", note="Short name of a task.")
N_TRANSPLANT = Message("transplant", note="Short name of a task.")
N_OVERDUE = Message("transplant soon", note="Short name of a task.")
N_MORE_SOW = Message("sow the added seed", note="Short name of a task.")
N_MORE_UNCOVER = Message("look at the added seed", note="Short name of a task.")
N_MORE_READY = Message("plant the added seedlings", note="Short name of a task.")
N_AFTER_FLOOD = Message("look at the bed", note="Short name of a task, after a flood.")
N_YOUNG_FIELD = Message("look at the field", note="Short name of a task, after planting.")
N_FIRST_FEED = Message("ask how to feed the field", note="Short name of a task.")
N_FILL_GAPS = Message("fill the gaps", note="Short name of a task.")
N_RESULT = Message("tell the result", note="Short name of a task.")
N_FIELD_FLOOD = Message("flood the field", note="Short name of a task.")
N_FIELD_PLOUGH = Message("plough the field", note="Short name of a task.")
N_FIELD_PUDDLE = Message("puddle the field", note="Short name of a task.")
N_FIELD_LEVEL = Message("level the field", note="Short name of a task.")

# --- the sentences of a prompt --------------------------------------------------------------
HEAD = Message("{label} day {day}:", note="Begins a nursery's part of the daily text.")
HEAD_BEFORE = Message("{label}:", note="The same, before the day of sowing.")
P_SEED_TEST = Message(
    "Test your seed now, while you can still buy other: 100 seeds in a wet cloth for "
    "{test_days} days. Then I ask for the count.",
    note="15 days before sowing. 'Begun' and 'How?' follow as choices.",
)
P_SEED_TEST_AGAIN = Message(
    "Your seed test says {percent} of 100. Long ago, or other seed? Then test again now: 100 "
    "seeds in a wet cloth for {test_days} days.",
    note="15 days before sowing, to who gave a count. 'Begun' and 'How?' follow as choices.",
)
P_SEED_COUNT = Message(
    "Your seed test is {test_days} days old: count seeds with root and shoot. Send the "
    "count, e.g. 83 of 100.",
    note="The day on which a home test is counted.",
)
P_SEED_HELD = Message(
    "Sowing waits: too little of your seed sprouts, so do not soak or sow it. Have you other seed? "
    "Its test takes a week.",
    note="Said every third day. 'Test begun', 'New seed', 'Not yet' follow as choices.",
)
P_COLLECT = Message(
    "This week collect {soil} pails of soil, {manure} of rotted manure, {hull} of rice hull, "
    "{sheet} m2 of sheet or banana leaves, {seed} seed.",
    note="7 days before sowing; pails are the farmer's own.",
)
P_COLLECT_SMALL = Message(
    "This week collect {mix} L of soil mix ({parts}), {sheet} m2 of sheet or banana leaves, "
    "{seed} seed.",
    note="As before, for a very small bed.",
)
P_MIX = Message(
    "Mix by pails: {parts}; {batches} pails in all. Half-fill pails to carry: a full "
    "{litres} L pail weighs {pail_low}-{pail_high} kg.",
    note="3 days before sowing.",
)
P_MIX_SMALL = Message(
    "Mix {mix} L with a tin or bowl: {parts}.",
    note="As before, for a very small bed.",
)
P_SOAK = Message(
    "Soak {seed} seed {soak_hours} h in clean water. Keep the pail covered: small children "
    "can drown. To sort seed first, or slow seed: MENU, 9.",
    note="2 days before sowing. Keep the caution.",
)
P_DRAIN_SEED = Message(
    "Drain the seed, keep it moist, warm and covered {lie_hours} h. Do not eat or feed "
    "treated seed; wash hands.",
    note="The day before sowing. Keep the caution.",
)
P_SOW = Message(
    "Sow if roots are {root_low}-{root_high} mm: {heaps}, spread evenly, cover with "
    "{least_mm}-{most_mm} mm soil, pat, water at once, cover with leaves or straw.",
    note="The day of sowing.",
)
P_WATER = Message(
    "Water morning and evening till moist, about {cans} each time, keep covered. Guard from "
    "heavy rain, birds, poultry, rats.",
    note="Days 0 to 4; {cans} are the farmer's own pails for one watering.",
)
P_RAIN_WATCH = Message(
    "Still guard it from heavy rain, birds, poultry, rats.",
    note="Day 5, when it stays covered.",
)
P_UNCOVER = Message(
    "Shoots up? Uncover and let in {depth} cm of water round the mats, about {pails}. Not "
    "up: keep moist and covered.",
    note="Day 5.",
)
P_UNCOVER_RAIN = Message(
    "Rain warning: do NOT uncover yet. Keep the mats covered and drain surplus water until the "
    "all-clear.",
    note="Replaces 'uncover' while a rain warning stands.",
)
P_SOW_RAIN = Message(
    "Rain warning: do NOT sow yet. Keep the seed moist, shaded and covered; I ask again "
    "tomorrow.",
    note="Replaces 'sow' while a rain warning stands.",
)
P_KEEP_WATER = Message(
    "Keep {depth} cm of water round the mats.",
    note="Days 6 until draining.",
)
P_COLOUR = Message("Look at the leaves: are they green or yellow?", note="Day 7.")
P_LEAVES = Message(
    "Count the open leaves of a few plants (not the first small one, which stays closed). Send the number, "
    "e.g. 3.",
    note="Day 12.",
)
P_DRAIN_BED = Message(
    "Drain the bed today, so that mats can be lifted on {date}.",
    note="2 days before transplanting.",
)
P_TRANSPLANT = Message(
    "Transplant {spacing} cm, {seedlings} a hill, if there are {few} to {many} open leaves. "
    "A wet mat weighs about {weight} kg: share the load.",
    note="The day of transplanting.",
)
P_TRANSPLANT_WAIT = Message(
    "Not planted yet? Sprinkle the drained bed morning and evening. Transplant {spacing} cm "
    "apart, {seedlings} in a hill, at {few} to {many} leaves.",
    note="After the planned day of transplanting.",
)
P_WINDOW = Message(
    "From today to {last} is the time to transplant, at {few} to {many} open leaves. Your "
    "day: {date}. Other day: CHANGE DATE.",
    note="Day 15, when the day of transplanting is still ahead.",
)
P_WINDOW_OPEN = Message(
    "From today to {last} is the time to transplant, at {few} to {many} open leaves. I count on "
    "{date}. Other day: CHANGE DATE.",
    note="The same, where the farmer chose no day.",
)
P_OVERDUE = Message(
    "Transplant soon if there are {few} leaves or more.",
    note="Day 21 and after.",
)
P_OVERDUE_OLD = Message(
    "Transplant soon if there are {few} leaves or more. For each week late put one seedling "
    "more in a hill. They then fill less of the field, and may yield less.",
    note="Day 24 and after.",
)
P_MORE_SOW = Message(
    "Sow the added seed today if roots are {root_low}-{root_high} mm. Water it morning and "
    "evening, keep it covered, guard it from rain and birds.",
    note="Seed that fills up a thin bed; day 0 of it.",
)
P_MORE_UNCOVER = Message(
    "Added seed: shoots up? Uncover it and give it water like the rest. Not up: keep it moist and "
    "covered.",
    note="Day 5 of the added seed.",
)
P_MORE_READY = Message(
    "The added seedlings can be planted from today, if they have {few} to {many} open leaves.",
    note="The first day for transplanting the added part.",
)
P_AFTER_FLOOD = Message(
    "After the flood or storm: go and look only when it is safe. Is the bed still there?",
    note="The morning after a farmer told of a flood or storm. Keep the caution.",
)
P_YOUNG_FIELD = Message(
    "Keep {low_cm} to {high_cm} cm of water in the field, not more. Pick snails and their pink eggs "
    "by hand, with gloves, morning and evening. No bait, no poison.",
    note="The day after transplanting.",
)
P_FILL_GAPS = Message(
    "Look for gaps in the field today and fill them with the mats you kept. The last day is "
    "{fill_by}. Spare mats? Offer them to a neighbour.",
    note="4 days after transplanting; {fill_by} is a date.",
)
P_FIRST_FEED = Message(
    "Ask your officer now about the first fertiliser of the field: which, how much, which "
    "day. None before heavy rain, never more than told.",
    note="7 days after transplanting; no dose stands here.",
)
P_RESULT = Message(
    "How did it go? Did the mats of this bed plant the whole field?",
    note="8 days after transplanting; 'Mats left', 'Just enough', 'Too few' follow.",
)
P_FIELD_FLOOD = Message("Main field: let in water, so that it can be ploughed.", note="Field.")
P_FIELD_PLOUGH = Message(
    "Main field: plough, {plough_low}-{plough_high} cm deep.",
    note="Field.",
)
P_FIELD_PUDDLE = Message("Main field: harrow and puddle.", note="Field.")
P_FIELD_LEVEL = Message("Main field: level it, then let the mud settle.", note="Field.")
DUE_BEFORE = Message(
    "{label}: late already: {tasks}. Do that first. For each step send NEXT.",
    note="A plan that was made late; {tasks} is a list of tasks. NEXT is a word to send.",
)
CATCH_UP = Message("Still open from {date}: {what}.", note="Yesterday's text did not arrive.")
SOW_ASSUMED = Message(
    "I take it you sowed on {sow}. If not, send CHANGE DATE.",
    note="The farmer never answered whether the seed is sown.",
)
SECOND_ASKING = Message(
    "{label}: did you {what} today?", note="Asked once more; {what} is a task."
)
UNDER_WAY = Message(
    "{label}: good, go on. When all of it is done, send 1.",
    note="The farmer says that the work asked for has begun. 1 is sent.",
)

# --- what may be answered -------------------------------------------------------------------
ASK_DONE = Message("1 Done 2 Not yet", note="Last line of a prompt.")
ASK_UP = Message("1 Done 2 Not up", note="Last line of the prompt for uncovering.")
ASK_COLOUR = Message("1 Green 2 Yellow 3 Pale", note="Last line of the prompt for leaf colour.")
ASK_FLOOD = Message(
    "1 It stands 2 Part is gone 3 All gone", note="Last line of the question after a flood."
)
ASK_BEGUN = Message("1 Begun 2 How?", note="Last line of the prompt for the seed test.")
ASK_SEED = Message(
    "1 Test begun 2 New seed 3 Not yet", note="Last line of the question for other seed."
)
ASK_MATS = Message(
    "1 Mats left 2 Just enough 3 Too few", note="Last line of the question for the result."
)
ASK_SEVERAL = Message(
    "When done send DONE {label}, or NOT YET {label}.",
    note="Several tasks are asked; {label} is an example, such as B. DONE and NOT YET are sent.",
)
DONE = Message("Done", note="A choice.")
NOT_YET = Message("Not yet", note="A choice.")
GREEN = Message("Green", note="A choice: the colour of leaves.")
YELLOW = Message("Yellow", note="A choice: the colour of leaves.")
PALE = Message("Pale", note="A choice: leaves are light green, not yellow.")
STANDS = Message("It stands", note="A choice: the bed, on the morning after a flood or storm.")
PART_GONE = Message("Part is gone", note="A choice: the bed, after a flood or storm.")
ALL_GONE = Message("All gone", note="A choice: the bed, after a flood or storm.")
WHICH_DONE = Message("Which one is done?", note="A list of tasks follows.")
WHICH_NOT = Message("Which one is not done?", note="A list of tasks follows.")
ITEM_LINE = Message("{label} {what}", note="One task of one nursery in a list.")
