"""Emergency texts filled with the numbers of a village: one fixed text a kind."""

from assistant.dialogue.values import AnswerWarning, Change, Focus, Known, Nearby
from assistant.hearing import Kind
from assistant.wording import messages_aid as aid
from assistant.wording.message import Say, Slot, slots_of

TOLD = Focus(question="aid.told")
"""The focus of a text that tells somebody in danger what to do: it offers no digits, and none
that follows answers what was asked before it (`after_cry.py`)."""


def aid_text(kind: Kind, nearby: Nearby) -> Say:
    """The emergency text of a kind; one without numbers where the programme gave none."""
    message = aid.BY_KIND[kind]
    numbers = {
        "emergency": nearby.emergency,
        "health_post": nearby.health_post,
        "vet": nearby.vet,
    }
    wanted = slots_of(message.text)
    if not all(numbers[name] for name in wanted):
        return aid.HURT_HERE()
    return message(**{name: numbers[name] for name in wanted})


def person(known: Known) -> Slot:
    """Whom the words went to: a name and number, or "your farm officer"."""
    return known.nearby.officer or aid.YOUR_OFFICER()


def loss_text(kind: Kind, known: Known) -> Say:
    """What is said of a bed in danger: life first where weather may be near."""
    message = aid.DANGER_TOLD if kind is Kind.DANGER or known.in_storm else aid.LOST_TOLD
    return message(person=person(known))


def needs_help(known: Known) -> tuple[Change, ...]:
    """Somebody hurt while a warning stands needs help, in the officer's count too."""
    standing = known.warning
    return (AnswerWarning(standing.id, "help", alarmed=True),) if standing else ()
