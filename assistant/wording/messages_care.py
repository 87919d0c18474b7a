"""Texts of care and trouble: what a farmer sees, poor emergence, weather, tips.

Digits in a text are what the farmer may answer; keep them. No text names a dose of a pesticide.
"""

from assistant.wording.message import Message

# --- yellow leaves: nitrogen, or something that looks like it -------------------------------
ASK_WHICH_LEAVES = Message(
    "{label}: which leaves are yellow, and from where?",
    note="Asked about yellow leaves without other signs; a list follows.",
)
L_TIP = Message("Old leaves, from the tip", note="Which leaves are yellow.")
L_BASE = Message("Old leaves, from the base", note="Which leaves are yellow.")
L_ALL = Message("All leaves alike", note="Which leaves are yellow.")
L_NEW = Message("New leaves first", note="Which leaves are yellow.")
L_UNSURE = Message("Not sure", note="The farmer cannot tell.")
ASK_WHERE = Message("{label}: where is it yellow?", note="Asked about the bed; a list follows.")
W_EVEN = Message("All over the bed", note="Where the leaves are yellow.")
W_PATCHES = Message("In patches", note="Where the leaves are yellow.")
W_EDGES = Message("At the edges", note="Where the leaves are yellow.")
W_SMELL = Message("It smells rotten", note="A sign at the bed or its roots.")
ASK_CAN = Message(
    "{label}: looks like too little nitrogen. How many litres does your can or sprayer hold? Send "
    "a digit, or the litres.",
    note="Choices 5, 10, 16 litres follow.",
)
AGAIN_CAN = Message(
    "Send the litres your can or sprayer holds, 1 to 30, e.g. 10. Or a digit from the list.",
    note="The size of the can could not be read.",
)
UREA_CAN = Message(
    "{label}: too little nitrogen. Once only, never stronger: {strength} g urea in each "
    "litre, {grams} g in a {litres} L can, {urea} in {water} L for your bed. Use a can with "
    "small holes, in the evening, not in the sun. Then rinse the leaves with clean water. "
    "Keep it off eyes and hands. Keep children and animals away. Wash hands after. Follow "
    "local rules; ask your officer.",
    note="0.5 % urea for this bed and can. The cautions must stay in this text.",
    segments=3,
)
M_SPOTS = Message(
    "Spots can be a disease: bring no plants or water of it to other beds.",
    note="What yellow leaves may be; 'I have told your officer' follows.",
)
M_COLD = Message(
    "Cold nights make leaves pale; they green up when it is warm. Cover the bed at night.",
    note="What yellow leaves may be; 'I have told your officer' follows.",
)
M_SALT = Message(
    "If you can, drain and let in fresh water.",
    note="What yellow leaves may be; 'I have told your officer' follows.",
)
M_WATER = Message(
    "Let the water down to {depth} cm round the mats.",
    note="What yellow leaves may be; 'I have told your officer' follows.",
)
M_NEW = Message(
    "New leaves first: perhaps iron, not nitrogen. Keep the bed wet all day.",
    note="What yellow leaves may be; 'I have told your officer' follows.",
)
M_BASE = Message(
    "Yellow from the base: perhaps zinc, not nitrogen. Let the water off, keep it only moist.",
    note="What yellow leaves may be; 'I have told your officer' follows.",
)
M_ALL = Message(
    "All alike: perhaps sulphur, not nitrogen. Let in fresh water.",
    note="What yellow leaves may be; 'I have told your officer' follows.",
)
M_PALE = Message(
    "{label}: uncovered {uncover}, shoots are pale at first and turn green within {pale} days. No "
    "urea. Look again on {date}.",
    note="Pale shoots just after uncovering; {uncover} and {date} are dates.",
)
ASK_COVER_OFF = Message(
    "{label}: is the cover off since {pale} days or more?",
    note="Question, yes or no: leaves look hungry, and nobody said that the bed is uncovered.",
)
UNCOVER_FIRST = Message(
    "{label}: shoots under the cover are pale. Shoots up: take it off. They turn green within {pale} "
    "days. No urea. Look again on {date}.",
    note="Yellow shoots under the cover or just out of it.",
)
M_LIGHT = Message(
    "{label}: only light green is no want yet. No urea. Look again on {date}; old leaves yellow from "
    "the tip: send PROBLEM.",
    note="Light green leaves. PROBLEM is a word to send.",
)
S_PALE = Message("Only pale or light green", note="A sign: not really yellow.")
M_ROT = Message(
    "Perhaps rot: drain the bed, let it air, move no plants from it.",
    note="What yellow leaves may be; 'I have told your officer' follows.",
)

