"""Texts for beds that are no mats: an open wet bed, an open dry bed, trays for a machine.

They stand where the texts for mats name a mat, a sheet or a frame. Digits are what the farmer
may answer; keep them. {practice} is the bed's name, such as "wet bed".
"""

from assistant.wording.message import Message

# --- which practice -------------------------------------------------------------------------
ASK_PRACTICE = Message(
    "How will you raise the seedlings?", note="Ways of raising them follow, with digits."
)
THE_PRACTICE = Message("Kind of bed", note="A choice: change how seedlings are raised.")

# --- quantities and dates -------------------------------------------------------------------
SEED_TRAYS = Message(
    "Nursery {label} ({practice}): field {area}, germination {percent}%, {spacing} cm, {seedlings} "
    "a hill. Seed {seed} kg dry, {sprouted} kg sprouted. Bed {bed} m2, {mats} trays. Divide the "
    "sprouted seed into {mats} equal heaps, one a tray.",
    segments=2,
    note="Quantities of a bed of trays.",
)
SEED_OPEN = Message(
    "Nursery {label} ({practice}): field {area}, germination {percent}%, {spacing} cm, {seedlings} "
    "a hill. Seed {seed} kg dry, {sprouted} kg sprouted. Bed {bed} m2: {grams} g of sprouted seed "
    "on each m2.",
    segments=2,
    note="Quantities of an open bed.",
)
MIX_TRAYS = Message(
    "Soil mix {mix} L: {soil_part} of soil, {manure_part} of rotted manure, {hull_part} of rice "
    "hull. Urea {urea}, only if yellow: ask first. Half-fill pails, they are heavy.",
    note="What goes into trays; the parts are pails or tins.",
)
MIX_OPEN = Message(
    "Rotted manure {mix} L, spread over the bed. Urea {urea}, only if yellow: ask first.",
    note="What goes onto an open bed.",
)
DATES_OPEN = Message(
    "{label}: soak {soak}, drain seed {drain}, sow {sow}, transplant {first} to {last}. I text you "
    "each day. Other day: CHANGE DATE.",
    segments=2,
    note="Main dates of an open bed.",
)
SOWN_OPEN = Message(
    "{label}: sown {sow}, transplant {first} to {last}. I text you each day. Other day: CHANGE "
    "DATE.",
    note="Main dates of an open bed that is sown.",
)
MOVED_OPEN = Message(
    "{label}: sowing is now {sow}, transplant {first} to {last}.",
    note="New days of an open bed.",
)
PLANT_DAY_OPEN = Message(
    "{label}: transplanting {date}.", note="The chosen day; an open bed is not drained."
)

# --- the sentences of a prompt --------------------------------------------------------------
P_COLLECT_TRAYS = Message(
    "This week collect {mats} trays, {mix} L of soil mix (soil {soil_part}, rotted manure "
    "{manure_part}, rice hull {hull_part}), {seed} kg seed.",
    note="7 days before sowing.",
)
P_COLLECT_OPEN = Message(
    "Collect {mix} L of rotted manure and {seed} kg seed for {bed} m2 of bed.",
    note="A week or two before sowing.",
)
P_MIX_TRAYS = Message(
    "Mix {mix} L: {soil_part} of soil, {manure_part} of rotted manure, {hull_part} of rice hull, "
    "without stones. Half-fill pails to carry: they are heavy.",
    note="3 days before sowing.",
)
P_BED_WET = Message(
    "Make the bed: puddle and level {bed} m2, work in {mix} L of rotted manure, leave ditches "
    "to let water in and out.",
    note="Days before sowing an open wet bed.",
)
P_BED_DRY = Message(
    "Make the beds, {bed} m2 in all: 1 m wide, 15 cm high, fine soil; work in {mix} L of rotted "
    "manure.",
    note="Days before sowing an open dry bed.",
)
P_DRAIN_SEED = Message(
    "Drain the seed, keep it moist, warm and covered until you sow on {sow}. Do not eat or feed "
    "treated seed; wash hands.",
    note="Keep the caution.",
)
P_SOW_TRAYS = Message(
    "Sow if roots are 2-3 mm: {mats} equal heaps, one a tray, spread evenly, cover with 3-10 mm "
    "soil, water at once, keep covered.",
    note="The day of sowing.",
)
P_SOW_WET = Message(
    "Sow if roots are 2-3 mm: spread {grams} g of sprouted seed on each m2 of smooth wet mud. No "
    "standing water.",
    note="The day of sowing.",
)
P_SOW_DRY = Message(
    "Sow if roots are 2-3 mm: spread {grams} g of sprouted seed on each m2, cover thinly with fine "
    "soil, water at once, cover with straw.",
    note="The day of sowing.",
)
P_WET = Message(
    "Keep the mud wet, without standing water. Guard from heavy rain, birds, poultry, rats.",
    note="Days 0 to 4 of a wet bed.",
)
P_WATER_DRY = Message(
    "Water the bed today, about {cans} pails, with a fine rose. Guard from heavy rain, birds, "
    "poultry, rats.",
    note="Every second day of a dry bed; pails are the farmer's own.",
)
P_UNCOVER_TRAYS = Message(
    "Shoots up? Uncover and let in 1 cm of water round the trays, about {pails} pails. Not up: keep "
    "moist and covered.",
    note="Day 5.",
)
P_LET_IN = Message(
    "Shoots up? Let in water, a little more as they grow, up to {depth} cm. Not up: keep the mud "
    "wet only.",
    note="Day 5 of a wet bed.",
)
P_WAIT_TRAYS = Message(
    "Rain warning: do NOT uncover yet. Keep the bed covered and drain surplus water until the "
    "all-clear.",
    note="Replaces 'uncover' while a rain warning stands.",
)
P_WAIT_WET = Message(
    "Rain warning: let in no water yet. Open the ditches so that rain runs off, until the "
    "all-clear.",
    note="Replaces 'let in water' while a rain warning stands.",
)
P_KEEP_TRAYS = Message("Keep 1 cm of water round the trays.", note="Days 6 until draining.")
P_KEEP_WET = Message("Keep up to {depth} cm of water on the bed.", note="Days 6 and after.")
P_KEEP_UNSURE = Message(
    "Uncovered? Keep 1 cm of water. Not up yet? Keep it moist and covered, and send NOT YET.",
    note="Days 6 and after, when nobody said that the bed is uncovered. NOT YET is sent.",
)
P_WINDOW = Message(
    "From today to {last} is the time to transplant, at {few} to {many} open leaves. Your day: "
    "{date}. Other day: CHANGE DATE.",
    note="When the day of transplanting is still ahead.",
)
P_DRAIN_TRAYS = Message(
    "Drain the bed today, so that trays can be lifted on {date}.",
    note="2 days before transplanting.",
)
P_PLANT_TRAYS = Message(
    "Transplant {spacing} cm, {seedlings} a hill, if there are {few} to {many} open leaves. A wet "
    "tray weighs about {weight} kg: share the load.",
    note="The day of transplanting.",
)
P_PULL = Message(
    "Transplant {spacing} cm, {seedlings} a hill, if there are {few} to {many} open leaves. Wet the "
    "bed well, pull gently, plant the same day.",
    note="The day of transplanting from an open bed.",
)
P_OVERDUE = Message("Transplant soon if there are {few} leaves or more.", note="Overdue.")
P_OVERDUE_OLD = Message(
    "Transplant soon if there are {few} leaves or more, one seedling more a hill for each week "
    "late: old seedlings root late and yield less.",
    note="Overdue by more than three days.",
)
P_FILL_GAPS = Message(
    "Planted a week ago: fill gaps today with spare seedlings, not later.",
    note="7 days after transplanting.",
)
P_RESULT = Message(
    "How did it go? Did the seedlings of this bed plant the whole field?",
    note="8 days after transplanting; 'Some left', 'Just enough', 'Too few' follow.",
)
ASK_SUFFICED = Message(
    "1 Some left 2 Just enough 3 Too few", note="Last line of the question for the result."
)

