"""Texts of what waits for an officer, and of what is done from that list."""

from collections.abc import Mapping

from assistant.wording.message import Message

WAITING = Message("Waiting for me", note="Page: all that waits for an officer, the first page.")
WAITING_ON = Message(
    "Waiting for me, {date}", note="Heading. {date} is a date with its weekday."
)
N_WAIT = Message("{n} waiting", plural="{n} waiting", note="Beside a page's name: how many.")
ALL_QUIET = Message(
    "Nothing is waiting for you. No calls are open and every nursery has answered.",
    note="Nothing is to be done.",
)
NOT_ALL_ASKED = Message(
    "No calls are open. But texts are not going out, so not every nursery has been asked."
    " See what is waiting.",
    note="In its place while they do not; a link to the texts that wait.",
)
TO_DECIDE = Message("Warn or not?", note="Heading: rain warnings that somebody must decide on.")
SAME_STORM = Message(
    "{n} earlier one says the same.",
    plural="{n} earlier ones say the same.",
    note="Beside a warning that waits for a decision.",
)
WITHDRAWN = Message(
    "Taken back by the weather service", note="Heading: warnings of ours that still stand."
)
WITHDRAWN_SAYS = Message(
    "Your warning still stands in {villages}, and farmers keep sowing on hold.",
    note="The weather service has taken its alert back.",
)
LOOK_AT_IT = Message("Look at it", note="Button: opens an alert that was taken back.")
RAIN_HELP = Message(
    "Help in rain and other dangers",
    note="Heading: farmers who asked for help after a warning.",
)
STANDS_LINE = Message(
    "{covered} covered, {help} need help, {silent} silent",
    note="What came back on a warning; all are numbers of phones.",
)
STANDS_DONE = Message(
    "{covered} done, {help} need help, {silent} silent",
    note="What came back on a warning; all are numbers of phones.",
)
WORDS = Message(
    "Texts that could not be understood", note="Heading: texts that the program did not read."
)
N_LIKE_IT = Message("{n} text", plural="{n} texts", note="How many could not be read.")
DEAD = Message(
    "Numbers that texts do not reach", note="Heading: numbers that the operator refuses."
)
N_LOST = Message(
    "{n} text in a row not delivered",
    plural="{n} texts in a row not delivered",
    note="Beside a phone number.",
)
TO_READ = Message(
    "Office answers for you to read",
    note="Heading: answers of the office that a second person reads before farmers get them.",
)
BY_VILLAGE = Message("By village", note="Link: order the list of nurseries so.")
BY_REASON = Message("By reason", note="Link: order the list of nurseries so.")
N_OF = Message("{what}: {n}", note="How many nurseries of a village have which reason.")
MORE = Message("{n} more", plural="{n} more", note="Opens the rest of a list.")
FOLDED = Message(
    "{n} line is hidden. Open a group to see it.",
    plural="{n} lines are hidden. Open a group to see them.",
    note="Under the heading of the page: how much is not shown until it is opened.",
)
TICK = Message("Tick {name}", note="Label of a box, for people who hear the page read.")
TICK_ALL = Message("Tick all of these", note="Button over a list of nurseries.")
OPEN_PAGE = Message("Open the page", note="Link to the page of a nursery or a farmer.")
RING = Message("Phone", note="Link that dials a number.")

