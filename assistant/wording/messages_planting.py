"""Texts about how seedlings are planted, what seed weighs, and leaves counted again.

Digits in a text are what the farmer may answer; keep them.
"""

from assistant.wording.message import Message

THE_PLANTING = Message("Spacing, seed", note="A choice: change spacing or seed weight.")
ASK_WHAT = Message(
    "{label}: {spacing} cm, {seedlings} a hill, 1000 grains {thousand} g, {gaps} of 100 more for gaps. "
    "What to change?",
    note="A list of choices follows.",
)
SPACING = Message("Spacing", note="A choice: the distance of rows and hills.")
SEEDLINGS = Message("Seedlings a hill", note="A choice.")
GRAINS = Message("Variety, grain weight", note="A choice.")
GAPS = Message("More for gaps", note="A choice: seedlings raised over and above.")
ASK_SPACING = Message(
    "How far apart, in cm? Send rows x hills, e.g. 20 x 20 or 25 x 15; by machine 30 x 14.",
    note="Question; also said where the answer could not be read.",
)
ASK_SEEDLINGS = Message(
    "How many seedlings a hill? Send 1, 2 or 3; 4 to 6 by machine or for old ones.",
    note="Question; also said where the answer could not be read.",
)
ASK_GRAINS = Message(
    "Send the variety, or what 1000 grains weigh, e.g. 25 g, or grains and grams, e.g. 300 grains 8 "
    "g.",
    note="Question; also said where the answer could not be read.",
)
AGAIN_GRAINS = Message(
    "I have no such weight. Count and weigh dry seed: send what 1000 grains weigh, e.g. 25 g, or "
    "grains and grams, e.g. 300 grains 8 g.",
    note="An unknown variety, or a weight that cannot be.",
)
NOW_GRAINS = Message("1000 grains weigh {thousand} g.", note="What the plan now counts with.")
NOW_ROUGH = Message(
    "1000 grains weigh {thousand} g, but by so few grains it may be {low} to {high} g. Surer: count "
    "{count} grains or more.",
    note="What the plan now counts with, from a count and a kitchen scale.",
)
NOW_VARIETY = Message(
    "{name}: 1000 grains {low} to {high} g as published, I count {thousand} g. Weigh your own seed "
    "if you can.",
    note="What the plan now counts with; {name} is a variety.",
)
NOW_GAPS = Message(
    "{gaps} of 100 more seedlings are raised for gaps.", note="What the plan now counts with."
)
ASK_GAPS = Message(
    "How many seedlings of 100 more for gaps? Send a number from 0 to 20, e.g. 5.",
    note="Question; also said where the answer could not be read.",
)
T_LEAVES = Message("Count leaves", note="A choice: tell how many leaves are open.")
SOAK_COOL = Message(
    "{label}: at {degrees} C soak {days} days, then keep moist {moist} days: begin on {date} "
    "for sowing on {sow}. Too late? CHANGE DATE.",
    note="Cool water, by the officer's mean temperature.",
)
COSTS = Message(
    "{label}: about {total} {currency} by the programme's price list, {seed} of it for seed, {labour} "
    "for labour. A sum, no promise.",
    note="The cost of a nursery; the amounts are money, {currency} is such as KES.",
)
COSTS_BESIDE = Message(
    "A wet bed for the same field: about {total} {currency}, with {kg} kg of seed.",
    note="To compare, after the cost of a nursery.",
)
ASK_SOAK = Message(
    "{label}: is your water cool, or the variety slow to sprout? Then I let you soak earlier.",
    note="Question; four choices follow.",
)
COOL_WATER = Message("Cool water", note="A choice.")
SLOW_SEED = Message("Slow variety", note="A choice: its seed takes long to sprout.")
COOL_AND_SLOW = Message("Both", note="A choice: cool water, and a slow variety.")
AS_USUAL = Message("Neither", note="A choice: warm water, and a usual variety.")
SOAK_SET = Message(
    "{label}: seed goes in water {soak}, out of it {drained}. Keep it moist, sow on {sow}. "
    "Other day: CHANGE DATE.",
    note="The days of soaking, after cool water or a slow variety; all are dates.",
)
P_SOAK_LONG = Message(
    "Soak {seed} seed in clean water until {drained}, changed morning and evening. Cover the "
    "pail: small children can drown. To sort seed first: MENU, 9.",
    note="The day of soaking, for cool water or slow seed. {drained} is a date. Keep the caution.",
)
P_SOAK_COUNT_LONG = Message(
    "Count first: the count says how much seed to soak, in clean water until {drained}. Keep the "
    "pail covered: small children can drown.",
    note="The same while the seed test is not counted yet. Keep the caution.",
)
FILL_LONG = Message(
    "{label}: soak {seed} seed from today until {drained}, sow {bed} m2 more on {sowing}. It is "
    "ready from {first}: plant it last.",
    note="More bed to fill up a thin one, with cool water or slow seed; all but {bed} are dates.",
)
AGAIN_LONG = Message(
    "{label}: sow again. Soak {seed} seed from today until {drained}, other seed if you can, sow "
    "on {sow}. Take off the old seed layer.",
    note="The whole bed is sown again, with cool water or slow seed.",
)
P_SOAK_COUNT = Message(
    "Count first: the count says how much seed to soak, {soak_hours} h in clean water. Keep "
    "the pail covered: small children can drown.",
    note="The day of soaking, while the seed test is not counted yet. Keep the caution.",
)
