"""Texts for a bed that failed: what happened to the seed, which seed is sown now, its check.

Digits in a text are what the farmer may answer; keep them.
"""

from collections.abc import Mapping

from assistant.wording.message import Message

ASK_CAUSE = Message("What happened to the seed?", note="Question; choices follow.")
DEAD = Message("It did not sprout", note="A choice: what happened to the seed of a bed.")
ROTTEN = Message("It rotted, it smells", note="A choice: what happened to the seed.")
DEEP = Message("Too deep, hard crust", note="A choice: what happened to the seed.")
WASHED = Message("Washed away or flooded", note="A choice: what happened to the seed.")
EATEN = Message("Eaten", note="A choice: what happened to the seed.")
UNSURE = Message("I do not know", note="A choice: what happened to the seed.")
ASK_SEED = Message("Which seed will you sow now?", note="Question; choices follow.")
SAME = Message("What is left of the same", note="A choice: the same seed as before.")
OTHER = Message("Other seed", note="A choice: other seed than before.")
NONE = Message("I have none", note="A choice: no seed at all.")
T_DEAD = Message(
    "Old or badly dried seed is often dead: use other seed if you can.",
    note="Why seed did not sprout.",
)
T_ROTTEN = Message(
    "Rinse the seed, change its water, and let surplus water run off the bed.",
    note="Against seed that rots.",
)
T_DEEP = Message(
    "Cover it thinner: {least_mm}-{most_mm} mm of fine soil, kept moist so that no crust forms.",
    note="Against a cover that shoots cannot get through.",
)
T_WASHED = Message(
    "Make the bed where water runs off, and cover it well before heavy rain.",
    note="Against seed that is washed away.",
)
T_EATEN = Message(
    "Cover it at once with leaves, straw or a net, and fence off poultry. Use no poison.",
    note="Against animals. Keep the caution.",
)
CHECK_FIRST = Message(
    "{label}: test what is left first: {seeds} seeds in a wet warm cloth for {days} days. On {date} "
    "send how many have a root. Do not soak or sow the rest before.",
    note="Before a failed bed is sown again with the same seed.",
    segments=2,
)
P_CHECK_COUNT = Message(
    "The seeds in the wet cloth are {days} days old: count those with a root. Send the count, e.g. "
    "40 of 50.",
    note="The day on which seed that is left is counted.",
)
NO_SEED = Message(
    "Ask neighbours for seed or spare mats now; your officer is told. When you have seed, send "
    "PROBLEM, 2.",
    note="A failed bed, and no seed. PROBLEM and 2 are sent.",
)
NO_SEED_YET = Message(
    "{label}: ask neighbours for seed now; your officer is told. Sowing waits until {sow}, soaking "
    "until {soak}. Another day: CHANGE DATE.",
    note="Seed that was to be sown is gone, and there is no other. CHANGE DATE is sent.",
)
ASK_ALL = Message("Was the whole bed sown again?", note="Question, yes or no.")
SPARE_NOTED = Message(
    "{mats} mats to spare: noted, your officer is told and may know who lacks some. Keep two for "
    "gaps.",
    note="A farmer has more mats than the field needs; {mats} is a number.",
)
LATE_COUNT = Message(
    "{label} is sown already, for {percent} of 100. Look at the shoots from {uncover}. If few"
    " are up, send PROBLEM.",
    note="A seed count that comes after sowing. PROBLEM is sent.",
)

ASK_UP = Message(
    "{label}: uncovered before {uncover}. Are the shoots up?",
    note="Question, yes or no: a bed was uncovered before its day.",
)
COVER_AGAIN = Message(
    "{label}: cover it again with leaves or straw, and water it morning and evening. No water "
    "standing on it yet.",
    note="Uncovered before the shoots are up.",
)
HALF_SOWN = Message(
    "{label}: water and cover the part that is sown. Keep the rest of the seed moist and shaded, sow "
    "it on {sow}; I count from then.",
    note="A part of the bed is sown on the day of sowing.",
)

HALF_SOWN_LONG = Message(
    "{label}: water and cover the part that is sown. Sprouted seed does not keep so long: for the "
    "rest soak other seed on {soak}, sow it on {sow}; I count from then.",
    note="A part of the bed is sown, the rest only days later.",
    segments=2,
)
P_SOW_REST = Message(
    "Sow the rest of the seed as you sowed the first part, if roots are "
    "{root_low}-{root_high} mm. Then care for both parts alike.",
    note="The day of sowing, of a bed of which a part is sown by now.",
)
P_SOAK_REST = Message(
    "Soak seed for the part that is not sown yet, as you soaked the first. Keep the pail covered: "
    "small children can drown.",
    note="Of a bed that is sown in parts, where the rest waits so long that seed is soaked anew.",
)
ALL_SOWN = Message(
    "{label}: all is sown now. I count from the later part, {sow}: water twice a day, keep all of "
    "it covered until {uncover}. Other day: CHANGE DATE.",
    note="A bed was sown in two parts on different days. CHANGE DATE is sent.",
    segments=2,
)
ALL_SOWN_OPEN = Message(
    "{label}: all is sown now. I count from the later part, {sow}. Other day: CHANGE DATE.",
    note="A bed was sown in two parts on different days. CHANGE DATE is sent.",
)
BED_GONE = Message(
    "{label}: nothing of this bed is left, as you told. To sow it again send PROBLEM.",
    note="Today's work of a bed that is lost. PROBLEM is sent.",
)
TOGETHER = Message(
    "Keep the seed that was to be added before moist and shaded, and sow it with this.",
    note="More mats are gone while seed for others waits to be sown.",
)

TIPS: Mapping[str, Message] = {
    "dead": T_DEAD,
    "rotten": T_ROTTEN,
    "deep": T_DEEP,
    "washed": T_WASHED,
    "eaten": T_EATEN,
}
"""What to do otherwise the next time, by what happened."""
BEREAVED = Message(
    "I am very sorry. I told {person}. Whoever does the work now may read and answer here; nothing must "
    "be changed. Today's work: TODAY.",
    note="Somebody of the house died. Kind words. TODAY is a word to send.",
    segments=2,
)
