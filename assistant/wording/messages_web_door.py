"""Texts of the door and of an officer's own account: codes, the second factor, sessions."""

from collections.abc import Mapping

from assistant.wording.message import Message

CODE_FROM_TEXT = Message("Code from the text", note="Label of a field: eight digits.")
LOCKED_WHY = Message(
    "Somebody else may have tried your number. A code sent to your phone lets you in at once.",
    note="At the door, after too many tries.",
)
TEXT_ME_A_CODE = Message("Text me a code", note="Button.")
CODE_TEXTED = Message(
    "If that is an officer's number, a code is on its way to it. It is good for 15 minutes.",
    note="After pressing that button.",
)
CODE_TOO_OFTEN = Message(
    "Too many codes were requested from here. Wait an hour, or ask your lead.",
    note="After pressing that button.",
)
SHOW_TYPED = Message("Show what I type", note="A box to tick, under a password.")
FACTOR = Message("Second factor", note="Heading: a code of an app, beside the password.")
FACTOR_CODE = Message("Code shown by your app", note="Label of a field: six digits.")
WRONG_FACTOR = Message(
    "That is not the code the app shows now. Enter the newest one; if it is still wrong, "
    "check that the phone's clock is right.",
    note="At the door, and where the factor is added.",
)
FACTOR_LOST = Message(
    "Lost the phone? Another lead can remove the second factor.", note="Under that field."
)
ADD_FACTOR = Message("Add a second factor", note="Button and link.")
FACTOR_WHY = Message(
    "A lead sees and changes everything, so a password alone is not enough.",
    note="Where the factor is added.",
)
FACTOR_HOW = Message(
    "Open any authenticator app on your phone, add an account, and point the camera at "
    "the square, or type in the key. Then enter the six digits that it shows.",
    note="Where the factor is added.",
)
FACTOR_KEY = Message("Key to type in", note="Beside the secret of the app, which is letters.")
FACTOR_ADDED = Message(
    "From now on you are asked for a code from your app when you sign in.", note="Done."
)
HAS_FACTOR = Message(
    "You are asked for a code from your app when you sign in.", note="In the account."
)
NEW_FACTOR = Message("Use another phone or app", note="Link.")
TAKE_FACTOR = Message("Remove the second factor", note="Button.")
TAKE_FACTOR_HINT = Message(
    "For an officer who has lost the phone with the app. Make sure that it is really them"
    " asking.",
    note="Above that button.",
)
FACTOR_TAKEN = Message(
    "{officer} signs in without a second factor now, and is signed out everywhere.",
    note="Done.",
)
SIGNED_IN_AT = Message("Where you are signed in", note="Heading of a list of browsers.")
THIS_BROWSER = Message("this browser", note="In that list.")
SIGN_OUT_THERE = Message("Sign out there", note="Button, in that list.")
SIGN_OUT_ELSEWHERE = Message("Sign out everywhere else", note="Button, under that list.")
SESSIONS_ENDED = Message(
    "Signed out in {n} other browser.",
    plural="Signed out in {n} other browsers.",
    note="Done.",
)
PROVE = Message("Your own password again", note="Label of a field, before a grave deed.")
NOT_PROVED = Message(
    "Your own password, or the code from your app, was wrong. Nothing was done.",
    note="Before a grave deed.",
)
ACT_SIGNED_OUT = Message("signed out", note="What was done.")
ACT_SESSIONS_ENDED = Message("signed out elsewhere", note="What was done.")
ACT_FACTOR_ADDED = Message("added a second factor", note="What was done.")
ACT_FACTOR_TAKEN = Message("removed an officer's second factor", note="What was done.")
ACT_WAY_BACK_SENT = Message(
    "had a code sent to their own phone, to get past a lock", note="What was done."
)
ACT_WAY_BACK_USED = Message("got past a lock with that code", note="What was done.")
DOOR_ACTS: Mapping[str, Message] = {
    "signed_out": ACT_SIGNED_OUT,
    "sessions_ended": ACT_SESSIONS_ENDED,
    "factor_added": ACT_FACTOR_ADDED,
    "factor_taken": ACT_FACTOR_TAKEN,
    "way_back_sent": ACT_WAY_BACK_SENT,
    "way_back_used": ACT_WAY_BACK_USED,
}
