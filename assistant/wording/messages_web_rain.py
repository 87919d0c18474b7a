"""Texts of the Warnings page: warnings made, sent, and followed while they stand."""

from collections.abc import Mapping

from assistant.wording.message import Message, Say

WARNINGS = Message("Warnings", note="Page: warnings, and texts to many.")
RAIN_WARNING = Message("Rain warning, {places}", note="Heading; {places} are villages.")
RAIN_WARNING_MANY = Message(
    "Rain warning, {n} village", plural="Rain warning, {n} villages", note="Heading."
)
OF_DANGER = Message(
    "Warning of {danger}, {places}",
    note="Heading; {danger} is its short name, {places} are villages.",
)
OF_DANGER_MANY = Message(
    "Warning of {danger}, {n} village",
    plural="Warning of {danger}, {n} villages",
    note="Heading.",
)
HOURS_OF = Message(
    "{danger}: {from_time} to {to_time}, {date}", note="Hours of a warning and its day."
)
HOURS_OF_DAYS = Message(
    "{danger}: {date} {from_time} to {last} {to_time}",
    note="Hours of a warning with their days.",
)
NONE_STANDS = Message("No warning stands.", note="Instead of that list.")
WAITING = Message("Waiting for your decision", note="Heading: warnings that were not sent yet.")
PAST = Message("Over in the last 7 days", note="Heading: warnings that do not stand any more.")
LOOK = Message("Look and decide", note="Link to a warning that was not sent yet.")
FOLLOW = Message("See the answers", note="Link to a warning that was sent.")
FROM_ALERT = Message(
    "From an official alert: {words}", note="Where a warning came from; {words} is the event."
)
HOURS_LONG = Message(
    "Heavy rain {date} {from_time} to {last} {to_time}",
    note="Hours of a warning with their days.",
)
IS_RECALLED = Message("taken back", note="Beside a warning.")
IS_CLEARED = Message("all-clear given", note="Beside a warning.")
IS_OVER = Message("over", note="Beside a warning whose hours have gone by.")
STANDS = Message("stands", note="Beside a warning.")

