"""Answers to plain questions, one text each; the questions stand in `hearing/questions`.

Where another text of the house answers already (a step, a tip), that one is said and none stands
here. No text names a dose, a product, a mixture or a bait. Numbers of the trade are slots, filled
from the plan or from `agronomy/constants.py`, where their sources are; words beside them that
say what to do are common practice, no source, unless a line above the text names one.
"""

from assistant.wording.message import Message

_PLAIN = "Answers a farmer's question; plain words, one segment. "

# --- about the service ----------------------------------------------------------------------
WHO = Message(
    "A program of your farm office sends these texts, to help with rice nurseries. Your farm "
    "officer can see your answers. To end it: STOP.",
    note=_PLAIN + "Who are you? STOP is a word to send.",
)
FREE = Message(
    "My texts cost you nothing. Each text you send costs one SMS, unless your farm office "
    "pays. What a nursery costs: send QUANTITIES.",
    note=_PLAIN + "Is it free, what does it cost? QUANTITIES is a word to send.",
)
MY_NUMBER = Message(
    "Your number came from your own text to me, or from your farm office or officer. No more "
    "texts: send STOP.",
    note=_PLAIN + "Where did you get my number? STOP is a word to send.",
)
STOP_HOW = Message(
    "To get no more texts, send STOP. To get them again, send START.",
    note=_PLAIN + "How do I stop? Both are words to send; nothing is stopped by this text.",
)
NEIGHBOUR = Message(
    "Gladly. Let them send START to this number from their own phone.",
    note=_PLAIN + "May my neighbour join? START is a word to send.",
)
HOUSEHOLD = Message(
    "Good. Whoever does the work may read and answer on this phone, just as here.",
    note=_PLAIN + "I am his wife: may I answer?",
)
TRAVEL = Message(
    "Ask somebody to look after the bed each day, and leave them this phone or tell them my "
    "texts. Another sowing day: CHANGE DATE.",
    note=_PLAIN + "I shall be away. CHANGE DATE is sent.",
)
HERE = Message(
    "I am here and have your text. Today's work: TODAY. All I can do: MENU.",
    note=_PLAIN + "Are you there? Both are words to send.",
)
OFFICER_WHEN = Message(
    "I do not know when the officer comes. Send OFFICER and what it is about: I pass it on to "
    "{person}.",
    note=_PLAIN + "{person} is a name and number, or 'your farm officer'. OFFICER is sent.",
)
CHANGE = Message(
    "Another day of sowing or planting: send CHANGE DATE. Another field size: send NEW, then end "
    "the old nursery with CLOSE.",
    note=_PLAIN + "How do I change it? CHANGE DATE, NEW, CLOSE are sent.",
)
ADD = Message("Send NEW to plan one more nursery.", note=_PLAIN + "NEW is a word to send.")

VILLAGE = Message(
    "I have passed your words to {person}, who can change your village. Rain warnings go by "
    "village.",
    note=_PLAIN + "How do I change my village? {person} is a name and number.",
)

PHONE = Message(
    "Any phone that sends texts will do. I need no internet and no data.",
    note=_PLAIN + "Does a small phone do, is internet needed?",
)
DATA = Message(
    "I keep your number, your nurseries and what you write here. Your farm office sees it. To "
    "have it deleted ask your officer: send OFFICER.",
    note=_PLAIN + "What do you do with my data? OFFICER is a word to send.",
)

ASK_WHICH = Message(
    "Ask in a few words, e.g. when do I uncover.",
    note=_PLAIN + "Said where a question was not one of those that were offered.",
)

OFFICE_SAYS = Message(
    "{programme} office: {answer}",
    note="{programme}: what the programme is called; {answer}: an answer that its own office wrote. "
    "The farmer must see whose answer it is.",
)
AN_OFFICE_SAYS = Message(
    "Programme office: {answer}",
    note="The same where the programme has no name. {answer}: the office's own words.",
)

