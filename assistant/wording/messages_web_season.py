"""Texts of the season picture, the wall calendar and the calendar file."""

from assistant.wording.message import Message

SEASON = Message("Season picture", note="Page: where every nursery stands, as a picture.")
SEASON_OF = Message("Season picture, {place}", note="Heading; {place} is a village.")
STAGE = Message("Stage", note="Label of a list, head of a column: where a nursery stands.")
ALL_STAGES = Message("All stages", note="A choice in a list.")
PRACTICE = Message("Practice", note="Label of a list: the way of raising seedlings.")
ALL_PRACTICES = Message("All practices", note="A choice in a list.")
BY_VILLAGE = Message("Where the nurseries stand", note="Heading of a table by village.")
IN_ALL = Message("In all", note="Head of a column and of the last line: a sum.")
COUNT = Message("{n} nursery", plural="{n} nurseries", note="How many are shown.")
NONE = Message("No nurseries match this choice.", note="An empty list.")
TIME_LINE = Message("Timeline", note="Head of a column with a bar from day to day.")
NEXT = Message("Next", note="Head of a column: the next task and its day.")
FROM = Message("from {date}", note="Beside a stage of a nursery: its first day.")
TODAY = Message("today", note="A mark on a time line.")
WHOLE_DISTRICT = Message("All villages, counted", note="Link back from a list of nurseries.")

DUE = Message("Due in the next seven days", note="Heading of a table: tasks by day.")
DUE_HINT = Message(
    "Everyday work such as watering is not counted here. Each number leads to the nurseries.",
    note="Under that heading.",
)
DUE_NONE = Message("Nothing is due in the next seven days.", note="Instead of that table.")
DUE_ON = Message("{what}, {date}", note="A task and its day.")

CALENDAR = Message("Wall calendar", note="Link: a calendar to print.")
CALENDAR_OF = Message(
    "Nursery calendar, {place}", note="Heading on paper; {place} is a village."
)
CALENDAR_BED = Message(
    "Nursery calendar, {farmer}, {label}",
    note="Heading on paper: the farmer's name and the nursery's.",
)
AS_WEEKS = Message("By week", note="A choice: the calendar as a grid of weeks.")
AS_LIST = Message("As a list of days", note="A choice: the calendar as a list.")
FORM = Message("Layout", note="Label of a list: how a calendar is laid out on paper.")
SHEET_LANGUAGE = Message("Language of the sheet", note="Label of a list.")
NAMES_HINT = Message(
    "Everybody who passes by can read the names, so ask the farmers first. Phone numbers "
    "are left out; a farmer without a name is shown by the last four digits.",
    note="Beside the button for printing.",
)
LEFT_OUT = Message(
    "{n} farmer is left out, having not agreed to texts or stopped them.",
    plural="{n} farmers are left out, having not agreed to texts or stopped them.",
    note="Beside the button for printing.",
)
MAY_MOVE = Message(
    "Days may move with the weather: what the officer or a text says later comes first. People "
    "first in a storm: stay in.",
    note="At the foot of a printed calendar. Keep the caution.",
)
AS_OF = Message("as of {date}", note="Beside the heading on paper: the day it was made.")
EMPTY = Message("Nothing to do in these weeks.", note="An empty calendar.")
WEEKS_BEFORE = Message("Earlier weeks", note="Link.")
WEEKS_AFTER = Message("Later weeks", note="Link.")

FILE = Message("Calendar file", note="Link: a file for the calendar of a phone or computer.")
FILE_MINE = Message("Calendar file of my villages", note="Link.")
FILE_HINT = Message(
    "Open it with the calendar on your phone or computer. Load it again after dates have "
    "changed: known days move along and none appears twice. It names farmers: share it "
    "with care.",
    note="Under that link.",
)
EVENT = Message(
    "{what}, {place}: {n} nursery",
    plural="{what}, {place}: {n} nurseries",
    note="A day in the calendar of a phone: task, village, how many nurseries have it that day.",
)
