"""Texts to an officer who answers calls for help by SMS.

TELL and SEEN are words that officers send; they are the same in every language.
"""

from assistant.wording.message import Message

TELL_HOW = Message(
    "Send TELL code number words, or SEEN code number where all is done. The number is your "
    "farmer's; its last 4 digits do for one who called.",
    note="To an officer. TELL, SEEN stay; 'code', 'number', 'words' are filled in.",
    segments=2,
)
TELL_SEVERAL = Message(
    "More than one who called has a number that ends in {digits}. Send the whole number.",
    note="To an officer.",
)
TELL_CANNOT = Message(
    "{phone} takes no texts (not agreed yet, or stopped). Ring or visit instead.",
    note="To an officer; {phone} may have a name before it.",
)
TELL_LONG = Message(
    "Too long for a text to a farmer. Send {n} letters at most.", note="To an officer."
)
ASK_TELL = Message(
    'Send to {name}, {phone}: "{words}"?',
    note="An officer's words shown back; '1 Yes 2 No' follows. {name} may be '-'.",
    segments=3,
)
ASK_TELL_LATER = Message(
    'Send to {name}, {phone}, when the quiet hours end at {time}: "{words}"?',
    note="An officer's words shown back; '1 Yes 2 No' follows. {name} may be '-'.",
    segments=3,
)
TOLD_NOW = Message("On its way to {phone}.", note="To an officer; a name may stand before it.")
TOLD_LATER = Message(
    "It leaves for {phone} at {time}.",
    note="To an officer; a name may stand before the number.",
)
SEEN_TO = Message(
    "{phone}: the call is marked as seen to.", note="To an officer; a name may stand before it."
)
NO_CALL_OPEN = Message(
    "{phone}: no call is open.", note="To an officer; a name may stand before it."
)
