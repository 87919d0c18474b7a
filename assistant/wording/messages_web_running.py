"""Texts of the page about a service that stands still."""

from assistant.wording.message import Message

HELD = Message(
    "All texts are held back: {why}",
    note="Line on every page. {why}: the reason, as the head of the programme wrote it.",
)
WAITING = Message(
    "Texts are not going out. The oldest has waited {minutes} minutes. Tell whoever runs "
    "the service; reach farmers by phone.",
    note="Line on every page while texts wait for more than ten minutes.",
    segments=2,
)
NO_ROOM = Message(
    "The machine's disk is full or nearly: soon nothing can be kept. Call who runs the service.",
    note="Line on every page where there is hardly room left for more, or a write failed for it.",
)
NOBODY_SENDS = Message(
    "Nothing is sending texts now. Tell whoever runs the service.",
    note="Line on every page where the program that sends does not run.",
)
NOBODY_TICKS = Message(
    "Nobody is being reminded: the daily texts have stopped. Tell whoever runs the service.",
    note="Line on every page where the program that makes the daily texts does not run.",
)
SET_ASIDE = Message(
    "{n} nursery cannot be read and gets no texts: {named}. Tell whoever runs the service.",
    plural="{n} nurseries cannot be read and get no texts: {named}. Tell whoever runs the "
    "service.",
    note="Line on every page. {named}: names of farmers, each with the nursery's letter.",
    segments=2,
)
NO_COPY = Message(
    "There has been no backup of the database for two days. Tell whoever runs the service.",
    note="Line on every page where the daily copy was not made.",
)