# --- the form -------------------------------------------------------------------------------
WARN = Message("Warn of a danger", note="Heading.")
WARN_HINT = Message(
    "Nothing leaves yet: the next page shows whom it reaches, what it costs and its words.",
    note="Under that heading.",
)
DANGER = Message("Danger", note="Label of a list: rain, a cold night, hail.")
WHERE = Message("Villages", note="Heading over boxes to tick.")
ALL_OF_THEM = Message("All of them", note="A box to tick: all villages.")
BEDS_IN_DANGER = Message(
    "{n} bed that rain would harm",
    plural="{n} beds that rain would harm",
    note="Beside a village: beds on days 0 to 5 or about to be sown.",
)
BY_DISTANCE = Message("Or by distance from a place", note="Opens more fields.")
DISTANCE = Message("Within (km)", note="Label of a field: a distance in kilometres.")
OF_VILLAGE = Message("of this village", note="Label of a list, after a distance.")
OF_POINT = Message("or of this point", note="Label of a field, after a distance.")
POINT_HINT = Message(
    "Degrees north, then east, e.g. -0.68, 37.35", note="Under a field for a place on the map."
)
NO_PLACES = Message(
    "Nobody has said yet where your villages lie. It can be written on the page of each village.",
    note="Instead of fields.",
)
WHEN = Message("From when until when", note="Heading over fields.")
FROM_DAY = Message("From, day", note="Label of a date field.")
FROM_TIME = Message("From, time", note="Label of a field for a time.")
TO_DAY = Message("Day, if a later one", note="Label of a date field: when the danger ends.")
TO_TIME = Message("Until, time", note="Label of a field for a time.")
TIMES_IN = Message(
    "Times are those of the villages. It is {time} there now.",
    note="Under fields; {time} is a time of day.",
)
HOW_SURE = Message("How sure", note="Heading over three choices.")
OBSERVED = Message("It has begun", note="How sure a warning is.")
LIKELY = Message("Likely", note="How sure a warning is.")
POSSIBLE = Message("Possible", note="How sure a warning is.")
UNLIKELY = Message("Unlikely", note="How sure an official alert is.")
UNKNOWN = Message("Not said", note="How sure an official alert is.")
CERTAINTY: Mapping[str, Message] = {
    "observed": OBSERVED,
    "likely": LIKELY,
    "possible": POSSIBLE,
    "unlikely": UNLIKELY,
    "unknown": UNKNOWN,
}
ADD_WORDS = Message("Add a few words of your own (not needed)", note="Label of a field.")
ADD_WORDS_HINT = Message(
    "They are not translated, and can make the text longer.", note="Under that field."
)
SHOW_REACH = Message("Show whom it reaches", note="Button.")
F_NO_VILLAGE = Message("Tick a village, or give a distance.", note="A form was not complete.")
F_NONE_NEAR = Message("No village of yours lies so near.", note="A form was not complete.")
F_NO_CENTRE = Message(
    "Choose the village or write the point that the distance is from.",
    note="A form was not complete.",
)
F_NO_DISTANCE = Message("Give the distance in km, 1 to 500.", note="A form was not complete.")
F_NO_HOURS = Message("Give the day and both times.", note="A form was not complete.")
F_LONG_WORDS = Message("Your own words are too long.", note="A form was not complete.")
F_BACKWARD = Message("It ends before it begins.", note="Hours that cannot be.")
F_PAST = Message("These hours are over.", note="Hours that cannot be.")
F_TOO_FAR = Message(
    "It begins more than 3 days ahead. Warn when it is nearer: a warning holds up sowing and "
    "uncovering.",
    note="Hours that cannot be.",
)
F_TOO_LONG = Message(
    "It lasts longer than a warning of this danger may stand, {days} days. Warn of the first days now, and "
    "again later.",
    note="Hours that cannot be.",
)
F_BEGINS_LATER = Message(
    'You chose "It has begun", but the hours begin later. Change one of them.',
    note="A form was not complete. The words in quotes are the choice for how sure it is.",
)
FAULTS: Mapping[str, Message] = {
    "begins_later": F_BEGINS_LATER,
    "no_village": F_NO_VILLAGE,
    "none_near": F_NONE_NEAR,
    "no_centre": F_NO_CENTRE,
    "no_distance": F_NO_DISTANCE,
    "no_hours": F_NO_HOURS,
    "long_words": F_LONG_WORDS,
    "backward": F_BACKWARD,
    "past": F_PAST,
    "too_far": F_TOO_FAR,
    "too_long": F_TOO_LONG,
}


def fault(code: str, longest_d: int) -> Say:
    """What is wrong with a form or with its hours; a danger is warned of for so many days."""
    return FAULTS[code](days=longest_d) if code == "too_long" else FAULTS[code]()


NOT_LOOKED_AT = Message(
    "Nobody has said where these villages lie, so they are not in it: {villages}. Add them if they "
    "are near.",
    note="After villages were found by distance.",
)

# --- the reach ------------------------------------------------------------------------------
REACH = Message("Send this warning?", note="Heading.")
PHONES = Message("Phones", note="Head of a column, before a number.")
BEDS_YOUNG = Message("Beds on days 0-5", note="Head of a column: how many.")
BEDS_OTHER = Message("Beds", note="Head of a column: how many are in danger.")
BEDS_SOON = Message("About to sow", note="Head of a column: how many beds.")
STANDS_ALREADY = Message("Warned already", note="Head of a column: hours of a warning.")
HOURS_ONLY = Message("{from_time} to {to_time}", note="Hours.")
SEGMENTS = Message("Segments", note="Before a number: parts of texts that are paid for.")
COSTS = Message("Cost", note="Before an amount of money.")
NO_PRICE = Message("price not set", note="Instead of an amount of money.")
LEAVES_NOW = Message("It leaves at once.", note="About a warning.")
LEAVES_LOUD = Message(
    "It leaves at once: a warning may break the quiet hours.", note="About a warning."
)
THE_TEXTS = Message("The texts, as they arrive", note="Heading.")
TO_COVER = Message("To those who must cover", note="Heading of a text.")
TO_BEDS = Message("To those whose beds it may harm", note="Heading of a text.")
TO_WAIT = Message("To those who wait with sowing", note="Heading of a text.")
NAMES_DIFFER = Message(
    "Only the names of villages and nurseries differ from phone to phone.",
    note="Under the texts.",
)
LEFT_OUT = Message("No text reaches these: call or send word", note="Heading of a list.")
LEFT_OUT_HINT = Message(
    "They have a bed in danger, and have stopped texts or not agreed to them yet.",
    note="Under that heading.",
)
REACHES_NONE = Message(
    "No phone there has a bed at a stage that this danger can harm.",
    note="Instead of a reach.",
)
REACHES_NOBODY = Message(
    "No phone there has a bed on days 0 to 5 or is about to sow.", note="Instead of a reach."
)
SEND_WARNING = Message(
    "Send to {n} phone", plural="Send to {n} phones", note="Button: sends the warning."
)
CHANGE_IT = Message("Change it", note="Link back to the form.")
DROP_IT = Message("Do not warn", note="Button: the warning is not sent.")
IS_SENT = Message("The warning is going out.", note="Done.")
SENT_BEFORE = Message(
    "This was decided on before, or its hours do not hold any more. Nothing was sent.",
    note="Not done.",
)
IS_DROPPED = Message("No warning is sent.", note="Done.")