# --- deeds ----------------------------------------------------------------------------------
WITH_TICKED = Message("With those ticked:", note="Before buttons.")
VISITED = Message("Visited", note="Button: notes a visit to those ticked.")
RANG = Message("Phoned: all is well", note="Button: the officer has spoken with the farmer.")
WRITE = Message("Write", note="Button: sends a text to those ticked.")
MOVE = Message("Change the day", note="Button: changes the day of sowing or transplanting.")
SEEN = Message("Seen", note="Button: takes those ticked from the list.")
HAND = Message("Give to a colleague", note="Button: another officer sees to a call.")
DEEDS: Mapping[str, Message] = {
    "hand": HAND,
    "visited": VISITED,
    "rang": RANG,
    "text": WRITE,
    "move": MOVE,
    "seen": SEEN,
}
NONE_TICKED = Message("Tick somebody first.", note="Nothing was done.")
FOR_WHOM = Message("Who this is for", note="Over a list of people with boxes, all ticked.")
NOT_FOR = Message(
    "Cannot be done for these", note="Heading: for whom the deed cannot be done, and why."
)
NOT_A_CALL = Message("not a call for help", note="Why something cannot be done for somebody.")
NOT_A_BED = Message("no nursery", note="Why something cannot be done for somebody.")
BED_ONLY_SEEN = Message(
    "a nursery leaves the list only after a visit or a phone call",
    note="Why it cannot be marked as seen.",
)
ALARM_ONLY = Message(
    "a cry for help is closed with a note of what was done",
    note="Why it cannot be marked as seen.",
)
WHAT_SEEN = Message("What you saw and did (optional)", note="Label of a field.")
WHAT_HEARD = Message("What was said (optional)", note="Label of a field.")
ASKED_DONE = Message(
    "They have done what they were asked: record it as their answer", note="A box to tick."
)
SAYS_COVERED = Message(
    "Their beds are covered: record it as their answer to the rain warning",
    note="A box to tick.",
)
OPEN_TASK = Message("asked: {what}", note="Beside a nursery: a task that was not answered.")
DO_VISITED = Message("Record {n} visit", plural="Record {n} visits", note="Button.")
DO_RANG = Message("Record {n} phone call", plural="Record {n} phone calls", note="Button.")
DO_SEEN = Message("Mark {n} as seen", plural="Mark {n} as seen", note="Button.")
DO_TEXT = Message("Send to {n}", plural="Send to {n}", note="Button: how many get the text.")
DO_MOVE = Message(
    "Change {n} day", plural="Change {n} days", note="Button: of how many nurseries."
)
DO_HAND = Message("Give {n} call", plural="Give {n} calls", note="Button: to a colleague.")
DO: Mapping[str, Message] = {
    "hand": DO_HAND,
    "visited": DO_VISITED,
    "rang": DO_RANG,
    "seen": DO_SEEN,
    "text": DO_TEXT,
    "move": DO_MOVE,
}
DID_VISITED = Message("{n} visit is recorded.", plural="{n} visits are recorded.", note="Done.")
DID_RANG = Message(
    "{n} phone call is recorded.", plural="{n} phone calls are recorded.", note="Done."
)
DID_SEEN = Message("{n} is marked as seen.", plural="{n} are marked as seen.", note="Done.")
DID_TEXT = Message(
    "{n} text goes out in a minute.", plural="{n} texts go out in a minute.", note="Done."
)
DID_TOLD = Message(
    "{n} text is on its way.", plural="{n} texts are on their way.", note="Done."
)
DID_LATER = Message(
    "{n} text waits for the end of the quiet hours.",
    plural="{n} texts wait for the end of the quiet hours.",
    note="Done.",
)
DID_CLOSED = Message("{n} is closed.", plural="{n} are closed.", note="Done: calls for help.")
DID_MOVE = Message("{n} day is changed.", plural="{n} days are changed.", note="Done.")
DID_DATES = Message("The dates are changed.", note="Done.")
DID_DATES_TOLD = Message(
    "The dates are changed, and the farmer is told in a minute.",
    note="Done; until then it can be undone.",
)
DID_TIMED = Message(
    "{n} text goes out at the hour you chose.",
    plural="{n} texts go out at the hour you chose.",
    note="Done.",
)
DID_HAND = Message(
    "{n} call is with your colleague.",
    plural="{n} calls are with your colleague.",
    note="Done.",
)
DID: Mapping[str, Message] = {
    "timed": DID_TIMED,
    "hand": DID_HAND,
    "dates": DID_DATES,
    "dates_told": DID_DATES_TOLD,
    "visited": DID_VISITED,
    "rang": DID_RANG,
    "seen": DID_SEEN,
    "text": DID_TEXT,
    "told": DID_TOLD,
    "later": DID_LATER,
    "closed": DID_CLOSED,
    "move": DID_MOVE,
}
UNDO = Message("Undo", note="Button: takes back what was just done, for a minute.")
UNDONE = Message("Undone.", note="After 'Undo'.")
UNDONE_BUT = Message(
    "Undone, but {n} text had already gone out.",
    plural="Undone, but {n} texts had already gone out.",
    note="After 'Undo'.",
)
TOO_LATE = Message("It is too late to undo that: a minute has passed.", note="Not undone.")

