"""Answers to plain questions of the field, the harvest and what strangers asked in December.

Common practice, no source, but for the numbers, which are slots. No dose, product or bait.
"""

from assistant.wording.message import Message

_PLAIN = "Answers a farmer's question; plain words, one segment. "

FIELD_FERT = Message(
    "Fertiliser in the field: how much and when depends on your soil. Ask your officer or local "
    "advice. Not in the first days after planting.",
    note=_PLAIN + "When and how much fertiliser after planting? No dose, no day.",
)
URINE = Message(
    "No urine on the bed: it burns young seedlings. For the field ask your officer. Rotted manure "
    "may go into the soil mix.",
    note=_PLAIN + "May I use urine as fertiliser? No dose.",
)
SOW_HOUR = Message(
    "Sow early in the morning or in the late afternoon, not in hot sun. Cover and water at once. "
    "Remove the cover only late in the day.",
    note=_PLAIN + "Sow in the morning or evening? And at which hour is it uncovered.",
)
HARD_FLOOR = Message(
    "Yes, a flat hard floor or cement in the sun will do: sheet, {thick} cm of mix, let water run "
    "off. It heats and dries fast: water more often.",
    note=_PLAIN + "May the bed lie on cement, a yard, a flat roof?",
)
LIFT_HOW = Message(
    "Drain first. When the mat is firm, cut between mats, slide a board under and lift flat, soil "
    "and all. Do not pull single seedlings.",
    note=_PLAIN + "How do I lift without breaking roots?",
)
DRY_STORE = Message(
    "Dry paddy thin on a clean sheet {dry_low} to {dry_high} days, turn it often. Dry when a grain cracks hard "
    "between teeth. Store clean, closed, off the floor. No poison.",
    note=_PLAIN + "How long is paddy dried, how is it kept from weevils?",
)
FISH_DUCKS = Message(
    "Fish or ducks only in the field, when plants are well rooted, about {duck_weeks} weeks after planting, "
    "never with sprays. Ducks out when ears come. Not on the bed.",
    note=_PLAIN + "Fish or ducks in the planted field?",
)
LODGING = Message(
    "Rice lies down: let water off the field. Tie some plants together if you can. Cut it first, "
    "as soon as it is ripe, and dry it well.",
    note=_PLAIN + "Wind laid the rice down before harvest.",
)
SOAK_WATER = Message(
    "Soak in clean, fresh water, never hot: hot water kills seed. Change it morning and evening. "
    "Keep the pail covered: small children can drown.",
    note=_PLAIN + "Which water, may it be hot, is it changed? Keep the caution.",
)
SOAK_SMELLS = Message(
    "Smelling water: pour it off now, rinse the seed, take clean water, change it morning and "
    "evening. Soft or rotten seed: do not sow it.",
    note=_PLAIN + "The soaking water smells sour.",
)
TOO_WET = Message(
    "Too much water: shoots go weak, roots rot, the mat tears. Before uncovering only moist, then "
    "never over the shoots. Let the rest run off.",
    note=_PLAIN + "What if I water too much?",
)
WHY_UNCOVER = Message(
    "Shoots need light. Under the cover they grow long, white and weak. Uncover on the day I "
    "tell, late in the day; one day later is no great harm.",
    note=_PLAIN + "Why is it uncovered, what if it stays longer?",
)
RATS = Message(
    "Rats: keep grass short and rubbish away, put a low sheet fence round the bed, set traps, "
    "watch at night. No poison.",
    note=_PLAIN + "What keeps rats off? No bait.",
)
ASH = Message(
    "A little cold wood ash mixed into the soil does no harm. Much ash harms seedlings. Do not "
    "put it on the seed.",
    note=_PLAIN + "Kitchen ash in the mix or on the bed?",
)
