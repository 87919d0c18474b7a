"""Texts to officers about somebody who cries for help.

SEEN is a word that officers send; it is the same in every language.
"""

from assistant.wording.message import Message

HURT = Message(
    'Urgent, ring now: {phone}, {village}: {about}. "{words}"',
    note="To an officer at once, also at night. {about} names the trouble, {words} is what the person wrote.",
    segments=3,
)
HURT_UNSURE = Message(
    'Urgent, ring now: {phone}, {village}: {about}. "{words}" I asked whether somebody is hurt: no '
    "answer.",
    note="The same where the person was asked and said nothing more.",
    segments=4,
)
HURT_BARE = Message(
    "Urgent, ring now: {phone}, {village}: {about}.",
    note="The same of a person who wrote no words. {about} names the trouble.",
    segments=2,
)
PRIVATE = Message(
    'For you only, ring now: {phone}, {village}: {about}. "{words}" Only you and the lead see this.',
    note="To one officer, of a person who may want to die. {about} says so.",
    segments=4,
)
BED = Message(
    'Help wanted: {phone}, {village}, nursery {label}: {about}. "{words}"',
    note="To the officer, also at night. {about} names the danger, {words} is the farmer's own text.",
    segments=3,
)
BED_BARE = Message(
    "Help wanted: {phone}, {village}, nursery {label}: {about}.",
    note="The same without words of the farmer.",
    segments=2,
)
SEND_SEEN = Message(
    "When it is seen to, send SEEN code {digits}.",
    note="Ends such a text. SEEN stays; {digits} are the last of the number.",
)
SEEN_OR_NEXT = Message(
    "When it is seen to, send SEEN code {digits}. In {n} minutes I tell the next person.",
    plural="When it is seen to, send SEEN code {digits}. In {n} minutes I tell the next person.",
    note="Ends such a text. SEEN stays; {digits} are the last of the number.",
)
NOTHING_LEAVES = Message(
    "No text has left for {n} minute. Call who runs the service; ring farmers in danger.",
    plural="No text has left for {n} minutes. Call who runs the service; ring farmers in danger.",
    note="To the leads, where texts stand still.",
    segments=2,
)
NO_DAILY_TEXTS = Message(
    "Nobody is reminded now: the daily texts stand still. Call who runs the service.",
    note="To the leads, where the program that makes the daily texts does not run.",
    segments=2,
)
