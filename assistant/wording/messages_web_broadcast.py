"""Texts of the page from which an officer writes to many farmers."""

from collections.abc import Mapping

from assistant.wording.message import Message
from assistant.wording.messages_web_groups import BAD_HOUR

BROADCASTS = Message("Write to many farmers", note="Page, and link to it.")
BROADCAST_HINT = Message(
    "For a meeting, a seed delivery or a visit. It waits for the morning and does not "
    "replace a rain warning.",
    note="Under the heading.",
)
TO_WARNINGS = Message("Rain coming? Warn of rain.", note="Link to the Warnings page.")
TO_WHOM = Message("To farmers whose bed is", note="Label of a list.")
G_ALL = Message("in any stage, or none yet", note="A choice: to all farmers.")
G_BEFORE = Message("not sown yet", note="A choice: the stage of a bed.")
G_YOUNG = Message("on days 0 to 5", note="A choice: the stage of a bed.")
G_GROWING = Message("on day 6 or later, not ready", note="A choice: the stage of a bed.")
G_READY = Message("ready to lift", note="A choice: the stage of a bed.")
GROUPS: Mapping[str, Message] = {
    "all": G_ALL,
    "before": G_BEFORE,
    "young": G_YOUNG,
    "growing": G_GROWING,
    "ready": G_READY,
}
YOUR_WORDS = Message("Your words", note="Label of a field.")
YOUR_WORDS_HINT = Message(
    "Sent exactly as you write them, in one language, after your name.",
    note="Under that field.",
)
SHOW_REACH = Message("Show whom it reaches", note="Button.")
F_NO_WORDS = Message("Write some words first.", note="A form was not complete.")
F_LONG = Message("That is too long for a text. Make it shorter.", note="A form was wrong.")
F_NO_VILLAGE = Message("Tick a village.", note="A form was not complete.")
FAULTS: Mapping[str, Message] = {
    "no_words": F_NO_WORDS,
    "long": F_LONG,
    "no_village": F_NO_VILLAGE,
    "bad_hour": BAD_HOUR,
}
SURE = Message("Send this text?", note="Heading.")
LEAVES_NOW = Message("It goes out at once.", note="About a text.")
LEAVES_LATER = Message(
    "It goes out at {time}, when the quiet hours end.", note="About a text; {time} is a time."
)
IN_UCS2 = Message(
    "Some letters are not in the phone alphabet, so each segment holds 67 letters, not 153.",
    note="About what a text costs.",
)
NOT_TEXTED = Message(
    "{n} farmer is left out: stopped texts, or has not agreed to them.",
    plural="{n} farmers are left out: they stopped texts, or have not agreed to them.",
    note="About whom a text reaches.",
)
REACHES_NOBODY = Message("Nobody would get it. Choose others.", note="Instead of a button.")
SEND = Message("Send to {n} phone", plural="Send to {n} phones", note="Button.")
IS_SENT = Message("Your text is on its way.", note="Done.")
IS_WAITING = Message(
    "Your text goes out at {time}, when the quiet hours end.", note="Done; {time} is a time."
)
WAS_SENT = Message("This was already sent. Nothing was sent now.", note="Not done.")
TAKE_BACK = Message("Cancel texts that have not gone out", note="Button.")
TAKEN_BACK = Message(
    "{n} text was taken back.", plural="{n} texts were taken back.", note="Done."
)
LATEST = Message("Sent before", note="Heading of a list.")
