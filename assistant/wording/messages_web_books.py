"""Texts of the pages Messages, Season results and Officers. They are read on a screen or paper."""

from collections.abc import Mapping

from assistant.wording.message import Message

# --- messages -------------------------------------------------------------------------------
MONTH = Message("Month", note="Label of a field, head of a column.")
WHICH = Message("Show", note="Label of a list: all texts, failed ones, and so on.")
ALL_TEXTS = Message("All texts to phones", note="A choice in a list.")
WAITING = Message("Waiting", note="Texts that were not sent yet. Head of a column, a choice.")
WITH_OPERATOR = Message(
    "With the operator",
    note="Texts sent, of which no receipt came. Head of a column, a choice.",
)
ON_PHONE = Message("On the phone", note="Texts that arrived. Head of a column, a choice.")
FAILED = Message(
    "Failed", note="Texts that could not be delivered. Head of a column, a choice."
)
TOO_LATE = Message(
    "Too late", note="Texts whose time ran out before they arrived. Head of a column, a choice."
)
TAKEN_BACK = Message("Taken back", note="Texts that were not sent after all. A choice.")
FROM_PHONES = Message("From phones", note="Messages that came in. Head of a column, a choice.")
STATES: Mapping[str, Message] = {
    "waiting": WAITING,
    "accepted": WITH_OPERATOR,
    "delivered": ON_PHONE,
    "failed": FAILED,
    "expired": TOO_LATE,
    "withdrawn": TAKEN_BACK,
    "heard": FROM_PHONES,
}
TEXTS = Message("Texts to phones", note="Head of a column: how many.")
SEGMENTS = Message("Segments", note="Head of a column: how many; an operator bills by segment.")
COST = Message("Cost", note="Head of a column: money.")
DIALLED = Message("Dialled", note="Head of a column: how often somebody dialled the code.")
RANG = Message("Missed calls", note="Head of a column: how often somebody rang.")
IN_ALL = Message("In all", note="The last line of a table: the sums.")
NO_FARMERS = Message(
    "Officers and unknown phones", note="A line of a table: texts of no village."
)
COUNTS_BY_VILLAGE = Message("{month}, by village", note="Heading; {month} is a month and year.")
ALL_MONTHS = Message(
    "Segments and cost of all villages, month by month", note="Link, and heading of a table."
)
COUNTS_BY_MONTH = Message("{village}, by month", note="Heading; {village} is a name.")
PRICE = Message(
    "A segment costs {price}. Texts that the operator never accepted cost nothing.",
    note="{price} is money.",
)
NO_PRICE = Message(
    "The price of a segment is not set. Whoever runs the programme can set it.",
    note="Instead of the costs.",
)
NO_TEXTS = Message("No texts were sent or received in this time.", note="An empty table.")
WHY_LOST = Message("Why texts did not arrive", note="Heading.")
WHAT_HAPPENED = Message("What happened", note="Head of a column.")
WHAT_TO_DO = Message("What you can do", note="Head of a column.")
OPERATOR_SAYS = Message("The operator says", note="Head of a column: its own words.")
LOST_REFUSED = Message("The operator does not accept texts to this number", note="A reason.")
LOST_REFUSED_DO = Message("Check whether the number is right.", note="What to do.")
LOST_GIVEN_UP = Message("The operator could not deliver it", note="A reason.")
LOST_GIVEN_UP_DO = Message(
    "The number may be out of use or blocked. Ask the farmer for a new one.", note="What to do."
)
LOST_OFF = Message("The phone was off or out of reach until too late", note="A reason.")
LOST_OFF_DO = Message("Call or visit, if it was about something urgent.", note="What to do.")
LOST_LINE = Message("It could not be handed to the operator in time", note="A reason.")
LOST_LINE_DO = Message(
    "The line to the operator was down or busy. Tell whoever runs the programme.",
    note="What to do.",
)
REASONS: Mapping[str, tuple[Message, Message]] = {
    "refused": (LOST_REFUSED, LOST_REFUSED_DO),
    "given_up": (LOST_GIVEN_UP, LOST_GIVEN_UP_DO),
    "off": (LOST_OFF, LOST_OFF_DO),
    "line": (LOST_LINE, LOST_LINE_DO),
}
LATEST = Message("One by one, latest first", note="Heading.")
WHO = Message("Who", note="Head of a column: a farmer or a phone.")
TEXT = Message("Text", note="Head of a column: the words of a text.")

UNREAD = Message("Replies that could not be understood", note="Heading and link.")
UNREAD_WHY = Message(
    "Ring or write to anybody who needs an answer. These replies also help to improve the"
    " word lists.",
    note="Under that heading.",
)
NO_UNREAD = Message("Every reply was understood.", note="An empty list.")
HOW_MANY = Message("How many", note="Head of a column.")
A_LANGUAGE = Message("Language", note="Head of a column, label of a list.")
ALL_LANGUAGES = Message("All languages", note="A choice in a list.")
ASKED = Message("Asked", note="Head of a column: the name of the question.")
REPLY = Message("Reply", note="Head of a column: what was typed.")

