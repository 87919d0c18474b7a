"""Texts for a farmer who asks when to sow, and for one who shares seed by the own tin."""

from assistant.wording.message import Message

ASK_WATER_FROM = Message(
    "From which day can water come to your field? e.g. 10 June, today.",
    note="Question, to find days for sowing.",
)
ASK_RIPENS = Message(
    "How many days does your rice take from sowing to harvest? e.g. 115. Not known: send NO.",
    note="Question for the days of a variety. NO is a word to send.",
)
AGAIN_RIPENS = Message(
    "Send the days from sowing to harvest, {low} to {high}, or NO.",
    note="The days could not be read. NO is a word to send.",
)
ASK_RIPE_BY = Message(
    "By which day must it be ripe, before flood, cold or the next crop? e.g. 10 June. No such day: "
    "send NO.",
    note="Question for the last day of harvest. NO is a word to send.",
)
VARIETY_KEPT = Message(
    "{label}: {name}, {days} days from sowing: ripe about {ripe}.",
    note="A variety was named; {name} is what people call it.",
)
RIPE_ABOUT = Message(
    "{label}: noted. It ripens {days} days after sowing, about {ripe}.",
    note="The days of a variety were told.",
)
VARIETY_AGE = Message(
    "Its seedlings are planted from {first} to {last}.",
    note="After the name of a variety that has an age of its own.",
)
ASK_TINS = Message(
    "Fill your tin level with water and pour it into the {litres} L pail: how many tins fill it? Send "
    "the number.",
    note="Question: a farmer's own tin is measured once by the pail.",
)
AGAIN_TINS = Message(
    "Send how many level tins fill the pail, {low} to {high}, e.g. 25.",
    note="The number of tins could not be read.",
)
TIN_KEPT = Message(
    "Your tin holds about {tin} L: noted. On the sowing day I tell the seed by it.",
    note="A farmer's own tin is measured.",
)
TIN_TOO_COARSE = Message(
    "Your tin holds about {tin} L: too large to share out this seed. Take a smaller one: send TIN.",
    note="A farmer's own tin is measured. TIN is a word to send.",
)
SEED_BY_TIN = Message(
    "By your tin, filled level: {tins} for {mats}, shared equally.",
    note="Sprouted seed on the sowing day; {tins} is a number, {mats} such as '6 mats'.",
)
HOW_TIN = Message(
    "To share the seed by your own tin: send TIN.",
    note="The day before sowing. TIN is a word to send.",
)
