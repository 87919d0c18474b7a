"""Texts of the officers' page. They are read on a screen or on paper and cost no segments.

Words are those of the trade and of `locales/glossary.md`: nursery, bed, mat, warning, call for
help. Nothing here is in capitals: capitals are words that people send.
"""

from collections.abc import Mapping

from assistant.wording.message import Message
from assistant.wording.messages_web_beds import BED_ACTS
from assistant.wording.messages_web_brakes import BRAKE_ACTS
from assistant.wording.messages_web_calls import CALL_ACTS
from assistant.wording.messages_web_desk import DESK_ACTS
from assistant.wording.messages_web_door import DOOR_ACTS
from assistant.wording.messages_web_groups import BAD_HOUR
from assistant.wording.messages_web_lines import LINE_ACTS
from assistant.wording.messages_web_mend import MEND_ACTS
from assistant.wording.messages_web_office import OFFICE_ACTS
from assistant.wording.messages_web_questions import QUESTION_ACTS

# --- the frame of every page ----------------------------------------------------------------
SKIP = Message("Skip to the page", note="A hidden link for people who use a keyboard.")
PLACES = Message("Pages", note="Name of the list of pages, for people who hear the page read.")
MORNING = Message("This morning", note="Page: who must be seen today, and calls for help.")
FARMERS = Message("Farmers", note="Page: the list of farmers.")
VILLAGES = Message("Villages", note="Page: the villages and who serves them.")
TRAIL = Message("What was done", note="Page: the list of all that officers did.")
ACCOUNT = Message("My account", note="Page: the officer's own password and language.")
SIGN_OUT = Message("Sign out", note="Button.")
LEAD = Message("lead", note="Beside an officer's name: one who sees all villages.")
PRINT = Message("Print", note="Button.")
NOTICE = Message("Done", note="Heading of a line that says what was just done; read aloud.")
NOT_DONE = Message("Not done", note="Heading of a line that says what could not be done.")
BACK = Message("Back", note="Link to where one came from.")
ALL_VILLAGES = Message("All villages", note="A choice in a list of villages.")
VILLAGE = Message("Village", note="Label of a field, head of a column.")
NO_VILLAGE = Message("no village", note="The farmer's village is not in the list.")
SHOW = Message("Show", note="Button: show the list as chosen.")

OLD_PAGE = Message(
    "This page was open for too long, or did not load completely. Go back, reload it and "
    "try again. Nothing was changed.",
    note="Shown when a form was refused.",
)
NOT_HERE = Message(
    "This page does not exist, or it belongs to a village that you do not serve.",
    note="Shown for a wrong address.",
)
TOO_MUCH = Message("That was too large to accept. Nothing was changed.", note="A file or text.")
OUR_FAULT = Message(
    "Something went wrong on our side and has been recorded. Try again in a moment.",
    note="Shown when the program failed.",
)
REFUSED_TITLE = Message("That did not work", note="Heading of a page that tells of a fault.")
TO_MORNING = Message("Go to this morning", note="Link to the first page.")

