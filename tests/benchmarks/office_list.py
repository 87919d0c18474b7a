"""Taking in an office's list of five thousand farmers, each with a nursery, and the list of the
next season, when all of them have agreed and 220,000 reminders are planned at once.

The floor is reading the same file with the csv module: what any import costs.
"""

import csv
import io
from collections.abc import Iterator
from dataclasses import replace
from datetime import UTC, datetime

from assistant.service.consent import Enroller
from assistant.service.lists.listing import guessed, outlook, read_paper, take_list
from assistant.service.sight import sight_of
from assistant.store import Store
from tests.benchmarks.crowd import FARMERS, ZONE, house_at, phone
from tests.benchmarks.databases import Kind
from tests.benchmarks.harness import Result, Side, compare

NOW = datetime(2026, 6, 1, 8, tzinfo=UTC)
NEXT_SEASON = datetime(2026, 11, 20, 8, tzinfo=UTC)
VILLAGES = 25
LEAD = "+999009999998"


def a_list(farmers: int = FARMERS) -> bytes:
    """Phone, name, village, field, day and germination of invented farmers."""
    rows = ["Phone;Name;Village;Field (ha);Sowing;Germination"]
    rows += [
        f"{phone(number)};Farmer {_letters(number)};Kijiji {number % VILLAGES};"
        f"{0.1 + number % 40 / 20:.2f};2026-06-{10 + number % 20};{80 + number % 20}%"
        for number in range(farmers)
    ]
    return "\n".join(rows).encode()


def _letters(number: int) -> str:
    return "".join(chr(97 + number // 26**place % 26) for place in range(3))


def run(runs: int, kinds: tuple[Kind, ...]) -> Iterator[Result]:
    """Held against an empty roll, taken in, and held against the full one."""
    content = a_list()
    floor = Side("csv.reader over the file", lambda: _floor(content))
    for kind in kinds:
        with kind.fresh() as url:
            store = Store(url)
            yield from _stages(store, content, floor, kind.name)
            store.close()


def _floor(content: bytes) -> None:
    for _ in csv.reader(io.StringIO(content.decode()), delimiter=";"):
        pass


def _stages(store: Store, content: bytes, floor: Side, kind: str) -> Iterator[Result]:
    house = house_at(store)
    with store.work() as work:
        for number in range(VILLAGES):
            work.people.add_village(f"Kijiji {number}", ZONE)
        lead = work.people.add_officer(LEAD, "Neema", "no code", "en", (), is_lead=True)
        sight = sight_of(work, lead)
    who = Enroller(lead.id, lead.name)
    paper = read_paper(content)
    choices = guessed(house, sight, paper)

    def look() -> None:
        with store.look() as work:
            outlook(work, house, sight, paper, choices, NOW)

    def take() -> None:
        take_list(house, sight, who, paper, choices, "list", NOW)

    steps = (("dry run, all new", look), ("taken in", take), ("dry run, all known", look))
    for what, step in steps:
        yield compare(
            f"list of {FARMERS:,}: {what}, {kind}", FARMERS, "row", step, floor, runs=1
        )
    _all_agree(store)
    later, then = read_paper(content.replace(b";2026-06-", b";2026-12-")), NEXT_SEASON

    def again() -> None:
        take_list(house, sight, who, later, guessed(house, sight, later), "list", then)

    what = f"list of {FARMERS:,}: the next season, days planned at once, {kind}"
    yield compare(what, FARMERS, "row", again, floor, runs=1)


def _all_agree(store: Store) -> None:
    """Everybody said yes, and their season is over."""
    with store.work() as work:
        agreed = {"consent_at": NOW}
        farmers = {phone(number) for number in range(FARMERS)}
        listed = work.enrolments.listed(farmers).values()
        work.enrolments.mend_farmers({each.farmer.id: agreed for each in listed})
        for beds in work.enrolments.beds_of({each.farmer.id for each in listed}).values():
            for bed in beds:
                work.nurseries.save(replace(bed, closed=True), NOW)
