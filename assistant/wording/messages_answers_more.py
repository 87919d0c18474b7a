"""More answers to plain questions, of what farmers see on the bed and of what comes between.

As `messages_answers`: no dose, product, mixture or bait; numbers of the trade are slots. What
they say to do is common practice, no source, unless a line above the text names one.
"""

from assistant.wording.message import Message

_PLAIN = "Answers a farmer's question; plain words, one segment. "

# --- seed -----------------------------------------------------------------------------------
FLOATS = Message(
    "Take off seed that floats: it is empty or light. Soak only what sinks. Much floats? Soak more "
    "seed. Treated seed is poison: no feed.",
    note=_PLAIN + "Half of the seed floats. Keep the caution.",
)
SLOW_SPROUT = Message(
    "Cold or old seed is slow. Keep it moist, warm and covered, turn it; sow when most show a "
    "root. None after {no_sprout} days: send PROBLEM.",
    note=_PLAIN + "The seed does not sprout, or only half. PROBLEM is sent.",
)
BROKEN = Message(
    "A broken sprout seldom grows. Only some? Sow gently, that is enough. Many? Soak more seed and "
    "sow it too. Carry seed loose, in shade.",
    note=_PLAIN + "Sprouts broke before sowing.",
)

# --- days -----------------------------------------------------------------------------------
LATER_SOW = Message(
    "{label}: a day or two later does no harm; all later days move too. Send CHANGE DATE. Soaked "
    "already? Keep the seed moist, in shade.",
    note=_PLAIN + "May I soak or sow later? CHANGE DATE is sent.",
)
LATER_UNCOVER = Message(
    "{label}: uncover {uncover}, in the evening. One day later is no great harm; longer makes the "
    "shoots long and white.",
    note=_PLAIN + "The bed is sown and covered: may it wait a day? {uncover} is a date.",
)
RAIN_SOWING = Message(
    "Drizzle: sow, and cover at once. Hard rain: wait until it ends, soil mix and seed under "
    "cover. Soil like mud? Let water run off first.",
    note=_PLAIN + "It rains on the day of sowing.",
)
FLOOD_ON = Message(
    "{label}: water stands {depth} cm from {uncover} to {drain}, never over the shoots. Watch small "
    "children: they can drown in it.",
    note=_PLAIN + "When does the water go in? Two dates. Keep the caution.",
)
STORM_PLANT = Message(
    "{label}: do not plant in a storm. Leave the seedlings on the bed, let rain run off, plant when "
    "it is over. Good days end {last}.",
    note=_PLAIN + "A storm comes: plant now or wait? {last} is a date.",
)
MANY_FIELDS = Message(
    "One bed, near water and house, serves several fields if they are planted within days. Planted "
    "later? Sow a bed of its own: send NEW.",
    note=_PLAIN + "Fields apart, or ready on two dates: one nursery or two? NEW is sent.",
)

# --- water ----------------------------------------------------------------------------------
MISSED_WATER = Message(
    "{label}: one watering missed does little harm. Water now, gently, about {pails}, not double. "
    "Then morning and evening.",
    note=_PLAIN + "Yesterday evening was forgotten. {pails} is such as '3 pails'.",
)
HOT_WIND = Message(
    "Hot, dry wind: water once more, before noon, and wet the cover. Water that stands: top it up. "
    "Leaves still rolled at night? PROBLEM.",
    note=_PLAIN + "Hot wind, leaves roll up at noon. PROBLEM is sent.",
)
CLOUDS = Message(
    "Rain, fog or no sun: feel the soil. Moist? Wait until it dries on top. Dry? Water as "
    "always. Water that stands stays as it is.",
    note=_PLAIN + "Do I water on a cloudy day, or after rain?",
)
LEAKS = Message(
    "Fold the edge of the sheet up over a rim of mud, stop holes with clay. Until it holds, water "
    "by hand morning and evening.",
    note=_PLAIN + "Water does not stay in the bed.",
)

