"""Conversations as tables: a question is a row, and all its ways on are data.

A target is the name of another question, or of an ending, written with an exclamation mark
("!open"). `ANY` is where every answer goes that has no way of its own.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from assistant.wording.message import Message

ANY = "*"


class Reads(StrEnum):
    """The kind of answer that a question expects; each has one reader."""

    LANGUAGE = "language"
    VILLAGE = "village"
    OWN_VILLAGE = "own_village"
    NURSERY = "nursery"
    PRACTICE = "practice"
    TASK = "task"
    CHOICE = "choice"
    YES_NO = "yes_no"
    DEED = "deed"  # yes or no, of something done: "no we did not"
    AREA = "area"
    GERMINATION = "germination"
    TESTED = "tested"
    LITRES = "litres"
    SOWING = "sowing"
    DATE = "date"
    DATE_OR_NO = "date_or_no"
    RIPENS = "ripens"
    TINS = "tins"
    LEAVES = "leaves"
    PROBLEM = "problem"
    PLACE = "place"
    CAN = "can"
    SHOOTS = "shoots"
    MATS = "mats"
    LOST = "lost"
    SUFFICED = "sufficed"
    PLANTED = "planted"
    SPACING = "spacing"
    HILL = "hill"
    GRAINS = "grains"
    GAPS = "gaps"
    SEED_KG = "seed_kg"
    WORDS = "words"
    TOPIC = "topic"


@dataclass(frozen=True)
class Choice:
    """One answer that a digit stands for: where it goes is looked up by its code."""

    code: str
    label: Message


@dataclass(frozen=True)
class Question:
    """One thing to ask.

    `explains` are texts of their own that go before it the first time. `keeps` names the answer
    in the session. `goes` maps what the reader made of the reply (a choice's code, "yes",
    "past" ...) to the next step. `again` is said before the question is
    put once more; `asks_choosing` is asked instead where the village offers several kinds of
    bed; `help` when the person asks what it means. `drops` names answers that were
    given to the old answer and are asked anew with a new one.
    """

    step: str
    asks: Message
    reads: Reads
    goes: Mapping[str, str]
    help: Message
    again: Message
    asks_choosing: Message | None = None
    keeps: str = ""
    choices: tuple[Choice, ...] = ()
    explains: tuple[Message, ...] = ()
    drops: tuple[str, ...] = ()


@dataclass(frozen=True)
class Conversation:
    """A table of questions, with a version: a saved session of another one starts over."""

    name: str
    version: int
    first: str
    questions: Mapping[str, Question] = field(default_factory=dict)


def conversation(name: str, version: int, *questions: Question) -> Conversation:
    """A conversation that begins with its first question."""
    table = {question.step: question for question in questions}
    return Conversation(name, version, questions[0].step, table)


def faults(table: Conversation, endings: frozenset[str]) -> list[str]:
    """What is wrong with a table: ways to nowhere, dead ends, questions nobody reaches."""
    found = []
    reached = {table.first}
    for question in table.questions.values():
        if not question.goes:
            found.append(f"{table.name}.{question.step} leads nowhere")
        codes = {choice.code for choice in question.choices}
        if ANY not in question.goes and codes - set(question.goes):
            found.append(f"{table.name}.{question.step}: a choice has no way on")
        for target in question.goes.values():
            reached.add(target)
            known = endings if target.startswith("!") else table.questions
            if target not in known:
                found.append(f"{table.name}.{question.step} goes to the unknown {target!r}")
    unreached = set(table.questions) - reached
    found += [f"{table.name}.{step} is never reached" for step in sorted(unreached)]
    return found
