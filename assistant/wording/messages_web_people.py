"""Texts of the pages on which farmers are enrolled: one by one, and by an office's list.

The reasons stand on the page and in the file of rows to mend; they say what to do.
"""

from collections.abc import Mapping

from assistant.wording.message import Message

# --- why a row is not taken -----------------------------------------------------------------
NO_PHONE = Message("The phone number is missing.", note="Why a row is not taken.")
BAD_PHONE = Message(
    "'{words}' is not a phone number. Write it with + and the country code.",
    note="Why a row is not taken; {words} is what stands there.",
)
CUT_PHONE = Message(
    "'{words}': the spreadsheet has cut this number short. Format the column as text and "
    "type it again.",
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
    "'{words}' is not a name, or is too long.", note="Why a row is not taken: a person's name."
)
NO_VILLAGE = Message("The village is missing.", note="Why a row is not taken.")
UNKNOWN_VILLAGE = Message(
    "There is no village '{words}'. Choose one for it above, or correct the name.",
    note="Why a row is not taken.",
)
OTHERS_VILLAGE = Message(
    "'{words}' is not one of your villages.", note="Why a row is not taken."
)
BAD_LANGUAGE = Message(
    "'{words}' is not one of the languages here: {languages}.",
    note="Why a row is not taken; {languages} is a list of names.",
)
NO_UNIT = Message(
    "'{words}' has no unit. Choose the unit above, or write e.g. 0.4 ha.",
    note="Why a row is not taken: the size of a field.",
)
BAD_AREA = Message(
    "'{words}' cannot be read as a field size. Write e.g. 0.4 ha or 1 acre.",
    note="Why a row is not taken.",
)
BAD_DATE = Message(
    "'{words}' cannot be read as a date. Write it like 2026-06-10.",
    note="Why a row is not taken.",
)
PAST_DATE = Message(
    "The sowing day {date} is more than {n} days ago.",
    note="Why a row is not taken.",
)
FAR_DATE = Message(
    "The sowing day {date} is more than a year ahead.", note="Why a row is not taken."
)
BAD_GERMINATION = Message(
    "'{words}' cannot be read as a germination. Write e.g. 85%.", note="Why a row is not taken."
)
BAD_BED = Message(
    "The nursery's name '{words}' is too long: {n} letters at most.",
    note="Why a row is not taken.",
)
SHARED_PHONE = Message(
    "The same number appears with another name: {names}. Answer the question above, or "
    "correct it.",
    note="Why a row is not taken; names of people.",
)
OTHER_OWNER = Message(
    "This number is listed under {name}. Say above what happened, or correct it.",
    note="Why a row is not taken; {name} is a person.",
)
TWO_VILLAGES = Message(
    "The same farmer is in another village in row {line}.",
    note="Why a row is not taken; {line} is a number.",
)
ELSEWHERE = Message(
    "This number is registered in a village that is not yours. Ask your lead.",
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
RENAMED = Message("the same person with another name", note="A choice, and what happens.")
HEIR = Message(
    "a new person, who continues the nurseries", note="A choice: the number has passed on."
)
NEW_OWNER = Message(
    "a new person; the nurseries so far are closed",
    note="A choice: the number has passed on.",
)
LEAVE_OUT = Message("leave out, to correct later", note="A choice: the row is not taken.")
FAMILY = Message(
    "one family phone: a nursery for each name", note="A choice: a number stands twice."
)

# --- the list: sending it in ----------------------------------------------------------------
LISTS = Message("Import a list", note="Page and link: farmers from a file.")
LISTS_WHY = Message(
    "A list of farmers as CSV or XLSX, with the columns in any order. You first see what "
    "would happen; nothing is saved until you say so. Each new farmer is then asked by "
    "text to agree.",
    note="Under the heading.",
)
FILE = Message("File", note="Label of a field.")
READ_FILE = Message("Read the file", note="Button.")
EXAMPLE = Message("An empty list with these columns", note="Link to a file.")
EARLIER = Message("Earlier lists", note="Heading.")
LIST_OPEN = Message("not imported yet", note="About a list.")
LIST_WORKING = Message("being imported", note="About a list.")
LIST_DONE = Message("imported", note="About a list.")
CANNOT_EMPTY = Message("There is nothing in that file.", note="A file was not read.")
CANNOT_TOO_BIG = Message("That file is too big. Split it in two.", note="A file was not read.")
CANNOT_TOO_MANY_ROWS = Message(
    "That list has too many rows. Split it in two.", note="A file was not read."
)
CANNOT_OLD_OR_LOCKED = Message(
    "That is an old XLS file, or one with a password. Save it as XLSX or CSV.",
    note="A file was not read.",
)
CANNOT_BROKEN = Message(
    "That file is damaged. Save it again as XLSX or CSV.", note="A file was not read."
)
CANNOT_NOT_A_TABLE = Message(
    "That is not a table of farmers. Save the list as XLSX or CSV.",
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
COLUMNS = Message("1. What the columns contain", note="Heading of a step.")
COLUMNS_WHY = Message(
    "Check that each column is read as what it is, and change it where it is not.",
    note="Under the heading.",
)
COLUMN = Message("Column", note="Head of a table's column.")
HOLDS = Message("Contains", note="Head of a table's column: what a column of the list holds.")
SAMPLES = Message("First rows", note="Head of a table's column: examples from the list.")
NOTHING = Message("(not used)", note="A choice: this column is not read.")
IS_GUESS = Message(
    "a guess: please check", note="Beside a column that was not surely recognised."
)
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
UNIT = Message("Unit for field sizes without one", note="Label of a list of units.")
NO_UNIT_CHOSEN = Message("(none: those rows are left out)", note="A choice in a list.")
ORDER = Message("03/06/2026 is", note="Label: the order of day and month.")
DAY_FIRST = Message("3 June", note="A choice: the day comes first.")
MONTH_FIRST = Message("6 March", note="A choice: the month comes first.")
VILLAGE_FOR_ALL = Message("Village for rows without one", note="Label of a list of villages.")
NONE = Message("(none)", note="A choice in a list.")
LANGUAGE_FOR_ALL = Message("Language for rows without one", note="Label of a list.")
VILLAGES_UNKNOWN = Message(
    "Village names that are not known. Which villages are they?", note="Heading."
)
CHECK = Message("See what would happen", note="Button.")
NEEDS_PHONE = Message(
    "Say which column holds the phone number.", note="The list cannot be read yet."
)

# --- the list: what would happen ------------------------------------------------------------
OUTLOOK = Message("2. What would happen", note="Heading of a step.")
OUTLOOK_WHY = Message("Nothing has been saved yet.", note="Under the heading.")
COUNT_NEW = Message("{n} new farmer", plural="{n} new farmers", note="A count.")
COUNT_CHANGED = Message("{n} changed", plural="{n} changed", note="A count of farmers.")
COUNT_SAME = Message("{n} unchanged", plural="{n} unchanged", note="A count of rows.")
COUNT_REJECTED = Message("{n} row left out", plural="{n} rows left out", note="A count.")
COUNT_BEDS = Message("{n} new nursery", plural="{n} new nurseries", note="A count.")
COUNT_ASKED = Message(
    "{n} text asks for agreement", plural="{n} texts ask for agreement", note="A count."
)
SHARED = Message("One number, several names", note="Heading of questions.")
PASSED_ON = Message("A known number with another name", note="Heading of questions.")
KNOWN_AS = Message("known as {old}, in the list {name}", note="Two names of people.")
DECIDE = Message("Show it again with these answers", note="Button.")
LEFT_OUT = Message("Rows left out, and why", note="Heading.")
ROW = Message("Row", note="Head of a column: the number of a row in the file.")
WHY = Message("Reason", note="Head of a column, also in the file of rows to mend.")
IN_ROW = Message("What stands there", note="Head of a column: the cells of a row.")
ALL_REJECTS = Message(
    "Download all rows left out, to correct and send in again", note="Link to a file."
)
SHOWN_OF = Message("{n} of {count} are shown.", note="Under a long table; two numbers.")
CHANGED = Message("Farmers who change", note="Heading.")
WHAT = Message("What changes", note="Head of a column.")
NEW_FARMERS = Message("New farmers", note="Heading.")
BED = Message("Nursery", note="Head of a column.")
APPLY = Message("Import the list", note="Button: the list is applied.")
WITHOUT = Message(
    "Leave out the {n} row with an open question above",
    plural="Leave out the {n} rows with open questions above",
    note="Box to tick beside the button that takes a list in; rows of a file.",
)
ANSWER_FIRST = Message(
    "Nothing has been imported yet. Answer the questions, or tick that their rows are "
    "left out.",
    note="The button was pressed with questions open.",
)
ANSWERS_COUNTED = Message(
    "Your answers are included, and nothing has been imported yet. Look again, then import it.",
    note="The button was pressed with new answers beside it.",
)
NOTHING_TO_DO = Message("There is nothing to import.", note="Instead of that button.")
MOVED_ON = Message(
    "The farmers on record have changed in the meantime. Look at what would happen now, "
    "and import it again.",
    note="The list was not applied.",
)
NOT_TAKEN = Message(
    "The import failed, and nothing of it is saved. Try again.", note="Our own fault."
)
WORKING = Message("The list is being imported", note="Heading while it is worked on.")
WORKING_WHY = Message(
    "You may leave this page; the work continues. The page looks again by itself.",
    note="Under that heading.",
)
DONE_SO_FAR = Message("{n} of {count} farmers", note="Progress; two numbers.")
TAKEN = Message("The list is imported", note="Heading when it is done.")
OTHER_LIST = Message("Import another list", note="Link.")

# --- one farmer -----------------------------------------------------------------------------
ENROL = Message("Enrol a farmer", note="Heading and button.")
NAME = Message("Name", note="Label of a field.")
SPEAKS = Message("Language of texts", note="Label of a field.")
ENROL_HINT = Message(
    "The farmer is asked by text to agree, and gets nothing else before that.",
    note="Under the heading.",
)
ENROLLED = Message("{name} is enrolled and is asked to agree.", note="Done; a name.")
ALREADY = Message("{name} is already registered like this.", note="Nothing changed.")
MENDED = Message("{name}'s details are changed.", note="Done; a name.")
WHAT_HAPPENED = Message("What happened?", note="Label of choices: a number passed on.")
ASKED_ON = Message("asked {date}, no answer yet", note="About a farmer.")
ASKED_TWICE = Message("asked twice, last on {date}; no answer", note="About a farmer.")
SAID_NO_ON = Message("said no {date}", note="About a farmer.")
UNSURE_SINCE = Message(
    "may not want texts, not asked again since {date}", note="About a farmer who was asked."
)
PAUSED_SINCE = Message(
    "daily texts paused since {date}: ring and ask",
    note="About a farmer who wrote what may be a wish for no more texts.",
)
ENROLLED_BY = Message("Enrolled by {officer} on {date}.", note="About a farmer.")
ENROLLED_AT_DESK = Message("Enrolled by the office on {date}.", note="About a farmer.")
STANDING = Message(
    "Texts", note="Label of a list: who agreed to texts, who answers them, whom they reach."
)
STANDS_AGREED = Message("agreed", note="A choice: farmers who agreed to texts.")
STANDS_ASKED = Message("asked, no answer yet", note="A choice: farmers.")
STANDS_SILENT = Message("asked twice, no answer", note="A choice: farmers.")
STANDS_NO = Message("said no", note="A choice: farmers.")
STANDS_STOPPED = Message("stopped texts", note="A choice: farmers.")
STANDS_UNANSWERED = Message(
    "no answer to tasks", note="A choice: farmers who do not answer the texts of a day's work."
)
STANDS_DEAD = Message("texts do not arrive", note="A choice: farmers; the number is dead.")
STANDINGS: Mapping[str, Message] = {
    "agreed": STANDS_AGREED,
    "asked": STANDS_ASKED,
    "silent": STANDS_SILENT,
    "no": STANDS_NO,
    "stopped": STANDS_STOPPED,
    "unanswered": STANDS_UNANSWERED,
    "dead": STANDS_DEAD,
}
ALL = Message("All", note="A choice in a list.")
NEW_NUMBER = Message("New phone number", note="Heading: the farmer has a new phone number.")
NEW_NUMBER_HINT = Message(
    "The nurseries stay with the farmer. The new number is asked to agree before anything"
    " else goes to it.",
    note="Under the heading.",
)
CHANGE_NUMBER = Message("Change the number", note="Button.")
NUMBER_CHANGED = Message("The number is changed; the new one is asked to agree.", note="Done.")
NUMBER_TAKEN = Message(
    "That number belongs to another farmer.", note="The number was not changed."
)
NO_NUMBER = Message("no number any more", note="About a farmer whose number passed on.")
HAD_NUMBER = Message("had {phone} until {date}", note="About a farmer; a number and a date.")