UREA_ONCE = Message(
    "{label}: urea was advised on {date}, once only. Do not spray again: too much burns. I tell "
    "your officer.",
    note="Yellow leaves again after the one spray.",
)

# --- poor emergence -------------------------------------------------------------------------
SQUARE_HOW = Message(
    "Bend a stick or straw to a square of {square} x {square} cm. Lay it on {squares} usual "
    "places of the bed, not the best or worst.",
    note="How to count shoots; the question for the counts follows in another text.",
)
ASK_SHOOTS = Message(
    "{label}: how many shoots in each square? Send 1 to {squares} numbers, e.g. 40 52 46.",
    note="Question for the count of shoots.",
)
AGAIN_SHOOTS = Message(
    "Send the shoots you count in a square of {square} x {square} cm, e.g. 40 52 46. None: "
    "send 0.",
    note="The count of shoots could not be read.",
)
STAND_WAIT = Message(
    "{label}: {shoots} shoots in a square, {needed} are wanted. More may still come. What do you "
    "do?",
    note="Few shoots, but early; choices follow.",
)
STAND_FILL = Message(
    "{label}: {shoots} shoots in a square, {needed} are wanted. It is enough for {fewest} a "
    "hill, or sow more mats. What do you do?",
    note="Half or more of the shoots that are wanted; choices follow.",
)
STAND_AGAIN = Message(
    "{label}: {shoots} shoots in a square, {needed} are wanted: too few. Best sow again. What do "
    "you do?",
    note="Less than half of the shoots that are wanted; choices follow.",
)
DO_WAIT = Message("Wait", note="A choice: look again later.")
DO_FILL = Message("Sow more mats", note="A choice: fill up with new mats.")
DO_AGAIN = Message("Sow all again", note="A choice.")
DO_NOTHING = Message("Keep it as it is", note="A choice: fewer seedlings a hill.")
STAND_GOOD = Message(
    "{label}: {shoots} shoots in a square, {needed} are wanted: that is enough. Go on as planned.",
    note="Enough shoots have come up.",
)
WAIT_NOTED = Message(
    "{label}: keep it moist and covered, not flooded. Count again on {date}: send PROBLEM.",
    note="The farmer waits for more shoots. PROBLEM is a word to send.",
)
THIN_NOTED = Message(
    "{label}: kept. Plant {seedlings} a hill, not {usual}. In doubt count again on {date}: send "
    "PROBLEM.",
    note="The farmer keeps a thin bed; seedlings a hill. PROBLEM is a word to send.",
)
FILL_NOTED = Message(
    "{label}: soak {seed} seed today, drain it tomorrow, sow {mats} on {sowing}. They "
    "are ready from {first}: plant them last.",
    note="More mats to fill up a thin bed; {first} is a date.",
)
AGAIN_NOTED = Message(
    "{label}: sow again. Soak {seed} seed today, other seed if you can, drain it tomorrow, sow on "
    "{sow}. Take off the old seed layer.",
    note="The whole bed is sown again.",
)
AGAIN_DATES = Message(
    "New days: uncover and flood {uncover}, transplant {first} to {last}.",
    note="After a sowing that is done again.",
)

