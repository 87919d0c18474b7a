"""Texts of the pages by which the head of a programme runs it."""

from collections.abc import Mapping

from assistant.wording.message import Message
from assistant.wording.messages_web_settings import ACT_SETTING_CHANGED

PROGRAMME = Message(
    "Programme", note="Page: how a programme is set up and how its line stands."
)
FIRST_DAY = Message("What a first day needs", note="Heading over steps.")
ALL_THERE = Message("All of it is there.", note="Instead of steps that are left.")
STEP_DONE = Message("done", note="Beside a step.")
N_OF = Message("{n} of {count}", note="How far a step is: numbers.")
STEP_VILLAGES = Message("Villages", note="A step.")
STEP_OFFICERS = Message("An officer for each village", note="A step.")
STEP_PLACES = Message("Where each village lies", note="A step.")
STEP_NUMBERS = Message("An emergency number for each village", note="A step.")
STEP_PRICE = Message("What a text costs", note="A step.")
STEP_LINE = Message("A test text on your own phone", note="A step.")
STEP_FARMERS = Message("The first farmers", note="A step.")
STEPS: Mapping[str, Message] = {
    "villages": STEP_VILLAGES,
    "officers": STEP_OFFICERS,
    "places": STEP_PLACES,
    "numbers": STEP_NUMBERS,
    "price": STEP_PRICE,
    "line": STEP_LINE,
    "farmers": STEP_FARMERS,
}
LINE_STATE = Message("The line", note="Heading: whether texts leave and arrive.")
LINE_TOOK = Message("The operator last took a text", note="Beside a time.")
LINE_RECEIPT = Message("A text was last said to be on a phone", note="Beside a time.")
LINE_WAITING = Message("Texts that could leave and wait", note="Beside a number.")
NEVER = Message("never yet", note="Instead of a time.")
IN_FORCE = Message("What is set", note="Heading over settings.")
BY_MACHINE = Message(
    "Who runs the machine changes these in the programme file or the environment, and starts the "
    "service again.",
    note="Over settings that no page changes.",
)
S_PRICE = Message("Price of a segment", note="A setting.")
S_LANGUAGES = Message("Languages", note="A setting.")
S_PROMPT = Message("The day's text goes out at", note="A setting; a time of day.")
S_QUIET = Message("Quiet hours", note="A setting; two times of day.")
S_ZONE = Message("Time zone", note="A setting.")
S_LIMITS = Message("Segments a day", note="A setting: the most that may leave, or no limit.")
S_FOUR_EYES = Message("Two leads for letters to more phones than", note="A setting; a number.")
NO_LIMIT = Message("no limit", note="Instead of a number.")
FROM_TO = Message("{from_time} to {to_time}", note="Two times of day.")
EXPORTS = Message("Take with you", note="Heading over files.")
PEOPLE_FILE = Message("Farmers with their numbers", note="A file.")
MESSAGES_FILE = Message("Each text of the last 31 days", note="A file: to whom, and its fate.")
OPERATOR_SAID = Message("What the operator said", note="Head of a column.")
COPIES = Message("Copies of the data", note="Heading.")
COPY_MADE = Message("The last copy was made", note="Beside a time.")
COPY_NOW = Message("Make a copy now", note="Button.")
COPY_ASKED = Message(
    "A copy is made within a minute.", note="Done; also while it is waited for."
)
COPY_NONE = Message(
    "No copies are made. Who runs the machine sets a folder for them (copies_folder).",
    note="Instead of a time. The word in brackets is the name of a setting.",
)
COPY_BACK = Message(
    "A copy is put back at the machine, with the service stopped.", note="Under a button."
)
COSTS_FILE = Message("Messages and costs by month and village", note="A file.")
FILE_WHY = Message(
    "Names and numbers are in it: keep it as you would keep the papers. The trail tells who took "
    "it.",
    note="Under links to files.",
)
AGREED_ON = Message("Agreed on", note="Head of a column.")
STOPPED_ON = Message("Stopped on", note="Head of a column.")
LANGUAGE = Message("Language", note="Head of a column.")
OPEN_BEDS = Message("Open nurseries", note="Head of a column.")

