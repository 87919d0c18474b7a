"""The programme on one page, for a lead: what a first day needs, how the line stands, what is
set, and what the machine's settings say."""

from dataclasses import dataclass
from datetime import datetime
from decimal import Decimal
from zoneinfo import ZoneInfo

from assistant.service.copies import CopyState, copy_state
from assistant.service.house import House
from assistant.service.pulse import Pulse, pulse
from assistant.service.sight import Sight


@dataclass(frozen=True)
class FirstDayStep:
    """One step of a first day: its name in the words of the page, and how far it is."""

    key: str
    done: bool
    count: int = 0
    of: int = 0


@dataclass(frozen=True)
class ProgrammePage:
    """The page; times are local to the programme."""

    steps: tuple[FirstDayStep, ...]
    pulse: Pulse
    took_at: datetime | None
    receipt_at: datetime | None
    waiting: int
    price: Decimal | None
    currency: str
    zone: str
    prompt: datetime
    copies: CopyState

    @property
    def ready(self) -> bool:
        """Whether nothing of a first day is left to do."""
        return all(step.done for step in self.steps)


def programme_page(house: House, sight: Sight, now: datetime) -> ProgrammePage | None:
    """The page; None for anybody but a lead."""
    if not sight.officer.is_lead:
        return None
    found = pulse(house, now)
    zone = ZoneInfo(house.zone)
    with house.store.look() as work:
        receipt = work.running.last_receipt()
        waiting = work.running.waiting(now)
        officers = work.people.officers()
        farmers = work.roll.count(None)
        copies = _here(copy_state(work), zone)
        served = {each for one in officers for each in one.village_ids}
    villages = sight.villages
    took = found.line.took_at
    unserved = sum(each.id not in served for each in villages)
    placed = sum(each.latitude is not None for each in villages)
    near = sum(bool(house.phonebook.of(each).emergency) for each in villages)
    everywhere = len(villages)
    return ProgrammePage(
        steps=(
            FirstDayStep("villages", bool(villages), everywhere),
            FirstDayStep(
                "officers", bool(villages) and not unserved, everywhere - unserved, everywhere
            ),
            FirstDayStep("places", placed == everywhere > 0, placed, everywhere),
            FirstDayStep("numbers", near == everywhere > 0, near, everywhere),
            FirstDayStep("price", house.tariff is not None),
            FirstDayStep("line", receipt is not None),
            FirstDayStep("farmers", farmers > 0, farmers),
        ),
        pulse=found,
        took_at=took.astimezone(zone) if took else None,
        receipt_at=receipt.astimezone(zone) if receipt else None,
        waiting=waiting,
        price=house.tariff.per_segment if house.tariff else None,
        currency=house.tariff.currency if house.tariff else "",
        zone=house.zone,
        prompt=datetime.combine(now.astimezone(zone), house.hours.prompt),
        copies=copies,
    )


def _here(found: CopyState, zone: ZoneInfo) -> CopyState:
    """With times of the programme."""
    return CopyState(*(at.astimezone(zone) if at else None for at in vars(found).values()))
