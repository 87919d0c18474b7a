"""Texts of the page of the answering desk: what an office answers itself, and what is asked."""

from collections.abc import Mapping

from assistant.wording.message import Message

QUESTIONS = Message(
    "Questions and answers", note="Page: what farmers ask, and what the office answers itself."
)
ADD = Message("Add a question", note="Button and heading.")
TO_READ = Message("To be read before use", note="Heading over questions that an office added.")
TO_READ_WHY = Message(
    "No farmer gets an answer that one person alone has read. Is it true, and still true in a month? "
    "Does it name no dose and no product?",
    note="Under that heading, to the second reader.",
)
IN_USE = Message("The office answers", note="Heading over questions that are in use.")
NONE_ADDED = Message("No question has been added.", note="Instead of a list.")
WAYS = Message("Ways of asking", note="Label of a field.")
WAYS_HINT = Message(
    "One a line, as people type it, two words or more. Leave out names and numbers of people.",
    note="Under that field.",
)
ANSWER = Message("Answer", note="Label of a field.")
ANSWER_HINT = Message(
    "One segment with the name of the office before it. No dose, product or bait. Amounts and days "
    "of a bed are worked out by the assistant: leave them to it.",
    note="Under that field.",
)
HAS_NUMBER = Message(
    "It holds a figure: is it one that the assistant should work out for each bed instead?",
    note="Beside an answer, to the second reader.",
)
ADDED_BY = Message("Added by {name}, {date}", note="{name}: an officer.")
ADDED_BY_COMMAND = Message("Added at the command line, {date}", note="Of a question.")
READ_BY = Message("read by {name}, {date}", note="After who added it. {name}: an officer.")
YOUR_OWN = Message("You added it, so somebody else reads it.", note="Instead of a button.")
USE_IT = Message("It is right: use it", note="Button, of the second reader.")
WITHDRAW = Message("Withdraw", note="Button: the question is used no more.")
ADD_LIKE = Message("Add one like it", note="Opens the form, filled in.")
WHAT_IS_ASKED = Message("What is asked", note="Heading over a table of questions and counts.")
QUESTION = Message("Question", note="Head of a column.")
TIMES_ANSWERED = Message("Answered", note="Head of a column: how often a question was.")
TIMES_OFFERED = Message("Offered", note="Head of a column: how often a question was.")
OFFERED_WHY = Message(
    "Offered: the farmer was asked whether that was meant.", note="Under that table."
)
BY_OFFICE = Message("office", note="Beside a question that the office answers.")
N_UNREAD = Message(
    "{n} reply could not be read",
    plural="{n} replies could not be read",
    note="Count of a month; leads to those replies.",
)
N_PASSED = Message(
    "{n} question went to a person",
    plural="{n} questions went to a person",
    note="Count of a month: what the assistant could not answer.",
)
NOTHING_ASKED = Message("No question was counted in this month.", note="Instead of a table.")
MAKE_ONE = Message("Make a question of it", note="Beside a reply that could not be read.")

# --- what was done, or not ------------------------------------------------------------------
KEPT = Message("Kept. Somebody else reads it before it is used.", note="Done.")
USED = Message("In use from now on.", note="Done, after a second person has read a question.")
WITHDRAWN = Message("Withdrawn: it is used no more.", note="Done.")
NO_ANSWER = Message("Write an answer.", note="Nothing was kept.")
BAD_WAYS = Message(
    "Write 1 to 12 ways of asking, each of two words or more that say something, and up to 60 "
    "letters.",
    note="Nothing was kept.",
)
HAS_REFUSED = Message(
    'No dose, product, poison or bait may be named: "{words}". Send such questions to an officer.',
    note="Nothing was kept. {words}: what stands in the answer.",
)
HAS_DOSE = Message(
    '"{words}" may be taken for a dose. Leave the amount out.',
    note="Nothing was kept. {words}: an amount in the answer.",
)
TOO_LONG = Message(
    "The answer is longer than one segment. Shorten it.", note="Nothing was kept."
)
IS_HEARD = Message(
    '"{words}" is heard as danger, a refusal, a call for a person or a word to send, which go before '
    "any question. Ask it in another way.",
    note="Nothing was kept. {words}: a way of asking.",
)
NO_PLACE = Message(
    "That village or language is not here: {words}", note="Nothing was kept. {words}: as typed."
)
NOT_KEPT: Mapping[str, Message] = {
    "empty": NO_ANSWER,
    "ways": BAD_WAYS,
    "refused": HAS_REFUSED,
    "dose": HAS_DOSE,
    "length": TOO_LONG,
    "heard": IS_HEARD,
    "place": NO_PLACE,
}

ACT_ADDED = Message("added a question", note="What was done.")
ACT_READ = Message("read a question, so that it is used", note="What was done.")
ACT_WITHDRAWN = Message("withdrew a question", note="What was done.")
QUESTION_ACTS: Mapping[str, Message] = {
    "question_added": ACT_ADDED,
    "question_read": ACT_READ,
    "question_withdrawn": ACT_WITHDRAWN,
}