# --- amounts and money ----------------------------------------------------------------------
SUM = Message(
    "For {area}: about {seed} of dry seed, a bed of {bed} m2, {mix} L of soil mix. Only a "
    "calculation: your plan stays as it is.",
    note=_PLAIN + "For another field than that of the plan.",
)
SEED_MUCH = Message(
    "{label}: {seed} of dry seed for {area}.",
    note=_PLAIN + "How much seed? {label} is the nursery.",
)
MIX_MUCH = Message(
    "{label}: {mix} L of mix. One batch: {parts}.",
    note=_PLAIN + "How much soil? {parts} is a list, such as '7 of soil, 2 of rotted manure'.",
)
MATS_MANY = Message(
    "{label}: {mats} on {bed} m2; with paths about {ground} m2 of ground. One mat plants about "
    "{plants} m2 of field.",
    note=_PLAIN + "How many mats, how big is the bed? {plants} is a number of square metres.",
)
BED_SIZE = Message(
    "{label}: a bed of {bed} m2; with paths about {ground} m2 of ground.",
    note=_PLAIN + "How big is the bed?",
)
PEOPLE = Message(
    "{label}: {n} people plant this field in about {low} to {high} hours.",
    note=_PLAIN + "How many people? {n} is a number of people, always several.",
)
PRICES = Message(
    "By your programme's list, in {currency}: urea {urea} a kg, seed {seed} a kg, sheet {sheet} a "
    "m2. Your shop may ask another price.",
    note=_PLAIN + "What does urea cost? {currency} is such as KES.",
)
NO_PRICES = Message(
    "I have no prices here. Ask at a shop or at your farm office.",
    note=_PLAIN + "What does it cost?",
)
NO_MARKET = Message(
    "I know no prices of rice or paddy. Ask your farm office or at the market.",
    note=_PLAIN,
)
BUY = Message(
    "Ask your farm officer or the farm shop near you where it is sold. Buy seed of which the "
    "seller shows the name and the year.",
    note=_PLAIN + "Where can I buy it?",
)

# --- days -----------------------------------------------------------------------------------
SOW_ON = Message(
    "{label}: soak the seed {soak}, sow {sow}. Another day: CHANGE DATE.",
    note=_PLAIN + "When do I sow? CHANGE DATE is sent.",
)
SOW_FIRST = Message(
    "Count back from the day when the field is ready and has water: sow {low} to {high} days "
    "before it. Send NEW, and I reckon your days.",
    note=_PLAIN + "When do I sow? Nothing is planned yet. NEW is a word to send.",
)
SOWN_ON = Message(
    "{label}: sown {sow}. Transplant from {first} to {last}.",
    note=_PLAIN + "When do I sow? It is sown already.",
)
UNCOVER_ON = Message(
    "{label}: uncover on {uncover}, in the evening or under clouds. Until then keep it covered "
    "and moist.",
    note=_PLAIN + "When do I uncover?",
)
DRAIN_ON = Message(
    "{label}: let the water out on {drain}, so that mats are firm for planting on {transplant}.",
    note=_PLAIN + "When do I drain the bed?",
)
PLANT_ON = Message(
    "{label}: transplant {transplant}. Good days are {first} to {last}.",
    note=_PLAIN + "When, or may I transplant?",
)
AGE = Message(
    "Seedlings are planted {low} to {high} days after sowing, with {few} to {many} open leaves.",
    note=_PLAIN + "How old, how long does it take?",
)
TOO_LATE = Message(
    "Best is up to day {high} after sowing. Older ones can still be planted: soon, and more in a "
    "hill. Each day costs harvest; ask your officer.",
    note=_PLAIN + "Is it too late to plant?",
)

GROWTH = Message(
    "Leaves say more than height: {few} to {many} open leaves by day {low} to {high}. In the cool "
    "it takes longer. Pale, or no growth? Send PROBLEM.",
    note=_PLAIN + "Are they tall enough, have they leaves enough? PROBLEM is sent.",
)
AFTER_PLANT = Message(
    "After planting keep a little water on the field, never over the plants. Leaves may droop "
    "some days. On fertiliser ask your officer.",
    note=_PLAIN + "What then, in the field? No depth and no dose.",
)

