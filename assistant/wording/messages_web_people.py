"""Texts of the pages on which farmers are enrolled: one by one, and by an office's list.

The reasons stand on the page and in the file of rows to mend; they say what to do.
"""

from collections.abc import Mapping

from assistant.wording.message import Message

# --- why a row is not taken -----------------------------------------------------------------
NO_PHONE = Message("The phone number is missing.", note="Why a row is not taken.")
BAD_PHONE = Message(
    "'{words}' is no phone number. Write it with + and the country code.",
    note="Why a row is not taken; {words} is what stands there.",
)
CUT_PHONE = Message(
    "'{words}': the spreadsheet has cut this number. Format the column as text and type it again.",
    note="Why a row is not taken, as for 4.47701E+11.",
)
UNSURE_PHONE = Message(
    "'{words}' may be {first} or {second}. Write it with + and the country code.",
    note="Why a row is not taken; two phone numbers.",
)
TWO_PHONES = Message(
    "'{words}' is more than one number. Keep the one the farmer reads texts on.",
    note="Why a row is not taken; phone numbers.",
)
BAD_NAME = Message(
    "'{words}' is no name, or too long.", note="Why a row is not taken: a person's name."
)
NO_VILLAGE = Message("The village is missing.", note="Why a row is not taken.")
UNKNOWN_VILLAGE = Message(
    "There is no village '{words}'. Choose one for it above, or mend the name.",
    note="Why a row is not taken.",
)
OTHERS_VILLAGE = Message(
    "'{words}' is not one of your villages.", note="Why a row is not taken."
)
BAD_LANGUAGE = Message(
    "'{words}' is none of the languages here: {languages}.",
    note="Why a row is not taken; {languages} is a list of names.",
)
NO_UNIT = Message(
    "'{words}' has no unit. Choose the unit above, or write e.g. 0.4 ha.",
    note="Why a row is not taken: the size of a field.",
)
BAD_AREA = Message(
    "'{words}' is no sure size of a field. Write e.g. 0.4 ha or 1 acre.",
    note="Why a row is not taken.",
)
BAD_DATE = Message(
    "'{words}' is no sure date. Write it like 2026-06-10.", note="Why a row is not taken."
)
PAST_DATE = Message(
    "The sowing day {date} is more than {n} days ago.",
    note="Why a row is not taken.",
)
FAR_DATE = Message(
    "The sowing day {date} is more than a year ahead.", note="Why a row is not taken."
)
BAD_GERMINATION = Message(
    "'{words}' is no sure germination. Write e.g. 85%.", note="Why a row is not taken."
)
BAD_BED = Message(
    "The nursery's name '{words}' is too long: {n} letters at most.",
    note="Why a row is not taken.",
)
SHARED_PHONE = Message(
    "The same number stands beside another name: {names}. Say above what it is, or mend it.",
    note="Why a row is not taken; names of people.",
)
OTHER_OWNER = Message(
    "This number is known as {name}'s. Say above what happened, or mend it.",
    note="Why a row is not taken; {name} is a person.",
)
TWO_VILLAGES = Message(
    "The same farmer stands in another village in row {line}.",
    note="Why a row is not taken; {line} is a number.",
)
ELSEWHERE = Message(
    "This number is enrolled in a village that is not yours. Ask your lead.",
    note="Why a row is not taken.",
)
SAID_NO = Message(
    "This farmer said no and is not asked again. They can send START.",
    note="Why a row is not taken. START is a word to send.",
)
# --- what became of a row -------------------------------------------------------------------
REPEATED = Message("Repeats row {line}.", note="A row of the list; {line} is a number.")
IS_NEW = Message("New: {name}, {village}", note="A row of the list; a person and a village.")
KEPT_BED = Message(
    "The farmer's own plan stays as it is.", note="The list says another field or day."
)
CHANGES_NAME = Message("name: {old} -> {name}", note="What changes; {old} may be '-'.")
CHANGES_VILLAGE = Message("village: {old} -> {village}", note="What changes.")
CHANGES_LANGUAGE = Message("language: {old} -> {language}", note="What changes.")
CHANGES_BED = Message("nursery {label}: {what}", note="What changes; {what} tells the plan.")
ADDS_BED = Message("new nursery: {what}", note="What changes; {what} tells the plan.")
ADDS_WISH = Message("for the plan, once they agree: {what}", note="What changes.")
ASKS = Message("is asked to agree", note="What happens to this farmer.")
RENAMED = Message("the same person, another name", note="A choice, and what happens.")
HEIR = Message(
    "a new person, who goes on with the nurseries", note="A choice: the number has passed on."
)
NEW_OWNER = Message(
    "a new person; the nurseries until now are closed",
    note="A choice: the number has passed on.",
)
LEAVE_OUT = Message("leave out, to be mended", note="A choice: the row is not taken.")
FAMILY = Message(
    "one phone of a family: a nursery for each name", note="A choice: a number stands twice."
)

