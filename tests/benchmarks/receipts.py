"""What became of a thousand texts, told by the operator in lists.

Floor: the driver alone reads the same rows and writes what the receipts say of them, a list a
transaction. Before that, the same one by one, against the driver alone one by one.
"""

from collections.abc import Iterator, Sequence
from datetime import timedelta

from assistant.channel import Fate, Receipt
from assistant.service.dispatch import take_receipt, take_receipts
from assistant.store import Store, TextState
from tests.benchmarks.crowd import NOON, a_text, house_at, phone
from tests.benchmarks.databases import Bare, Kind
from tests.benchmarks.harness import Result, Side, compare
from tests.benchmarks.size import sized

TEXTS = sized(1_000, small=20)
LIST = 100
LATER = NOON + timedelta(minutes=1)
UNDO = "UPDATE outbox SET state = 'accepted', delivered_at = NULL"
READ = "SELECT * FROM outbox WHERE message_id IN ({})"
TELL = "UPDATE outbox SET state = 'delivered', delivered_at = ? WHERE id = ?"


def batched(receipts: Sequence[Receipt], size: int) -> Iterator[Sequence[Receipt]]:
    """In lists of so many."""
    return (receipts[start : start + size] for start in range(0, len(receipts), size))


def run(runs: int, kinds: tuple[Kind, ...]) -> Iterator[Result]:
    """In lists, and one by one."""
    for kind in kinds:
        with kind.fresh() as url:
            yield from _both(kind.name, url, runs)


def _both(name: str, url: str, runs: int) -> Iterator[Result]:
    store = Store(url)
    given = {"state": TextState.ACCEPTED, "accepted_at": NOON}
    texts = [a_text(phone(number), NOON, **given) for number in range(1, TEXTS + 1)]
    with store.work() as work:
        work.outbox.add_all(texts)
    house = house_at(store)
    receipts = [Receipt(text.message_id, Fate.DELIVERED, LATER) for text in texts]
    with Bare(url) as bare:

        def undo() -> None:
            with bare.work():
                bare.execute(UNDO)

        def together() -> None:
            for some in batched(receipts, LIST):
                assert take_receipts(house, some, LATER) == len(some)

        def alone() -> None:
            for each in receipts:
                assert take_receipt(house, each, LATER)

        for how, ours, size in (("in a list", together, LIST), ("by itself", alone, 1)):
            what = f"receipts: one {how}, {name}"
            floor = Side(
                "the driver alone, as many at once", _floor(bare, receipts, size), undo
            )
            yield compare(what, TEXTS, "receipts", Side(what, ours, undo), floor, runs=runs)
    store.close()


def _floor(bare: Bare, receipts: Sequence[Receipt], size: int) -> "Floor":
    return Floor(bare, [[each.message_id for each in some] for some in batched(receipts, size)])


class Floor:
    """The driver alone."""

    def __init__(self, bare: Bare, lists: Sequence[Sequence[str]]) -> None:
        self._bare, self._lists = bare, lists

    def __call__(self) -> None:
        at = self._bare.moment(LATER)
        for some in self._lists:
            with self._bare.work():
                found = self._bare.rows(READ.format(", ".join("?" * len(some))), some)
                self._bare.many(TELL, [(at, row[0]) for row in found])
