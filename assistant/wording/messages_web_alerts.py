"""Texts of the officers' page of official alerts, and of `nursery alert`.

The words of the CAP standard (Severe, Likely ...) and of the weather service are shown as they
came and stand in no text here.
"""

from collections.abc import Mapping

from assistant.wording.message import Message

ALERTS = Message("Official alerts", note="Page: alerts of the weather service.")
INTRO = Message(
    "What the weather service said, in its own words, and what followed.",
    note="Under the heading.",
)
NONE = Message("No alerts yet.", note="An empty list.")
ONLY_OURS = Message("Only those for our villages", note="A choice: what is shown.")

# --- where alerts are read ------------------------------------------------------------------
SOURCES = Message("Where alerts come from", note="Heading.")
SOURCE = Message("Source", note="Head of a column: a file, folder or web address.")
LOOKED = Message("Last checked", note="Head of a column.")
HOW = Message("Result", note="Head of a column.")
WELL = Message("worked", note="How a look at a source went.")
NOT_YET = Message("not yet", note="Nobody has looked at a source.")
WELL_LAST = Message("last worked {when}", note="{when} is a date and a time.")
NO_SOURCE = Message(
    "No alerts come in by themselves: no source is set. Ask whoever runs the service to "
    "set one.",
    note="The name of the setting follows.",
)
THRESHOLDS = Message("What leads to a warning", note="Heading: the thresholds of alerts.")
ANY_EVENT = Message("any event", note="Instead of a list of dangers.")
THEN_DRAFTED = Message(
    "An alert that meets these becomes a draft. No farmer is told until an officer says so.",
    note="Under the thresholds.",
)
THEN_SENT = Message(
    "An alert that meets these warns the farmers at once, without asking.",
    note="Under the thresholds.",
)
UNPLACED = Message(
    "Alerts cannot find these villages: {villages}. Enter where they are, or the codes "
    "that the service uses for them.",
    note="Names of villages.",
)
CODES = Message("Codes of the weather service", note="Label of a field.")
CODES_HINT = Message(
    "One per line, as name=value. Alerts of the weather service name places by them.",
    note="Under the field.",
)
CODES_KEPT = Message("The codes for {village} are saved.", note="After saving.")
CODES_WRONG = Message(
    "{line} is not a code. Write one per line, as name=value. Nothing was changed.",
    note="{line} is what was typed.",
)

# --- one alert ------------------------------------------------------------------------------
ALERT = Message("Alert", note="Head of a column.")
HOURS = Message("Hours", note="Head of a column: from when to when.")
OURS = Message("Our villages", note="Head of a column: villages in the area of an alert.")
BECAME = Message("What followed", note="Head of a column, heading.")
FROM_TO = Message("{start} to {end}", note="Two moments.")
CAME = Message("came {when}", note="{when} is a date and a time.")
MORE = Message("and {n} more", plural="and {n} more", note="Villages of other officers.")
SIGNED = Message("signed, not checked", note="An alert has an electronic signature.")
SEALED = Message(
    "signed, checked with the key of {name}",
    note="An alert has an electronic signature, which is right; {name} is a weather service.",
)
FORGED = Message(
    "the signature is wrong: ask the service before you warn by it",
    note="An alert has an electronic signature, and it is not the service's.",
)
UNSIGNED = Message("not signed", note="An alert has no electronic signature.")
IN_WORDS = Message("The service's own words", note="Heading.")
AREA = Message("Area", note="Label: where an alert holds.")
FIGURES = Message(
    "outlines: {rings}, circles: {circles}, codes: {codes}",
    note="How an area is told: numbers.",
)
ADVICE = Message("Advice", note="Label: what the service says to do.")
CONTACT = Message("Contact", note="Label: whom to ask.")
ON_THE_MAP = Message("On the map", note="Heading, and name of a drawing.")
MAP_LEGEND = Message(
    "Filled dots: our villages in its area. Hollow dots: our other villages.",
    note="Under a drawing.",
)
RAW = Message("The original message", note="Link: downloads a file.")
REPLACED_BY = Message("Replaced by a later message:", note="A link follows.")
REPLACES = Message("It replaced:", note="Links follow.")
DRAFT_OPEN = Message("A draft is waiting for {villages}.", note="Names of villages.")
DRAFT_SENT = Message("{villages}: warned {when}.", note="Names of villages; date and time.")
DRAFT_DROPPED = Message("{villages}: not warned.", note="Names of villages.")
TO_DRAFTS = Message("Go to the warnings", note="Link.")
STILL = Message(
    "The service no longer warns of these villages, but your warning still stands: {villages}. "
    "Look at the sky first.",
    note="Names of villages; a button follows.",
)
GIVE_CLEAR = Message("Give these the all-clear", note="Button.")
CLEAR_GIVEN = Message("The all-clear goes out: {villages}.", note="Names of villages.")
CLEAR_NONE = Message("No warning of this alert stands any more.", note="Nothing was sent.")

