"""Texts of the pages by which the head of a programme runs it."""

from collections.abc import Mapping

from assistant.wording.message import Message
from assistant.wording.messages_web_settings import ACT_SETTING_CHANGED

PROGRAMME = Message(
    "Programme", note="Page: how a programme is set up and how its line stands."
)
FIRST_DAY = Message("Getting started", note="Heading over steps.")
ALL_THERE = Message("Everything is in place.", note="Instead of steps that are left.")
STEP_DONE = Message("done", note="Beside a step.")
N_OF = Message("{n} of {count}", note="How far a step is: numbers.")
STEP_VILLAGES = Message("Villages", note="A step.")
STEP_OFFICERS = Message("An officer for each village", note="A step.")
STEP_PLACES = Message("Where each village is", note="A step.")
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
LINE_STATE = Message("Phone line", note="Heading: whether texts leave and arrive.")
LINE_TOOK = Message("The operator last accepted a text", note="Beside a time.")
LINE_RECEIPT = Message("Last delivery confirmed", note="Beside a time.")
LINE_WAITING = Message("Texts waiting to go out", note="Beside a number.")
NEVER = Message("not yet", note="Instead of a time.")
IN_FORCE = Message("Current settings", note="Heading over settings.")
BY_MACHINE = Message(
    "Whoever runs the server changes these in the programme file or the environment and "
    "restarts the service.",
    note="Over settings that no page changes.",
)
S_PRICE = Message("Price of a segment", note="A setting.")
S_LANGUAGES = Message("Languages", note="A setting.")
S_PROMPT = Message("Daily text goes out at", note="A setting; a time of day.")
S_QUIET = Message("Quiet hours", note="A setting; two times of day.")
S_ZONE = Message("Time zone", note="A setting.")
S_LIMITS = Message("Segments a day", note="A setting: the most that may leave, or no limit.")
S_FOUR_EYES = Message(
    "A second lead must send texts to more phones than", note="A setting; a number."
)
NO_LIMIT = Message("no limit", note="Instead of a number.")
FROM_TO = Message("{from_time} to {to_time}", note="Two times of day.")
EXPORTS = Message("Downloads", note="Heading over files.")
PEOPLE_FILE = Message("Farmers and their numbers", note="A file.")
MESSAGES_FILE = Message("All texts of the last 31 days", note="A file: to whom, and its fate.")
OPERATOR_SAID = Message("What the operator said", note="Head of a column.")
COPIES = Message("Backups", note="Heading.")
COPY_MADE = Message("Last backup", note="Beside a time.")
COPY_NOW = Message("Back up now", note="Button.")
COPY_ASKED = Message(
    "A backup is made within a minute.", note="Done; also while it is waited for."
)
COPY_NONE = Message(
    "No backups are made. Whoever runs the server sets a folder for them (copies_folder).",
    note="Instead of a time. The word in brackets is the name of a setting.",
)
COPY_BACK = Message(
    "A backup is restored on the server, with the service stopped.", note="Under a button."
)
COSTS_FILE = Message("Messages and costs by month and village", note="A file.")
FILE_WHY = Message(
    "These files hold names and numbers: keep them as safe as paper records. What was "
    "done shows who downloaded them.",
    note="Under links to files.",
)
AGREED_ON = Message("Agreed on", note="Head of a column.")
STOPPED_ON = Message("Stopped on", note="Head of a column.")
LANGUAGE = Message("Language", note="Head of a column.")
OPEN_BEDS = Message("Open nurseries", note="Head of a column.")

