"""Texts of the work by hand, one short step a text: from the ground of the bed to planting.

Each goes out with "Next step: NEXT" under it, so it must leave room for that line. UNDER and
ABOVE stand in capitals for weight: the sheet below and the cover above are not the same thing.
"""

from assistant.wording.message import Message

# --- the way on -----------------------------------------------------------------------------
HOW_NEXT = Message(
    "Step by step: send NEXT.", note="Last line of a day's work. NEXT is a word to send."
)
NEXT_HINT = Message("Next step: NEXT", note="Last line of a step. NEXT is a word to send.")
NEXT_STEP = Message("Next step", note="A choice on a screen, after a digit.")
ASK_NEXT = Message(
    "Shall I go on with the steps?", note="A step was shown; the choice follows."
)
LAST_STEP = Message(
    "{label}: that was the last step for now. Today's work: TODAY.",
    note="Nothing more to explain. TODAY is a word to send.",
)

# --- the day of making the bed ----------------------------------------------------------------
P_MAKE_BED = Message(
    "Make the bed today, so that it waits for the seed: {mats} in strips {strip} m wide, "
    "about {ground} m2 of ground with paths.",
    note="The day before sowing.",
)
P_MAKE_TRAYS = Message(
    "Fill the trays today, so that they wait for the seed: {mats} in strips {strip} m wide, "
    "about {ground} m2 of ground with paths.",
    note="The day before sowing.",
)

# --- what it is -------------------------------------------------------------------------------
WHAT_MAT = Message(
    "A mat: young rice in {thick} cm of soil mix on a sheet. The roots hold it together; it is "
    "lifted whole, like a carpet.",
    note="Answers what a mat is.",
)
WHAT_TRAY = Message(
    "A tray holds {thick} cm of soil mix and young rice. The roots hold it together; the machine "
    "takes it whole.",
    note="Answers what a tray of seedlings is.",
)
WHAT_OPEN = Message(
    "This bed: seedlings grow in the ground itself, fed with old manure, and are pulled for "
    "planting.",
    note="Answers what an open bed is.",
)

# --- getting ready ----------------------------------------------------------------------------
GROUND = Message(
    "Choose ground that is flat, sunny, near water and the house. Bed {bed} m2, with paths "
    "between the strips about {ground} m2.",
    note="A step: the place of the bed.",
)
NOT_HERE = Message(
    "Not there: salty or stony ground, deep shade, where floods come, no water near. Nothing "
    "better? Ask your officer first.",
    note="A step: where such a bed does not suit.",
)
SOIL = Message(
    "Soil: from a good field or garden, not salty, nothing sprayed on it. Dry it, break it fine, "
    "sift out stones and roots.",
    note="A step: the soil of the mix.",
)
MANURE = Message(
    "Manure: old, dry and crumbly, no heat, no smell; fresh dung burns roots. Sift it. Then wash "
    "hands with soap.",
    note="A step. Keep the washing of hands.",
)
HULL = Message(
    "Rice hull: fresh, or charred black, not grey ash. Char it outdoors, far from houses and "
    "children: the smoke kills indoors. Wet it after.",
    note="A step. Keep the caution.",
)
SHEET = Message(
    "Sheet or banana leaves, {sheet} m2: they lie UNDER the mix. The cover ABOVE is another "
    "thing: straw or leaves.",
    note="A step: two things that people mix up.",
)
FRAME = Message(
    "Frame: four boards, no bottom, {length} x {width} cm inside, {thick} cm high. No boards? "
    "Banana stalks will do as an edge.",
    note="A step: what shapes the mats.",
)
GOOD_SEED = Message(
    "Good seed pays: full grains, one variety, tested. It comes up together, and you need less. "
    "To sort it: MENU, 9, 2.",
    note="A step. MENU, 9, 2 is sent.",
)
TREATED = Message(
    "Seed with colour or a strong smell is treated: poison. Gloves or bags on the hands. No food, "
    "no feed; away from children.",
    note="A step. Keep the caution.",
)