# --- season results -------------------------------------------------------------------------
RESULTS = Message("Season results", note="Page and heading.")
A_SEASON = Message("Season", note="Label of a list of seasons.")
SEASON_OF = Message(
    "sown {month} to {until}", note="A season; both are a month and a year, such as July 2026."
)
COUNTED_AT = Message(
    "Added up at {time}; added up again after ten minutes.",
    note="Of a large programme: the sums of a page; {time} is a time of day.",
)
RESULT_HINT = Message(
    "Planted area, seed and establishment count only nurseries whose result was reported.",
    note="Under the heading.",
)
OPEN_HINT = Message(
    "A nursery is under way until its result is reported, also when it is transplanted.",
    note="Under the heading, after that.",
)
KEPT_HINT = Message(
    "Sowing and uncovering are on time on the planned day or one day either side, "
    "transplanting within the days that suit the seedlings.",
    note="Under a table: what counts as a date that was kept.",
)
NO_NURSERIES = Message("No nursery was sown this season.", note="An empty table.")
TOLD = Message("Result reported", note="A nursery at the end of its season. Head of a column.")
NO_RESULT = Message(
    "No result", note="A nursery that ended and nobody told how. Head of a column."
)
UNDER_WAY = Message("Under way", note="A nursery whose season goes on. Head of a column.")
GIVEN_UP = Message("Given up", note="A nursery that was lost or closed. Head of a column.")
ENDED: Mapping[str, Message] = {
    "told": TOLD,
    "no_result": NO_RESULT,
    "under_way": UNDER_WAY,
    "given_up": GIVEN_UP,
}
HA_OF = Message(
    "{planted} of {field} ha", note="Planted: so many of so many hectares; both are numbers."
)
BY_FIELD = Message("Fields and seed, by village", note="Heading of a table.")
BY_END = Message("Outcome and dates kept, by village", note="Heading of a table.")
PLANTED = Message("Planted", note="In a chart: field that was planted.")
NOT_PLANTED = Message("Not planted", note="In a chart: field for which seedlings fell short.")
FIELD_HA = Message("Field (ha)", note="Head of a column: area of the fields, in hectares.")
PLANTED_HA = Message("Planted (ha)", note="Head of a column: area planted, in hectares.")
SEED_KG = Message("Seed planned (kg)", note="Head of a column.")
SEED_USED_KG = Message(
    "Seed on the mats planted (kg)",
    note="Head of a column: the part of the seed whose seedlings were planted.",
)
SEED_RATE = Message(
    "Seed planned (kg/ha)", note="Head of a column: seed for each hectare of the field."
)
SEED_RATE_PLANTED = Message(
    "Seed sown (kg/ha planted)",
    note="Head of a column: seed for each hectare that was planted.",
)
ESTABLISHED = Message(
    "Establishment (%)",
    note="Head of a column: seedlings planted out of 100 seeds that germinated.",
)
ESTABLISHED_PLANNED = Message(
    "Establishment planned (%)", note="Head of a column: what the plan counted on."
)
ON_TIME = Message("Dates kept", note="Head of three columns.")
SOWN = Message("Sown", note="Head of a column: how many sowed on time, or the day.")
UNCOVERED = Message("Uncovered", note="Head of a column, in the same way.")
TRANSPLANTED = Message("Transplanted", note="Head of a column, in the same way.")
OF_KNOWN = Message("{kept} of {count}", note="So many of so many; both are numbers.")
MATS_LEFT = Message("Mats left", note="Head of a column: mats over when the field was planted.")
MATS = Message("Mats", note="Head of a column: mats that were raised.")
SHORT = Message("Short", note="Head of a column: how many had too few seedlings for the field.")
IS_SHORT = Message("short", note="A nursery with too few seedlings for its field.")
YIELD_KG = Message("Paddy, kg", note="Head of a column: what the field gave.")
YIELD_KG_HA = Message("Paddy, kg/ha", note="Head of a column: what a planted hectare gave.")
RESOWN = Message("Sown again", note="Head of a column: how many, or yes.")
YES = Message("yes", note="In a table.")
NO = Message("no", note="In a table.")
LEARNED = Message(
    "Learned in {village} from {n} season: {percent} of 100 germinated seeds become "
    "seedlings planted, likely {low} to {high}.",
    plural="Learned in {village} from {n} seasons: {percent} of 100 germinated seeds become "
    "seedlings planted, likely {low} to {high}.",
    note="{n} counts results of single nurseries; the others are numbers of seedlings.",
)
LEARNED_BY = Message(
    "Learned in {village} ({practice}) from {n} season: {percent} of 100 germinated seeds"
    " become seedlings planted, likely {low} to {high}.",
    plural="Learned in {village} ({practice}) from {n} seasons: {percent} of 100 germinated "
    "seeds become seedlings planted, likely {low} to {high}.",
    note="The same for another kind of bed than mats; {practice} is such as 'wet bed'.",
)
LEARNED_NOTHING = Message(
    "Nothing learned in this village yet: no result has been reported.", note="Instead of that."
)
DOWNLOAD = Message("Download, one row per nursery:", note="Before two links.")
CSV = Message("CSV", note="Link: a kind of file.")
XLSX = Message("XLSX", note="Link: a kind of file.")
DAY_PLANNED_SOW = Message("Sowing planned", note="Head of a column: a date.")
DAY_SOWN = Message("Sown on", note="Head of a column: a date.")
DAY_PLANNED_UNCOVER = Message("Uncovering planned", note="Head of a column: a date.")
DAY_UNCOVERED = Message("Uncovered on", note="Head of a column: a date.")
DAY_PLANNED_PLANT = Message("Transplanting planned", note="Head of a column: a date.")
DAY_PLANTED = Message("Transplanted on", note="Head of a column: a date.")
AGE_PLANTED = Message("Age at transplanting (days)", note="Head of a column.")
PRACTICE = Message("Practice", note="Head of a column: how seedlings are raised.")
ENDED_AS = Message("Season", note="Head of a column: told, no result, under way, given up.")