# --- what the farmer did --------------------------------------------------------------------
SOWN_NOTED = Message("{label}: sown {sow}. Other day: CHANGE DATE.", note="The bed is sown.")
NOT_UP_WET = Message(
    "{label}: keep the mud wet, not flooded. Look again tomorrow, {date}. Few or none up by then: "
    "send PROBLEM.",
    note="Shoots of a wet bed are not up.",
)
PLANTED_NOTED = Message(
    "{label}: transplanted. Well done! Keep some seedlings moist: fill gaps within 7 days. I remind "
    "you and then ask how it went.",
    note="The field is planted.",
)
GREEN_NOTED = Message("{label}: green, good.", note="Leaves are green.")
LEAVES_FEW = Message(
    "{label}: {count} open leaves is early. Cool weather is slower. Transplant at {few} to {many}.",
    note="The count of open leaves is low.",
)
PLANT_OUTSIDE = Message(
    "{date} is day {day} after sowing; best is day {low} to {high}, with {few} to {many} open "
    "leaves.",
    note="A wished day that is early or late.",
)
PAST_WINDOW = Message(
    "That bed is {days} days old: transplant soon if there are {few} leaves or more.",
    note="A bed that was sown long ago.",
)

# --- trouble --------------------------------------------------------------------------------
M_DEEP = Message(
    "Let the water down to {depth} cm.",
    note="What yellow leaves may be; 'I have told your officer' follows.",
)
MIXED = Message(
    "{label}: together {percent}%. Sow each lot on a part of the bed of its own, by its share: they "
    "come up on different days.",
    note="Two seed lots in one bed without mats.",
)
STAND_FILL = Message(
    "{label}: {shoots} shoots in a square, {needed} are wanted. It is enough for 1 a hill, or sow "
    "more. What do you do?",
    note="Half or more of the shoots that are wanted; choices follow.",
)
DO_FILL = Message("Sow more", note="A choice: fill up a thin bed.")
FILL_NOTED = Message(
    "{label}: soak {seed} kg seed today, drain it tomorrow, sow {bed} m2 more on {sowing}. It is "
    "ready from {first}: plant it last.",
    note="More bed to fill up a thin one; {first} is a date.",
)

# --- transplanting and result ---------------------------------------------------------------
PULL_TIP = Message(
    "Let in deeper water the day before. Pull gently, wash the roots, tie bundles, keep them wet in "
    "shade. Plant the same day.",
    note="Pulling seedlings from an open bed.",
)
ASK_SUFFICED_OF = Message(
    "{label}: did the seedlings plant the whole field of {area}?",
    note="Question for the season's result; three choices follow.",
)
ASK_BED_LEFT = Message(
    "How much of the bed was left over?", note="Question after 'Some left'; choices follow."
)
ASK_RESOWN = Message(
    "Did you have to sow this bed, or a part of it, again?", note="Yes or no follows."
)
SURPLUS = Message(
    "Spare seedlings: use some to fill gaps, offer the rest to a neighbour while they are fresh.",
    note="Seedlings were left over.",
)
SHORT = Message(
    "Too few seedlings: ask neighbours and your officer for spare ones; plant within days.",
    note="Part of the field is not planted.",
)
SOME_LEFT = Message("Some left", note="A choice: more seedlings were raised than needed.")
A_LITTLE = Message("A little", note="A share of the bed: about a tenth.")
