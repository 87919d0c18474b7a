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

# --- what a mix is made of, as far as there is any of it --------------------------------------
PART_SOIL = Message("{amount} of soil", note="A part of a mix in a list: pails or tins.")
PART_MANURE = Message("{amount} of rotted manure", note="A part of a mix in a list.")
PART_HULL = Message(
    "{amount} of rice hull", note="A part of a mix in a list; hull is the husk of the grain."
)

# --- quantities and dates -------------------------------------------------------------------
SEED_MATS = Message(
    "Nursery {label} ({practice}): field {area}, germination {percent}%, {spacing} cm, {seedlings} "
    "a hill. Seed {seed} dry, {sprouted} sprouted. Bed {bed} m2, {mats}. Sprouted "
    "seed: {heaps}.",
    segments=2,
    note="Quantities of a bed of mats of another size than usual.",
)
SEED_TRAYS = Message(
    "Nursery {label} ({practice}): field {area}, germination {percent}%, {spacing} cm, {seedlings} "
    "a hill. Seed {seed} dry, {sprouted} sprouted. Bed {bed} m2, {mats}. Sprouted "
    "seed: {heaps}.",
    segments=2,
    note="Quantities of a bed of trays.",
)
SEED_OPEN = Message(
    "Nursery {label} ({practice}): field {area}, germination {percent}%, {spacing} cm, {seedlings} "
    "a hill. Seed {seed} dry, {sprouted} sprouted. Bed {bed} m2: {grams} g of sprouted seed "
    "on each m2.",
    segments=2,
    note="Quantities of an open bed.",
)
MIX_TRAYS = Message(
    "Soil mix {mix} L: {parts}. Urea {urea}, only if yellow: ask first. Half-fill pails, they are "
    "heavy.",
    note="What goes into trays; {parts} is a list, such as '2 of soil, 1 of rotted manure'.",
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
    "This week collect {mats}, {mix} L of soil mix ({parts}), {seed} seed.",
    note="7 days before sowing; {parts} is a list, such as '2 of soil, 1 of rotted manure'.",
)
P_COLLECT_OPEN = Message(
    "Collect {mix} L of rotted manure and {seed} seed for {bed} m2 of bed.",
    note="A week or two before sowing.",
)
P_COLLECT_MIX = Message(
    "Collect {mix} L of soil mix ({parts}) and {seed} seed for {bed} m2 of bed.",
    note="A week or two before sowing; {parts} is a list, such as '1 of soil, 3 of rotted manure'.",
)
P_MIX_TRAYS = Message(
    "Mix {mix} L: {parts}, without stones. Half-fill pails to carry: they are heavy.",
    note="3 days before sowing; {parts} is a list, such as '2 of soil, 1 of rotted manure'.",
)
P_BED_WET = Message(
    "Make the bed: puddle and level {bed} m2, work in {mix} L of rotted manure, leave ditches "
    "to let water in and out.",
    note="Days before sowing an open wet bed.",
)
P_BED_DRY = Message(
    "Make the beds, {bed} m2 in all: {strip} m wide, {raised} cm high, fine soil; work in "
    "{mix} L of rotted manure.",
    note="Days before sowing an open dry bed.",
)
P_DRAIN_SEED = Message(
    "Drain the seed, keep it moist, warm and covered until you sow on {sow}. Do not eat or feed "
    "treated seed; wash hands.",
    note="Keep the caution.",
)
P_SOW_TRAYS = Message(
    "Sow if roots are {root_low}-{root_high} mm: {heaps}, spread evenly, cover with "
    "{least_mm}-{most_mm} mm soil, water at once, keep covered.",
    note="The day of sowing.",
)
P_SOW_WET = Message(
    "Sow if roots are {root_low}-{root_high} mm: spread {grams} g of sprouted seed on each "
    "m2 of smooth wet mud. No standing water.",
    note="The day of sowing.",
)
P_SOW_DRY = Message(
    "Sow if roots are {root_low}-{root_high} mm: spread {grams} g of sprouted seed on each "
    "m2, cover thinly with fine soil, water at once, cover with straw.",
    note="The day of sowing.",
)
P_WET = Message(
    "Keep the mud wet, without standing water. Guard from heavy rain, birds, poultry, rats.",
    note="Days 0 to 4 of a wet bed.",
)
P_WATER_DRY = Message(
    "Water the bed today, about {cans}, with a fine rose. Guard from heavy rain, birds, "
    "poultry, rats.",
    note="Every second day of a dry bed; pails are the farmer's own.",
)
P_WATER_MUCH = Message(
    "Water the bed today, about {cans}: no work for pails. Let it run in between the strips until "
    "the soil is wet, then off; or use a pump.",
    note="Every second day of a large dry bed.",
)
P_UNCOVER_TRAYS = Message(
    "Shoots up? Uncover and let in {depth} cm of water round the trays, about {pails}. Not "
    "up: keep moist and covered.",
    note="Day 5.",
)
P_UNCOVER_DRY = Message(
    "Shoots up? Take the straw off and go on watering with a fine rose. Not up: keep moist and "
    "covered.",
    note="Day 5 of a dry bed, which is watered and never flooded.",
)
P_LET_IN = Message(
    "Shoots up? Let in water, a little more as they grow, up to {depth} cm, {most} when tall. Not "
    "up: keep the mud wet only.",
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
P_KEEP_TRAYS = Message(
    "Keep {depth} cm of water round the trays.",
    note="Days 6 until draining.",
)
P_KEEP_WET = Message(
    "Keep up to {depth} cm of water on the bed, {most} when the seedlings are tall.",
    note="Days 6 and after; {most} is in cm too.",
)
P_KEEP_UNSURE = Message(
    "Uncovered? Keep {depth} cm of water. Not up yet? Keep it moist and covered, and send "
    "NOT YET.",
    note="Days 6 and after, when nobody said that the bed is uncovered. NOT YET is sent.",
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
P_FILL_GAPS = Message(
    "Look for gaps in the field and fill them today with seedlings you kept, by {fill_by} at the "
    "latest.",
    note="4 days after transplanting; {fill_by} is a date.",
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
    "{label}: transplanted. Well done! Keep some seedlings moist: fill gaps within "
    "{gap_days} days. I remind you and then ask how it went.",
    note="The field is planted.",
)
GREEN_NOTED = Message("{label}: green, good.", note="Leaves are green.")

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
    "{label}: {shoots} shoots in a square, {needed} are wanted. It is enough for {fewest} a "
    "hill, or sow more. What do you do?",
    note="Half or more of the shoots that are wanted; choices follow.",
)
DO_FILL = Message("Sow more", note="A choice: fill up a thin bed.")
FILL_NOTED = Message(
    "{label}: soak {seed} seed today, drain it tomorrow, sow {bed} m2 more on {sowing}. It is "
    "ready from {first}: plant it last.",
    note="More bed to fill up a thin one; {first} is a date.",
)

M_NONE_STANDS = Message(
    "Let the water run off: none may stand on this bed.",
    note="What yellow leaves may be; 'I have told your officer' follows. A dry bed.",
)
NOT_UP_TIP_WET = Message(
    "Keep the mud wet, not flooded, and look again tomorrow. Still bare? You may have to sow again: "
    "your officer will be told.",
    note="Few shoots come up in a wet bed.",
)
WAIT_WET = Message(
    "{label}: keep the mud wet, not flooded. Count again on {date}: send PROBLEM.",
    note="The farmer waits for more shoots in a wet bed. PROBLEM is a word to send.",
)
P_MORE_SOW_WET = Message(
    "Sow the added seed today if roots are {root_low}-{root_high} mm. Keep its mud wet, "
    "without standing water; guard it from rain and birds.",
    note="Seed that fills up a thin wet bed; day 0 of it.",
)
P_MORE_UP_WET = Message(
    "Added seed: shoots up? Give it water like the rest. Not up: keep the mud wet only.",
    note="Day 5 of the added seed in a wet bed.",
)

# --- weather --------------------------------------------------------------------------------
RAIN_EARLY = Message(
    "Keep people safe first: stay in during lightning. Before rain cover the bed if you can, "
    "weigh the cover down; let water run off. Days 0-{guard_until} are the weakest.",
    note="Rain on a young bed that is no mat.",
    segments=2,
)
RAIN_LATER_DEEP = Message(
    "Keep people safe first: stay in during lightning. Open the ditch so that water does not stand "
    "over the leaves, then bring it back to {depth} cm.",
    note="Rain or flood on an older bed with standing water.",
)
RAIN_LATER_DRY = Message(
    "Keep people safe first: stay in during lightning. Open the ditches so that no water stands on "
    "the bed.",
    note="Rain or flood on an older bed that is only watered.",
)
FLOOD_EARLY = Message(
    "People first: stay out of moving water. When it falls, let water run off the bed, mend its "
    "cover. Seed gone? Send PROBLEM, 2.",
    note="Flood on a young bed that is no mat. PROBLEM is a word to send.",
)
FLOOD_LATER_DEEP = Message(
    "People first: stay out of moving water. Then let it down to {depth} cm, wash mud off the leaves "
    "with clean water. I tell your officer.",
    note="Flood on an older bed with standing water.",
)
FLOOD_LATER_DRY = Message(
    "People first: stay out of moving water. Then let it all run off, wash mud off the leaves with "
    "clean water. I tell your officer.",
    note="Flood on an older bed that is only watered.",
)
DROUGHT_WET = Message(
    "No water: keep the mud wet by hand, morning and evening, about {pails} each time. Shade "
    "helps. Children stay away from wells.",
    note="Drought on a young wet bed; pails are the farmer's own.",
)
DROUGHT_LATER = Message(
    "No water: water by hand morning and evening, about {pails} each time, before the bed "
    "cracks. Keep drinking water for people.",
    note="Drought on an older bed that is no mat.",
)
COLD_LATER_DEEP = Message(
    "Cold nights: keep the water overnight. Pale leaves green up later: no urea in the cold. Leaves "
    "come slower: count before planting.",
    note="Cold on an older bed with standing water.",
)
COLD_LATER_DRY = Message(
    "Cold nights: cover the bed at night. Pale leaves green up later: no urea in the cold. Leaves "
    "come slower: count before planting.",
    note="Cold on an older bed that is only watered.",
)

# --- watering, lifting, spare seedlings -----------------------------------------------------
WATERING_WET = Message(
    "{label}: keep the mud wet, without standing water. From {uncover} let in water, a little more "
    "as shoots grow, up to {depth} cm, {most} when tall.",
    note="Water for a wet bed.",
)
WATERING_DRY = Message(
    "{label}: water every {every} days, about {pails}, with a fine rose: moist, no puddles.",
    note="Watering by hand of a dry bed; {every} is 2 or more.",
)
WATERING_MUCH = Message(
    "{label}: water every {every} days, about {pails}: no work for pails. Let it run in between the "
    "strips until the soil is wet, then off; or use a pump.",
    note="Watering of a large dry bed; {every} is 2 or more.",
)
KEEP_NOW = Message(
    "{label}: from now on keep {depth} cm of water, let more in when it sinks.",
    note="Water for a bed that is uncovered; it stands on the bed or round it.",
)
SPARE = Message(
    "For gaps raise {least} to {most} of 100 seedlings more, sown the same day, and keep some moist "
    "after planting. Spare ones: offer them to a neighbour within a day or two.",
    note="Seedlings for gaps; surplus seedlings, where there are no mats.",
)
T_SPARE = Message("Spares and gaps", note="A choice: tips, where there are no mats.")
LIFT_TRAYS = Message(
    "Drain the bed on {drain}. Carry few trays at a time in shade, plant the same day. A wet tray "
    "weighs about {weight} kg.",
    note="Lifting and carrying trays.",
)

# --- transplanting and result ---------------------------------------------------------------
PULL_TIP = Message(
    "Let in deeper water the day before. Pull gently, wash the roots, tie bundles, keep them wet in "
    "shade. Plant the same day.",
    note="Pulling seedlings from an open bed.",
)
PULL_DRY = Message(
    "Water the bed well the day before. Pull gently, wash the roots, tie bundles, keep them wet in "
    "shade. Plant the same day.",
    note="Pulling seedlings from a dry bed.",
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

# --- another kind of bed, asked for in a sentence --------------------------------------------
BED_IS = Message(
    "{label}: planned as {practice} already.", note="{practice} is a kind of bed, such as mat."
)
BED_SOWN = Message(
    "{label}: sown as {practice} and stays so until it is planted. Your officer has your words.",
    note="Another kind of bed was asked for; {practice} is a kind of bed, such as mat.",
)
BED_NOT_HERE = Message(
    "{label}: that kind of bed is not offered in your village. It stays: {practice}. Your officer has "
    "your words.",
    note="Another kind of bed was asked for; {practice} is a kind of bed, such as mat.",
)
ON_ROOF = Message(
    "{label}: on a roof only if it surely holds: wet, the bed weighs about {heavy} kg on each m2. Keep "
    "children from the edge. Ask your officer first.",
    note="The farmer tells that the bed is on a roof. Keep the cautions.",
)
