"""Texts of the officers' page about calls for help and the quiet hours."""

from collections.abc import Mapping

from assistant.wording.message import Message

QUIET_UNTIL = Message(
    "Quiet hours: texts to farmers wait until {time}.",
    note="Above the box 'Send at once, even in the quiet hours'; {time} is a time of day.",
)
ANSWER_WAITS = Message(
    "Answered, leaves {time}",
    note="A call for help whose answer waits; {time} is a time of day.",
)
ANSWER_LEAVES = Message("Answered, leaving now", note="A call for help.")
ANSWER_LOST = Message(
    "Your answer did not reach the phone",
    note="A call for help that was answered by a text, which was lost.",
)
SEND_AT_ONCE = Message("Send it at once", note="Button: an answer that waits goes out now.")
HAD_LEFT = Message("That answer had left already.", note="Nothing was changed.")
ACT_HASTENED = Message("sent an answer at once in the quiet hours", note="What was done.")
CALL_ACTS: Mapping[str, Message] = {"answer_hastened": ACT_HASTENED}

CONSENT_WAITS = Message(
    "{n} farmer has not agreed to texts yet",
    plural="{n} farmers have not agreed to texts yet",
    note="Link to the list of those farmers.",
)
TIMES_OF = Message(
    "Times are those of {zone}.",
    note="Above a list of what was done; {zone} names a time zone, as Africa/Nairobi.",
)
EARLIER_MESSAGES = Message(
    "Earlier messages", note="Link under the last few messages of a farmer."
)
