"""Texts for when planting waits: water back on the mats, why, until when, and what it costs.

Digits in a text are what the farmer may answer; keep them.
"""

from collections.abc import Mapping

from assistant.wording.message import Message

WATER_BACK = Message(
    "{label}: a drained bed dries out in {dries} days. Let water in again today, {depth} "
    "cm. Drain again on {drain}.",
    note="Planting waits; the bed was drained for it.",
)
KEEP_WET = Message(
    "{label}: do not let the drained bed dry: sprinkle it morning and evening until you plant.",
    note="Planting waits a day or two; the bed was drained for it.",
)
WAITS = Message(
    "{label}: planting waits. I ask again on {date}.", note="A bed that is not drained."
)
ASK_WHY = Message("Why is it not planted yet?", note="Question; choices with digits follow.")
HANDS = Message("No hands", note="A choice: nobody to help with planting.")
WATER = Message("No water", note="A choice: no pump or no water in the field.")
RAIN = Message("Rain", note="A choice: too much rain to plant.")
FIELD = Message("Field not ready", note="A choice: the main field is not ready.")
OTHER = Message("Something else", note="A choice: planting waits for another reason.")
ASK_UNTIL = Message(
    "On which day can you plant? e.g. 14 July, in 3 days.",
    note="Question for a day, after why planting waits.",
)
FOR_HANDS = Message(
    "Plant in parts: lift only what you can plant that day.",
    note="Planting waits for hands.",
)
FOR_WATER = Message(
    "Keep the bed wet first, even by pail. Keep children off pumps, belts and wires.",
    note="Planting waits for water. Keep the caution.",
)
FOR_RAIN = Message(
    "Stay in during lightning. Plant when the field holds a few cm only.",
    note="Planting waits for rain to end. Keep the caution.",
)
FOR_FIELD = Message(
    "Level it, let the mud settle a day or two, then plant.",
    note="Planting waits for the main field.",
)
SET = Message(
    "{label}: you plant on {date}, at day {day}. The last day for these seedlings is {latest}.",
    note="The new day of planting; {day} is the day from sowing.",
)
TOO_LATE = Message(
    "{date} is too late: these seedlings can be planted until {latest}. Send an earlier day.",
    note="The day asked for is after the last.",
)
WAYS = Message(
    "Too few then? Plant what there is, ask neighbours for seedlings, or soak new seed today "
    "and plant from {again}. To give up send MENU.",
    note="The ways left when seedlings grow old. MENU is sent.",
)
WAITS_WITHOUT_WATER = Message(
    "Not planted yet? Let {depth} cm of water back in, drain it {before} days before you "
    "plant. Plant soon, at {few} leaves or more, {seedlings} in a hill.",
    note="Two days and more after the planned day of transplanting; the bed was drained for it.",
)
WATER_MEANWHILE = Message(
    "Not planted yet? Let {depth} cm of water back in, drain it {before} days before you "
    "plant.",
    note="Beside 'transplant soon'; the bed was drained for planting.",
)
PLANT_LATE = Message(
    "Transplant {spacing} cm apart, {seedlings} in a hill: late seedlings need more. Wet soil"
    " is heavy: share the load.",
    note="The chosen day of transplanting, after the usual days.",
)
TOO_OLD = Message(
    "{label}: these seedlings are too old, do not plant them. Ask neighbours for others. Or "
    "sow again: soak today, plant from {again}.",
    note="Past the last day for planting.",
)
OLD_YET_FEW_LEAVES = Message(
    "{label}: day {day}. Fewer than {many} leaves? Ask your officer today if you may plant. "
    "More: too old. Then soak seed today, plant from {again}.",
    note="Past the last day for planting, of seedlings that grew slowly in the cool.",
)
REST_PLANTED = Message(
    "{label}: the rest on {date}. Keep the seedlings that are left moist and in shade; lift only what "
    "you plant that day.",
    note="A part of the field is planted, the rest on another day.",
)
SOWN_FIELD = Message(
    "{label} is sown already: this bed plants about {share} of 100 of {area}. Too little? Ask "
    "neighbours in time for spare seedlings.",
    note="The size of the field was corrected after sowing; {area} is as the farmer wrote it.",
)
ADDED_STAY = Message(
    "Seed that was added later: leave it covered and out of the water.",
    note="Beside 'uncover and flood': some mats were sown later than the others.",
)

ASK_PLANTED = Message("1 Planted before 2 Not planted", note="Last line after TOO_OLD.")
ASK_OLD = Message("What now?", note="Question; two choices follow. The seedlings are too old.")
SOW_ANEW = Message("Sow again", note="A choice: the seedlings are too old.")
GIVE_UP = Message("Close this nursery", note="A choice: the seedlings are too old.")

# --- mats that are gone ---------------------------------------------------------------------
ASK_LOST = Message(
    "How many mats are eaten or spoiled? Send the number. None: NO.",
    note="Question, after what to do against animals. NO is sent.",
)
AGAIN_LOST = Message(
    "Send how many mats are gone, {mats} at most, or NO.",
    note="The number of mats that are gone could not be read. NO is sent.",
)
LOST_NOTED = Message(
    "{label}: {lost} of {mats} mats gone. The rest plants about {share} of 100 of the field.",
    note="Mats that are eaten or spoiled; {share} is a part of a hundred.",
)
ASK_FILL = Message(
    "Will you sow as many again? The seed goes in water today.",
    note="Question, yes or no: mats that are gone.",
)
FILL_SEED = Message(
    "{label}: soak {seed} seed today, sow it on {sowing}. I remind you.",
    note="Mats that are gone are sown again.",
)
FILL_MIX = Message(
    "For these mats: {mix} L of soil mix ({parts}) and {sheet} m2 of sheet or banana leaves.",
    note="What more mats ask for.",
)
FILL_APART = Message(
    "Lay these mats apart, out of the bed's water: moist and covered until their shoots are up.",
    note="Mats that are sown later than the others, which stand in water by then.",
)
NO_FILL = Message(
    "Then guard the rest, and ask neighbours in time for spare mats.",
    note="Mats that are gone are not sown again.",
)

TIPS: Mapping[str, Message] = {
    "hands": FOR_HANDS,
    "water": FOR_WATER,
    "rain": FOR_RAIN,
    "field": FOR_FIELD,
}
