"""Amounts that stand inside other texts: weights, pails, litres, mats, heaps of seed."""

from assistant.wording.message import Message

GRAMS = Message("{amount} g", note="A weight in grams.")
KILOGRAMS = Message("{amount} kg", note="A weight in kilograms.")
PAILS = Message(
    "{n} pail",
    plural="{n} pails",
    note="Water or mix in the farmer's own pails; in a sentence.",
)
HALF_PAILS = Message("{amount} pails", note="The same where half a pail is in it, such as 2.5.")
HALF_A_PAIL = Message(
    "half a pail", note="Water or mix in the farmer's own pails; in a sentence."
)
PAIL_AND_HALF = Message("one and a half pails", note="The same; in a sentence.")
LITRES = Message("{amount} L", note="Water in litres, inside a sentence.")
LITRES_AND_PAILS = Message(
    "{litres} L ({pails})", note="Water on paper; {pails} is such as '40 pails'."
)
MATS = Message("{n} mat", plural="{n} mats", note="A count of seedling mats in a sentence.")
TRAYS = Message("{n} tray", plural="{n} trays", note="A count of seedling trays in a sentence.")
MORE_MATS = Message(
    "{n} more mat", plural="{n} more mats", note="Mats beside those there are; in a sentence."
)
HEAPS_MAT = Message(
    "{n} heap of {grams} g for the mat",
    plural="{n} equal heaps of {grams} g, one a mat",
    note="How sprouted seed is shared out; in a sentence.",
)
HEAPS_TRAY = Message(
    "{n} heap of {grams} g for the tray",
    plural="{n} equal heaps of {grams} g, one a tray",
    note="The same for trays.",
)
