"""Texts of warnings of other dangers than rain: to farmers, by the stage of the bed, and to
officers by SMS.

Each line is what to do first. Nobody is sent out into hail, wind or moving water, and none names
a product, bait or dose: what eats a bed is the officer's to see. What each rests on stands in
SOURCES.md.
"""

from assistant.wording.message import Message

_NAME = "A danger, within a sentence and as a choice."
_LINE = "A line of a warning: what to do with the nurseries {labels}; "

N_RAIN = Message("heavy rain", note=_NAME)
N_COLD = Message("cold night", note=_NAME)
N_HAIL = Message("hail", note=_NAME)
N_WIND = Message("strong wind", note=_NAME)
N_DRY = Message("dry spell", note=_NAME)
N_PESTS = Message("pests near", note=_NAME + " Animals or insects that eat seedlings.")
N_FLOOD = Message("river flood", note=_NAME)

# --- what a farmer is told -------------------------------------------------------------------
HEAD = Message(
    "WARNING {village}: {danger}, {from_time} to {to_time} on {date}.",
    note="The first line of a warning; {danger} is its short name.",
    spoken=True,
)
HEAD_DAYS = Message(
    "WARNING {village}: {danger}, {date} to {last}.",
    note="The same over several days.",
)
COLD_SOON = Message(
    "Do not sow {labels} yet. Keep the seed moist and warm.", note=_LINE + "about to be sown."
)
COLD_COVERED = Message(
    "Keep {labels} covered, under a sheet at night. No fire near it.",
    note=_LINE + "sown and covered.",
)
COLD_UNCOVERED = Message(
    "At dusk let {night_deep} cm of water in round {labels}; let it off in the morning.",
    note=_LINE + "uncovered.",
)
COLD_DRAINED = Message(
    "At dusk hang a sheet over {labels}, off the leaves; take it off by day.",
    note=_LINE + "no water stands round them.",
)
WAIT_SOON = Message("Do not sow {labels} yet.", note=_LINE + "about to be sown.")
HAIL_COVERED = Message(
    "Lay mats or branches over {labels} now, then stay indoors.",
    note=_LINE + "sown and covered. The mats are of straw or reed.",
)
HAIL_UNCOVERED = Message(
    "Lay mats or branches on a frame over {labels} now, then stay indoors.",
    note=_LINE + "uncovered. The mats are of straw or reed.",
)
WIND_COVERED = Message(
    "Tie the cover of {labels} and weigh it down now, then stay indoors.",
    note=_LINE + "sown and covered.",
)
WIND_UNCOVERED = Message(
    "Take tall frames at {labels} down now, tie what may fly, then stay indoors.",
    note=_LINE + "uncovered.",
)
DRY_SOON = Message("Store water for {labels} before you sow.", note=_LINE + "about to be sown.")
DRY_COVERED = Message(
    "Water {labels} morning and evening; keep the cover moist.",
    note=_LINE + "sown and covered.",
)
DRY_UNCOVERED = Message(
    "Look at the water of {labels} morning and evening, stop leaks, store water.",
    note=_LINE + "uncovered.",
)
DRY_DRAINED = Message(
    "Sprinkle {labels} morning and evening; shade it at noon.",
    note=_LINE + "no water stands round them.",
)
PESTS_SOON = Message(
    "Keep the seed of {labels} shut away and look at it each evening.",
    note=_LINE + "about to be sown.",
)
PESTS_COVERED = Message(
    "Look under the cover of {labels} morning and evening. Anything eaten: ask for help; put out "
    "and spray nothing yourself.",
    note=_LINE + "sown and covered.",
)
PESTS_UNCOVERED = Message(
    "Look at the leaves and roots of {labels} morning and evening. Anything eaten: ask for help; "
    "put out and spray nothing yourself.",
    note=_LINE + "uncovered.",
)
FLOOD_SOON = Message(
    "Do not sow {labels} yet. Carry seed and tools to high ground.",
    note=_LINE + "about to be sown.",
)
FLOOD_BED = Message(
    "Carry seed and tools to high ground now. When water comes leave {labels}: never go into "
    "moving water.",
    note=_LINE + "sown.",
)
STAY_IN = Message(
    "Stay in a safe place until it is over. Look at {labels} only then.",
    note=_LINE + "instead of any other, once hail, wind or a flood is there.",
)
BEGUN = Message("It has begun.", note="A line of a warning: how sure it is.")
POSSIBLE = Message(
    "It may come or not: better be ready.", note="A line of a warning: how sure it is."
)
KEYS = Message("1 Done 2 Need help", note="The last line of a warning.")
AGAIN = Message(
    "WARNING {village}: {danger} until {date}. No answer from you yet: have you seen to {labels}? "
    "Go out only where it is safe. 1 Yes 2 Need help",
    note="The second text, to those who have not answered a warning.",
    segments=2,
)
STANDS = Message(
    "A warning stands: {danger}. People come first. Have you done what it says?",
    note="First screen while a warning is not answered; choices follow.",
)
NOTED = Message("Good, I noted it: done. Stay safe.", note="Answer to 1 after a warning.")
HELP_NOTED = Message(
    "Noted: you need help. Your officer is told now.", note="Answer to 2 after a warning."
)
RECALLED = Message(
    "{village}: the warning of {danger} for {date} was a mistake and is taken back. Go on by your "
    "calendar.",
    note="To those who got a warning that the officer took back.",
)
OVER = Message(
    "{village}: the warning is over ({danger}).", note="First line when a danger is past."
)
AFTER_COLD = Message(
    "Look at {labels}: let high water off again. Pale leaves green up later.",
    note="After OVER.",
)
AFTER_SOON = Message(
    "Go on with {labels} by your calendar.", note="After OVER, to those who have not sown."
)
AFTER_STORM = Message(
    "Once it is calm look at {labels}, mend cover and frame. Stay away from fallen wires.",
    note="After OVER, of hail and wind.",
)
AFTER_DRY = Message("Water {labels} by your calendar again.", note="After OVER.")
AFTER_PESTS = Message("Look at {labels} each morning all the same.", note="After OVER.")
AFTER_FLOOD = Message(
    "Stay out of moving water. Look at {labels} once the ground is free of it.",
    note="After OVER.",
)
UNCOVER_WAITS = Message(
    "A warning stands: do NOT uncover the bed or let water in yet. I ask again tomorrow.",
    note="Replaces 'uncover' while a warning of another danger than rain stands.",
)
SOW_WAITS = Message(
    "A warning stands: do NOT sow yet. Keep the seed moist, shaded and covered; I ask again "
    "tomorrow.",
    note="Replaces 'sow' while a warning of another danger than rain stands.",
)

