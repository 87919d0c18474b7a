"""A rain warning for five thousand phones: queued, and the first text on its way.

Floor: the driver alone finds the beds in danger and writes the same texts and the same list of
who was asked, in one transaction.
"""

from collections.abc import Iterator
from datetime import timedelta

from assistant.dialogue.values import GiveAllClear, IssueWarning
from assistant.service.dispatch import dispatch
from assistant.service.house import House
from assistant.service.sight import sight_of
from assistant.service.storms.danger import reach
from assistant.service.storms.drafts import draft, issue_warning
from assistant.service.storms.rain_drafts import draft_page
from assistant.service.storms.storm import storm
from assistant.service.storms.warnings import give_all_clear
from assistant.store import Draft, Store
from tests.benchmarks.crowd import FARMERS, NOON, OFFICER, Crowd, house_at, undo_today
from tests.benchmarks.databases import Bare, Kind
from tests.benchmarks.dispatch import LEASE, Accepts
from tests.benchmarks.harness import Result, Side, compare

SPAN = IssueWarning(1, NOON + timedelta(hours=2), NOON + timedelta(hours=8))
IN_DANGER = (
    "SELECT f.phone, f.language, n.label FROM farmer f JOIN nursery n ON n.farmer_id = f.id "
    "WHERE f.village_id = 1 AND n.closed = ? AND f.stopped_at IS NULL AND n.sow_date >= ?"
)


def run(runs: int, kinds: tuple[Kind, ...]) -> Iterator[Result]:
    """One village, every bed on days 0 to 5."""
    for kind in kinds:
        with kind.fresh() as url:
            Crowd((0, 1, 2, 3, 4, 5, 0, 1, 2, 3), told_today=True).settle(url)
            store = Store(url)
            house = house_at(store)
            with Bare(url) as bare:
                yield from _warned(kind.name, url, house, bare, runs)
            store.close()


def _warned(name: str, url: str, house: House, bare: Bare, runs: int) -> Iterator[Result]:
    def issue() -> None:
        with house.store.work() as work:
            issue_warning(work, house, OFFICER, SPAN, NOON)

    def undo() -> None:
        undo_today(url)

    def issued() -> None:
        undo()
        issue()

    issued()
    floor = _floor(bare, url)
    counted = f"warning: its reach shown, {name}"
    yield compare(counted, FARMERS, "phones", lambda: _reach(house), None, runs=runs)
    queued = f"warning: queued, {name}"
    yield compare(queued, FARMERS, "phones", Side(queued, issue, undo), floor, runs=runs)
    yield from _looked_at(name, house, runs)
    first = f"warning: until the first text left, {name}"
    yield compare(first, 1, "text", Side(first, lambda: _first(house), issued), None, runs=runs)
    clear = f"warning: all-clear queued, {name}"
    yield compare(
        clear,
        FARMERS,
        "phones",
        Side(clear, lambda: _clear(house, bare), issued),
        None,
        runs=runs,
    )


def _looked_at(name: str, house: House, runs: int) -> Iterator[Result]:
    """What the pages gather: the reach of a draft with its cost, and who has answered."""
    with house.store.look() as work:
        officer = work.people.officer(OFFICER)
        assert officer is not None
        sight = sight_of(work, officer)
        (latest,) = work.drafts.given(sight.village_ids)[:1]
    span = (SPAN.starts_at, SPAN.ends_at)
    with house.store.work() as work:
        made = draft(work, Draft((1,), *span, created_at=NOON, made_by=officer.id))

    def reached() -> None:
        page = draft_page(house, sight, made.id, NOON)
        assert page is not None and page.phones == FARMERS

    def followed() -> None:
        page = storm(house, sight, latest.draft_id, NOON)
        assert page is not None and page.silent_in_all == FARMERS

    for what, side in (("reach and cost shown", reached), ("answers shown", followed)):
        yield compare(f"warning: {what}, {name}", FARMERS, "phones", side, None, runs=runs)


def _reach(house: House) -> None:
    with house.store.work() as work:
        village = work.people.village(1)
        assert village is not None
        assert reach(work, house, village, NOON).phones == FARMERS


def _first(house: House) -> None:
    """From the commit of the warning on: claim and hand over."""
    assert dispatch(house, Accepts(), NOON, limit=1, lease=LEASE) == 1


def _clear(house: House, bare: Bare) -> None:
    (latest,) = bare.rows("SELECT max(id) FROM warning")
    with house.store.work() as work:
        give_all_clear(work, house, GiveAllClear(latest[0]).warning_id, NOON)


def _floor(bare: Bare, url: str) -> Side:
    """What a warning wrote, written by the driver."""
    at = bare.moment(NOON)
    outbox = bare.rows("SELECT * FROM outbox WHERE created_at = ?", (at,))
    texts = [tuple(map(bare.json, row)) for row in outbox]
    asked = bare.rows("SELECT * FROM warning_phone")
    warning = bare.rows("SELECT * FROM warning")
    assert len(texts) == len(asked) == FARMERS

    def write() -> None:
        with bare.work():
            bare.rows(IN_DANGER, (False, "2026-06-10"))
            for table, rows in (
                ("warning", warning),
                ("warning_phone", asked),
                ("outbox", texts),
            ):
                marks = ", ".join("?" * len(rows[0]))
                bare.many(f"INSERT INTO {table} VALUES ({marks})", rows)

    return Side("the driver alone writes the same rows", write, lambda: undo_today(url))