# --- villages -----------------------------------------------------------------------------------
ADD_VILLAGE = Message("Add a village", note="Heading and button.")
VILLAGE_NAME = Message("Name of the village", note="Label of a field.")
VILLAGE_MADE = Message(
    "{village} is added. Now enter where it is and who serves it.", note="Done."
)
VILLAGE_DATA = Message("Name and emergency contacts", note="Heading over a form.")
EMERGENCY = Message("Emergency number", note="Label of a field.")
HEALTH_POST = Message("Health post, with its number", note="Label of a field.")
VET = Message("Vet, with a number", note="Label of a field.")
HELPERS_HINT = Message(
    "Somebody who is hurt is sent these. Ring each number yourself before you save it. If"
    " left empty, the programme's own is used.",
    note="Under these fields.",
)
VILLAGE_KEPT = Message("Saved.", note="Done.")
JOIN_VILLAGE = Message("Merge with another village", note="Opens a form; its button.")
JOIN_VILLAGE_HINT = Message(
    "All its farmers and officers move to the other village, and this one is no longer "
    "listed. This cannot be undone.",
    note="Over a form.",
)
JOIN_INTO = Message("Village to keep", note="Label of a list.")
JOIN_VILLAGE_SURE = Message("They are the same village", note="A box to tick.")
VILLAGES_JOINED = Message(
    "{n} farmer now lives in {village}.",
    plural="{n} farmers now live in {village}.",
    note="Done.",
)
RETIRE = Message("Retire this village", note="Button: it is listed no more.")
RETIRED = Message("{village} is no longer listed. Its history is kept.", note="Done.")
BAD_NAME = Message("Enter a name of at most 20 letters.", note="Nothing was changed.")
NAME_TAKEN = Message("There is already a village of that name.", note="Nothing was changed.")
BAD_HELPERS = Message(
    "Nothing was changed. The emergency number and the vet need a phone number. At most "
    "24 characters fit in the emergency number, 40 in the others.",
    note="Not done.",
)
STANDS_WARNED = Message(
    "A rain warning stands there: its farmers would miss the all-clear. Merge the "
    "villages afterwards.",
    note="Nothing was changed.",
)
STILL_LIVED_IN = Message(
    "Farmers live there. Merge it with another village first.", note="Nothing was changed."
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
    "Drawn from the places entered. A larger mark has more open nurseries; a coloured one"
    " has open calls. Distances are in a straight line.",
    note="Under a drawing.",
)
UNPLACED = Message("Not on the map: {villages}", note="Names of villages.")
OFFICER_DATA = Message("Name, number and language", note="Heading over a form.")
OFFICER_KEPT = Message("Saved. They sign in with this number from now on.", note="Done.")

# --- how calls are answered ---------------------------------------------------------------------
OPEN_CALLS = Message("Open calls", note="Head of a column: a number, since when the oldest.")
ANSWERED_CALLS = Message("Answered in 31 days", note="Head of a column: how many calls.")
HALF_WITHIN = Message("Half of them within", note="Head of a column: a span of time.")
SINCE = Message("since {when}", note="Under a number of open calls: date and time.")
N_MINUTES = Message("{n} minute", plural="{n} minutes", note="How long calls waited.")
N_HOURS = Message("{n} hour", plural="{n} hours", note="How long calls waited.")
N_DAYS = Message("{n} day", plural="{n} days", note="How long calls waited.")
BOARD_WHY = Message(
    "A call from a village with two officers counts as open for both. The times include "
    "nights and days off: ask before you judge.",
    note="Under a table of officers and the calls they answered.",
)

ACT_VILLAGE_ADDED = Message("added a village", note="What was done.")
ACT_VILLAGE_MENDED = Message("changed a village's details", note="What was done.")
ACT_VILLAGE_JOINED = Message("merged two villages", note="What was done.")
ACT_VILLAGE_RETIRED = Message("retired a village", note="What was done.")
ACT_OFFICER_MENDED = Message("changed an officer's name or number", note="What was done.")
ACT_PEOPLE_TAKEN = Message("downloaded the list of farmers", note="What was done.")
ACT_COSTS_TAKEN = Message("downloaded messages and costs", note="What was done.")
ACT_MESSAGES_TAKEN = Message("downloaded the texts of a month", note="What was done.")
ACT_COPY_ASKED = Message("asked for a backup", note="What was done.")
ACT_ALERT_PASTED = Message("entered an official alert by hand", note="What was done.")
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