# --- villages -----------------------------------------------------------------------------------
ADD_VILLAGE = Message("Add a village", note="Heading and button.")
VILLAGE_NAME = Message("Name of the village", note="Label of a field.")
VILLAGE_MADE = Message("{village} is added. Say where it lies and who serves it.", note="Done.")
VILLAGE_DATA = Message("Name, and whom to turn to", note="Heading over a form.")
EMERGENCY = Message("Number to ring in an emergency", note="Label of a field.")
HEALTH_POST = Message("Health post, with its number", note="Label of a field.")
VET = Message("Vet, with a number", note="Label of a field.")
HELPERS_HINT = Message(
    "Somebody who is hurt is sent these. Ring each number yourself before you save it. Empty is as "
    "the programme has it.",
    note="Under these fields.",
)
VILLAGE_KEPT = Message("It is kept.", note="Done.")
JOIN_VILLAGE = Message("Join it with another village", note="Opens a form; its button.")
JOIN_VILLAGE_HINT = Message(
    "All its farmers and officers go to the other one, and it is listed no more. This cannot be "
    "undone.",
    note="Over a form.",
)
JOIN_INTO = Message("Village that stays", note="Label of a list.")
JOIN_VILLAGE_SURE = Message("They are one village", note="A box to tick.")
VILLAGES_JOINED = Message(
    "{n} farmer lives in {village} now.",
    plural="{n} farmers live in {village} now.",
    note="Done.",
)
RETIRE = Message("Retire this village", note="Button: it is listed no more.")
RETIRED = Message("{village} is listed no more. Its story is kept.", note="Done.")
BAD_NAME = Message("Write a name of at most 20 letters.", note="Nothing was changed.")
NAME_TAKEN = Message("A village of that name is there already.", note="Nothing was changed.")
BAD_HELPERS = Message(
    "Nothing was changed. The emergency number and the vet need a number, and all of them must be "
    "short: 24 signs for the number, 40 for the others.",
    note="Not done.",
)
STANDS_WARNED = Message(
    "A rain warning stands there: its farmers would miss the all-clear. Join them after it.",
    note="Nothing was changed.",
)
STILL_LIVED_IN = Message(
    "Farmers live there. Join it with another village first.", note="Nothing was changed."
)
SAME_VILLAGE = Message("Choose the other village.", note="Nothing was changed.")
VILLAGE_NOT: Mapping[str, Message] = {
    "name": BAD_NAME,
    "taken": NAME_TAKEN,
    "helpers": BAD_HELPERS,
    "warned": STANDS_WARNED,
    "lived_in": STILL_LIVED_IN,
    "same": SAME_VILLAGE,
}
UNITS = Message("Land units here", note="Heading over a form on the page of a village.")
UNITS_LABEL = Message("Names and size of each", note="Label of a field.")
UNITS_HINT = Message(
    'One a line, the size in m2: "bigha = 1338" or "plot, plots = 400". Farmers here then write '
    '"2 bigha"; beds that are planned stay as they are. Hectares and acres are the same everywhere.',
    note="Under that field. The words in quotes are examples: NAME = SIZE.",
)
UNITS_KEPT = Message("Kept. New plans here go by these units.", note="Done.")
UNITS_WRONG = Message(
    'This is no unit: "{words}". Write a name, "=" and a size in m2; none that is the same '
    "everywhere.",
    note="Nothing was kept. {words}: the line as typed.",
)
ACT_VILLAGE_UNITS = Message("set the land units of a village", note="What was done.")
MAP = Message("Map of the villages", note="Heading of a drawing.")
MAP_HINT = Message(
    "By the places that were given. A larger mark has more open nurseries; in colour, calls are "
    "open. Distances are as the crow flies.",
    note="Under a drawing.",
)
UNPLACED = Message("Not on the map: {villages}", note="Names of villages.")
OFFICER_DATA = Message("Name, number and language", note="Heading over a form.")
OFFICER_KEPT = Message("It is kept. They sign in with this number from now on.", note="Done.")

# --- how calls are answered ---------------------------------------------------------------------
OPEN_CALLS = Message("Open calls", note="Head of a column: a number, since when the oldest.")
ANSWERED_CALLS = Message("Answered, 31 days", note="Head of a column: how many calls.")
HALF_WITHIN = Message("Half of them within", note="Head of a column: a span of time.")
SINCE = Message("since {when}", note="Under a number of open calls: date and time.")
N_MINUTES = Message("{n} minute", plural="{n} minutes", note="How long calls waited.")
N_HOURS = Message("{n} hour", plural="{n} hours", note="How long calls waited.")
N_DAYS = Message("{n} day", plural="{n} days", note="How long calls waited.")
BOARD_WHY = Message(
    "A call of a village with two officers is open for both. Nights and days off are in the times: "
    "ask before you judge.",
    note="Under a table of officers and the calls they answered.",
)

ACT_VILLAGE_ADDED = Message("added a village", note="What was done.")
ACT_VILLAGE_MENDED = Message("changed what is kept of a village", note="What was done.")
ACT_VILLAGE_JOINED = Message("joined two villages", note="What was done.")
ACT_VILLAGE_RETIRED = Message("retired a village", note="What was done.")
ACT_OFFICER_MENDED = Message("changed an officer's name or number", note="What was done.")
ACT_PEOPLE_TAKEN = Message("took the list of farmers as a file", note="What was done.")
ACT_COSTS_TAKEN = Message("took messages and costs as a file", note="What was done.")
ACT_MESSAGES_TAKEN = Message("took the texts of a month as a file", note="What was done.")
ACT_COPY_ASKED = Message("asked for a copy of the data", note="What was done.")
ACT_ALERT_PASTED = Message("took in an official alert by hand", note="What was done.")
OFFICE_ACTS: Mapping[str, Message] = {
    "messages_taken": ACT_MESSAGES_TAKEN,
    "copy_asked": ACT_COPY_ASKED,
    "alert_pasted": ACT_ALERT_PASTED,
    "setting_changed": ACT_SETTING_CHANGED,
    "village_added": ACT_VILLAGE_ADDED,
    "village_mended": ACT_VILLAGE_MENDED,
    "village_joined": ACT_VILLAGE_JOINED,
    "village_retired": ACT_VILLAGE_RETIRED,
    "village_units": ACT_VILLAGE_UNITS,
    "officer_mended": ACT_OFFICER_MENDED,
    "people_taken": ACT_PEOPLE_TAKEN,
    "costs_taken": ACT_COSTS_TAKEN,
}