# --- the bed --------------------------------------------------------------------------------
THIN_SOIL = Message(
    "Before sowing make it {thick} cm, level: fill up or take off. After sowing leave it: thin soil "
    "dries fast, water more often; thick soil makes heavy mats.",
    note=_PLAIN + "The soil sank, or there is too little or too much.",
)
STONES = Message(
    "Break clods, sift or pick out stones and roots: they tear the sheet and the mat. No sieve? "
    "Take wire net or a basket, or crumble it by hand.",
    note=_PLAIN + "Stones and clods in the soil.",
)
SLOPE = Message(
    "Level the ground first: on a slope water and seed run aside. Bed made? Bank up the low side, "
    "wet by hand what water does not reach, corners too.",
    note=_PLAIN + "The ground slopes, or corners stay dry.",
)
SHEET_HOLES = Message(
    "Make no holes; small ones do no harm. Big hole, or too short? Lay another piece or banana "
    "leaves over it, a hand wide: roots must stay out of the ground.",
    note=_PLAIN + "The sheet has holes or is too short; must it have holes?",
)
SHEET_KIND = Message(
    "Any colour, thick or thin, used ones too, also washed fertiliser sacks, if clean. None "
    "that held poison. It lies under the soil mix, not on top.",
    note=_PLAIN + "Which sheet? Keep the caution.",
)
STRAW_GONE = Message(
    "Put the cover back, thin, held down with sticks, and water gently. A fence keeps fowl and "
    "children off. Shoots are up? Then leave it off.",
    note=_PLAIN + "Wind, a child or fowl took the straw off.",
)
STRAW_LEFT = Message(
    "Leave straw stuck between shoots: pulling uproots them. Old straw: compost, or feed if "
    "clean. If the seed was treated, never feed it: poison.",
    note=_PLAIN + "Straw stuck, where does it go? Keep the caution.",
)

# --- what is seen ---------------------------------------------------------------------------
NOT_UP = Message(
    "{label}: in the first days nothing shows, in the cold longer. Keep it moist and covered. Still "
    "bare on {uncover}? Send PROBLEM.",
    note=_PLAIN + "Nothing has come up on day 3. PROBLEM is sent.",
)
MOULD = Message(
    "Fine white hairs on the root are no mould. Fluff, mushrooms, sour smell: too wet. In the "
    "evening lay dry straw, thin, for the rotten; less water. Rot? PROBLEM.",
    note=_PLAIN + "Mould or root hairs under the cover. PROBLEM is sent.",
)
WASHED = Message(
    "Spread washed seed back gently, sift a little soil over it, cover it. Bare spot? Sow sprouted "
    "seed there. Dig a ditch so that rain runs off.",
    note=_PLAIN + "Rain washed the seed together.",
)
BARE = Message(
    "Bare spots: in the first days sow sprouted seed there, later leave them. Somewhat uneven is "
    "usual. Much is bare? Send PROBLEM.",
    note=_PLAIN + "Bald spots, uneven growth. PROBLEM is sent.",
)
PALE_STEMS = Message(
    "White or lying shoots were covered too long. Keep them moist, shade them at noon: most "
    "turn green in {pale} days. Brown or soft? Send PROBLEM.",
    note=_PLAIN + "White stems after uncovering. PROBLEM is sent.",
)
WEEDS = Message(
    "Yes, pull weeds by hand while they are small, when the bed is wet; hold the seedlings down. "
    "No weed killer on the bed.",
    note=_PLAIN + "Weeds in the bed. No product.",
)
PESTS = Message(
    "Pick them off by hand at dusk and dawn, snails and pink eggs too, a bag on the hand. No "
    "poison. Many, or much eaten? Send PROBLEM.",
    note=_PLAIN + "Grasshoppers, caterpillars, snails. PROBLEM is sent. No product, no dose.",
)