# --- water ----------------------------------------------------------------------------------
WATER_DEEP = Message(
    "{label}: {depth} cm of water once it is uncovered, never over the shoots. 1 cm is about the "
    "width of a finger.",
    note=_PLAIN + "How deep is the water?",
)
NONE_STANDS = Message(
    "{label}: the water goes out on {drain}; from then on none stands. Mat dry, leaves roll? "
    "Sprinkle lightly. Lift it when it is firm.",
    note=_PLAIN + "How much water, how deep? The bed is drained. {drain} is a date.",
)
FIELD_WATER = Message(
    "{label}: it is planted. Keep {low_cm} to {high_cm} cm of water on the field, never over the "
    "plants.",
    note=_PLAIN + "How much water, how deep? The seedlings are in the field.",
)
ONE_CM = Message(
    "1 cm is about as much as your little finger is wide. Mark a stick with it and stand it in "
    "the water.",
    note=_PLAIN + "How much is 1 cm?",
)
WATER_TIME = Message(
    "Water early in the morning and in the evening, not in the hot sun of noon.",
    note=_PLAIN + "At which hour do I water?",
)
DRY_FIELD = Message(
    "{label}: planted field dry or cracked? Let in what water there is, the driest part first, up "
    "to {high_cm} cm. Close holes in its banks.",
    note=_PLAIN + "The field is planted and there is no water.",
)
SALT_WATER = Message(
    "No salty water on the bed: it burns seedlings. Use fresh water; none there? Ask your officer "
    "before you sow.",
    note=_PLAIN + "May I use salty water?",
)
TAP = Message(
    "Clean water from a tap, well, pond or river is good, if it is not salty and nothing sprayed "
    "or treated was washed in it.",
    note=_PLAIN + "May I use tap water?",
)
WATER_HOW = Message(
    "No hard jet: pour through your fingers or a tin with small holes, or onto the straw. Seed "
    "washed bare? Sift soil over it.",
    note=_PLAIN + "How do I pour so that no seed is washed away?",
)
WATER_FOUL = Message(
    "Foul or scummy water: let it run off, then let in fresh, shallow. It comes back, or leaves "
    "suffer? Send PROBLEM.",
    note=_PLAIN + "The water smells, is it to be changed? PROBLEM is sent.",
)
COUNT_LEAVES = Message(
    "Count open leaves. Do not count the first small one, which does not open, nor one still "
    "rolled up. Look at plants from several spots.",
    note=_PLAIN + "Which leaves count?",
)
COLD = Message(
    "Cold slows seedlings: count leaves, not days. On cold nights lay a sheet over the bed, by day "
    "take it off: in sun it cooks them.",
    note=_PLAIN + "Does cold harm them, do I cover them at night?",
)
FORECAST = Message(
    "I have no forecast of my own. When your officer warns of rain, I text you at once.",
    note=_PLAIN + "Will it rain?",
)

# --- seed -----------------------------------------------------------------------------------
SOAK_LONG = Message(
    "Soak the seed {hours} hours, let it drain, then keep it moist, warm and covered for {lie} "
    "hours. Sow when roots are {least} to {most} mm long.",
    note=_PLAIN + "How long do I soak?",
)
WHY_SOAK = Message(
    "Soaked seed comes up sooner and all together, so that the mat closes evenly.",
    note=_PLAIN,
)
DRY_SEED = Message(
    "Better not: dry seed comes up late and unevenly. Soak it {hours} hours and keep it moist "
    "{lie} hours, then sow.",
    note=_PLAIN + "May I sow dry seed?",
)
ROOTS = Message(
    "Sow when the white roots are {least} to {most} mm long. Longer ones you can still sow: "
    "spread them gently, they break.",
    note=_PLAIN + "How long must the root be?",
)
VARIETY = Message(
    "Take a variety that does well near you and fits your season: ask your farm officer. This "
    "bed suits every variety.",
    note=_PLAIN + "Which variety?",
)
ANY_VARIETY = Message(
    "Yes, this bed suits hybrid, sticky and all other rice alike. Use fresh seed of one variety.",
    note=_PLAIN + "Does it work for hybrid rice?",
)
TWO_SEEDS = Message(
    "One variety a bed: two do not ripen together. For a second one make a bed of its own: send "
    "NEW.",
    note=_PLAIN + "May I mix two seeds? NEW is a word to send.",
)
TEST = Message(
    "Lay 100 seeds in a wet cloth, keep it moist and warm, count the sprouted ones after {days} "
    "days. {good} or more is good.",
    note=_PLAIN + "How do I test seed? {good} is a number out of 100.",
)
OLD_SEED = Message(
    "Seed that is old or from your own harvest may do: test it first. Lay 100 seeds in a wet "
    "cloth, count the sprouted ones after {days} days.",
    note=_PLAIN + "May I use old seed?",
)
WHAT_SPROUT = Message(
    "Germination: how many of 100 seeds sprout. Sprouted seed is soaked seed that shows its "
    "first white root.",
    note=_PLAIN + "What is germination?",
)

