"""Texts of the officers' page about calls for help and the quiet hours."""

from collections.abc import Mapping

from assistant.wording.message import Message

QUIET_UNTIL = Message(
    "Quiet hours: texts to farmers wait until {time}.",
    note="Above the box 'Send at once, even in the quiet hours'; {time} is a time of day.",
)
ANSWER_WAITS = Message(
    "Answered, goes out {time}",
    note="A call for help whose answer waits; {time} is a time of day.",
)
ANSWER_LEAVES = Message("Answered, going out now", note="A call for help.")
ANSWER_LOST = Message(
    "Your answer did not reach the phone",
    note="A call for help that was answered by a text, which was lost.",
)
SEND_AT_ONCE = Message("Send it at once", note="Button: an answer that waits goes out now.")
HAD_LEFT = Message("That answer had already gone out.", note="Nothing was changed.")
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
LAST_MESSAGES = Message("Last messages", note="Opens the last few messages of a phone.")
EARLIER_MESSAGES = Message(
    "Earlier messages", note="Link under the last few messages of a farmer."
)

# --- alarms: somebody is hurt, wants to die, or a bed is in danger -----------------------------
ALARMS = Message(
    "Cries for help", note="Heading: people, animals or beds in danger, shown first."
)
COUNT_ALARMS = Message(
    "{n} cry for help", plural="{n} cries for help", note="How many stand; links to them."
)
TOLD_AT = Message(
    "{officer} was told at {time}", note="{officer} is a name, {time} a time of day."
)
NEXT_AT = Message(
    "The next person is told at {time}",
    note="Nobody has answered yet; {time} is a time of day.",
)
FIRST_AT = Message(
    "An officer is told at {time}",
    note="If the farmer does not answer; {time} is a time of day.",
)
NOBODY_TOLD = Message("Nobody could be told yet", note="There is no officer to tell.")
ASKED_IF_HURT = Message(
    "Asked whether anybody is hurt, no answer yet", note="The farmer was asked by text."
)
SAID_HURT = Message("Says that somebody is hurt", note="What the farmer answered.")
SAID_NOBODY = Message("Says that nobody is hurt", note="What the farmer answered.")
WHAT_DONE = Message("What was done", note="Label of a field, beside the button 'Seen to'.")
SEEN_TO = Message(
    "Seen to", note="Button: the cry for help is answered and goes from the list."
)
SAY_WHAT_DONE = Message(
    "Nothing was changed. Write in a few words what was done.",
    note="The officer left the field empty.",
)
ALARM_CLOSED = Message("It is closed. Nobody else is told about it.", note="After 'Seen to'.")
ONLY_YOU = Message(
    "Only the person who was told first and the leads see this.",
    note="Under a cry of somebody who may want to die.",
)
PRIVATE_MESSAGE = Message("private", note="Stands where a message was that is shown to nobody.")
DONE_NOTE = Message("Done: {words}", note="What an officer wrote when they closed it.")