# --- the list: sending it in ----------------------------------------------------------------
LISTS = Message("Import a list", note="Page and link: farmers from a file.")
LISTS_WHY = Message(
    "A list of farmers as CSV or XLSX, in any order of columns. It is first shown what would "
    "happen; nothing is kept before you say so. Each new farmer is then asked by text to agree.",
    note="Under the heading.",
)
FILE = Message("File", note="Label of a field.")
READ_FILE = Message("Read the file", note="Button.")
EXAMPLE = Message("An empty list with these columns", note="Link to a file.")
EARLIER = Message("Earlier lists", note="Heading.")
LIST_OPEN = Message("not taken in yet", note="About a list.")
LIST_WORKING = Message("being taken in", note="About a list.")
LIST_DONE = Message("taken in", note="About a list.")
CANNOT_EMPTY = Message("There is nothing in that file.", note="A file was not read.")
CANNOT_TOO_BIG = Message("That file is too big. Part it in two.", note="A file was not read.")
CANNOT_TOO_MANY_ROWS = Message(
    "That list has too many rows. Part it in two.", note="A file was not read."
)
CANNOT_OLD_OR_LOCKED = Message(
    "That is an old XLS file, or one with a password. Save it as XLSX or CSV.",
    note="A file was not read.",
)
CANNOT_BROKEN = Message(
    "That file is broken. Save it once more as XLSX or CSV.", note="A file was not read."
)
CANNOT_NOT_A_TABLE = Message(
    "That is no table of farmers. Save the list as XLSX or CSV.",
    note="A file was not read.",
)
CANNOT: Mapping[str, Message] = {
    "empty": CANNOT_EMPTY,
    "too_big": CANNOT_TOO_BIG,
    "too_many_rows": CANNOT_TOO_MANY_ROWS,
    "old_or_locked": CANNOT_OLD_OR_LOCKED,
    "broken": CANNOT_BROKEN,
    "not_a_table": CANNOT_NOT_A_TABLE,
}
NO_FILE = Message("Choose a file first.", note="Nothing was sent in.")

