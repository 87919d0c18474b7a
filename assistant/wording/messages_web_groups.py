"""Texts of calls given to a colleague, words that go out later, and an officer's own groups."""

from assistant.wording.message import Message

# --- a call for a colleague -----------------------------------------------------------------
HAND_TO = Message("Give this to", note="Label of a list of officers: who sees to a call.")
HAND_WHY = Message(
    "You both see it. It counts as open with the colleague until one of you closes it.",
    note="Under that list.",
)
NO_COLLEAGUE = Message(
    "There is no other officer in this programme.", note="A call cannot be given to anybody."
)
CHOOSE_COLLEAGUE = Message("Choose a colleague.", note="Nothing was done.")
HANDED = Message(
    "{by} gave this to {to}, {date} {time}",
    note="Beside a call for help; {by} and {to} are officers, {time} a time of day.",
)

# --- later ----------------------------------------------------------------------------------
WHEN = Message("When it goes out", note="Label of a list of days; the first choice is at once.")
AT_ONCE = Message("now", note="A choice of when a text goes out.")
HOUR = Message("Hour", note="Label of a list of hours of the day.")
LATER_WHY = Message(
    "On another day it goes out at that hour. Until then you can take it back on the page Sent by me.",
    note="Under the list of days and the list of hours.",
)
BAD_HOUR = Message(
    "That hour has passed, or is more than two weeks away. Choose another.",
    note="A text was not sent.",
)
GOES_OUT = Message(
    "It goes out on {date} at {time}.", note="About a text; a date with its weekday and a time."
)
WAITS_UNTIL = Message(
    "waits until {date}, {time}", note="Beside a text: a date with its weekday and a time."
)

# --- own groups -----------------------------------------------------------------------------
MY_GROUPS = Message("My groups", note="Page: farmers whom an officer keeps under a name.")
GROUPS_WHY = Message(
    "Only you see your groups. Choose a group when you write to many farmers.",
    note="Under the heading.",
)
GROUP = Message("Group", note="Label of a list: one of the officer's own groups.")
NO_GROUP = Message("no group: everyone in the villages ticked", note="The first choice there.")
GROUP_NAME = Message("Name of the group", note="Label of a field.")
KEEP_GROUP = Message("Save those ticked as a group", note="Button under a list of farmers.")
KEEP_WHY = Message(
    "With the name of a group that you have, they are added to it.", note="Under the field."
)
GROUP_KEPT = Message(
    "{n} farmer is in the group {name} now.",
    plural="{n} farmers are in the group {name} now.",
    note="Done; {name} is the group's.",
)
NO_NAME_YET = Message("Give the group a name.", note="Nothing was done.")
N_FARMERS = Message("{n} farmer", plural="{n} farmers", note="How many are in a group.")
WRITE_TO_THEM = Message("Write to them", note="Link: a text to all farmers of a group.")
TAKE_OUT = Message("Take those ticked out", note="Button: they leave the group.")
TAKEN_OUT = Message(
    "{n} farmer was taken out.", plural="{n} farmers were taken out.", note="Done."
)
DROP_GROUP = Message("Delete the group", note="Button; the farmers stay on the list.")
DROP_WHY = Message(
    "The farmers stay; only the group goes. This cannot be undone.", note="Over that button."
)
GROUP_DROPPED = Message("The group {name} is deleted.", note="Done.")
NO_GROUPS = Message(
    "You have no group yet. Tick farmers on the Farmers page and save them as a group.",
    note="In place of a list.",
)
TO_GROUP = Message("To the group {name}", note="To whom a text goes.")
GROUP_GONE = Message("The group is deleted.", note="To whom a text would have gone.")