# --- weather --------------------------------------------------------------------------------
ASK_WATER = Message("What is it?", note="Rain, flood, no water or cold; a list follows.")
P_RAIN = Message("Heavy rain", note="A choice.")
P_FLOOD = Message("Flood over the bed", note="A choice.")
P_DRY = Message("No water", note="A choice.")
P_COLD = Message("Cold nights", note="A choice.")
RAIN_BEFORE = Message(
    "Keep people safe first: stay in during lightning. Do not sow before it is over. Keep soil mix "
    "and seed under cover, the seed moist.",
    note="Heavy rain before sowing.",
)
RAIN_DRAINED = Message(
    "Keep people safe first: stay in during lightning. Let the rain water run off again, the bed "
    "stays drained. Lift only when firm, a day later if need be.",
    note="Rain on a bed that is drained for lifting: no water is brought back.",
)
RAIN_FIELD = Message(
    "Keep people safe first: stay in during lightning. Open the bank so that water does not stand "
    "over the plants, then keep {low_cm} to {high_cm} cm.",
    note="Rain or flood on the planted field.",
)
DRY_BEFORE = Message(
    "No water: do not soak seed yet. The bed takes about {pails} each morning and evening. Sow "
    "later: CHANGE DATE. Keep drinking water for people.",
    note="Drought before sowing; pails are the farmer's own. CHANGE DATE is sent.",
)
COLD_BEFORE = Message(
    "Cold: sow later if you can (CHANGE DATE). In cool water seed must soak longer: MENU, 9, 3. Make "
    "no fire or coals beside seed or sheet.",
    note="Cold before sowing. CHANGE DATE and MENU are sent. Keep the caution.",
)
FLOOD_BEFORE = Message(
    "People first: stay out of moving water. Do not sow yet. Keep the seed moist and shaded, choose "
    "higher ground.",
    note="Flood before sowing.",
)
FLOOD_EARLY = Message(
    "People first: stay out of moving water. When it falls, let water run off the mats and cover "
    "them. Seed gone? Send PROBLEM, 2.",
    note="Flood on the young nursery. PROBLEM is a word to send.",
)
FLOOD_LATER = Message(
    "People first: stay out of moving water. Then drain to {depth} cm, wash mud off the "
    "leaves with clean water. I tell your officer.",
    note="Flood on the older nursery.",
)
DRY_EARLY = Message(
    "No water: keep the cover on and wet it morning and evening, about {pails} each time. "
    "Shade helps. Children stay away from wells.",
    note="Drought on the young nursery; pails are the farmer's own.",
)
DRY_LATER = Message(
    "No water round the mats: water morning and evening, about {pails} each time, before the "
    "mats crack. Keep drinking water for people.",
    note="Drought on the older nursery.",
)
COLD_EARLY = Message(
    "Cold: keep the bed covered, under sheet at night, and let it warm by day. Shoots come later: "
    "wait. Make no fire or coals under the sheet.",
    note="Cold on the young nursery. Keep the caution.",
)
COLD_LATER = Message(
    "Cold nights: keep water round the mats overnight. Pale leaves green up later: no urea in the "
    "cold. Leaves come slower: count before planting.",
    note="Cold on the older nursery.",
)

# --- seed: sorting, soaking -----------------------------------------------------------------
SALT_MIX = Message(
    "Sort seed: stir {salt} of salt into {litres} L clean water. Add up to {seed} dry seed, "
    "stir, take off what floats. {salt_minutes} minutes, not longer.",
    note="Seed selection in salt water; the rinsing follows in another text.",
)
SALT_RINSE = Message(
    "Rinse what sank {rinses} times in clean water at once, then soak. Floating seed that "
    "was treated is poison: no food, no feed. Wash hands.",
    note="After sorting in salt water. Keep the caution.",
)
SOAK_LONGER = Message(
    "Soak {soak_hours} h in warm water; slow seed and cool water need {slow_hours} h or "
    "more. Change it morning and evening. Keep the pail covered: small children can drown.",
    note="How long to soak. Keep the caution.",
)
ROOTS_LONG = Message(
    "Roots too long (over {root_high} mm): sow today, gently, they break. Not today? Spread "
    "the seed thin, in shade, moist and cool, for one day at most.",
    note="Sprouts have grown too long before sowing.",
)
NONE_SPROUT = Message(
    "None sprouts after {no_sprout} days moist and warm: try warm (not hot) water. Nothing "
    "after {no_sprout} more days: other seed, tested first.",
    note="Seed does not sprout at all.",
)