# --- while it stands ------------------------------------------------------------------------
ANSWERS = Message("Answers", note="Heading of a table.")
REACHED = Message("On the phone", note="Head of a column: how many phones have the text.")
IN_ALL = Message("In all", note="Last line of a table.")
ON_THE_WAY = Message("The texts", note="Heading: how far they are.")
QUEUED = Message("Waiting here", note="Before a number of texts.")
WITH_OPERATOR = Message("With the operator", note="Before a number of texts.")
RECEIVED = Message("On the phone", note="Before a number of texts.")
FAILED = Message("Failed", note="Before a number of texts.")
TAKEN_BACK = Message("Taken back", note="Before a number of texts.")
AS_OF = Message("As of {time}", note="A time of day: when the page was made.")
RENEWED = Message("It updates by itself.", note="The page shows new answers by itself.")
HOLD_STILL = Message("Do not renew it", note="Link: the page stops showing new answers.")
DONE = Message(
    "Done", note="Head of a column: how many answered that they did what a warning says."
)
SILENT = Message("No answer yet", note="Heading of a list.")
SILENT_NOBODY = Message("Everybody has answered.", note="Instead of that list.")
HAS_IT = Message("has the text", note="Beside a phone.")
NO_RECEIPT = Message("no receipt yet", note="Beside a phone: it may not have the text.")
STILL_HERE = Message("text not sent yet", note="Beside a phone.")
SECOND_SENT = Message("asked twice", note="Beside a phone: it got a second text.")
AND_MORE_SILENT = Message(
    "And {n} more.", plural="And {n} more.", note="The list was cut; {n} are not shown."
)
HELP_THERE = Message("See who needs help", note="Link.")
ASK_AGAIN = Message(
    "Send {n} silent phone a second text",
    plural="Send {n} silent phones a second text",
    note="Button.",
)
ASKED_AGAIN = Message(
    "A second text goes to {n} phone.", plural="A second text goes to {n} phones.", note="Done."
)
ASKED_NOBODY = Message("Nobody is left to be asked again.", note="Not done.")
GIVE_CLEAR = Message("Give the all-clear", note="Button.")
CLEAR_HINT = Message(
    "Who was warned is told that it is over.", note="Beside the button for the all-clear."
)
YES_CLEAR = Message("Yes, the danger is over", note="Button: gives the all-clear.")
IS_CLEARED_NOW = Message("The all-clear goes out.", note="Done.")
CALL_BACK = Message("It was a mistake", note="Opens the button to call a warning back.")
YES_CALL_BACK = Message("Call it back", note="Button.")
CALL_BACK_HINT = Message(
    "Texts that have not left stay here. Who has one already gets a correction.",
    note="Under that button.",
)
IS_CALLED_BACK = Message(
    "Called back: {count} texts stayed here, {asked} phones get a correction.", note="Done."
)
STANDS_NO_MORE = Message("It does not stand any more.", note="Not done.")

# --- where a village lies -------------------------------------------------------------------
PLACE = Message("Where it lies", note="Heading.")
PLACE_HINT = Message(
    "For warnings by distance and from official alerts.", note="Under that heading."
)
PLACE_LABEL = Message("Degrees north, then east", note="Label of a field.")
PLACE_WRONG = Message(
    "That is no place. Write degrees north, then east, with a point, such as -0.68, 37.35.",
    note="Not done.",
)
PLACE_KEPT = Message("The place is kept.", note="Done.")
