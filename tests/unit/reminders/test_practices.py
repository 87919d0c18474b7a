"""Reminders follow the days of a practice."""

from datetime import date, timedelta

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.field import FieldInputs
from assistant.agronomy.nursery import Nursery
from assistant.reminders.plan import Hours, planned
from assistant.wiring.practices import open_practices

SOW = date(2026, 6, 10)


def test_a_bed_watered_every_second_day_is_prompted_every_second_day() -> None:
    """ICAR, dry nursery: once in 2 or 3 days; from sowing until the day before planting."""
    nursery = Nursery(
        id=1,
        farmer_id=1,
        label="A",
        name=None,
        inputs=FieldInputs(4000, 0.85),
        area_typed="0.4 ha",
        germination_known=True,
        sow_date=SOW,
        made_on=SOW,
        practice=open_practices()["dry_bed"],
    )
    days = [
        reminder.day
        for reminder in planned(nursery, "Africa/Nairobi", Hours(), SOW)
        if reminder.task is TaskCode.WATER
    ]
    assert days == [SOW + timedelta(days=n) for n in range(0, 22, 2)]