# --- the list: how it is read ---------------------------------------------------------------
COLUMNS = Message("1. What the columns hold", note="Heading of a step.")
COLUMNS_WHY = Message(
    "Look whether each column is what it is taken for, and change it where it is not.",
    note="Under the heading.",
)
COLUMN = Message("Column", note="Head of a table's column.")
HOLDS = Message("Holds", note="Head of a table's column: what a column of the list holds.")
SAMPLES = Message("First rows", note="Head of a table's column: examples from the list.")
NOTHING = Message("(not used)", note="A choice: this column is not read.")
IS_GUESS = Message("a guess: look", note="Beside a column that was not surely recognised.")
FIELD_PHONE = Message("Phone number", note="What a column holds.")
FIELD_NAME = Message("Name of the farmer", note="What a column holds.")
FIELD_VILLAGE = Message("Village", note="What a column holds.")
FIELD_LANGUAGE = Message("Language of texts", note="What a column holds.")
FIELD_AREA = Message("Size of the field", note="What a column holds.")
FIELD_SOWING = Message("Planned sowing day", note="What a column holds.")
FIELD_GERMINATION = Message("Germination", note="What a column holds.")
FIELD_NURSERY = Message("Name of the nursery", note="What a column holds.")
FIELDS: Mapping[str, Message] = {
    "phone": FIELD_PHONE,
    "name": FIELD_NAME,
    "village": FIELD_VILLAGE,
    "language": FIELD_LANGUAGE,
    "area": FIELD_AREA,
    "sowing": FIELD_SOWING,
    "germination": FIELD_GERMINATION,
    "nursery": FIELD_NURSERY,
}
HOW_READ = Message("How the cells are read", note="Heading.")
LETTERS = Message("Letters look wrong? Read the file as", note="Label: the code of letters.")
SHEET = Message("Sheet", note="Label: which sheet of a workbook.")
NUMBERS_OF = Message(
    "Numbers without a country code are of {region}.",
    note="{region} is the name of a country.",
)
NUMBERS_WITH_CODE = Message(
    "Phone numbers need their country code here: no country is set for the programme.",
    note="Shown where no country is set.",
)
UNIT = Message("Unit of field sizes without one", note="Label of a list of units.")
NO_UNIT_CHOSEN = Message("(none: such rows are left out)", note="A choice in a list.")
ORDER = Message("03/06/2026 is", note="Label: the order of day and month.")
DAY_FIRST = Message("3 June", note="A choice: the day comes first.")
MONTH_FIRST = Message("6 March", note="A choice: the month comes first.")
VILLAGE_FOR_ALL = Message("Village of rows without one", note="Label of a list of villages.")
NONE = Message("(none)", note="A choice in a list.")
LANGUAGE_FOR_ALL = Message("Language of rows without one", note="Label of a list.")
VILLAGES_UNKNOWN = Message(
    "Names of villages that are not known. Which are they?", note="Heading."
)
CHECK = Message("See what would happen", note="Button.")
NEEDS_PHONE = Message(
    "Say which column holds the phone number.", note="The list cannot be read yet."
)

# --- the list: what would happen ------------------------------------------------------------
OUTLOOK = Message("2. What would happen", note="Heading of a step.")
OUTLOOK_WHY = Message("Nothing is kept yet.", note="Under the heading.")
COUNT_NEW = Message("{n} new farmer", plural="{n} new farmers", note="A count.")
COUNT_CHANGED = Message("{n} changed", plural="{n} changed", note="A count of farmers.")
COUNT_SAME = Message("{n} as they are", plural="{n} as they are", note="A count of rows.")
COUNT_REJECTED = Message("{n} row left out", plural="{n} rows left out", note="A count.")
COUNT_BEDS = Message("{n} new nursery", plural="{n} new nurseries", note="A count.")
COUNT_ASKED = Message(
    "{n} text asks for agreement", plural="{n} texts ask for agreement", note="A count."
)
SHARED = Message("One number, several names", note="Heading of questions.")
PASSED_ON = Message("A known number under another name", note="Heading of questions.")
KNOWN_AS = Message("known as {old}, in the list {name}", note="Two names of people.")
DECIDE = Message("Show it again with these answers", note="Button.")
LEFT_OUT = Message("Rows left out, and why", note="Heading.")
ROW = Message("Row", note="Head of a column: the number of a row in the file.")
WHY = Message("Reason", note="Head of a column, also in the file of rows to mend.")
IN_ROW = Message("What stands there", note="Head of a column: the cells of a row.")
ALL_REJECTS = Message(
    "All rows left out, as a file to mend and send in again", note="Link to a file."
)
SHOWN_OF = Message("{n} of {count} are shown.", note="Under a long table; two numbers.")
CHANGED = Message("Farmers who change", note="Heading.")
WHAT = Message("What changes", note="Head of a column.")
NEW_FARMERS = Message("New farmers", note="Heading.")
BED = Message("Nursery", note="Head of a column.")
APPLY = Message("Take it in", note="Button: the list is applied.")
WITHOUT = Message(
    "Leave out the {n} row with an open question above",
    plural="Leave out the {n} rows with open questions above",
    note="Box to tick beside the button that takes a list in; rows of a file.",
)
ANSWER_FIRST = Message(
    "Nothing is taken in yet. Answer the questions, or tick that their rows are left out.",
    note="The button was pressed with questions open.",
)
ANSWERS_COUNTED = Message(
    "Your answers are counted in, and nothing is taken in yet. Look again, then take it in.",
    note="The button was pressed with new answers beside it.",
)
NOTHING_TO_DO = Message("There is nothing to take in.", note="Instead of that button.")
MOVED_ON = Message(
    "The roll has changed meanwhile. Look at what would happen now, and take it in again.",
    note="The list was not applied.",
)
NOT_TAKEN = Message(
    "It could not be taken in, and nothing of it is kept. Try again.", note="Our own fault."
)
WORKING = Message("The list is being taken in", note="Heading while it is worked on.")
WORKING_WHY = Message(
    "You may leave this page; it goes on. This page looks again by itself.",
    note="Under that heading.",
)
DONE_SO_FAR = Message("{n} of {count} farmers", note="Progress; two numbers.")
TAKEN = Message("The list is taken in", note="Heading when it is done.")
OTHER_LIST = Message("Take in another list", note="Link.")

