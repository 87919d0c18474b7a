"""Texts of what is put right on the officers' pages, and of what can still be taken back."""

from collections.abc import Mapping

from assistant.wording.message import Message

# --- a known number in another village --------------------------------------------------------
KNOWN_ELSEWHERE = Message(
    "This number is already registered in {village}. It is moved only if you say so.",
    note="Why a farmer is not enrolled, or a row not taken.",
)
MOVE_KNOWN = Message(
    "Move this farmer to the village chosen below", note="A box to tick, in a form."
)
MOVERS = Message(
    "{n} known farmer lives in another village than this list says. Rain warnings are "
    "sent by village.",
    plural="{n} known farmers live in another village than this list says. Rain warnings are "
    "sent by village.",
    note="Before a list is taken in.",
)
MOVE_THEM = Message("Move them as the list says", note="Button.")
LEAVE_THEM = Message("Leave them where they are", note="Button.")

# --- rows of a list that cannot be taken as they stand ----------------------------------------
CELL_LEFT_OUT = Message(
    "left out: {why}",
    note="About a cell of a row that is taken without it; a sentence follows.",
)
CELLS_ONLY = Message(
    "{n} person is left out only because of a cell that cannot be read, such as a field size or "
    "a date.",
    plural="{n} people are left out only because of cells that cannot be read, such as a field "
    "size or a date.",
    note="Before a list is taken in.",
)
CELLS_LEFT = Message(
    "People are taken in without the cells that cannot be read. Each is named below.",
    note="Before a list is taken in.",
)
TAKE_WITHOUT_CELLS = Message("Take them without those cells", note="Button.")
LEAVE_ROWS = Message("Leave those rows out again", note="Button.")
CORRECT_HERE = Message(
    "Correct the cells here and check again.",
    note="Above rows of a list that were left out.",
)
CHECK_AGAIN = Message("Check again", note="Button: a list is looked through with the changes.")

# --- a bed --------------------------------------------------------------------------------------
BED_RIGHT = Message("Correct the bed", note="Opens a form.")
BED_KIND = Message("Kind of bed", note="Label of a list.")
BED_AREA = Message(
    "Field, as the farmer says it", note="Label of a field: a size and its unit."
)
BED_PERCENT = Message("Sprouted of 100 seeds", note="Label of a field for a number.")
BED_LEAVES = Message(
    "Leaves open on most seedlings today", note="Label of a field for a number; may stay empty."
)
BED_HINT = Message(
    "The remaining days are planned again. Leave a field as it is where nothing changes.",
    note="Over a form.",
)
BED_IS_RIGHT = Message("The bed is corrected and its days are planned again.", note="Done.")
BED_SAME = Message("Nothing was changed: it was already like that.", note="Not done.")
BED_LEAVES_WRONG = Message(
    "Nothing was changed. Enter the leaves as a number from {low} to {high}.", note="Not done."
)
BED_AS_SOWN = Message(
    "Nothing was changed: the days of this bed cannot be planned that way. Check its dates.",
    note="Not done.",
)

# --- dates --------------------------------------------------------------------------------------
WHAT_CHANGES = Message("What changes", note="Heading: dates before and after.")
NO_DAY_CHANGES = Message("No day changes.", note="Under that heading.")
TEXT_THAT_GOES = Message("The text to the farmer", note="Heading.")
NO_TEXT_GOES = Message("No text is sent to the farmer.", note="Instead of a text.")
AS_IT_WAS = Message("Leave it as it is", note="Link: back, nothing is changed.")

# --- a visit ------------------------------------------------------------------------------------
MEND_VISIT = Message("Correct this visit", note="Opens a form; its button.")
DROP_VISIT = Message("Delete this visit", note="Button.")
VISIT_RIGHT = Message("The visit is corrected.", note="Done.")
VISIT_GONE = Message("The visit is deleted.", note="Done.")

# --- two entries of one person --------------------------------------------------------------------
JOIN = Message("Listed twice? Join the two entries", note="Opens a form, on a farmer's page.")
JOIN_HINT = Message(
    "Enter the other number this person is listed under. You see both entries before "
    "anything changes.",
    note="Over a form.",
)
JOIN_PHONE = Message("The other number", note="Label of a field.")
JOIN_LOOK = Message("Show both", note="Button: nothing is changed yet.")
JOIN_HEAD = Message("Are these the same person?", note="Heading over two people.")
JOIN_STAYS = Message("This entry stays, and texts go to its number", note="Over the first.")
JOIN_GOES = Message(
    "This one is merged into it. Its number gets no more texts, and the person has to "
    "write from the other number.",
    note="Over the second.",
)
JOIN_SURE = Message("They are the same person. This cannot be undone.", note="A box to tick.")
JOIN_DO = Message("Join them", note="Button.")
JOINED = Message("They are one entry now.", note="Done.")
JOIN_NOBODY = Message(
    "Nobody in your villages has this number.", note="Why two entries are not joined."
)
JOIN_SAME = Message(
    "This is the same entry. Enter the other number.", note="Why they are not joined."
)
JOIN_AGREED = Message(
    "Only the other entry has agreed to texts. Open that one and join from there.",
    note="Why they are not joined.",
)
JOIN_STOPPED = Message(
    "One of the two has stopped texts. Ask the person first; START brings texts back.",
    note="Why they are not joined. START is a word to send.",
)
JOIN_NOT: Mapping[str, Message] = {
    "nobody": JOIN_NOBODY,
    "same": JOIN_SAME,
    "agreed": JOIN_AGREED,
    "stopped": JOIN_STOPPED,
}
N_BEDS = Message("{n} nursery", plural="{n} nurseries", note="How many a person has or had.")
N_CALLS = Message("{n} call for help", plural="{n} calls for help", note="As above.")