# --- writing --------------------------------------------------------------------------------
ANSWER_TO = Message("Answer {name}", note="Heading; {name} is a farmer's.")
PHRASE = Message("A ready-made text, in the farmer's language", note="Heading over choices.")
OWN_WORDS = Message("Or your own words", note="Label of a field; they are not translated.")
OWN_WORDS_HINT = Message(
    "Sent exactly as you write them. The people they are for read: {languages}.",
    note="Under that field; {languages} names the languages of those who get the text.",
)
ONE_TEXT = Message(
    "{n} segment, {cost}",
    plural="{n} segments, {cost}",
    note="What a text takes; {cost} is an amount of money or 'price not set'.",
)
ALTOGETHER = Message(
    "{phones} phones: {n} segment, {cost}",
    plural="{phones} phones: {n} segments, {cost}",
    note="What texts take together; {cost} is an amount of money or 'price not set'.",
)
SHOW_COST = Message("Show the text and its cost", note="Button: nothing leaves yet.")
CHOOSE_WORDS = Message("Choose a text or write one.", note="Nothing was sent.")
LEAVES_IN_MINUTE = Message(
    "It goes out in a minute; until then you can undo it.", note="Under a button that sends."
)

# --- the round ------------------------------------------------------------------------------
ROUND = Message("My round", note="Page: whom to see today, village by village, on one's way.")
ROUND_ON = Message("My round, {date}", note="Heading. {date} is a date with its weekday.")
ROUND_WHY = Message(
    "On the phone where you opened this page it can be read without a connection. Your "
    "notes are sent when you are connected again.",
    note="Under the heading.",
)
TODAYS_VILLAGES = Message("Today's villages", note="Heading over villages with boxes to tick.")
NOBODY_HERE = Message("Nobody is waiting here.", note="A village of the round.")
LAST_WORDS = Message("Last text: {words}", note="The last text of a farmer.")
YOUR_NOTE = Message("Your note", note="Label of a field: what an officer saw or did.")
KEEP_NOTE = Message("Save the note", note="Button: the officer has been there.")
NOTE_TAKEN = Message("The note is saved.", note="Done.")
NOTE_NOT_TAKEN = Message("The note could not be saved: {why}", note="{why} is a sentence.")
NOTE_WAITS = Message(
    "Saved on this phone, sent when you are connected", note="Beside a note that was written."
)
NOTE_SENT = Message("Sent", note="Beside a note of the round.")
NOTES_WAIT = Message("Notes waiting on this phone:", note="A number follows.")
NO_LINE = Message(
    "No connection. You see this page as it was at {time}.", note="{time} is a time of day."
)
SEE_ALL = Message("Show the round", note="Button: the villages that are ticked.")

