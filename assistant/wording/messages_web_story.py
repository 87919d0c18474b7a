"""Texts of the nursery's page: what happened, a line an event."""

from collections.abc import Mapping

from assistant.wording.message import Message

STORY = Message("What happened", note="Heading: the story of a nursery, a line an event.")
NO_STORY = Message("Nothing has been reported yet.", note="Instead of the story of a nursery.")
DONE = Message("{what}: done", note="A line of the story; {what} is a task.")
PUT_OFF = Message(
    "{what}: not yet, put off to {date}", note="A line of the story; {what} is a task."
)
RAIN = Message(
    "{what}: put off to {date}, rain warning", note="A line of the story; {what} is a task."
)
PUT_OFF_WHY = Message(
    "{what}: put off to {date}, {why}",
    note="A line of the story; {what} is a task, {why} such as 'No hands'.",
)
ASSUMED = Message("assumed to be sown", note="A line of the story: nobody said it.")
BEGUN = Message("seed test started", note="A line of the story.")
PART_DONE = Message("{what}: a part is done", note="A line of the story; {what} is a task.")
LOST = Message("mats lost: {mats}", note="A line of the story: mats eaten or spoiled.")
HELD = Message(
    "held: the seed must not be sown", note="Beside a nursery: too little of its seed sprouts."
)
BY_FARMER = Message("farmer", note="Who said that something happened.")
BY_OFFICER = Message("officer", note="Who said that something happened.")
BY_CLOCK = Message(
    "automatic", note="Nobody said that something happened; the plan took it so."
)
BY: Mapping[str, Message] = {"farmer": BY_FARMER, "officer": BY_OFFICER, "clock": BY_CLOCK}