# --- a list that was taken in ----------------------------------------------------------------------
WITHDRAW = Message("Undo this import", note="Opens a form; its button.")
WITHDRAW_HINT = Message(
    "Farmers added by this list who have not answered yet are removed, and their texts "
    "that have not gone out are cancelled. Farmers who have answered stay, and details "
    "that the list changed stay as they are.",
    note="Over a form.",
)
WITHDRAW_SURE = Message("The list was a mistake", note="A box to tick, before it is done.")
LIST_WITHDRAWN = Message(
    "{n} farmer is removed again; texts that did not go out: {count}.",
    plural="{n} farmers are removed again; texts that did not go out: {count}.",
    note="Done. {count} is a number.",
)
LIST_IS_BACK = Message("undone", note="What became of a list.")

# --- sent by me -------------------------------------------------------------------------------------
SENT_BY_ME = Message("Sent by me", note="Page and link: what the officer has sent.")
SENT_WHY = Message(
    "The last {n} days, latest first. A text that has gone out cannot be taken back; a "
    "rain warning can be corrected by another text.",
    note="Under the heading.",
)
NOTHING_SENT = Message("You have sent nothing in this time.", note="An empty list.")
TO_ONE = Message("To {name}", note="A text to one farmer.")
TO_MANY = Message("To many: {villages}", note="A text to many; names of villages.")
RAIN_TO = Message("Rain warning: {villages}", note="A warning; names of villages.")
WARNING_TO = Message("Warning of {danger}: {villages}", note="A warning; names of villages.")
LIST_OF = Message("List of farmers: {name}", note="A list taken in; {name} is of a file.")
STILL_WAITS = Message("waits until {time}", note="A text that has not left; a time of day.")
N_STILL_WAIT = Message(
    "{n} text not sent yet", plural="{n} texts not sent yet", note="Of a text to many."
)
STANDS_NOW = Message("stands", note="A rain warning that is not over.")
TAKE_BACK_ONE = Message("Take it back", note="Button.")
TAKEN_BACK_ONE = Message("It is taken back.", note="Done.")
LEFT_ALREADY = Message("It has already gone out.", note="Not done.")

# --- warnings ---------------------------------------------------------------------------------------
FOR_VILLAGES = Message("For which villages", note="Over boxes, all ticked.")
SAY_DONE = Message(
    "I phoned those ticked: it is done",
    note="Button under a list of farmers who have not answered a warning.",
)
SAY_COVERED = Message(
    "I phoned those ticked: their beds are covered",
    note="Button under a list of farmers who have not answered a rain warning.",
)
SWAPPED = Message(
    "If latitude and longitude changed places, {villages} would be in its area. The service may "
    "have written them the wrong way round: ring it, and warn by hand if rain is coming.",
    note="Of an official alert whose area lies elsewhere.",
)

PLACE_TURNED = Message(
    "Nothing was saved. Written the other way round this village would be beside the others: degrees "
    "north come first, then east. Correct it, or tick that it is right.",
    note="Where a village is: latitude and longitude seem to have changed places.",
)
PLACE_SURE = Message("It is right as written", note="A box to tick, beside a place.")

# --- what was done ----------------------------------------------------------------------------------
CALL_CLOSED = Message("Call of {name} closed", note="What an officer did; {name} is a farmer.")
BY_FARMER = Message("(the farmer)", note="Instead of an officer's name, in What was done.")
BY_SERVICE = Message("(the service itself)", note="As above: no person did it.")
BY_COMMAND = Message("(start or command line)", note="As above: done at the computer.")
BY_SOMEBODY = Message(
    "somebody who used the number of {officer}",
    note="As above: a sign-in that was refused; {officer} is a name.",
)

ACT_BED_MENDED = Message("corrected a bed", note="What was done.")
ACT_VISIT_MENDED = Message("put a visit right", note="What was done.")
ACT_VISIT_DROPPED = Message("took a visit away", note="What was done.")
ACT_JOINED = Message("joined two entries of one farmer", note="What was done.")
ACT_LIST_WITHDRAWN = Message("took a list of farmers back", note="What was done.")
ACT_TEXT_TAKEN_BACK = Message("took a text back before it left", note="What was done.")
MEND_ACTS: Mapping[str, Message] = {
    "bed_mended": ACT_BED_MENDED,
    "visit_mended": ACT_VISIT_MENDED,
    "visit_dropped": ACT_VISIT_DROPPED,
    "joined": ACT_JOINED,
    "list_withdrawn": ACT_LIST_WITHDRAWN,
    "text_taken_back": ACT_TEXT_TAKEN_BACK,
}
