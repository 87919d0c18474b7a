"""Texts of the plan page about when to sow, the day of sowing, and a farmer's own measures.

They are read on paper or a screen, not on a phone.
"""

from assistant.wording.message import Message

# --- when to sow ----------------------------------------------------------------------------
WHEN = Message("When to sow", note="Heading above two or three days for sowing.")
BETWEEN = Message("Sow between {first} and {last}.", note="{first} and {last} are dates.")
NOT_BEFORE = Message("Sow from {first} on.", note="{first} is a date.")
DAY = Message(
    "{sow}: transplant {first} to {last}. {why}", note="A day to sow; {why} is a sentence."
)
DAY_RIPE = Message(
    "{sow}: transplant {first} to {last}, flowers about {flowers}, ripe about {ripe}. {why}",
    note="A day to sow where the variety is known; {why} is a sentence.",
    segments=2,
)
WHY_FIELD = Message(
    "The soonest: the field is ready to plant when the seedlings are.",
    note="Why a day was chosen: from the day on which water comes.",
)
WHY_SOONEST = Message("The soonest: seed must be soaked first.", note="Why a day was chosen.")
WHY_FLOWERS = Message(
    "The soonest that flowers in the safe time.", note="Why a day was chosen."
)
WHY_IN_HAND = Message(
    "Days in hand if work or rain holds you up.", note="Why a day was chosen."
)
WHY_LAST = Message(
    "The last: any delay comes too late. Cold or clouded weather ripens later.",
    note="Why a day was chosen.",
)
NO_DAY = Message(
    "No day fits: {n} day is missing. A variety that ripens sooner, or water sooner, would fit; ask "
    "your officer.",
    plural="No day fits: {n} days are missing. A variety that ripens {n} days sooner, or water "
    "sooner, would fit; ask your officer.",
    note="Instead of days to sow.",
    segments=2,
)
VARIETY_DAYS = Message(
    "{name}: ripe in {days} days from sowing.", note="{name} is a variety of the programme."
)
VARIETY_TRADITIONAL = Message(
    "A traditional variety may flower by the length of the day: its days hold for the usual time "
    "of sowing only.",
    note="After the days of a traditional variety.",
)

SMALLER = Message(
    "The bed is made smaller, since little seed is sown; usual would be {usual} m2.",
    note="Asked for; {usual} is the area of the usual bed.",
)

# --- the day of sowing ----------------------------------------------------------------------
SOWING_DAY = Message("The day of sowing", note="Heading.")
PIECES_AN_HOUR = Message(
    "{hands} people make and sow about {low} to {high} mats or trays an hour.",
    note="{low} and {high} are numbers; {hands} may be 1.",
)
DAY_ENDS = Message(
    "Begin at {begins}: all is sown, covered and watered between {soon} and {late}.",
    note="Times of the day.",
)
DAY_TOO_LONG = Message(
    "That is {days} days of work, and sprouted seed does not wait: get {need} people for one day, or "
    "make the bed before and soak the seed in {days} parts, each a day later.",
    note="Where the hands are too few for one day.",
    segments=2,
)
DAY_WATER = Message(
    "Water each mat at once when it is covered. Rest in the heat of noon, with shade on the seed.",
    note="After the times of the day of sowing.",
)

# --- a farmer's own measures ----------------------------------------------------------------
MEASURES = Message("In your own measures, filled level", note="Heading.")
TINS = Message(
    "{count} tins", note="Level measures inside a sentence; {count} may be 0.5 or 1."
)
SPOONS = Message("{count} tablespoons", note="Level measures inside a sentence.")
CAPS = Message("{count} bottle caps", note="Level measures inside a sentence.")
SEED_TIN = Message(
    "One tin of {litres} L of sprouted seed sows about {count} mats or trays.",
    note="{litres} is the tin of the farmer.",
)
SEED_EACH = Message(
    "Sprouted seed for each mat or tray: {amount}.", note="{amount} is such as '5 tablespoons'."
)
UREA_CAN = Message(
    "Urea, only if leaves are yellow: {amount} in a can of {litres} L, never more.",
    note="{amount} is such as '3 tablespoons'.",
)
CHECK_CAP = Message(
    "A tablespoon holds 15 mL, a bottle cap some 6: fill the cap with water into the spoon, 2 to 3 "
    "caps must fill it. A kitchen scale is better.",
    note="So that the measures are as meant.",
    segments=2,
)