# --- signing in -----------------------------------------------------------------------------
SIGN_IN = Message("Sign in", note="Heading and button.")
PHONE = Message("Phone number", note="Label of a field.")
PHONE_HINT = Message(
    "The number you are registered with, with its country code.", note="Under the field."
)
PASSWORD = Message("Password", note="Label of a field.")
SIGN_IN_WRONG = Message(
    "The number or the password is wrong. Check both and try again. Lost your password? "
    "Your lead can give you a new one.",
    note="Signing in failed.",
)
SIGN_IN_LOCKED = Message(
    "Too many tries. Wait {n} minute, then try again.",
    plural="Too many tries. Wait {n} minutes, then try again.",
    note="Signing in failed too often.",
)
SIGNED_OUT = Message("You are signed out.", note="After signing out.")
CHOOSE_PASSWORD = Message("Choose your own password", note="Heading, at the first sign-in.")
CHOOSE_PASSWORD_WHY = Message(
    "The password you were given works only once. Choose one that only you know.",
    note="Under that heading.",
)
CHANGE_PASSWORD = Message("Change the password", note="Heading and button.")
OLD_PASSWORD = Message("Current password", note="Label of a field.")
NEW_PASSWORD = Message("New password", note="Label of a field.")
NEW_PASSWORD_HINT = Message(
    "Ten letters or more. A few words that nobody would guess work well.",
    note="Under the field.",
)
NEW_PASSWORD_AGAIN = Message("New password again", note="Label of a field.")
PASSWORD_CHANGED = Message(
    "Your password is changed. You are signed out everywhere else.", note="Done."
)
PASSWORD_WRONG_OLD = Message(
    "The current password is wrong, or was wrong too many times: then wait a quarter of "
    "an hour.",
    note="The password was not changed.",
)
PASSWORD_SHORT = Message(
    "The new password is too short. Use ten letters or more.",
    note="The password was not changed.",
)
PASSWORD_LONG = Message("The new password is too long.", note="The password was not changed.")
PASSWORD_SAME = Message(
    "That is your current password. Choose a different one.",
    note="The password was not changed.",
)
PASSWORD_EASY = Message(
    "The new password is too easy to guess: do not use your name or number, and use more "
    "different letters.",
    note="The password was not changed.",
)
PASSWORD_DIFFERENT = Message(
    "The two new passwords do not match.", note="The password was not changed."
)
LANGUAGE = Message("Language of this page and of texts to you", note="Label of a field.")
SAVE = Message("Save", note="Button.")

