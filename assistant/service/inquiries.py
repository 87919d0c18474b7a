"""How often each question is asked, counted by month and village; never who asked it."""

from collections.abc import Sequence
from datetime import datetime

from assistant.dialogue.values import Inquiry
from assistant.people import Farmer
from assistant.service.days import local_date
from assistant.service.house import House
from assistant.store import Work


def count_inquiries(
    work: Work, house: House, asked: Sequence[Inquiry], farmer: Farmer | None, now: datetime
) -> None:
    """Counts the questions of one text, in the month of the programme."""
    if not asked:
        return
    month = local_date(now, house.zone).replace(day=1)
    work.questions.count(
        month,
        farmer.village_id if farmer else None,
        {each.code for each in asked if not each.offered},
        {each.code for each in asked if each.offered},
    )
