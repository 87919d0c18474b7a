"""A morning with many phones: what waits leaves meanwhile, and the night is left in peace."""

from datetime import datetime

from assistant.channel import Fate, Handover, Outgoing
from assistant.people import Village
from assistant.service.tick import ticking
from assistant.worker import Worker
from tests.valley import AMINA, BARAKA, Valley, at


class Watching:
    """A gateway that takes all, and notes who had a text in the outbox at each hand-over."""

    def __init__(self, valley: Valley) -> None:
        self._valley = valley
        self.seen: list[tuple[str, bool]] = []

    def send(self, outgoing: Outgoing, now: datetime) -> Handover:
        with self._valley.house.store.work() as work:
            waits = any(each.created_at == now for each in work.outbox.of_phone(BARAKA))
        self.seen.append((outgoing.phone, waits))
        return Handover(Fate.ACCEPTED)

    def time(self) -> None:
        """It tells none."""


def test_texts_leave_while_others_are_still_being_written(
    valley: Valley, kijani: Village
) -> None:
    """With a batch of one, Amina's has gone before Baraka's is there."""
    for phone in (AMINA, BARAKA):
        valley.enrol(phone)
        valley.plan(phone, "10 June")
    valley.go("9 Jun 20:30")
    six = at("10 Jun 06:00")
    gateway = Watching(valley)
    worker = Worker(
        valley.house, gateway, pause_s=1, batch=1, lease_s=60, clock=lambda: six, at_once=1
    )
    worker.round()
    assert gateway.seen == [(AMINA, False), (BARAKA, True)]


def test_by_night_nobody_is_looked_at_though_something_is_due(
    valley: Valley, kijani: Village
) -> None:
    """The worker stood still all day; each second of the night would try each phone."""
    for phone in (AMINA, BARAKA):
        valley.enrol(phone)
        valley.plan(phone, "10 June")
    looked_at = {
        when: sum(ticking(valley.house, at(when)))
        for when in ("10 Jun 21:00", "11 Jun 03:00", "11 Jun 06:00")
    }
    assert looked_at == {"10 Jun 21:00": 0, "11 Jun 03:00": 0, "11 Jun 06:00": 2}


def test_by_night_in_one_zone_it_is_morning_in_another(valley: Valley, kijani: Village) -> None:
    """A village further east has its own six o'clock."""
    valley.add_village("Bukit Hijau", "Asia/Jakarta")
    valley.enrol(AMINA, village=1)
    valley.plan(AMINA, "10 June")
    assert sum(ticking(valley.house, at("10 Jun 02:01"))) == 1
