"""What a form of the officers' pages says of a field that cannot be read as it was filled in."""

from assistant.wording.message import Message

_WHAT = "On an officer's page, above a form; {what} is the name of the field."

MISSING = Message("{what}: please fill this in.", note=_WHAT)
TOO_LONG = Message(
    "{what}: at most {n} character fits here; this has {count}.",
    plural="{what}: at most {n} characters fit here; this has {count}.",
    note=_WHAT,
)
NO_DATE = Message(
    "{what}: {words} is no date here. Choose a day, or write it like 2026-06-10.",
    note=_WHAT + " {words} is what was typed.",
)
NO_TIME = Message(
    "{what}: {words} is no time of day. Write it like 14:30.",
    note=_WHAT + " {words} is what was typed.",
)
NO_NUMBER = Message(
    "{what}: {words} is no number. Write it in digits, like 22 or 22.5.",
    note=_WHAT + " {words} is what was typed.",
)
NO_CHOICE = Message("{what}: choose one from the list.", note=_WHAT)