# --- lifting and planting -------------------------------------------------------------------
TEARS = Message(
    "Too few roots, or too wet: let water off, wait a day, try a corner on a board. Torn, soil "
    "off, roots bare? They are fine: keep them moist, plant at once.",
    note=_PLAIN + "The mat falls apart when it is lifted, the soil falls off the roots.",
)
KEEP_LIFTED = Message(
    "Plant lifted mats the same day. Some left? Keep them flat, moist, in shade, not on top "
    "of each other; plant them early the next day.",
    note=_PLAIN + "May lifted mats wait overnight?",
)
LEFTOVER = Message(
    "Keep some seedlings moist, in shade, for gaps: up to {gap_days} days after planting. The rest "
    "give to a neighbour soon: they grow old.",
    note=_PLAIN + "Seedlings are left over.",
)
GAPS = Message(
    "Fill gaps within {gap_days} days after planting, with seedlings of the same bed. Those that "
    "float: let some water off, set them in again.",
    note=_PLAIN + "When are gaps filled?",
)
WEEDING = Message(
    "First weeding {weed_low} to {weed_high} days after planting, by hand or hoe, while weeds are "
    "small; again before the leaves close. Weed killer: ask your officer.",
    note=_PLAIN + "When is the field weeded? No product.",
)
SHOCK = Message(
    "Just planted, they droop or turn yellow for some days. Keep {low_cm} to {high_cm} cm of water, "
    "no urea now. Worse after a week, or spots? PROBLEM.",
    note=_PLAIN + "Yellow or drooping after planting. PROBLEM is sent.",
)

# --- the service and people -----------------------------------------------------------------
NEW_NUMBER = Message(
    "I have passed your words to {person}, who can move your nursery to another number. Until then "
    "write from this phone.",
    note=_PLAIN + "A new SIM, my wife's number. {person} is a name and number.",
)
MONEY_HELP = Message(
    "I have no money and know nothing of aid or papers. I have passed your words to {person}, who "
    "may know more.",
    note=_PLAIN + "Loans, subsidy, what a flood took. {person} is a name and number.",
)
SELL = Message(
    "Seedlings that are over may be sold or given away. I know no price: ask neighbours. Keep some "
    "for your own gaps.",
    note=_PLAIN + "May I sell seedlings, for how much?",
)
CHAT = Message(
    "Hello! I am a program and know only rice nurseries, no money, work or news. Ask me about your "
    "bed, or send MENU.",
    note=_PLAIN + "A greeting, a joke, a wish for airtime. MENU is a word to send.",
)

