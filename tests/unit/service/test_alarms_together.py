"""Several workers at once tell nobody twice, on either database."""

from concurrent.futures import ThreadPoolExecutor
from datetime import timedelta
from threading import Barrier

from assistant.dialogue.values import Kind, RaiseAlarm
from assistant.service.alarms.raising import raise_alarm
from assistant.service.tick import tick
from assistant.store import Store
from tests.valley import AMINA, LEAD, NAIROBI, OFFICER, at, house_of

WORKERS = 4


def test_workers_that_look_at_the_same_moment_make_one_step(store: Store) -> None:
    """Each of them finds the alarm due; one tells the next person."""
    house, now = house_of(store), at("1 Jun 23:30")
    with store.work() as work:
        village = work.people.add_village("Kijani", NAIROBI)
        for number in range(3):
            phone = f"{OFFICER[:-1]}{number + 4}"
            work.people.add_officer(phone, "Asha", "hash", "en", [village.id])
        work.people.add_officer(LEAD, "Lea", "hash", "en", [], is_lead=True)
        raise_alarm(work, house, AMINA, RaiseAlarm("poison", "help", sure=False), now)
    with store.look() as work:
        assert work.alarms.told([1]) == ()
    together = Barrier(WORKERS)

    def look(_: int) -> None:
        together.wait()
        tick(house, now + timedelta(minutes=10))

    with ThreadPoolExecutor(WORKERS) as workers:
        list(workers.map(look, range(WORKERS)))
    with store.look() as work:
        told = work.alarms.told([1])
        notices = [each for each in work.outbox.of_phone(LEAD) if each.kind is Kind.NOTICE]
    assert len(told) == 1 and len(notices) == 1  # a stranger's cry goes to the lead