# --- officers and their accounts ------------------------------------------------------------
NAME = Message("Name", note="Label of a field, head of a column: an officer's name.")
PAGE_ACCESS = Message("Access to these pages", note="Head of a column: has a password or not.")
OWN_PASSWORD = Message("own password", note="An officer who signs in with a password.")
ONE_TIME_UNTIL = Message(
    "one-time password, until {date}", note="An officer who has not signed in with it yet."
)
NO_PASSWORD = Message("none yet", note="An officer without a password.")
GIVE_PASSWORD = Message("Give a one-time password", note="Heading and button.")
GIVE_PASSWORD_HINT = Message(
    "It opens the page once, within {n} day, and must be changed there. The old password "
    "stops working and every open session ends.",
    plural="It opens the page once, within {n} days, and must be changed there. The old password"
    " stops working and every open session ends.",
    note="Under that heading.",
)
GIVE_CODE = Message("Give a new code for texts", note="Heading and button.")
GIVE_CODE_HINT = Message(
    "The code that officers send with RAIN, COUNT, CLEAR and WHO. The old one stops working.",
    note="Under that heading. The capitals are words that officers send; leave them.",
)
SHOWN_ONCE = Message(
    "Write this down now and hand it over in person, not by text. It is shown only once.",
    note="Above a password or code.",
)
THE_PASSWORD = Message("One-time password of {officer}", note="Before a password.")
THE_CODE = Message("Code for texts of {officer}", note="Before six digits.")
VILLAGES_SERVED = Message("Villages served", note="Heading of boxes to tick.")
VILLAGES_KEPT = Message("{officer}'s villages are changed.", note="Done.")
CLOSE_ACCOUNT = Message("Close this account", note="Heading and button.")
CLOSE_ACCOUNT_HINT = Message(
    "They can no longer get in, by page or text. What they did stays on record. Hand "
    "their villages over first, or only the lead serves them.",
    note="Under that heading.",
)
CLOSE_SURE = Message("Yes, close it", note="A box to tick before the button works.")
CLOSE_NOT_SURE = Message("Tick the box first.", note="The account was not closed.")
ACCOUNT_CLOSED = Message("The account of {officer} is closed.", note="Done.")
ADD_OFFICER = Message("Add an officer", note="Heading and button.")
IS_LEAD = Message("Lead: sees all villages and officers", note="A box to tick.")
OFFICER_ADDED = Message("{officer} is now an officer.", note="Done.")
NOT_YOURSELF = Message(
    "That is your own account. Another lead can do this.", note="It was not done."
)
UNFIT_NAME = Message("Enter a name.", note="The officer was not added.")
UNFIT_PHONE = Message(
    "That is not a phone number. Write it with its country code.",
    note="The officer was not added.",
)
UNFIT_KNOWN = Message("That number already belongs to an officer.", note="Not added.")
UNFIT_VILLAGE = Message("Tick a village, or lead.", note="The officer was not added.")
UNFIT_OFFICER: Mapping[str, Message] = {
    "name": UNFIT_NAME,
    "phone": UNFIT_PHONE,
    "known": UNFIT_KNOWN,
    "village": UNFIT_VILLAGE,
}