# --- this morning ---------------------------------------------------------------------------
GOOD_MORNING = Message(
    "This morning, {date}", note="Heading. {date} is a date with its weekday."
)
COUNT_CALLS = Message(
    "{n} call for help", plural="{n} calls for help", note="Link to the list of calls."
)
COUNT_TO_SEE = Message(
    "{n} nursery to see", plural="{n} nurseries to see", note="Link to the list of nurseries."
)
COUNT_WARNINGS = Message(
    "{n} rain warning stands", plural="{n} rain warnings stand", note="Link to the warnings."
)
QUIET_MORNING = Message(
    "Nobody needs you this morning: no call is open, and every nursery has answered.",
    note="Nothing is to be done.",
)
WARNINGS_STAND = Message("Warnings that stand", note="Heading.")
RAIN_HOURS = Message(
    "Heavy rain {from_time} to {to_time}, {date}", note="Hours of a warning and its day."
)
PHONES_ASKED = Message("Phones asked", note="Head of a column: how many phones were warned.")
COVERED = Message("Covered", note="Head of a column: how many answered that all is covered.")
NEED_HELP = Message("Need help", note="Head of a column: how many asked for help.")
NO_ANSWER_YET = Message("No answer yet", note="Head of a column: how many are silent.")
CALLS = Message("Calls for help", note="Heading of the list of calls.")
NO_CALLS = Message("No call for help is open.", note="Instead of that list.")
AND_MORE_CALLS = Message(
    "{n} later call is not shown.",
    plural="{n} later calls are not shown.",
    note="The list was cut.",
)
ANSWERED = Message(
    "Answered when asked: {words}", note="What the farmer chose in the talk about the trouble."
)
COUNTED_LEAVES = Message(
    "Open leaves counted: {count}", note="Trouble talk: a count of leaves."
)
YOUR_ANSWER = Message("Your answer, sent as a text", note="Label of a field.")
LETTERS_LEFT = Message("Letters left:", note="A number follows: how many more fit in the text.")
SEND_AT_NIGHT = Message(
    "Send at once, even in the quiet hours", note="A box to tick, for urgent answers."
)
SEND_ANSWER = Message("Send the answer", note="Button.")
ANSWER_IT = Message("Answer by text", note="Opens the field for an answer.")
MARK_HANDLED = Message("I have seen to it", note="Button: marks a call as handled.")
ANSWERED_BEFORE = Message(
    "{officer} wrote: {words}", note="An earlier answer to a call; {officer} is a name."
)
CANNOT_STOPPED = Message(
    "This farmer has stopped all texts. Call or visit instead.",
    note="Instead of a field to write in.",
)
CANNOT_NO_CONSENT = Message(
    "This farmer has not agreed to texts yet. Call or visit instead.",
    note="Instead of a field to write in.",
)
CANNOT_EMPTY = Message("Write some words first.", note="A text was not sent.")
CANNOT_LONG = Message("That is too long for a text. Make it shorter.", note="Not sent.")
SENT_NOW = Message("Your text is on its way.", note="Done.")
SENT_LATER = Message(
    "Your text leaves at {time}, when the quiet hours end.",
    note="Done; {time} is a time of day.",
)
HANDLED = Message("The call is marked as seen to.", note="Done.")
TO_SEE = Message("Nurseries to see today", note="Heading and name of the list.")
NONE_TO_SEE = Message("No nursery needs a visit.", note="Instead of that list.")
REASON = Message("Why", note="Head of a column: why a nursery must be seen.")
FARMER = Message("Farmer", note="Head of a column.")
NURSERY = Message("Nursery", note="Head of a column.")
SINCE = Message("since {date}", note="Beside why a nursery must be seen.")
SEEN_BOX = Message("Seen", note="Head of an empty column on paper, to be ticked by hand.")
NURSERY_DAY = Message("Nursery {label}, day {day}", note="A nursery and the days since sowing.")
NURSERY_ONLY = Message("Nursery {label}", note="A nursery.")
BEFORE_SOWING = Message(
    "{n} day to sowing", plural="{n} days to sowing", note="A nursery that is not sown yet."
)
DAY_OF = Message("day {day}", note="Days since sowing, in small letters beside a nursery.")
LAST_VISIT = Message("last visit {date}", note="Beside a nursery.")
WHY_RAIN_HELP = Message("Needs help in the rain", note="Why a nursery must be seen.")
WHY_RAIN_SILENT = Message(
    "Rain warning, not known to be covered", note="Why a nursery must be seen."
)
WHY_DANGER_HELP = Message(
    "Needs help: {danger}", note="Why a nursery must be seen; a danger was warned of."
)
WHY_DANGER_SILENT = Message(
    "No answer to the warning: {danger}", note="Why a nursery must be seen."
)
WHY_NOT_UP = Message("Few or no seedlings have come up", note="Why a nursery must be seen.")
WHY_SILENT = Message("No answer: {what}", note="Why a nursery must be seen; {what} is a task.")
WHY_YELLOW = Message("Yellow leaves", note="Why a nursery must be seen.")
WHY_OLD = Message("Day {day}, not transplanted", note="Why a nursery must be seen.")
WHY_OLD_ANY = Message("Old seedlings, not transplanted", note="Why nurseries must be seen.")

