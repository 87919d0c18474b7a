"""What a warning that stands changes in a talk: the work of a day, and what is answered."""

from collections.abc import Sequence

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.nursery import Nursery
from assistant.dialogue.values import Known
from assistant.wording.day import DayWork


def day_work(nursery: Nursery, tasks: Sequence[TaskCode], known: Known) -> DayWork:
    """Today's work of a nursery, as far as no warning holds it up."""
    return DayWork(nursery, tuple(tasks), known.today, rain=known.raining, held=known.held)