# --- one farmer -----------------------------------------------------------------------------
ENROL = Message("Enrol a farmer", note="Heading and button.")
NAME = Message("Name", note="Label of a field.")
SPEAKS = Message("Language of texts", note="Label of a field.")
ENROL_HINT = Message(
    "The farmer is asked by text to agree, and gets nothing else before.",
    note="Under the heading.",
)
ENROLLED = Message("{name} is enrolled and is asked to agree.", note="Done; a name.")
ALREADY = Message("{name} is on the roll already, as written.", note="Nothing changed.")
MENDED = Message("What is kept of {name} is changed.", note="Done; a name.")
WHAT_HAPPENED = Message("What happened?", note="Label of choices: a number passed on.")
ASKED_ON = Message("asked {date}, no answer yet", note="About a farmer.")
ASKED_TWICE = Message("asked twice, last {date}; never answered", note="About a farmer.")
SAID_NO_ON = Message("said no {date}", note="About a farmer.")
UNSURE_SINCE = Message(
    "may not want texts, not asked again since {date}", note="About a farmer who was asked."
)
PAUSED_SINCE = Message(
    "daily texts rest since {date}: ring and ask",
    note="About a farmer who wrote what may be a wish for no more texts.",
)
ENROLLED_BY = Message("Enrolled by {officer} on {date}.", note="About a farmer.")
ENROLLED_AT_DESK = Message("Enrolled by the office on {date}.", note="About a farmer.")
STANDING = Message("Agreement", note="Label of a list: who agreed to texts.")
STANDS_AGREED = Message("agreed", note="A choice: farmers who agreed to texts.")
STANDS_ASKED = Message("asked, no answer yet", note="A choice: farmers.")
STANDS_SILENT = Message("asked twice, never answered", note="A choice: farmers.")
STANDS_NO = Message("said no", note="A choice: farmers.")
STANDS_STOPPED = Message("stopped texts", note="A choice: farmers.")
STANDINGS: Mapping[str, Message] = {
    "agreed": STANDS_AGREED,
    "asked": STANDS_ASKED,
    "silent": STANDS_SILENT,
    "no": STANDS_NO,
    "stopped": STANDS_STOPPED,
}
ALL = Message("All", note="A choice in a list.")
NEW_NUMBER = Message("Another number", note="Heading: the farmer has a new phone number.")
NEW_NUMBER_HINT = Message(
    "The nurseries stay with the farmer. The new number is asked to agree before anything goes "
    "to it.",
    note="Under the heading.",
)
CHANGE_NUMBER = Message("Change the number", note="Button.")
NUMBER_CHANGED = Message("The number is changed; the new one is asked to agree.", note="Done.")
NUMBER_TAKEN = Message("That number is another farmer's.", note="The number was not changed.")
NO_NUMBER = Message("no number any more", note="About a farmer whose number passed on.")
HAD_NUMBER = Message("had {phone} until {date}", note="About a farmer; a number and a date.")
