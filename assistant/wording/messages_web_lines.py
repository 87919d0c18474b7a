"""Texts of the page on which a lead sees the lines to the phones."""

from collections.abc import Mapping

from assistant.wording.message import Message

LINES = Message(
    "Phone lines",
    note="Page, link: the connections by which texts leave: a modem, an operator's account.",
)
ONLY_LINE = Message("The line", note="Name of the line where there is only one.")
WAITING_NOW = Message(
    "Texts waiting to go out: {count}", note="On that page, a link to those texts."
)
WAITING_SINCE = Message("the oldest since {when}", note="After it. {when}: day and time.")
CAN_SEND = Message("It is accepting texts.", note="State of a line.")
RESTS = Message("It is not accepting texts now.", note="State of a line.")
TOOK_NOTHING = Message(
    "It did not accept the last text.",
    note="State of a line: what it was offered last it could not send; it is tried again.",
)
NEVER_ANSWERED = Message("It has never answered.", note="State of a line.")
SAID = Message("It says: {words}", note="State of a line. {words}: as the operator put it.")
KIND_OF_LINE = Message("Kind", note="Head of a column: what kind of line it is.")
A_SECOND = Message("Texts per second", note="Head of a column: the most that a line may send.")
USED_TODAY = Message("Segments today", note="Head of a column: what a line sent today.")
USED_OF = Message("{used} of {most}", note="In it: how many of how many a day.")
NO_LIMIT = Message("no limit", note="In a column: nothing is set.")
COST_TODAY = Message("Cost today", note="Head of a column.")
TOOK_LAST = Message("Last accepted a text", note="Head of a column.")
ARRIVED_LAST = Message(
    "Last delivery today",
    note="Head of a column: when a phone last got a text by this line, today.",
)
UNTOLD = Message(
    "Unconfirmed for an hour",
    note="Head of a column: texts of today of which the operator has not said what became.",
)
LOST_TODAY = Message("Lost today", note="Head of a column: texts that will not arrive.")
NOT_YET = Message("not yet", note="In a column: it never happened.")
TRY_IT = Message("Send a test text to my phone", note="Button beside a line.")
TRIED = Message(
    "A test text to {phone} is going out on this line. Look again in a minute: your phone"
    " has it, or it is listed under Lost today.",
    note="After that button. Lost today: the head of that column.",
)
TEST_TEXT = Message(
    "Test of the line {line}: if you read this, it works.", note="The text to a lead's phone."
)
TEST_OF_ONLY = Message(
    "Test of the line: if you read this, it works.", note="The text to a lead's phone."
)
KINDS: Mapping[str, str] = {"smpp": "SMPP", "modem": "GSM", "http": "HTTP", "wire": "HTTP"}
ACT_LINE_TRIED = Message("tried a line", note="What was done.")
LINE_ACTS: Mapping[str, Message] = {"line_tried": ACT_LINE_TRIED}
