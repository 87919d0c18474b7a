"""What can hurt is said with the work that brings it."""

from datetime import timedelta

import pytest

from assistant.agronomy.tasks import TaskCode
from assistant.wiring.practices import open_practices
from assistant.wording import messages_cautions as h
from assistant.wording.day import DayWork, day_says, work_says
from assistant.wording.message import Message
from tests.talk import TODAY, nursery

PRACTICES = open_practices()


def cautions(task: TaskCode, practice: str = "mat", *, rain: bool = False) -> set[Message]:
    """Those of a day on which one task is due."""
    bed = nursery(sow=TODAY - timedelta(days=18), practice=PRACTICES[practice])
    work = DayWork(bed, (task,), TODAY, rain=rain)
    return {say.message for say in day_says(work) if say.message in vars(h).values()}


@pytest.mark.parametrize(
    ("task", "caution"),
    [
        (TaskCode.COLLECT, h.TREATED_SEED),
        (TaskCode.MIX, h.HANDS_HULL),
        (TaskCode.SOAK, h.SOAK_POISON),
        (TaskCode.UNCOVER_FLOOD, h.SNAKES_AND_WATER),
        (TaskCode.FIELD_PLOUGH, h.MACHINES),
        (TaskCode.FIELD_PUDDLE, h.MACHINES),
        (TaskCode.TRANSPLANT, h.IN_WATER),
        (TaskCode.KEEP_WATER, None),
    ],
)
def test_each_hazard_is_named_on_its_day(task: TaskCode, caution: Message | None) -> None:
    """Seed that is poison, smoke, soaking water, snakes, drowning, machines, cuts and heat."""
    assert cautions(task) == ({caution} if caution else set())


def test_a_bed_is_warned_of_what_there_is_on_it() -> None:
    """No straw on a wet bed, no water on a dry one, no hull in either."""
    assert cautions(TaskCode.UNCOVER_FLOOD, "wet_bed") == {h.CHILDREN}
    assert cautions(TaskCode.UNCOVER_FLOOD, "dry_bed") == {h.SNAKES}
    assert cautions(TaskCode.MIX, "wet_bed") == cautions(TaskCode.MIX, "dry_bed") == {h.HANDS}


def test_what_must_wait_for_the_rain_brings_no_caution() -> None:
    """Nobody is to lift the straw under a warning."""
    assert cautions(TaskCode.UNCOVER_FLOOD, rain=True) == set()


def test_the_same_work_asked_again_is_short() -> None:
    """A screen and a second asking keep to what is to be done."""
    bed = nursery(sow=TODAY - timedelta(days=5))
    says = work_says(DayWork(bed, (TaskCode.UNCOVER_FLOOD,), TODAY))
    assert h.SNAKES_AND_WATER not in {say.message for say in says}
