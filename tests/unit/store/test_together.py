"""Several processes and threads on one database: each row goes to one of them."""

import os
import subprocess
import sys
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from datetime import datetime, timedelta
from itertools import chain

import pytest

from assistant.reminders.values import Reminder
from assistant.store import OutboxText, Store

MakeText = Callable[..., OutboxText]
MakeReminder = Callable[..., Reminder]
Run = Callable[[str, str, int], list[str]]

_LEASE = timedelta(minutes=5)

_MIGRATE = """
import sys
from assistant.store import Store
store = Store(sys.argv[1])
print("ready", flush=True)
input()
store.migrate()
store.close()
"""
_CLAIM = """
import sys
from datetime import datetime, timedelta
from assistant.store import Store
store = Store(sys.argv[1])
claimed = True
print("ready", flush=True)
input()
while claimed:
    with store.work() as work:
        claimed = work.outbox.claim(
            datetime.fromisoformat(sys.argv[2]), 7, timedelta(minutes=5)
        )
    for text in claimed:
        print(text.message_id)
store.close()
"""


@pytest.fixture
def run(request: pytest.FixtureRequest, now: datetime) -> Run:
    """Runs a script on a database in several processes at once; what each printed."""
    root = str(request.config.rootpath)
    paths = os.pathsep.join(filter(None, [root, os.environ.get("PYTHONPATH")]))

    def runs(script: str, url: str, processes: int) -> list[str]:
        command = [sys.executable, "-W", "error", "-c", script, url, now.isoformat()]
        pipe, env = subprocess.PIPE, {**os.environ, "PYTHONPATH": paths}
        started = [
            subprocess.Popen(command, stdin=pipe, stdout=pipe, stderr=pipe, text=True, env=env)
            for _ in range(processes)
        ]
        for process in started:  # importing takes longer than what is tried here
            assert process.stdout and process.stdout.readline() == "ready\n"
        for process in started:
            assert process.stdin and process.stdin.write("go\n")
            process.stdin.flush()
        ended = [(*process.communicate(timeout=120), process.returncode) for process in started]
        assert [(error, code) for _, error, code in ended] == [("", 0)] * processes
        return [printed for printed, _, _ in ended]

    return runs


def test_processes_that_start_together_make_the_tables_once(run: Run, empty_url: str) -> None:
    """The web side and the worker both migrate."""
    run(_MIGRATE, empty_url, 2)
    store = Store(empty_url)
    with store.work() as work:
        work.people.add_village("Mto Mdogo", "Africa/Nairobi")
    store.close()


def test_processes_claim_each_text_once(
    run: Run, store: Store, database_url: str, make_text: MakeText
) -> None:
    """Nothing is sent twice and nothing is left."""
    names = [f"m{number:03}" for number in range(300)]
    with store.work() as work:
        for name in names:
            work.outbox.add(make_text(name))
    printed = run(_CLAIM, database_url, 3)
    assert sorted(chain.from_iterable(each.split() for each in printed)) == names


def test_threads_claim_each_text_once(store: Store, make_text: MakeText, now: datetime) -> None:
    """In pieces that do not divide the whole."""
    with store.work() as work:
        for number in range(100):
            work.outbox.add(make_text(f"m{number:03}"))

    def claim(_: int) -> tuple[OutboxText, ...]:
        with store.work() as work:
            return work.outbox.claim(now, 7, _LEASE)

    with ThreadPoolExecutor(4) as pool:
        claimed = [text.message_id for texts in pool.map(claim, range(20)) for text in texts]
    assert sorted(claimed) == [f"m{number:03}" for number in range(100)]


def test_a_claim_does_not_wait_for_rows_that_another_is_claiming(
    postgres_url: str, make_text: MakeText, now: datetime
) -> None:
    """SKIP LOCKED: dispatchers pass each other (SQLite has one writer at a time)."""
    store = Store(postgres_url)
    store.migrate()
    with store.work() as work:
        for name in ("a", "b", "c"):
            work.outbox.add(make_text(name))
    with store.work() as one, store.work() as two:
        first, second = one.outbox.claim(now, 2, _LEASE), two.outbox.claim(now, 2, _LEASE)
    store.close()
    assert [text.message_id for text in first] == ["a", "b"]
    assert [text.message_id for text in second] == ["c"]


def test_planning_at_once_from_several_threads_adds_each_reminder_once(
    store: Store, make_reminder: MakeReminder
) -> None:
    """Two workers plan the same nursery."""
    start = make_reminder().day
    days = [make_reminder(day=start + timedelta(days=number)) for number in range(25)]

    def plan(_: int) -> int:
        with store.work() as work:
            return work.reminders.plan(days)

    with ThreadPoolExecutor(4) as pool:
        assert sum(pool.map(plan, range(4))) == 25
