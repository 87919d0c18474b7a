"""Texts of the page on which a lead stops texts, and of the limits on what is spent."""

from collections.abc import Mapping

from assistant.wording.message import Message

STOP_TEXTS = Message("Stop texts", note="Page, button: texts that a lead holds back.")
DANGERS_LEAVE = Message(
    "Warnings, all-clears and answers to cries for help leave all the same. Now under a warning: "
    "{villages}. Texts of danger about to leave: {count}.",
    note="On that page. {villages}: names, or a dash.",
)
SPENT_TODAY = Message("Segments sent today: {count}", note="On that page.")
LEFT_TO_SPEND = Message(
    "Segments left until a limit stops texts: {count}", note="On that page."
)
STOP_ALL = Message("All texts", note="A choice of what to stop.")
STOP_VILLAGE = Message("To this village", note="A choice of what to stop; a list follows.")
STOP_KIND = Message("Of this kind", note="A choice of what to stop; a list follows.")
WHY = Message("Why", note="Label of a field.")
STOPPED = Message("What is stopped", note="Heading of a list.")
NOTHING_STOPPED = Message("Nothing is stopped.", note="Instead of that list.")
LET_GO = Message("Let go", note="Button: texts leave again.")
IS_STOPPED = Message("They are stopped. What is stopped waits.", note="Done.")
IS_LET_GO = Message("They leave again.", note="Done.")
NOT_STOPPED = Message("Choose what to stop.", note="Nothing was chosen.")
DAY_LIMIT = Message("All texts: the limit of the day is reached", note="In that list.")
MONTH_LIMIT = Message("All texts: the limit of the month is reached", note="In that list.")
VILLAGE_DAY_LIMIT = Message(
    "{village}: the limit of a village's day is reached", note="In that list."
)
VILLAGE_MONTH_LIMIT = Message(
    "{village}: the limit of a village's month is reached", note="In that list."
)
STRANGERS_LIMIT = Message(
    "Answers to unknown numbers: the limit of an hour is reached",
    note="In that list; let go, they are answered until midnight.",
)
KIND_PROMPT = Message("Daily texts", note="A kind of texts.")
KIND_SECOND = Message("Second askings", note="A kind of texts.")
KIND_CONSENT = Message("Invitations to agree", note="A kind of texts.")
KIND_LETTER = Message("Words of officers", note="A kind of texts.")
KIND_NOTICE = Message("Notices to officers", note="A kind of texts.")
KIND_REPLY = Message("Answers", note="A kind of texts.")
KINDS: Mapping[str, Message] = {
    "prompt": KIND_PROMPT,
    "second": KIND_SECOND,
    "consent": KIND_CONSENT,
    "letter": KIND_LETTER,
    "notice": KIND_NOTICE,
    "reply": KIND_REPLY,
}
LIMIT_LINE = Message(
    "The limit on what is spent is reached: only dangers leave. A lead can let the texts go.",
    note="Line on every page.",
)
BRAKE_LINE = Message(
    "A lead has stopped some texts; dangers leave.", note="Line on every page."
)
LIMIT_TEXT = Message(
    "The spending limit is reached, segments: {count}. Only dangers leave. The page, Stop texts, "
    "lets them go.",
    note="Text to the leads.",
)
VILLAGE_LIMIT_TEXT = Message(
    "{village}: the limit of the day is reached, segments: {count}. Only dangers leave there until "
    "midnight. A lead lets the rest go: page, Stop texts.",
    note="Text to the leads and the village's officers.",
)
VILLAGE_MONTH_TEXT = Message(
    "{village}: the limit of the month is reached, segments: {count}. Only dangers leave there "
    "until the month ends. A lead lets the rest go: page, Stop texts.",
    note="Text to the leads and the village's officers.",
)
STRANGERS_TEXT = Message(
    "Many unknown numbers write. After {count} answers an hour the rest is kept, not answered; "
    "cries are. Page, Stop texts, lets answers go.",
    note="Text to the leads.",
)
TOO_MANY_TODAY = Message(
    "One officer writes to {count} phones a day, invitations too. Nothing was sent: ask a lead, or "
    "go on tomorrow.",
    note="A letter to many farmers, or a list, was not sent.",
)
TOO_MANY_THIS_MONTH = Message(
    "One officer writes to {count} phones a month, invitations too. Nothing was sent: ask a lead.",
    note="A letter to many farmers, or a list, was not sent.",
)
NEEDS_ANOTHER = Message(
    "More than {count} phones: another lead must look at it and send it. It stands in their list.",
    note="A letter to very many farmers was not sent.",
)
TOO_DEAR = Message(
    "This would go beyond the limit on what is spent; segments left: {count}. Nothing was sent.",
    note="A letter to many farmers was not sent.",
)
ACT_BRAKE_ON = Message("stopped texts", note="What was done.")
ACT_BRAKE_OFF = Message("let texts go", note="What was done.")
ACT_ERASURE_ASKED = Message(
    "will be forgotten: it was asked for", note="What was done, of a farmer."
)
ACT_ERASED = Message("forgot a farmer, as asked", note="What was done.")
ACT_PERSON_TAKEN = Message(
    "took all that is kept of a farmer, as a file", note="What was done."
)
ACT_LOOKED = Message("looked at what is kept of a farmer", note="What was done.")
ACT_LOOKED_THROUGH = Message("looked through a page of people", note="What was done.")
ACT_NUMBER_SHOWN = Message("had a farmer's number shown", note="What was done.")
BRAKE_ACTS: Mapping[str, Message] = {
    "brake_on": ACT_BRAKE_ON,
    "brake_off": ACT_BRAKE_OFF,
    "erasure_asked": ACT_ERASURE_ASKED,
    "erased": ACT_ERASED,
    "person_taken": ACT_PERSON_TAKEN,
    "looked": ACT_LOOKED,
    "looked_through": ACT_LOOKED_THROUGH,
    "number_shown": ACT_NUMBER_SHOWN,
}
