"""Texts of the season's end: gaps, the result, and what was learned from it.

Digits in a text are what the farmer may answer; keep them.
"""

from assistant.wording.message import Message

MATS_LEFT = Message("Mats left", note="A choice: more mats were raised than the field took.")
JUST_ENOUGH = Message("Just enough", note="A choice: the mats planted the whole field.")
TOO_FEW = Message("Too few", note="A choice: part of the field was left without seedlings.")
ASK_MATS = Message(
    "{label}: did the mats plant the whole field of {area}?",
    note="Question for the season's result; three choices follow.",
)
ASK_LEFT = Message(
    "How many of the {mats} were left over? Send the number.",
    note="Question after 'Mats left'.",
)
ASK_PLANTED = Message(
    "How much of the {area} is planted? Send the size, e.g. 0.3 ha, or a digit:",
    note="Question after 'Too few'; four choices follow.",
)
NEARLY_ALL = Message("Nearly all", note="A share of the field: nine tenths.")
THREE_QUARTERS = Message("Three quarters", note="A share of the field.")
HALF = Message("Half", note="A share of the field.")
A_QUARTER = Message("A quarter", note="A share of the field.")
AGAIN_PLANTED = Message(
    "Send the planted size with its unit, e.g. 0.3 ha, not more than the field, or a digit.",
    note="The planted size could not be read.",
)
AGAIN_LEFT = Message(
    "Send how many mats were left, less than {mats}, e.g. 5.",
    note="The number of mats left could not be.",
)
ASK_RESOWN = Message(
    "Did you have to sow this bed or some mats again?", note="Yes or no follows."
)
RESULT_KEPT = Message(
    "{label}: noted, thank you. The nursery is closed. Plan the next one: send NEW.",
    note="The season's result is kept. NEW is a word to send.",
)
ASK_SEED_USED = Message(
    "{label}: {seed} kg of dry seed were planned. How much did you sow? Send the kg, e.g. 9.5 kg, or "
    "a digit:",
    note="Question after the result is kept; a choice follows: 1 As planned.",
)
AS_PLANNED = Message("As planned", note="A choice: as much seed as the plan said.")
AGAIN_SEED_USED = Message(
    "Send the kg of dry seed that you sowed, e.g. 9.5 kg, or 1 if it was as planned.",
    note="The weight could not be read, or is far from what was planned.",
)
SEED_USED_KEPT = Message("Noted: {seed} kg. Thank you.", note="The seed that was really sown.")
SURPLUS = Message(
    "Spare mats: use some to fill gaps, offer the rest to a neighbour while they are fresh.",
    note="Mats were left over.",
)
SHORT = Message(
    "Too few seedlings: ask neighbours and your officer for spare mats; plant within days.",
    note="Part of the field is not planted.",
)
LEARNED = Message(
    "In your seasons {own} of 100 sprouted seeds gave a seedling to plant; {usual} is usual. "
    "Next time I count with yours.",
    note="What was learned from the farmer's own results.",
)
OWN_RATE = Message(
    "I count with your own {own} of 100 sprouted seeds that become seedlings, from your last "
    "season; {usual} is usual.",
    note="Before the quantities of a new plan.",
)
OWN_RATE_SEASONS = Message(
    "I count with your own {own} of 100 sprouted seeds that become seedlings, from {n} season; "
    "{usual} is usual.",
    plural="I count with your own {own} of 100 sprouted seeds that become seedlings, from {n} "
    "seasons; {usual} is usual.",
    note="The same after several seasons.",
)
NOT_PLANTED_YET = Message(
    "{label} is not transplanted yet. When it is, send DONE.",
    note="The result was told of a nursery that is still growing. DONE is a word to send.",
)
NOTHING_PLANTED = Message(
    "No nursery of yours is transplanted yet. I ask for the result a week after it.",
    note="The farmer wants to tell a result too early.",
)

# --- the harvest ----------------------------------------------------------------------------
ASK_YIELD = Message(
    "{label}, {area}: harvested? Send all the paddy in kg, e.g. harvest 1600 kg. It helps you and "
    "your neighbours next season.",
    note="Asked once, some months after the result. 'harvest 1600 kg' is how it is sent.",
)
YIELD_KEPT = Message(
    "Noted: {kg} kg of paddy, about {per_ha} kg a hectare. Thank you.",
    note="What the field gave; {kg} and {per_ha} are numbers.",
)
YIELD_IN_BAGS = Message(
    "Noted for {person}. How many kg is it in all? Bags differ. Send e.g. harvest 1600 kg.",
    note="A harvest was told in bags. 'harvest 1600 kg' is how it is sent; {person} is an officer.",
)
AGAIN_YIELD = Message(
    "Send all the paddy of the field together, in kg, e.g. harvest 1600 kg.",
    note="The harvest could not be read, or is far from what a field can give.",
)
