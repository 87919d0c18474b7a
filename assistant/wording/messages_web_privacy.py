"""Texts of the pages about what is kept of a person."""

from assistant.wording.message import Message

KEPT_DATA = Message(
    "Data kept about this person", note="Heading on a farmer's page, for leads."
)
TAKE_HINT = Message(
    "Only if the person asks for it. The file holds everything they wrote: give it to "
    "nobody else.",
    note="Above the button that downloads it.",
)
TAKE = Message("Download it", note="Button: a file with all that is kept of a person.")
ERASE_HINT = Message(
    "Only if the person asks for it. Their phone is told. It is deleted in a week, unless"
    " they are in danger; START sent before then keeps it.",
    note="Above the button. START stays.",
)
ERASE = Message("Delete it in a week", note="Button: all that is kept of a person.")
ERASE_ASKED = Message("It is deleted in a week. The phone is told.", note="Done.")
ERASE_WAS = Message("That has already been asked for.", note="Nothing was done.")
ERASE_ON = Message(
    "It is deleted on {date}, unless the person is in danger.",
    note="Under the heading, once it was asked for.",
)
TOO_MANY_PHONES = Message(
    "This goes to more than {count} phones. Confirm who you are.",
    note="Above a field for the officer's own password.",
)
SHOW_NUMBER = Message(
    "Show the whole number",
    note="Button, for a lead: the farmer's number; it stands in the trail.",
)
LOOKS_TOO = Message(
    "Also show who viewed whose details", note="Beside a tick, above the trail."
)
