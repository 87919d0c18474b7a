"""What a warning that stands changes in a talk: the work of a day, and what is answered."""

from collections.abc import Sequence
from dataclasses import dataclass

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.dangers.rows import DANGERS, RAIN
from assistant.agronomy.nursery import Nursery
from assistant.dialogue.values import Focus, Known, Standing, Text
from assistant.wording import messages_dangers as dangers
from assistant.wording import messages_talk as m
from assistant.wording import messages_tasks as t
from assistant.wording.dangers import name_of
from assistant.wording.day import DayWork
from assistant.wording.message import Message, Say


@dataclass(frozen=True)
class Replies:
    """The two answers to a warning: what is done, and that help is needed.

    `done` is the code of the first among the choices of the word lists; both are kept as
    "covered" and "help" whatever the danger.
    """

    done: str
    done_label: Message
    done_noted: Message
    help_noted: Message

    @property
    def choices(self) -> tuple[tuple[str, Message], ...]:
        """The code and the label of each."""
        return (self.done, self.done_label), ("help", m.W_HELP)

    @property
    def noted(self) -> tuple[tuple[str, Message], ...]:
        """What is kept of each, and what is said to it."""
        return ("covered", self.done_noted), ("help", self.help_noted)


_COVERED = Replies("covered", m.W_COVERED, m.WARNING_COVERED, m.WARNING_HELP)


def replies_to(warning: Standing) -> Replies:
    """What may be answered to a warning."""
    if warning.danger == RAIN:
        return _COVERED
    helped = m.WARNING_HELP if DANGERS[warning.danger].storm else dangers.HELP_NOTED
    return Replies("done", t.DONE, dangers.NOTED, helped)


def waits_for_answer(known: Known) -> bool:
    """Whether this phone was warned and has not answered."""
    return known.warning is not None and known.warning.answer is None


def warning_screen(warning: Standing) -> Text:
    """An unanswered warning, asked on a screen."""
    choices = (
        m.NUMBERED(digit=digit, label=label())
        for digit, (_, label) in enumerate(replies_to(warning).choices, start=1)
    )
    return Text((_stands(warning), *choices), Focus(warning_id=warning.id))


def _stands(warning: Standing) -> Say:
    if warning.danger == RAIN:
        return m.WARNING_STANDS()
    return dangers.STANDS(danger=name_of(warning.danger))


def day_work(nursery: Nursery, tasks: Sequence[TaskCode], known: Known) -> DayWork:
    """Today's work of a nursery, as far as no warning holds it up."""
    return DayWork(nursery, tuple(tasks), known.today, rain=known.raining, held=known.held)