# --- days -----------------------------------------------------------------------------------
NEW_DAY = Message("New day", note="Label of a date field.")
MOVE_HINT = Message(
    "The sowing day if it is not sown yet, otherwise the day planned for transplanting.",
    note="Under that field.",
)
SHOW_CHANGES = Message("Show what changes", note="Button: nothing is changed yet.")
WAS_AND_IS = Message("{what}: {was}, now {date}", note="A date before and after a change.")
NOT_SET = Message("not set", note="Instead of a date.")
DAY_SOWING = Message("Sowing", note="A date of a nursery, before the old and the new day.")
DAY_UNCOVERING = Message("Uncovering", note="A date of a nursery, as above.")
DAY_TRANSPLANTING = Message("Transplanting", note="A date of a nursery, as above.")
DAY_TRANSPLANTED = Message("Transplanted", note="A date of a nursery, as above.")
DAYS: Mapping[str, Message] = {
    "sow_date": DAY_SOWING,
    "uncover_date": DAY_UNCOVERING,
    "transplant_date": DAY_TRANSPLANTING,
    "transplanted_on": DAY_TRANSPLANTED,
}
# --- finding, and putting right ---------------------------------------------------------------
FIND = Message("Find", note="Button, link and heading.")
FIND_WHAT = Message("Name, number or village", note="Label of the field for searching.")
FOUND_FOR = Message("Results for {words}", note="Heading; {words} is what was searched for.")
FOUND_NOBODY = Message(
    "Nobody found. Try another spelling, part of the name or the last digits.",
    note="A search found nothing.",
)
PUT_RIGHT = Message("Correct name, village or language", note="Opens a form.")
NAME = Message("Name", note="Label of a field: a farmer's name.")
LANGUAGE = Message("Language of texts to this farmer", note="Label of a list of languages.")
MENDED = Message("It is corrected.", note="Done.")
NOT_MENDED = Message(
    "Nothing was changed. Enter a name of at most 40 letters and choose a village and a "
    "language.",
    note="A farmer was not changed.",
)
STOP_TEXTS = Message("Stop texts to this farmer", note="Opens a form; its button.")
STOP_HINT = Message(
    "For a farmer who has told you so. It works as if they had sent STOP: warnings stop "
    "too. They can send START at any time.",
    note="Over a box to tick. STOP and START are words to send.",
)
STOP_SURE = Message("The farmer wants no more texts", note="A box to tick, before it is done.")
TICK_SURE = Message("Tick the box first.", note="Nothing was changed.")
STOPPED = Message("Texts to this farmer are stopped.", note="Done.")
OPEN_AGAIN = Message("Reopen", note="Button: a closed call or nursery goes on.")
CALL_OPEN_AGAIN = Message("The call is open again.", note="Done.")
BED_OPEN_AGAIN = Message("The nursery is open again.", note="Done.")
ACT_STOPPED = Message("stopped texts as the farmer asked", note="What was done.")
ACT_CALL_REOPENED = Message("reopened a call", note="What was done.")
ACT_BED_REOPENED = Message("reopened a nursery", note="What was done.")
ACT_UNDID = Message("undid it within a minute", note="What was done.")
ACT_RANG = Message("phoned a farmer", note="What was done.")
DESK_ACTS: Mapping[str, Message] = {
    "undid": ACT_UNDID,
    "rang": ACT_RANG,
    "texts_stopped": ACT_STOPPED,
    "call_reopened": ACT_CALL_REOPENED,
    "nursery_reopened": ACT_BED_REOPENED,
}

# --- help behind a question mark -------------------------------------------------------------
HELP = Message("What is this page for?", note="Name of a question mark beside a heading.")
HELP_WAITING = Message(
    "All that waits for you, the most urgent first. Open a line to see more and to act, or tick "
    "several lines and act on them together.",
    note="Help on the first page.",
)
HELP_WARNINGS = Message(
    "Warn farmers of rain or another danger: tick villages, give the hours, see whom it reaches. "
    "Nothing goes out before you send it.",
    note="Help on the page of warnings.",
)
HELP_SEASON = Message(
    "Every nursery by its stage, and the work that is due. Choose a village or a stage to see less.",
    note="Help on the season picture.",
)
HELP_FARMERS = Message(
    "All farmers of your villages. Search by name or number, or choose a village, a stage, or how "
    "they answer texts.",
    note="Help on the list of farmers.",
)
HELP_MESSAGES = Message(
    "What was sent to phones, what came back, and what it cost.",
    note="Help on the page of messages.",
)