# --- a nursery and its farmer ---------------------------------------------------------------
FIELD_OF = Message("Field {area}", note="The field as the farmer wrote its size.")
STAGE_PLANNED = Message("not sown yet", note="Stage of a nursery.")
STAGE_COVERED = Message("covered", note="Stage of a nursery: day 0 to uncovering.")
STAGE_GROWING = Message("uncovered, growing", note="Stage of a nursery.")
STAGE_DRAINED = Message(
    "drained", note="Stage of a nursery: no water, so that mats can be lifted."
)
STAGE_READY = Message("time to transplant", note="Stage of a nursery.")
STAGE_OLD = Message("overdue", note="Stage of a nursery: the seedlings grow old.")
STAGE_PLANTED = Message("transplanted", note="Stage of a nursery.")
STAGES: Mapping[str, Message] = {
    "planned": STAGE_PLANNED,
    "covered": STAGE_COVERED,
    "growing": STAGE_GROWING,
    "drained": STAGE_DRAINED,
    "ready": STAGE_READY,
    "old": STAGE_OLD,
    "planted": STAGE_PLANTED,
}
CLOSED = Message("closed", note="A nursery that is over or was given up.")
NO_RESULT_TOLD = Message(
    "nobody reported how it went", note="Beside a nursery that was closed without a result."
)
SOW_ASSUMED = Message(
    "Nobody has confirmed the sowing; the planned day is used.", note="About a nursery."
)
TASKS = Message("Tasks", note="Heading: the calendar of a nursery.")
TASK = Message("Task", note="Head of a column.")
DAY = Message("Day", note="Head of a column: days since sowing.")
WHEN = Message("When", note="Head of a column: a date.")
STATE = Message("Status", note="Head of a column: asked, done, not answered.")
UNTIL = Message("{sow} to {date}", note="Two dates: the first and the last day of a task.")
STATE_PLANNED = Message("to come", note="A task that was not asked yet.")
STATE_SENT = Message("asked, no answer yet", note="A task.")
STATE_DONE = Message("done", note="A task.")
STATE_NOT_YET = Message("not yet", note="A task.")
STATE_UNANSWERED = Message("asked, never answered", note="A task.")
STATE_TOO_LATE = Message("text did not arrive in time", note="A task.")
STATE_WITHDRAWN = Message("cancelled", note="A task.")
STATES: Mapping[str, Message] = {
    "planned": STATE_PLANNED,
    "sent": STATE_SENT,
    "done": STATE_DONE,
    "not_yet": STATE_NOT_YET,
    "unanswered": STATE_UNANSWERED,
    "too_late": STATE_TOO_LATE,
    "withdrawn": STATE_WITHDRAWN,
}
TOLD = Message("told", note="A task that is only told, not asked.")
PLAN = Message("Plan and quantities", note="Heading.")
MESSAGES = Message("Messages", note="Heading: texts to and from the phone.")
NO_MESSAGES = Message("Nothing has been sent or received yet.", note="Instead of messages.")
FROM_FARMER = Message("from the farmer", note="Beside a message.")
BY_KEYS = Message(
    "typed in the phone menu", note="Beside a message that came by a dialled code."
)
BY_RING = Message("missed call", note="Beside a missed call.")
TO_FARMER = Message("to the farmer", note="Beside a message.")
FAILED_TALK = Message("the program could not handle this one", note="Beside a message.")
SHOWN = Message("Shown: {words}", note="The screen that answered a key; {words} is its text.")
TEXT_WAITING = Message("goes out {date} {time}", note="Beside a text that waits to be sent.")
TEXT_CLAIMED = Message("being sent now", note="Beside a text.")
TEXT_ACCEPTED = Message("with the operator, delivery not confirmed yet", note="Beside a text.")
TEXT_DELIVERED = Message(
    "on the phone at {time}", note="Beside a text; {time} is a time of day."
)
TEXT_FAILED = Message("failed", note="Beside a text.")
TEXT_EXPIRED = Message("not delivered in time", note="Beside a text.")
TEXT_WITHDRAWN = Message("cancelled before it was sent", note="Beside a text.")
TEXT_STATES: Mapping[str, Message] = {
    "claimed": TEXT_CLAIMED,
    "accepted": TEXT_ACCEPTED,
    "failed": TEXT_FAILED,
    "expired": TEXT_EXPIRED,
    "withdrawn": TEXT_WITHDRAWN,
}
NOTE_VISIT = Message("Record a visit", note="Heading and button.")
VISITED_ON = Message("Day of the visit", note="Label of a field.")
VISIT_WORDS = Message("What you saw and did", note="Label of a field.")
SEEN_DONE = Message(
    "Tick what you saw has been done:", note="Before boxes to tick: open tasks."
)
VISIT_NOTED = Message("The visit is recorded.", note="Done.")
VISITS = Message("Visits", note="Heading.")
NO_VISITS = Message("No visits recorded yet.", note="Instead of visits.")
VISIT_BY = Message("{date}, {officer}", note="Day of a visit and the officer's name.")
CHANGE_DATES = Message("Change the dates", note="Heading and button.")
SOWING_DAY = Message("Sowing day", note="Label of a field.")
IS_SOWN = Message("It has been sown", note="A box to tick.")
UNCOVERED_DAY = Message("Uncovered and flooded on", note="Label of a field.")
WISHED_DAY = Message("Transplanting is planned for", note="Label of a field.")
PLANTED_DAY = Message("Transplanted on", note="Label of a field.")
TELL_FARMER = Message("Tell the farmer by text", note="A box to tick.")
DATES_CHANGED = Message("The dates are changed.", note="Done.")
DATES_CHANGED_TOLD = Message("The dates are changed, and the farmer is told.", note="Done.")
CLOSE_NURSERY = Message("Close this nursery", note="Heading and button.")
CLOSE_WHY = Message("Why (lost, given up, entered twice)", note="Label of a field.")
CLOSE_HINT = Message(
    "Nothing more is sent about it. It stays in the farmer's history.",
    note="Under the heading.",
)
NURSERY_CLOSED = Message("The nursery is closed.", note="Done.")
WRITE = Message("Write to the farmer", note="Heading.")
YOUR_WORDS = Message("Your words, sent as a text", note="Label of a field.")
SEND_TEXT = Message("Send the text", note="Button.")
ALL_CALLS = Message("Calls for help so far", note="Heading.")
CALL_OPEN = Message("open", note="A call for help that nobody has seen to.")
CALL_CLOSED = Message("seen to by {officer}", note="A call for help; {officer} is a name.")
CALL_CLOSED_ONLY = Message("seen to", note="A call for help.")
WRONG_NO_DAY = Message("Enter the day.", note="A visit was not kept.")
WRONG_FUTURE = Message("That day is in the future.", note="A visit was not kept.")
WRONG_BEFORE = Message("That day is before the plan was made.", note="A visit was not kept.")
WRONG_SOWN = Message(
    "A bed cannot have been sown when its sowing day is in the future.",
    note="Dates were not kept.",
)
WRONG_UNCOVER = Message(
    "Uncovering must be one to fourteen days after sowing, before the bed is drained, and"
    " not in the future.",
    note="Dates were not kept.",
)
WRONG_TRANSPLANT = Message(
    "That transplanting day is far too early or too late for this bed.",
    note="Dates were not kept.",
)
WRONG_PLANTED = Message(
    "The day it was transplanted must be after sowing and not in the future.",
    note="Dates were not kept.",
)
WRONG_NOTHING = Message("No date was changed.", note="Dates were not kept.")
WRONG: Mapping[str, Message] = {
    "no_day": WRONG_NO_DAY,
    "future": WRONG_FUTURE,
    "before_plan": WRONG_BEFORE,
    "sown_future": WRONG_SOWN,
    "uncover": WRONG_UNCOVER,
    "transplant": WRONG_TRANSPLANT,
    "planted": WRONG_PLANTED,
    "nothing": WRONG_NOTHING,
}
UNSENT: Mapping[str, Message] = {
    "no_words": CANNOT_EMPTY,
    "long": CANNOT_LONG,
    "stopped": CANNOT_STOPPED,
    "no_consent": CANNOT_NO_CONSENT,
    "bad_hour": BAD_HOUR,
}
LANGUAGE_OF = Message("speaks {language}", note="{language} is the name of a language.")
CONSENT_SINCE = Message("agreed to texts {date}", note="About a farmer.")
CONSENT_NONE = Message("has not agreed to texts yet", note="About a farmer.")
STOPPED_SINCE = Message("stopped texts {date}", note="About a farmer.")
NURSERIES = Message("Nurseries", note="Heading, head of a column.")
NO_NURSERIES = Message("No nursery planned yet.", note="About a farmer.")

