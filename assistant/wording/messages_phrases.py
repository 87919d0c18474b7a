"""Set texts of an officer to a farmer, sent after "From ..., your officer:" in the farmer's
language. They promise nothing but what the officer does, and advise nothing."""

from collections.abc import Mapping

from assistant.wording.message import Message

COME_TODAY = Message("I will come to you today.", note="An officer's text to a farmer.")
COME_TOMORROW = Message("I will come to you tomorrow.", note="An officer's text to a farmer.")
RING_ME = Message("Please phone me.", note="An officer's text to a farmer.")
RING_YOU = Message(
    "I will phone you today. Keep your phone on.", note="An officer's text to a farmer."
)
ANSWER_IT = Message(
    "Please answer the last question about your nursery.", note="An officer's text."
)
OTHER_WORDS = Message(
    "I did not understand your words. Please say it in other words.", note="An officer's text."
)
WELL_DONE = Message("Well done. Go on like this.", note="An officer's text to a farmer.")
PHRASES: Mapping[str, Message] = {
    "today": COME_TODAY,
    "tomorrow": COME_TOMORROW,
    "ring_me": RING_ME,
    "ring_you": RING_YOU,
    "answer": ANSWER_IT,
    "again": OTHER_WORDS,
    "well_done": WELL_DONE,
}