# --- what strangers asked and nobody answered: common practice, no source -------------------
SCAM = Message(
    "Give nobody a PIN, code or money: I never ask for them. Gave one? Call your money service at "
    "once. I have told {person}.",
    note=_PLAIN
    + "A call or text wants a PIN or money in our name. {person} is a name and number.",
)
SCAM_NEW = Message(
    "Give nobody a PIN, code or money: I never ask for them. Gave one? Call your money service at "
    "once.",
    note=_PLAIN + "The same, to somebody whose words reach no officer.",
)
CUT_OFF = Message(
    "A long text comes in parts; one may be late or lost. For today's work again send TODAY, for "
    "all I can do MENU.",
    note=_PLAIN + "A text came cut off. Both are words to send.",
)
WRONG_KEY = Message(
    "Was it a digit of a menu? Send MENU and choose anew. Wrong day: CHANGE DATE. Wrong report or "
    "number: send OFFICER and say what is true.",
    note=_PLAIN + "I pressed a wrong key. MENU, CHANGE DATE, OFFICER are words to send.",
)
TEXT_HOUR = Message(
    "I cannot change the hour for one phone; your farm office sets it for all. Rain warnings come "
    "at any hour. For fewer texts send WORK DAYS.",
    note=_PLAIN + "Write only in the morning. WORK DAYS: words to send.",
)
LOW_HEART = Message(
    "I am sorry it is so hard. Beds fail for good farmers too. Rest, talk to somebody near. I "
    "have told {person}.",
    note=_PLAIN + "Tired, discouraged; a kind word. {person} is a name and number.",
)
DIRTY_PAIL = Message(
    "No. What held fuel, oil, spray or fertiliser harms seed and people, washed or not. Take a "
    "clean pail or pot. Seed lay in it? Send OFFICER.",
    note=_PLAIN
    + "The pail or sack held something else before. OFFICER is sent. Keep the caution.",
)
EDGE_CRUMBLES = Message(
    "The mix is too dry or coarse. Wet it, fill again, pat the edge with a wet board, lift the "
    "frame slowly, straight up. Small breaks do no harm.",
    note=_PLAIN + "The edge crumbles when the frame is lifted.",
)
DRY_SOWN = Message(
    "Water now, gently, through straw or fingers, several times, until the soil is moist down to "
    "the sheet. Seed washed bare? Sift soil over it.",
    note=_PLAIN + "The soil was not wetted before sowing.",
)
PEEKED = Message(
    "A short look does no harm. Lay the cover back, thin, and wet it. Open for hours in the sun? "
    "Water gently, cover, open again on its day.",
    note=_PLAIN + "The cover was opened too early and put back.",
)
MAT_FLOATS = Message(
    "Let some water off, press the mat down flat, weigh the edge of the sheet with mud. Then let "
    "water in slowly from the side, and only shallow.",
    note=_PLAIN + "Mat, sheet or soil float when water is let in.",
)
FROGS = Message(
    "Frogs, worms, red ones too, and small fish do no harm, frogs eat insects. Ducks and fowl "
    "trample and eat seedlings: fence them off. No poison.",
    note=_PLAIN + "Frogs, worms, fish, ducks in the bed. No product.",
)
DEW = Message(
    "Drops on leaf tips at dawn are no disease: healthy plants let out water. Leave them, the sun "
    "dries them. Spots or slime? Send PROBLEM.",
    note=_PLAIN + "Drops on the leaves in the morning. PROBLEM is sent.",
)
ROOTED = Message(
    "Roots through the sheet or in the ground: wet the bed, cut them under the mat with a knife, "
    "mind your hands. They grow again: plant the same day.",
    note=_PLAIN + "Roots have grown through the sheet. Keep the caution.",
)
MOON = Message(
    "I know of no moon or day that makes rice grow better: water, hands and a ready field decide. "
    "Custom keeps a day? Send CHANGE DATE.",
    note=_PLAIN + "Which moon or lucky day? Friendly. CHANGE DATE is sent.",
)
PLANT_HOUR = Message(
    "Late afternoon or a cloudy day is best, early morning is good: they wilt less. In hot sun "
    "wait, with the mats in shade and moist.",
    note=_PLAIN + "Plant at noon or in the evening?",
)
FIELD_DEEP = Message(
    "Let water off until {low_cm} to {high_cm} cm stand. Deep mud: let it settle for days, plant "
    "from the bank or a board. Never alone where you sink.",
    note=_PLAIN + "The field is too deep to plant. Keep the caution.",
)
HARVEST_WHEN = Message(
    "Each variety has its own days: ask the seller or read the bag. Cut when most grains are "
    "yellow and hard; drain the field some days before.",
    note=_PLAIN + "How many days to harvest?",
)
HARVEST_MUCH = Message(
    "I can promise no bags: soil, water, weather and variety decide. Your last harvest of the same "
    "field tells most. Count the bags this time.",
    note=_PLAIN + "How many bags will I get? Nothing is promised.",
)
ASK_SHORT = Message(
    "I did not get your question. Ask in few words, e.g. when do I uncover, or how much water now. "
    "To ask a person send OFFICER.",
    note="Said to a question that was not read. OFFICER is a word to send.",
)
