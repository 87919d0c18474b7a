"""Texts of enrolment by somebody else: to the farmer who is asked, to the officer who enrols.

ADD is a word that officers send; it is the same in every language.
"""

from assistant.wording.message import Message

# --- to the farmer --------------------------------------------------------------------------
INVITED = Message(
    "{officer} put you on my list: I text you each day what your rice nursery needs. Texts to you "
    "are free, a reply costs one SMS. I keep your number and answers for the officer. STOP ends "
    "it. Do you agree?",
    note="To a farmer whom an officer enrolled; {officer} is a name. '1 Yes 2 No' follows.",
    segments=2,
)
INVITED_FREE = Message(
    "{officer} put you on my list: I text you each day what your rice nursery needs. Texts to you "
    "and your replies are free. I keep your number and answers for the officer. STOP ends it. Do "
    "you agree?",
    note="The same where replies cost nothing. '1 Yes 2 No' follows.",
    segments=2,
)
WELCOME_PLANNED = Message(
    "Welcome. Your officer gave me this plan. If something is wrong, send CHANGE DATE.",
    note="The farmer agreed; the plan follows. CHANGE DATE is a text to send.",
)
ABOUT_BED = Message(
    "About nursery {label}:", note="Before a question; {label} is the name of a nursery."
)

# --- to the officer -------------------------------------------------------------------------
ASK_ADD = Message(
    "Enrol {phone}, {name}, in {village}, texts in {speaks}? I ask the farmer to agree.",
    note="Shown back to the officer; {name} may be '-', {speaks} is the name of a language. "
    "'1 Yes 2 No' follows.",
    segments=2,
)
ASK_ADD_VILLAGE = Message(
    "Which village for {phone}?", note="Question to the officer; a list with digits follows."
)
ADDED = Message(
    "{phone} is enrolled and is asked to agree. You hear of it on the page.",
    note="The officer said yes.",
)
ADD_HOW = Message(
    "I cannot read that number. Send ADD code number village name, e.g. ADD 123456 {phone} "
    "{village} Amina.",
    note="To an officer. ADD stays; 'code', 'number', 'village', 'name' are filled in.",
    segments=2,
)
ADD_KNOWN = Message(
    "{phone} is enrolled already: {name}, {village}.",
    note="To an officer; {name} may be '-'.",
)
ADD_ELSEWHERE = Message(
    "{phone} is enrolled already, in a village that is not yours. Ask your lead.",
    note="To an officer.",
)
ADD_OTHER_NAME = Message(
    "{phone} is enrolled as {name}. Another owner, or another name? Change it on the page.",
    note="To an officer: the number is known under another name.",
)
ADD_ASKED = Message(
    "{phone} was asked on {date} and has not answered yet.",
    note="To an officer: the farmer has not said whether they agree.",
)
ADD_REFUSED = Message(
    "{phone} said no, so I do not ask again. The farmer can send START.",
    note="To an officer. START is a word to send.",
)