# --- tips -----------------------------------------------------------------------------------
ASK_MORE = Message("More help. Send a digit:", note="A list follows.")
MENU_MORE = Message("More help", note="Last choice of the menu.")
T_TEST = Message("Seed test", note="A choice: the germination test.")
T_SALT = Message("Sort seed in salt", note="A choice: seed selection in salt water.")
T_SOAK = Message("Soaking, sprouting", note="A choice.")
T_SITE = Message("Site, making the bed", note="A choice: where and how to make the bed.")
T_WATER = Message("Watering", note="A choice.")
T_PLANT = Message("Transplanting", note="A choice.")
T_SPARE = Message("Spare mats, gaps", note="A choice.")
T_RESULT = Message("Season's result", note="A choice: tell how it went.")
SITE = Message(
    "The bed: level, sunny, by water and the house, not where floods come. Fence it from poultry and "
    "goats; guard from birds at dawn, rats at night.",
    note="Choosing and guarding the site.",
)
WATERING = Message(
    "{label}: water morning and evening, about {pails} each time, from a can with small "
    "holes: soil moist, no puddles.",
    note="Watering by hand for this bed.",
)
SPARE = Message(
    "For gaps sow {least} to {most} mats more of each 100, the same day, and keep a mat or two moist "
    "after planting. Spare mats: offer them to a neighbour within a day or two.",
    note="Mats for gaps; surplus mats.",
)
PLANT_LIFT = Message(
    "Drain the bed on {drain}. Carry mats flat on a board or leaf, not rolled: they crack. "
    "Few at a time, in shade. A wet mat weighs about {mat} kg.",
    note="Lifting and carrying mats.",
)
PLANT_STRING = Message(
    "Mark a {string} m string every {hill} cm: {hills} hills, rows {row} cm apart, "
    "{seedlings} a hill, {plant_low}-{plant_high} cm deep. {hands} people need about {low} "
    "to {high} hours.",
    note="Planting by string. The hours are for this field.",
)

# --- leaves and lateness --------------------------------------------------------------------
NEXT_LEAF = Message(
    "At this pace leaf {n} opens about {date}, between {early} and {late}. Count again on the day "
    "you mean to plant.",
    note="From the count of open leaves; the span says how sure it is. {n} numbers the leaf.",
)
NEXT_LEAF_AT = Message(
    "At {degrees} C, your officer's figure of {day}, leaf {n} opens about {date}, between {early} "
    "and {late}. Count again before you plant.",
    note="From the leaves and the mean temperature. {n} numbers the leaf, {day} is a date.",
)
NEXT_LEAF_MONTH = Message(
    "At {degrees} C, usual in this month, leaf {n} opens about {date}, between {early} and {late}. "
    "Count again before you plant.",
    note="From the leaves and the month's mean temperature. {n} numbers the leaf.",
)
WARMTH_MOVED = Message(
    "{label}: by the warmth here your bed is ready from {first} to {last}. Uncover about {uncover}. "
    "I text you each day.",
    note="The mean temperature of the village moved the days of a bed.",
)
WARMTH_MOVED_LATER = Message(
    "{label}: by the warmth here your bed is ready from {first} to {last}. I text you each day.",
    note="The same, of a bed whose day of uncovering has come.",
)
DAYS_FELT = Message(
    "Until {date} counted at {felt} C, after it at {degrees} C; cooler takes longer.",
    note="Under the dates of a plan where the officer gave one temperature of late.",
)
DAYS_WARM = Message(
    "These days hold at a mean of {degrees} C; cooler takes longer.",
    note="Under the dates of a plan where nobody said how warm it is.",
)
LATE_LOSS = Message(
    "Old seedlings: put {n} in each hill. The bed then plants about {share} of 100 of the "
    "field. The harvest may be less: trials found none to {percent} of 100 lost.",
    note="Overdue seedlings; {n} counts seedlings, {share} and {percent} are parts of a hundred.",
)