# --- to an officer, by SMS -------------------------------------------------------------------
ASK_WARN = Message(
    "Warn {village} of {danger}, {from_time} to {to_time} on {date}? Phones: {phones}. Beds: "
    "{young}, about to sow: {soon}.",
    note="Shown back to the officer; '1 Yes 2 No' follows.",
    segments=2,
)
ASK_WARN_DAYS = Message(
    "Warn {village} of {danger}, {date} to {last}? Phones: {phones}. Beds: {young}, about to sow: "
    "{soon}.",
    note="Shown back to the officer; '1 Yes 2 No' follows.",
    segments=2,
)
NOBODY_TO_WARN = Message(
    "No bed of {village} is at a stage that this danger can harm. Nothing to send.",
    note="A warning would reach nobody.",
)
NO_HOURS = Message(
    "Say the hours, e.g. {word} code {village} 14-20, or TOMORROW 6-12, or 12/6 6-12.",
    note="The hours of a danger could not be read. {word} is such as COLD. TOMORROW stays.",
)
HOURS_PAST = Message(
    "{from_time} to {to_time} on {date} is over. Send hours that are still to come.",
    note="A warning for hours that have gone by.",
)
TOO_FAR = Message(
    "{date} is more than {days} days ahead, too early to warn. Did you mean another day? Send "
    "{word} again with it.",
    note="To an officer: the day of a warning is too late. {word} is such as COLD.",
)
COUNTED = Message(
    "{village}, {danger}, {date}: {asked} asked, {delivered} reached, {covered} done, {help} need "
    "help.",
    note="The answers to a warning so far.",
)
WHICH = Message(
    "Several warnings stand for {village}: {words}. Say which, e.g. CLEAR code {village} {word}.",
    note="{words} and {word} are such as RAIN, COLD. CLEAR stays.",
    segments=2,
)
MORE_WORDS = Message(
    "Other dangers, in place of RAIN: {words}.",
    note="After the help for officers; {words} are such as COLD, HAIL. RAIN stays.",
)
HELP_WANTED = Message(
    "Help wanted, warning of {danger}: {phone}, {village}. Go only when it is safe.",
    note="To the officer: a farmer answered 2 to a warning.",
)