BECAME_FAULTY = Message(
    "It does not follow the standard, so nothing was done. If it is real, warn by hand.",
    note="What became of an alert.",
)
BECAME_NOT_ACTUAL = Message("A test, exercise or draft; nothing was done.", note="What became.")
BECAME_NOT_PUBLIC = Message("Not meant for the public; nothing was done.", note="What became.")
BECAME_NO_WARNING = Message("It warns of nothing.", note="What became of an alert.")
BECAME_EXPIRED = Message("It was already over when it came.", note="What became of an alert.")
BECAME_ALL_CLEAR = Message("The service says it is over.", note="What became.")
BECAME_OTHER = Message("Another danger than those we warn of.", note="What became.")
BECAME_BELOW = Message("Below the thresholds.", note="What became of an alert.")
BECAME_ONLY_WORDS = Message(
    "Its area is given only in words. Read them; if they mean you, warn by hand.",
    note="What became of an alert.",
)
BECAME_ELSEWHERE = Message("None of our villages is in its area.", note="What became.")
BECAME_CANCELS = Message("It cancels an earlier alert.", note="What became of an alert.")
BECAME_REPLACED = Message("A later message had already come.", note="What became.")
BECAME_UNCHANGED = Message("Its villages already have this warning.", note="What became.")
BECAME_DRAFTED = Message("Drafted for the officer.", note="What became of an alert.")
BECAME_SENT = Message("The farmers were warned at once.", note="What became of an alert.")
BECAMES: Mapping[str, Message] = {
    "faulty": BECAME_FAULTY,
    "not_actual": BECAME_NOT_ACTUAL,
    "not_public": BECAME_NOT_PUBLIC,
    "no_warning": BECAME_NO_WARNING,
    "expired": BECAME_EXPIRED,
    "all_clear": BECAME_ALL_CLEAR,
    "other_hazard": BECAME_OTHER,
    "below": BECAME_BELOW,
    "only_words": BECAME_ONLY_WORDS,
    "elsewhere": BECAME_ELSEWHERE,
    "cancels": BECAME_CANCELS,
    "replaced": BECAME_REPLACED,
    "unchanged": BECAME_UNCHANGED,
    "drafted": BECAME_DRAFTED,
    "sent": BECAME_SENT,
}

# --- what is wrong with a faulty one --------------------------------------------------------
FAULTS = Message("What is wrong with it", note="Heading of a list.")
WRONG_TOO_BIG = Message("larger than a message may be", note="A fault of an alert.")
WRONG_NOT_XML = Message("not XML, or incomplete", note="A fault of an alert.")
WRONG_DTD = Message("a document type or entities, which may be an attack", note="A fault.")
WRONG_NOT_CAP = Message(
    "not an alert in version 1.2 of the standard", note="A fault of an alert."
)
WRONG_MISSING = Message("missing", note="A fault of an alert; the name of a part goes before.")
WRONG_UNKNOWN = Message("does not belong there", note="A fault of an alert.")
WRONG_TWICE = Message("there more than once", note="A fault of an alert.")
WRONG_ORDER = Message("out of order", note="A fault of an alert.")
WRONG_EMPTY = Message("empty", note="A fault of an alert.")
WRONG_WORD = Message("not one of the standard's words", note="A fault of an alert.")
WRONG_TIME = Message("not a time with its zone in digits", note="A fault of an alert.")
WRONG_IDENTIFIER = Message("has a blank, a comma, < or &", note="A fault of an alert.")
WRONG_REFERENCE = Message("does not name an earlier message", note="A fault of an alert.")
WRONG_POINT = Message("not a latitude and longitude", note="A fault of an alert.")
WRONG_RING = Message("an outline that is not closed", note="A fault of an alert.")
WRONG_NUMBER = Message("not a number that can stand there", note="A fault of an alert.")
WRONG_NEEDS = Message("needs another part beside it", note="A fault of an alert.")
WRONGS: Mapping[str, Message] = {
    "too_big": WRONG_TOO_BIG,
    "not_xml": WRONG_NOT_XML,
    "dtd": WRONG_DTD,
    "not_cap": WRONG_NOT_CAP,
    "missing": WRONG_MISSING,
    "unknown": WRONG_UNKNOWN,
    "twice": WRONG_TWICE,
    "order": WRONG_ORDER,
    "empty": WRONG_EMPTY,
    "word": WRONG_WORD,
    "time": WRONG_TIME,
    "identifier": WRONG_IDENTIFIER,
    "reference": WRONG_REFERENCE,
    "point": WRONG_POINT,
    "ring": WRONG_RING,
    "number": WRONG_NUMBER,
    "needs": WRONG_NEEDS,
}

PASTE = Message("Enter a message by hand", note="Opens a form; its button.")
PASTE_LABEL = Message(
    "The whole message, as the weather service sent it", note="Label of a field."
)
PASTE_HINT = Message(
    "In CAP 1.2 format, beginning with <?xml or <alert. It becomes a draft at most: no "
    "farmer is warned by it alone.",
    note="Under a field.",
)
PASTED = Message("The message is entered.", note="Done; its page tells what became of it.")
PASTED_BEFORE = Message("This message was entered before.", note="Nothing was done.")