# --- the mix ----------------------------------------------------------------------------------
MEASURE = Message(
    "Measure with one pail or tin: {parts}. Pour them in layers on hard ground.",
    note="A step; {parts} is a list, such as '7 of soil, 2 of rotted manure'.",
)
TURN = Message(
    "Turn the heap until it has one colour. A wet handful must hold, then crumble. Too sticky: "
    "add some hull.",
    note="A step of mixing.",
)
KEEP_DRY = Message(
    "Cover the heap from rain. Carry half pails, knees bent, back straight. Wash hands with soap "
    "before you eat.",
    note="A step of mixing. Keep the cautions.",
)

# --- soaking ----------------------------------------------------------------------------------
BAG = Message(
    "Put the seed in a loose cloth bag: it swells. Water a hand deep over it. Keep the pail "
    "covered: small children can drown.",
    note="A step of soaking. Keep the caution.",
)
SOAK_WATER = Message(
    "Water of treated seed is poison. Pour it on bare ground, far from wells, ponds, fish and "
    "animals. Keep that pail apart.",
    note="A step of soaking. Keep the caution.",
)
DRAINING = Message(
    "Then let it drain and lie under a wet cloth, in shade, warm. Turn and sprinkle it morning "
    "and evening.",
    note="A step after soaking.",
)

# --- the bed ----------------------------------------------------------------------------------
LEVEL = Message(
    "Clear the ground, level it, tread it firm. Take off stones and roots: they tear the sheet.",
    note="A step of making the bed.",
)
STRIPS = Message(
    "Mark strips {strip} m wide, so that you reach the middle from both sides. Paths of {path} cm "
    "between them.",
    note="A step of making the bed.",
)
UNDER = Message(
    "Lay the sheet or banana leaves UNDER the mix, on the ground. Without it roots grow into the "
    "ground and mats cannot be lifted.",
    note="A step of making the bed.",
)
SET = Message(
    "Set the frame on the sheet. Fill in mix nearly to the top, {thick} cm. Do not press it. Level "
    "it with a stick.",
    note="A step of making the bed.",
)
LIFT = Message(
    "Lift the frame straight up, set it close beside and fill it again, until there are "
    "{mats}.",
    note="A step of making the bed.",
)
FENCE = Message(
    "No frame? Lay banana stalks round the strip as a fence, hold them with pegs, fill in {thick} "
    "cm, level. Cut mats before lifting.",
    note="A step: instead of a frame.",
)
WET = Message(
    "Wet the mix with a fine rose until it is moist all through, not mud. Then sow, or cover it "
    "until you sow.",
    note="The last step of making the bed.",
)
FILL_TRAYS = Message(
    "Fill each tray with mix to {thick} cm. Do not press it. Level it with a stick.",
    note="A step of filling trays.",
)
STAND_TRAYS = Message(
    "Stand the trays close together, flat, on firm ground or a sheet: no hollow under them.",
    note="A step of filling trays.",
)
PUDDLE = Message(
    "Puddle the ground to soft mud, pull out weeds and straw, let it settle for a day. Cover cuts "
    "before you go in.",
    note="A step of making a wet bed. Keep the caution.",
)
RAISE_WET = Message(
    "Shape strips {strip} m wide, a little raised, with ditches of {path} cm between them to let "
    "water in and out.",
    note="A step of making a wet bed.",
)
SPREAD_MANURE = Message(
    "Spread {mix} L of old sifted manure evenly and work it in. Then wash hands with soap.",
    note="A step of making an open bed. Keep the washing of hands.",
)
SMOOTH = Message(
    "Draw a board over the mud: smooth, no hollows. Seed drowns where water stands.",
    note="The last step of making a wet bed.",
)
DIG = Message(
    "Dig when the soil is moist, a hand deep. Break it fine, pick out weeds and stones.",
    note="A step of making a dry bed.",
)
RAISE_DRY = Message(
    "Raise strips {strip} m wide, so that you reach the middle from both sides and rain runs off. "
    "Paths of {path} cm between them.",
    note="A step of making a dry bed.",
)
RAKE = Message(
    "Rake the top fine and level. Water it well the day before you sow.",
    note="The last step of making a dry bed.",
)

