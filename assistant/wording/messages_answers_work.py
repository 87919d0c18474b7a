"""Answers to plain questions of the work in hand: the frame, the mix, what went wrong by a slip,
the day to count back from, what is paid.

Common practice, no source, but for the numbers, which are slots. No dose, product or bait.
"""

from assistant.wording.message import Message

_PLAIN = "Answers a farmer's question; plain words, one segment. "

# --- seed and bed ---------------------------------------------------------------------------
SOAK_SACK = Message(
    "Yes: a loose clean sack, only half full, for seed swells, all under clean water. Two pails "
    "do too: begin both together. Cover them: children can drown.",
    note=_PLAIN + "May I soak in a sack, or in two pails? Keep the caution.",
)
SEED_LEFT = Message(
    "Sprouted seed does not keep and is not dried again. Sow it thinly on a small spare bed for "
    "gaps, or give it away. Treated seed is poison: no feed.",
    note=_PLAIN + "Sprouted seed is left over. Keep the caution.",
)
WET_FIRST = Message(
    "Yes: wet the mix gently before you sow, until it is moist down to the sheet, no puddles. "
    "Then sow, cover, and sprinkle once more.",
    note=_PLAIN + "Is the soil wetted before or after sowing?",
)
FRAME_OFF = Message(
    "One frame will do: fill it with mix, lift it straight up at once, set it close beside, fill "
    "again, until you have all mats. Then wet and sow.",
    note=_PLAIN + "When is the frame taken off, how many frames?",
)
SOIL_WHICH = Message(
    "Soil of a field, garden, dry pond or anthill will do: not salty, not sour, nothing sprayed on "
    "it. Sticky? Mix in rice hull or sand. Break it fine, sift.",
    note=_PLAIN + "Which soil, may it be red or sticky?",
)
COVER_WHICH = Message(
    "Dry clean straw, grass without seeds, banana or palm leaves: thin, held down with sticks. Not "
    "green, not mouldy. A sheet only in rain or cold: sun kills.",
    note=_PLAIN + "What may it be covered with? Under a sheet on top the sun kills the seed.",
)
MANURE_TOP = Message(
    "No manure on seed or seedlings: it burns them and brings rot. It goes only into the mix, old "
    "and sifted. Too much in it? Add soil before you sow.",
    note=_PLAIN + "May manure go on top of the bed?",
)
HOW_MOIST = Message(
    "Press a finger in: the soil is damp, keeps the mark, and no water stands. Pale, hard or "
    "cracked: water now. Puddles: wait.",
    note=_PLAIN + "How do I know that the bed is moist enough?",
)
TRODDEN = Message(
    "Fill the hole with soil mix, level it by hand, mend the edge with mud. In the first days sow "
    "sprouted seed there, later leave it. Fence the bed.",
    note=_PLAIN + "A child or a cow stepped on the bed.",
)
UREA_MUCH = Message(
    "Too much urea: let the water out, let in fresh, out and in once more, shallow. No more "
    "fertiliser. No animal may drink it. Leaves burn? Send PROBLEM.",
    note=_PLAIN + "I put too much urea on the bed. PROBLEM is sent. Keep the caution.",
)
SPRAY_HOW = Message(
    "Urea only after PROBLEM told you: late in the day, no rain near. No sprayer? A clean can with "
    "fine holes, none that held poison. Keep children away.",
    note=_PLAIN + "At which hour is urea sprayed, and with what? No dose. PROBLEM is sent.",
)
THIN_TALL = Message(
    "Thin, long or crowded: give full sun, shallow water, no urea, plant on the first good day. A "
    "few far taller and paler? Pull them out, do not plant them.",
    note=_PLAIN + "Seedlings too tall, thin, lying or crowded.",
)
TIPS_DRY = Message(
    "Dry tips come of heat, dry wind, salt or too much fertiliser. Give fresh water, put nothing "
    "else on. It spreads, or spots come? Send PROBLEM.",
    note=_PLAIN + "Leaf tips dry, brown or burnt. PROBLEM is sent.",
)

# --- the field ------------------------------------------------------------------------------
# Days before planting: PhilRice, as `agronomy/SOURCES.md` has them.
FIELD_PREP = Message(
    "Plough about {plough_days} days before planting, {plough_low} to {plough_high} cm deep, then "
    "harrow twice, {harrow_days} days apart. Level {level_low} to {level_high} days before. Level "
    "first, then plant.",
    note=_PLAIN + "When is the field ploughed and levelled?",
)
COUNT_BACK = Message(
    "Sow {low} to {high} days before the day of planting. Before that soak {soak_hours} hours and "
    "keep moist {lie_hours}. Your plan's day: CHANGE DATE. New plan: NEW.",
    note=_PLAIN + "I plant on that day: when do I sow? CHANGE DATE and NEW are sent.",
)
WHY_FEW = Message(
    "Young seedlings root fast and make many side shoots; a few in a hill have room and save seed. "
    "Not sure? Plant a part the old way and compare.",
    note=_PLAIN + "Why so few and so young seedlings? Nothing is promised.",
)
CUT_TIPS = Message(
    "No need to cut leaf tips: a cut lets in disease and slows them. Too long to carry? Carry the "
    "mats flat, and plant soon.",
    note=_PLAIN + "Are the leaf tips cut before planting?",
)
FEW_SEEDLINGS = Message(
    "Plant the best part of the field first, as far apart as always. For the rest ask neighbours "
    "for spare seedlings, or sow one more bed: send NEW.",
    note=_PLAIN + "The seedlings do not suffice for the field. NEW is a word to send.",
)
WAGES = Message(
    "I know no wages: ask neighbours or your group; some help each other in turn. No money yet? "
    "Seedlings can wait to day {high}. Plant a part first.",
    note=_PLAIN
    + "What do I pay who plants, or I have no money for it? {high}: days after sowing.",
)
KEEP_THINGS = Message(
    "Wash sheet, frame and net, dry them, keep them under a roof, off the floor, out of sun, away "
    "from rats. Whole ones serve again next season.",
    note=_PLAIN + "How are sheet and frame kept until next season?",
)

# --- the service ----------------------------------------------------------------------------
WHAT_WORD = Message(
    "Soak: seed in water. Sprouted: it shows a root. Uncover: take straw off. Drain: let water "
    "out. Transplant: plant in the field. Hill: plants in one spot.",
    note=_PLAIN
    + "What does a word of your texts mean? Explain the words that texts in your language use.",
)
NO_CREDIT = Message(
    "My texts come without airtime; only your own cost one SMS. One failed? I did not get it: "
    "send it again later, or tell your farm officer yourself.",
    note=_PLAIN + "I have no airtime, my text was not sent.",
)
