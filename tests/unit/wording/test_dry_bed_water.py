"""Water of a dry bed: what it loses, and when that is no work for pails."""

from datetime import timedelta

import pytest

from assistant.agronomy.field import FieldInputs
from assistant.agronomy.mat import watering_l
from assistant.agronomy.practices import MAT
from assistant.agronomy.tasks import TaskCode
from assistant.wiring.practices import open_practices
from assistant.wording import messages_practice as p
from assistant.wording.day import DayWork, work_says
from assistant.wording.message import Message
from tests.talk import TODAY, nursery

DRY = open_practices()["dry_bed"]


def test_a_bed_watered_each_second_day_gets_what_two_days_take() -> None:
    """5 to 7 mm a day (FAO, Irrigation and Drainage Paper 56, from memory) are 10 to 14 L on
    each square metre in two days; a covered mat gets a little twice a day."""
    assert 10 <= watering_l(1.0, DRY) <= 14
    assert watering_l(1.0, MAT) == pytest.approx(3.0)


@pytest.mark.parametrize(
    ("field_m2", "message"), [(500, p.P_WATER_DRY), (4000, p.P_WATER_MUCH)]
)
def test_a_large_dry_bed_is_no_work_for_pails(field_m2: float, message: Message) -> None:
    """50 m2 take 600 L, 60 pails; 400 m2 take 4,800 L, and nobody carries that."""
    bed = nursery(
        sow=TODAY - timedelta(days=2),
        practice=DRY,
        inputs=FieldInputs(field_area_m2=field_m2, germination=0.85),
    )
    _, water = work_says(DayWork(bed, (TaskCode.WATER,), TODAY))
    assert water.message is message