# --- sowing -----------------------------------------------------------------------------------
HEAPS = Message(
    "Weigh out the sprouted seed: {heaps}. Lay out all heaps before you spread any.",
    note="A step of sowing; {heaps} is such as '68 equal heaps of 40 g, one a mat'.",
)
SQUARE = Message(
    "Mark 1 m2 with sticks: {grams} g of sprouted seed go on it. Weigh it once and mark the tin.",
    note="A step of sowing an open bed.",
)
SPREAD = Message(
    "Spread half of it, then the other half crosswise, right to the edges. No bare spots, no "
    "lumps. Gloves for treated seed.",
    note="A step of sowing. Keep the caution.",
)
COVER_THIN = Message(
    "Sift {least_mm} to {most_mm} mm of soil over the seed, thin and even, and pat it. Deeper, the shoots "
    "stay below.",
    note="A step of sowing.",
)
RINSE = Message(
    "Water at once with a fine rose until moist. No puddles, no seed washed bare.",
    note="A step of sowing.",
)
ABOVE = Message(
    "Cover the top with a thin layer of straw or leaves, held down with sticks. A sheet on "
    "top only in heavy rain or cold: in sun it kills the seed.",
    note="A step of sowing.",
)
HALF_IN = Message(
    "Seed lies half in the mud, not under it. No water on top until shoots are up.",
    note="A step of sowing a wet bed.",
)
GUARD = Message(
    "Put a fence against poultry and goats. Birds come at dawn, rats at night: watch the bed, "
    "use no poison.",
    note="The last step of sowing. Keep the caution.",
)

# --- uncovering -------------------------------------------------------------------------------
STRAW = Message(
    "Look first: snakes and scorpions hide under straw. Lift it with a long stick, shoes on, not "
    "with bare hands.",
    note="A step of uncovering. Keep the caution.",
)
EVENING = Message(
    "Uncover in the evening or under clouds, so that sun does not burn the shoots. Carry the "
    "cover away from the bed.",
    note="A step of uncovering.",
)
LET_IN = Message(
    "Let water in slowly round them, {depth} cm, never over the shoots. Watch small children: they "
    "can drown in little water.",
    note="A step of uncovering. Keep the caution.",
)
PALE = Message(
    "Shoots are pale at first and turn green within {pale} days. No urea: the seed still feeds "
    "them.",
    note="The last step of uncovering.",
)

# --- lifting and planting ---------------------------------------------------------------------
CUT = Message(
    "Mats grown together? Cut between them with a knife, down to the sheet. If dry, wet them a "
    "little first.",
    note="A step of lifting.",
)
CARRY = Message(
    "Slide a board or leaf under and carry mats flat, never rolled: they crack. A wet one weighs "
    "{weight} kg: few at a time, in shade.",
    note="A step of lifting. Keep the weight.",
)
CARRY_TRAYS = Message(
    "Carry the trays flat, few at a time, in shade. A wet one weighs {weight} kg. Keep hands and "
    "clothes off the machine's moving parts.",
    note="A step of lifting trays. Keep the cautions.",
)
PULL = Message(
    "Or pull seedlings: wet the bed, hold few low down, draw gently, wash off soil, tie loosely, "
    "keep roots wet, in shade.",
    note="A step: another way to carry seedlings.",
)
PLANT = Message(
    "Separate by hand. Plant {seedlings} together, {spacing} cm apart, upright, {plant_low} "
    "to {plant_high} cm deep. Plant the same day.",
    note="A step of planting.",
)
BODY = Message(
    "Drink often, rest in shade, ease your back. Cover cuts before you go in water, wash after. "
    "Fever later: health post.",
    note="The last step of planting. Keep the cautions.",
)
