"""Texts of the officers' page. They are read on a screen or on paper and cost no segments.

Words are those of the trade and of `locales/glossary.md`: nursery, bed, mat, warning, call for
help. Nothing here is in capitals: capitals are words that people send.
"""

from collections.abc import Mapping

from assistant.wording.message import Message

# --- the frame of every page ----------------------------------------------------------------
SKIP = Message("Skip to the page", note="A hidden link for people who use a keyboard.")
PLACES = Message("Pages", note="Name of the list of pages, for people who hear the page read.")
MORNING = Message("This morning", note="Page: who must be seen today, and calls for help.")
FARMERS = Message("Farmers", note="Page: the list of farmers.")
VILLAGES = Message("Villages", note="Page: the villages and who serves them.")
TRAIL = Message("What was done", note="Page: the list of all that officers did.")
ACCOUNT = Message("My account", note="Page: the officer's own password and language.")
SIGN_OUT = Message("Sign out", note="Button.")
LEAD = Message("lead", note="Beside an officer's name: one who sees all villages.")
PRINT = Message("Print", note="Button.")
NOTICE = Message("Done", note="Heading of a line that says what was just done; read aloud.")
NOT_DONE = Message("Not done", note="Heading of a line that says what could not be done.")
BACK = Message("Back", note="Link to where one came from.")
ALL_VILLAGES = Message("All villages", note="A choice in a list of villages.")
VILLAGE = Message("Village", note="Label of a field, head of a column.")
NO_VILLAGE = Message("no village", note="The farmer's village is not in the list.")
SHOW = Message("Show", note="Button: show the list as chosen.")

OLD_PAGE = Message(
    "This page had been open too long, or was not complete. Go back, load it again, and send it "
    "once more. Nothing was changed.",
    note="Shown when a form was refused.",
)
NOT_HERE = Message(
    "There is no such page, or it is not of your villages.", note="Shown for a wrong address."
)
TOO_MUCH = Message("That was too big to be taken. Nothing was changed.", note="A file or text.")
OUR_FAULT = Message(
    "Something went wrong on our side. It is written down. Try again in a moment.",
    note="Shown when the program failed.",
)
REFUSED_TITLE = Message("That did not work", note="Heading of a page that tells of a fault.")
TO_MORNING = Message("Go to this morning", note="Link to the first page.")

# --- signing in -----------------------------------------------------------------------------
SIGN_IN = Message("Sign in", note="Heading and button.")
PHONE = Message("Phone number", note="Label of a field.")
PHONE_HINT = Message(
    "The number that you are an officer with, with its country code.", note="Under the field."
)
PASSWORD = Message("Password", note="Label of a field.")
SIGN_IN_WRONG = Message(
    "That number and password do not fit together. Look at both and try again. Password lost? "
    "Your lead can give you a new one.",
    note="Signing in failed.",
)
SIGN_IN_LOCKED = Message(
    "Too many tries. Wait {n} minute, then try again.",
    plural="Too many tries. Wait {n} minutes, then try again.",
    note="Signing in failed too often.",
)
SIGNED_OUT = Message("You are signed out.", note="After signing out.")
CHOOSE_PASSWORD = Message("Choose your own password", note="Heading, at the first sign-in.")
CHOOSE_PASSWORD_WHY = Message(
    "The password that you were given is good for this once. Choose one that only you know.",
    note="Under that heading.",
)
CHANGE_PASSWORD = Message("Change the password", note="Heading and button.")
OLD_PASSWORD = Message("The password until now", note="Label of a field.")
NEW_PASSWORD = Message("New password", note="Label of a field.")
NEW_PASSWORD_HINT = Message(
    "Ten letters or more. A few words that nobody would guess are good.",
    note="Under the field.",
)
NEW_PASSWORD_AGAIN = Message("New password once more", note="Label of a field.")
PASSWORD_CHANGED = Message(
    "Your password is changed. You are signed out everywhere else.", note="Done."
)
PASSWORD_WRONG_OLD = Message(
    "The password until now is not right, or was wrong too often: then wait a quarter of an hour.",
    note="The password was not changed.",
)
PASSWORD_SHORT = Message(
    "The new password is too short. Take ten letters or more.",
    note="The password was not changed.",
)
PASSWORD_LONG = Message("The new password is too long.", note="The password was not changed.")
PASSWORD_SAME = Message(
    "The new password is the old one. Take another.", note="The password was not changed."
)
PASSWORD_EASY = Message(
    "The new password is too easy to guess: not your name or number, and more different letters.",
    note="The password was not changed.",
)
PASSWORD_DIFFERENT = Message(
    "The two new passwords are not the same.", note="The password was not changed."
)
LANGUAGE = Message("Language of this page and of texts to you", note="Label of a field.")
SAVE = Message("Save", note="Button.")

# --- this morning ---------------------------------------------------------------------------
GOOD_MORNING = Message("This morning, {day}", note="Heading. {day} is a date with its weekday.")

# --- what was done --------------------------------------------------------------------------
ACTS: Mapping[str, Message] = {}
