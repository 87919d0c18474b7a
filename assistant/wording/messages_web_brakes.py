"""Texts of the page on which a lead stops texts, and of the limits on what is spent."""

from collections.abc import Mapping

from assistant.wording.message import Message

STOP_TEXTS = Message("Stop texts", note="Page, button: texts that a lead holds back.")
DANGERS_LEAVE = Message(
    "Warnings, all-clears and answers to cries for help still go out. Under a warning "
    "now: {villages}. Danger texts about to go out: {count}.",
    note="On that page. {villages}: names, or a dash.",
)
SPENT_TODAY = Message("Segments sent today: {count}", note="On that page.")
LEFT_TO_SPEND = Message(
    "Segments left before a limit stops texts: {count}", note="On that page."
)
STOP_ALL = Message("All texts", note="A choice of what to stop.")
STOP_VILLAGE = Message("To this village", note="A choice of what to stop; a list follows.")
STOP_KIND = Message("Of this kind", note="A choice of what to stop; a list follows.")
WHY = Message("Why", note="Label of a field.")
STOPPED = Message("What is stopped", note="Heading of a list.")
NOTHING_STOPPED = Message("Nothing is stopped.", note="Instead of that list.")
LET_GO = Message("Let them go", note="Button: texts leave again.")
IS_STOPPED = Message("They are stopped and wait.", note="Done.")
IS_LET_GO = Message("They go out again.", note="Done.")
NOT_STOPPED = Message("Choose what to stop.", note="Nothing was chosen.")
DAY_LIMIT = Message("All texts: the daily limit is reached", note="In that list.")
MONTH_LIMIT = Message("All texts: the monthly limit is reached", note="In that list.")
VILLAGE_DAY_LIMIT = Message(
    "{village}: the village's daily limit is reached", note="In that list."
)
VILLAGE_MONTH_LIMIT = Message(
    "{village}: the village's monthly limit is reached", note="In that list."
)
STRANGERS_LIMIT = Message(
    "Answers to unknown numbers: the hourly limit is reached",
    note="In that list; let go, they are answered until midnight.",
)
KIND_PROMPT = Message("Daily texts", note="A kind of texts.")
KIND_SECOND = Message("Reminders to answer", note="A kind of texts.")
KIND_CONSENT = Message("Invitations to agree", note="A kind of texts.")
KIND_LETTER = Message("Officers' own texts", note="A kind of texts.")
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
    "The spending limit is reached: only danger texts go out. A lead can let the others go.",
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
    "An officer may write to {count} phones a day, invitations included. Nothing was "
    "sent: ask a lead, or continue tomorrow.",
    note="A letter to many farmers, or a list, was not sent.",
)
TOO_MANY_THIS_MONTH = Message(
    "An officer may write to {count} phones a month, invitations included. Nothing was "
    "sent: ask a lead.",
    note="A letter to many farmers, or a list, was not sent.",
)
NEEDS_ANOTHER = Message(
    "More than {count} phones: another lead must check it and send it. It is on their list.",
    note="A letter to very many farmers was not sent.",
)
TOO_DEAR = Message(
    "This would exceed the spending limit; segments left: {count}. Nothing was sent.",
    note="A letter to many farmers was not sent.",
)
ACT_BRAKE_ON = Message("stopped texts", note="What was done.")
ACT_BRAKE_OFF = Message("let texts go", note="What was done.")
ACT_ERASURE_ASKED = Message(
    "will be forgotten: it was asked for", note="What was done, of a farmer."
)
ACT_ERASED = Message("deleted a farmer's data, as asked", note="What was done.")
ACT_PERSON_TAKEN = Message("downloaded all data of a farmer", note="What was done.")
ACT_LOOKED = Message("viewed details of a farmer", note="What was done.")
ACT_LOOKED_THROUGH = Message("viewed a page of people", note="What was done.")
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
