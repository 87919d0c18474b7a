"""Texts of rain warnings: the longer ones, the second text, calling back, what an officer hears.

Each text that may send somebody out of the house says that people come first.
"""

from assistant.wording.message import Message

WARNING_DAYS = Message(
    "RAIN WARNING {village}: heavy rain from {date} {from_time} to {last} {to_time}. Keep people "
    "safe first. Cover nursery {labels} now, drain surplus water. Go in when it thunders.",
    note="From the officer to nurseries on days 0 to 5: rain over more than a day.",
    segments=2,
    spoken=True,
)
WARNING_WAIT_DAYS = Message(
    "RAIN WARNING {village}: heavy rain from {date} {from_time} to {last} {to_time}. Keep people "
    "safe first. Do not sow nursery {labels} before it is over; keep the seed moist.",
    note="From the officer to those about to sow: rain over more than a day.",
    segments=2,
    spoken=True,
)
COVERED_OR_HELP = Message(
    "1 Covered 2 Need help", note="The last line of a rain warning to nurseries on days 0 to 5."
)
UNDERSTOOD_OR_HELP = Message(
    "1 Understood 2 Need help", note="The last line of a rain warning to those about to sow."
)
SURE_OBSERVED = Message("It rains already.", note="A line of a rain warning: how sure it is.")
SURE_LIKELY = Message("The rain is likely.", note="A line of a rain warning: how sure it is.")
SURE_POSSIBLE = Message(
    "The rain may come or not: better be ready.",
    note="A line of a rain warning: how sure it is.",
)
SERVICE_SAYS = Message(
    "Weather service: {words}",
    note="A line of a rain warning; {words} is the headline of the weather service's own alert.",
)
OFFICER_ADDS = Message(
    "Your officer: {words}",
    note="A line of a rain warning; {words} are the officer's own.",
    segments=2,
)
WARNING_AGAIN = Message(
    "RAIN WARNING {village} stands until {to_time} on {date}. No answer from you yet: is nursery "
    "{labels} covered, or its sowing put off? People first: go out only where it is safe. "
    "1 Yes 2 Need help",
    note="The second text, to those who have not answered a rain warning.",
    segments=2,
    spoken=True,
)
RECALLED = Message(
    "{village}: the rain warning for {date} was a mistake and is taken back. Go on by your "
    "calendar.",
    note="To those who got a rain warning that the officer took back.",
)
STAY_SAFE = Message(
    "People first: stay out of moving water and away from fallen wires.",
    note="A line of the text that a rain warning is over.",
)

# --- to an officer, by SMS -------------------------------------------------------------------
TOO_FAR = Message(
    "{date} is more than {days} days ahead, too early to warn. Did you mean another day? Send RAIN "
    "again with it.",
    note="To an officer: the day of a warning is too late. RAIN stays.",
)
NEARLY = Message(
    "Do you mean {village}? Then send {example} code {village}.",
    note="To an officer whose village was not surely read; {example} is CLEAR.",
)
