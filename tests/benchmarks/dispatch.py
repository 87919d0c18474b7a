"""A thousand waiting texts handed to an operator: one that accepts at once, one that takes
lists, one that takes 20 ms a text.

Floor: the driver alone claims them in the same batches and records the batches.
"""

from collections.abc import Iterator, Sequence
from concurrent.futures import ThreadPoolExecutor
from datetime import timedelta
from time import sleep
from typing import Any

from assistant.channel import Fate, Handover, Outgoing
from assistant.service.dispatch import dispatch
from assistant.settings import Settings
from assistant.store import Store
from tests.benchmarks.crowd import MORNING, NOON, a_text, house_at, phone
from tests.benchmarks.databases import Bare, Kind
from tests.benchmarks.harness import Result, Side, compare
from tests.benchmarks.size import sized

HANDS, TAKES_S = 32, 0.02
TEXTS = sized(1_000, small=20)
SETTINGS = Settings()
BATCH, LEASE = SETTINGS.send_batch, timedelta(seconds=SETTINGS.lease_s)
CLAIM = (
    "UPDATE outbox SET state = 'claimed', lease_until = ? WHERE id IN (SELECT id FROM outbox "
    "WHERE state = 'waiting' AND due_at <= ? ORDER BY urgent DESC, due_at, id LIMIT ?) "
    "RETURNING id, message_id, phone, text"
)
LIST = 500
RECORD = (
    "UPDATE outbox SET state = 'accepted', accepted_at = ?, lease_until = NULL WHERE id = ?"
)
UNDO = "UPDATE outbox SET state = 'waiting', accepted_at = NULL, lease_until = NULL"


class Accepts:
    """A gateway that takes everything, and counts it."""

    taken = 0

    def send(self, outgoing: Outgoing, now: object) -> Handover:
        """The hand-over of one text."""
        self.taken += 1
        return Handover(Fate.ACCEPTED)

    def time(self) -> None:
        """It tells none."""


class AcceptsLists(Accepts):
    """The same, many at once."""

    at_once = LIST

    def in_lists(self, text: Outgoing, now: object) -> bool:
        """Any."""
        return True

    def send_all(self, texts: Sequence[Outgoing], now: object) -> list[Handover]:
        """The hand-over of all of them."""
        return [self.send(each, now) for each in texts]


class Takes(Accepts):
    """A gateway that takes its time over each text."""

    def send(self, outgoing: Outgoing, now: object) -> Handover:
        """The hand-over of one text, as over a line."""
        sleep(TAKES_S)
        return super().send(outgoing, now)


def run(runs: int, kinds: tuple[Kind, ...]) -> Iterator[Result]:
    """Claim, hand over and record, until nothing waits: one by one, in lists, and by several
    hands to an operator who takes 20 ms a text."""
    for kind in kinds:
        with kind.fresh() as url:
            yield _all(f"dispatch: a text, {kind.name}", url, runs, Accepts, BATCH)
        with kind.fresh() as url:
            yield _all(
                f"dispatch: a text of a list, {kind.name}", url, runs, AcceptsLists, LIST
            )
        with kind.fresh() as url:
            yield _slow(f"dispatch: {HANDS} hands, 20 ms a text, {kind.name}", url, runs)


def _slow(what: str, url: str, runs: int) -> Result:
    """Floor: the same pauses in as many threads, and nothing else."""
    store = _filled(url)
    house = house_at(store)
    with ThreadPoolExecutor(HANDS) as pool, Bare(url) as bare:

        def ours() -> None:
            gateway = Takes()
            way: dict[str, Any] = {"hands": HANDS, "carry": pool.map}
            while dispatch(house, gateway, NOON, limit=LIST, lease=LEASE, **way):
                pass
            assert gateway.taken == TEXTS

        def undo() -> None:
            with bare.work():
                bare.execute(UNDO)

        floor = Side("the pauses alone", lambda: list(pool.map(sleep, [TAKES_S] * TEXTS)), undo)
        found = compare(what, TEXTS, "texts", Side(what, ours, undo), floor, runs=runs)
    store.close()
    return found


def _filled(url: str) -> Store:
    store = Store(url)
    with store.work() as work:
        work.outbox.add_all(a_text(phone(number), MORNING) for number in range(1, TEXTS + 1))
    return store


def _all(what: str, url: str, runs: int, kind: type[Accepts], limit: int) -> Result:
    store = _filled(url)
    house = house_at(store)

    def ours() -> None:
        gateway = kind()
        while dispatch(house, gateway, NOON, limit=limit, lease=LEASE):
            pass
        assert gateway.taken == TEXTS

    with Bare(url) as bare:

        def undo() -> None:
            with bare.work():
                bare.execute(UNDO)

        floor = Side("the driver alone, a batch at a time", lambda: _bare(bare, limit), undo)
        found = compare(what, TEXTS, "texts", Side(what, ours, undo), floor, runs=runs)
    store.close()
    return found


def _bare(bare: Bare, limit: int) -> None:
    now, until = bare.moment(NOON), bare.moment(NOON + LEASE)
    while True:
        with bare.work():
            claimed = bare.rows(CLAIM, (until, now, limit))
        if not claimed:
            return
        with bare.work():
            bare.many(RECORD, [(now, row[0]) for row in claimed])
