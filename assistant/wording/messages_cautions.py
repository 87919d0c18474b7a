"""What can hurt in the work of a day, said with that work and not only on paper.

One short line each; nothing may be left out of it.
"""

from assistant.wording.message import Message

TREATED_SEED = Message(
    "Seed with colour or a strong smell is treated: poison. No food, no feed, away from children.",
    note="Caution when seed is bought.",
)
HANDS = Message("After manure wash hands with soap.", note="Caution when manure is handled.")
HANDS_HULL = Message(
    "After manure wash hands with soap. Char hull only outdoors: its smoke kills indoors.",
    note="Caution when soil, manure and rice hull are mixed.",
)
SOAK_POISON = Message(
    "Treated seed: wear gloves. Its water is poison: pour it on bare ground, far from wells, ponds "
    "and animals.",
    note="Caution when seed is soaked.",
)
SNAKES_AND_WATER = Message(
    "Snakes hide under straw: lift it with a stick. Keep small children from the water: they can "
    "drown.",
    note="Caution when a bed is uncovered and given water.",
)
SNAKES = Message(
    "Snakes hide under straw: lift it with a stick.", note="Caution when a bed is uncovered."
)
CHILDREN = Message(
    "Keep small children from the water: they can drown.",
    note="Caution when water is let onto a bed.",
)
MACHINES = Message(
    "Keep children and loose clothes off machines and belts.",
    note="Caution when the field is ploughed or harrowed.",
)
IN_WATER = Message(
    "Drink water, rest in shade. Cover cuts before you go in the water. Fever later: health post.",
    note="Caution on the day of planting.",
)
SALT_AWAY = Message(
    "Throw the salt water where nothing grows, far from wells and ponds.",
    note="Caution after seed was sorted in salt water.",
)