# --- the list of farmers --------------------------------------------------------------------
SEARCH = Message("Name or number", note="Label of a field for searching.")
FOUND = Message("{n} farmer", plural="{n} farmers", note="How many are in the list.")
NONE_FOUND = Message("No farmers found.", note="An empty list.")
NAME_UNKNOWN = Message("name not known", note="Instead of a farmer's name.")
PAGE_OF = Message("Page {day} of {count}", note="Of a long list; both are numbers.")
BEFORE = Message("Previous page", note="Link to the page before.")
AFTER = Message("Next page", note="Link to the next page.")

# --- villages -------------------------------------------------------------------------------
OFFICERS = Message("Officers", note="Head of a column.")
NO_OFFICER = Message("only the lead", note="No officer serves this village.")
OPEN_CALLS = Message("Open calls", note="Head of a column: how many.")
HAND_OVER = Message("Hand this village over", note="Heading and button.")
HAND_OVER_HINT = Message(
    "Farmers, nurseries, open calls and visits stay with the village. The next officer is told by "
    "text.",
    note="Under the heading.",
)
FROM_WHOM = Message("Officer who leaves", note="Label of a list of officers.")
NOBODY = Message("(nobody leaves)", note="A choice in that list.")
TO_WHOM = Message("Officer who takes over", note="Label of a list of officers.")
HAND_OVER_WORDS = Message("What the next officer should know", note="Label of a field.")
HANDED_OVER = Message("{village} is handed over to {officer}.", note="Done.")
STAYS_NO_TAKER = Message("Choose who serves it from now on.", note="It was not handed over.")
STAYS_SAME = Message("That officer serves it already.", note="It was not handed over.")
STAYS_NO_NOTE = Message(
    "Write what the next officer should know, even if only that all is well.",
    note="It was not handed over.",
)
STAYS: Mapping[str, Message] = {
    "no_taker": STAYS_NO_TAKER,
    "same": STAYS_SAME,
    "no_note": STAYS_NO_NOTE,
}
HANDOVERS = Message("Earlier handovers", note="Heading.")
NO_HANDOVERS = Message("No handovers yet.", note="Instead of that list.")
PASSED_ON = Message("from {giver} to {officer}", note="A village; names of officers.")
PASSED_TO = Message("also to {officer}", note="A village; the name of one more officer.")
DONE_HERE = Message("What was done here", note="Heading.")
NOTHING_DONE = Message("Nothing recorded yet.", note="An empty list.")
SEE_FARMERS = Message("Farmers in this village", note="Link.")

