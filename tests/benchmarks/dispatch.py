"""A thousand waiting texts handed to an operator that accepts at once.

Floor: the driver alone claims them in the same batches and records the batches.
"""

from collections.abc import Iterator
from datetime import timedelta

from assistant.channel import Fate, Handover, Outgoing
from assistant.service.dispatch import dispatch
from assistant.settings import Settings
from assistant.store import Store
from tests.benchmarks.crowd import MORNING, NOON, a_text, house_at, phone
from tests.benchmarks.databases import Bare, Kind
from tests.benchmarks.harness import Result, Side, compare
from tests.benchmarks.size import sized

TEXTS = sized(1_000, small=20)
SETTINGS = Settings()
BATCH, LEASE = SETTINGS.send_batch, timedelta(seconds=SETTINGS.lease_s)
CLAIM = (
    "UPDATE outbox SET state = 'claimed', lease_until = ? WHERE id IN (SELECT id FROM outbox "
    "WHERE state = 'waiting' AND due_at <= ? ORDER BY urgent DESC, due_at, id LIMIT ?) "
    "RETURNING id, message_id, phone, text"
)
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


def run(runs: int, kinds: tuple[Kind, ...]) -> Iterator[Result]:
    """Claim, hand over and record, until nothing waits."""
    for kind in kinds:
        with kind.fresh() as url:
            yield _all(f"dispatch: a text, {kind.name}", url, runs)


def _all(what: str, url: str, runs: int) -> Result:
    store = Store(url)
    with store.work() as work:
        work.outbox.add_all(a_text(phone(number), MORNING) for number in range(1, TEXTS + 1))
    house = house_at(store)

    def ours() -> None:
        gateway = Accepts()
        while dispatch(house, gateway, NOON, limit=BATCH, lease=LEASE):
            pass
        assert gateway.taken == TEXTS

    with Bare(url) as bare:

        def undo() -> None:
            with bare.work():
                bare.execute(UNDO)

        floor = Side("the driver alone, a batch at a time", lambda: _bare(bare), undo)
        found = compare(what, TEXTS, "texts", Side(what, ours, undo), floor, runs=runs)
    store.close()
    return found


def _bare(bare: Bare) -> None:
    now, until = bare.moment(NOON), bare.moment(NOON + LEASE)
    while True:
        with bare.work():
            claimed = bare.rows(CLAIM, (until, now, BATCH))
        if not claimed:
            return
        with bare.work():
            bare.many(RECORD, [(now, row[0]) for row in claimed])