INCUBATE = Message(
    "Let the soaked seed drain. Keep it {lie} hours in a damp cloth, warm, in shade; turn and "
    "sprinkle it. Hot inside: spread it out.",
    note=_PLAIN + "What follows the soaking, how long, the sack is hot?",
)
SOAKED_LONG = Message(
    "Seed that lay too long: sour or soft is spoilt, do not sow it. Sound: rinse it, let it drain, "
    "sow soon and gently, long roots break.",
    note=_PLAIN + "It was soaked too long, is it still good?",
)
SOW_THICK = Message(
    "{label}: {heaps}. Not thicker: crowded seedlings stay thin and weak. Where it is bare the mat "
    "tears.",
    note=_PLAIN + "May I sow thicker? {heaps} is such as '267 equal heaps of 42 g, one a mat'.",
)
FITS = Message(
    "These nurseries are for rice that is transplanted into wet, level fields, terraces too, in "
    "any season. Rice sown straight in the field needs none.",
    note=_PLAIN + "Is it for upland or rain-fed rice, for which season?",
)

# --- the bed --------------------------------------------------------------------------------
MAKE_FIRST = Message(
    "On flat ground by water: a sheet or banana leaves, {thick} cm of soil mix, sprouted seed, a "
    "thin cover. I tell each step on its day.",
    note=_PLAIN + "How do I make it? Nothing is planned yet.",
)
WHY_MAT = Message(
    "Such a bed takes little ground and seed, lies near the house, and is carried whole. It needs "
    "a look every day. In doubt, try it on a part first.",
    note=_PLAIN + "Is this better than our usual nursery? Nothing is promised.",
)
NO_SHEET = Message(
    "No plastic? Lay banana leaves UNDER the mix, two layers, over each other like roof tiles: "
    "roots must stay out of the ground.",
    note=_PLAIN + "UNDER stands in capitals for weight.",
)
NO_HULL = Message(
    "No rice hull? Leave it out, or take old sawdust, coconut fibre or sieved compost. No bran: it "
    "rots. No fresh sawdust. The wet mix must crumble in the hand.",
    note=_PLAIN + "May I take sawdust or coconut fibre instead?",
)
NO_MANURE = Message(
    "No manure? Well rotted compost will do, sifted. Nothing rotted there? Take good garden soil "
    "and tell your officer. No fresh dung.",
    note=_PLAIN,
)
SAND = Message(
    "A little sand loosens heavy clay. Sand alone holds no mat together: take field or garden "
    "soil, sifted.",
    note=_PLAIN + "May I use sand?",
)
WHY_COVER = Message(
    "The cover keeps seed moist and warm, and hides it from birds and hard rain until the shoots "
    "are up.",
    note=_PLAIN,
)
WHY_DRAIN = Message(
    "Drained mats are firm and light: they do not break when you lift them.",
    note=_PLAIN + "Why is the bed drained?",
)
WHAT_HILL = Message("A hill: the seedlings that are planted together in one spot.", note=_PLAIN)

MACHINE = Message(
    "These mats are for planting by hand. A machine needs mats of its own size: ask who runs it "
    "before you make the bed.",
    note=_PLAIN + "May a planting machine be used?",
)

# --- dangers --------------------------------------------------------------------------------
UREA = Message(
    "Urea on the bed only if leaves are yellow: send PROBLEM. No amount here; too much burns. "
    "Field: ask your officer. Maize urea is the same. Keep it from children.",
    note=_PLAIN + "May I use fertiliser? PROBLEM is sent. Keep the cautions.",
)
NO_DOSE = Message(
    "I name no poison or spray. By hand: pull weeds, pick off pests, drain or fence the bed. "
    "Your farm officer can look: send OFFICER.",
    note=_PLAIN + "Which medicine? OFFICER is sent. No product, no dose.",
)
ANTS = Message(
    "Ants: cover seed with soil and straw, keep it moist, a small ditch of water or wood ash round "
    "the bed, none on seed. No poison; your officer can help.",
    note=_PLAIN + "No ash on the seed. No product, no dose.",
)
