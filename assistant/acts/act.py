"""The acts that a text can be."""

from enum import StrEnum


class Act(StrEnum):
    """What a person means by a text, in the order in which it is looked at."""

    DIE = "die"  # somebody wants to die
    HARM = "harm"  # a person or an animal is hurt or in danger
    DANGER = "danger"  # the bed or the field is in danger or lost
    REFUSE = "refuse"  # no more of this
    PERSON = "person"  # wants a person
    TROUBLE = "trouble"  # something is wrong, and not lost yet
    QUESTION = "question"
    GREETING = "greeting"
    DONE = "done"
    NOTDONE = "notdone"
    VALUE = "value"  # an answer: a number, a day, a colour, yes, no
    TALK = "talk"  # anything else, none of it for us to act on