# --- what was done --------------------------------------------------------------------------
ACT_WHO = Message("Who", note="Head of a column: an officer.")
ACT_WHAT = Message("What", note="Head of a column.")
ACT_ON = Message("About", note="Head of a column: a farmer, a nursery, a village.")
ACT_DETAIL = Message("Details", note="Head of a column.")
NO_NAME = Message(
    "(no officer)", note="Instead of a name: the command line, or a wrong number."
)
ALL_OFFICERS = Message("All officers", note="A choice in a list.")
OFFICER = Message("Officer", note="Label of a list of officers.")
OLDER = Message("Older", note="Link to the next page of a list that begins with the latest.")
ACT_SIGNED_IN = Message("signed in", note="What was done.")
ACT_REFUSED = Message("wrong number or password", note="What was done.")
ACT_LOCKED = Message("locked out after too many tries", note="What was done.")
ACT_CODE_LOCKED = Message("locked out after wrong codes by text", note="What was done.")
ACT_PASSWORD = Message("changed the password", note="What was done.")
ACT_ONE_TIME = Message("was given a one-time password", note="What was done.")
ACT_ONE_TIME_ISSUED = Message("gave a one-time password", note="What was done.")
ACT_CODE_ISSUED = Message("gave a new code for texts", note="What was done.")
ACT_OFFICER_ADDED = Message("added an officer", note="What was done.")
ACT_OFFICER_CLOSED = Message("closed an officer's account", note="What was done.")
ACT_VILLAGES_GIVEN = Message("changed an officer's villages", note="What was done.")
ACT_LANGUAGE = Message("changed the language", note="What was done.")
ACT_CALL_ANSWERED = Message("answered a call for help", note="What was done.")
ACT_CALL_HANDED_ON = Message("gave a call for help to a colleague", note="What was done.")
ACT_CALL_HANDLED = Message("saw to a call for help", note="What was done.")
ACT_WROTE = Message("wrote to a farmer", note="What was done.")
ACT_VISITED = Message("recorded a visit", note="What was done.")
ACT_DATES = Message("changed dates", note="What was done.")
ACT_CLOSED = Message("closed a nursery", note="What was done.")
ACT_RESULTS = Message("downloaded the season results", note="What was done.")
ACT_HANDED_OVER = Message("handed a village over", note="What was done.")
ACT_WARNED = Message("warned of rain", note="What was done.")
ACT_WARNING_DROPPED = Message("decided not to warn", note="What was done.")
ACT_WARNING_CLEARED = Message("gave the all-clear", note="What was done.")
ACT_WARNING_RECALLED = Message("called a rain warning back", note="What was done.")
ACT_ASKED_AGAIN = Message("asked the silent again", note="What was done, under a warning.")
ACT_BROADCAST = Message("wrote to many farmers", note="What was done.")
ACT_ALERT_TAKEN = Message("an official alert came", note="What was done: no officer did it.")
ACT_VILLAGE_PLACED = Message("changed a village's location", note="What was done.")
ACT_CALENDAR = Message("downloaded a calendar", note="What was done.")
ACT_ENROLLED = Message("enrolled a farmer", note="What was done.")
ACT_AGREED = Message("the farmer agreed to texts", note="What was done.")
ACT_SAID_NO = Message("the farmer did not agree to texts", note="What was done.")
ACT_FARMER_MENDED = Message("changed a farmer's details", note="What was done.")
ACT_NUMBER_CHANGED = Message("gave a farmer another number", note="What was done.")
ACT_NUMBER_PASSED_ON = Message("gave a farmer's number to a new owner", note="What was done.")
ACT_LIST_APPLIED = Message("imported a list of farmers", note="What was done.")
ACTS: Mapping[str, Message] = {
    "enrolled": ACT_ENROLLED,
    "agreed": ACT_AGREED,
    "refused": ACT_SAID_NO,
    "farmer_mended": ACT_FARMER_MENDED,
    "number_changed": ACT_NUMBER_CHANGED,
    "number_passed_on": ACT_NUMBER_PASSED_ON,
    "list_applied": ACT_LIST_APPLIED,
    "signed_in": ACT_SIGNED_IN,
    "sign_in_refused": ACT_REFUSED,
    "sign_in_locked": ACT_LOCKED,
    "code_locked": ACT_CODE_LOCKED,
    "password_changed": ACT_PASSWORD,
    "one_time_given": ACT_ONE_TIME,
    "one_time_issued": ACT_ONE_TIME_ISSUED,
    "code_issued": ACT_CODE_ISSUED,
    "officer_added": ACT_OFFICER_ADDED,
    "officer_closed": ACT_OFFICER_CLOSED,
    "villages_given": ACT_VILLAGES_GIVEN,
    "language_changed": ACT_LANGUAGE,
    "call_answered": ACT_CALL_ANSWERED,
    "call_handled": ACT_CALL_HANDLED,
    "call_handed_on": ACT_CALL_HANDED_ON,
    "wrote": ACT_WROTE,
    "visited": ACT_VISITED,
    "dates_changed": ACT_DATES,
    "nursery_closed": ACT_CLOSED,
    "results_taken": ACT_RESULTS,
    "village_handed_over": ACT_HANDED_OVER,
    "calendar_taken": ACT_CALENDAR,
    "warned": ACT_WARNED,
    "warning_dropped": ACT_WARNING_DROPPED,
    "warning_cleared": ACT_WARNING_CLEARED,
    "warning_recalled": ACT_WARNING_RECALLED,
    "asked_again": ACT_ASKED_AGAIN,
    "broadcast": ACT_BROADCAST,
    "village_placed": ACT_VILLAGE_PLACED,
    "alert_taken": ACT_ALERT_TAKEN,
    **BED_ACTS,
    **CALL_ACTS,
    **DOOR_ACTS,
    **DESK_ACTS,
    **MEND_ACTS,
    **OFFICE_ACTS,
    **QUESTION_ACTS,
    **BRAKE_ACTS,
    **LINE_ACTS,
}
