"""Turns of the talk, whole: from a message of the gateway to its answer in the outbox.

Floor: the driver alone puts the same new rows into the same tables, in as many transactions.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from datetime import timedelta
from functools import partial
from itertools import count

from assistant.channel import Channel, Incoming, Step
from assistant.service.enrol import add_village
from assistant.service.house import House
from assistant.service.receive import receive
from assistant.service.tick import tick
from assistant.store import Store
from assistant.store.tables import Base
from tests.benchmarks.crowd import MORNING, NOON, ZONE, Crowd, house_at, phone
from tests.benchmarks.databases import Bare, Kind, Row
from tests.benchmarks.harness import Result, Side, Thunk, compare
from tests.benchmarks.size import sized

PHONES = sized(20, small=2)
# What a farmer texts, or keys in, from the first word to the plan.
SIGN_UP = ("hello", "1", "1", "1", "4000 m2", "85", "10", "20/6", "1")
STAYS = ("village", "officer", "officer_village")
TALKED = ("incoming", "talk", "ussd_talk", "outbox", "reminder")


class Talks:
    """Phones that talk to a house, by SMS or by USSD."""

    def __init__(self, house: House) -> None:
        self._house, self._ids = house, count(1)

    def by_sms(self, number: str, words: Sequence[str]) -> None:
        """One text after the other."""
        for text in words:
            self._say(Incoming(self._id(), number, text, Channel.SMS, NOON))

    def by_ussd(self, number: str, words: Sequence[str]) -> None:
        """A session: dialled, then one key or answer after the other."""
        session = self._id()
        for text in ("", *words):
            step = Step.ANSWER if text else Step.BEGIN
            self._say(Incoming(self._id(), number, text, Channel.USSD, NOON, step, session))

    def _say(self, incoming: Incoming) -> None:
        receive(self._house, incoming, NOON)

    def _id(self) -> str:
        return f"in-{next(self._ids)}"


@dataclass
class Replay:
    """The floor: the new rows of a run of ours, put in again by the driver.

    people: tables whose rows those refer to; they are put back before the floor is timed
    The turns of a run share its new rows out evenly.
    """

    bare: Bare
    turns: int
    people: Sequence[str] = ("farmer", "nursery")
    _kept: dict[str, list[Row]] = field(default_factory=dict)

    def learn(self, tables: Mapping[str, str]) -> None:
        """Keeps the rows of these tables that meet their conditions, and the people."""
        for name, condition in {**dict.fromkeys(self.people, ""), **tables}.items():
            found = self.bare.rows(f"SELECT * FROM {name} {condition}")
            self._kept[name] = [tuple(map(self.bare.json, row)) for row in found]

    def restore(self) -> None:
        """The people alone."""
        with self.bare.work():
            empty(self.bare)
            for name in self.people:
                self._put(name, self._kept[name])

    def run(self) -> None:
        """All turns."""
        new = {name: rows for name, rows in self._kept.items() if name not in self.people}
        for turn in range(self.turns):
            with self.bare.work():
                for name, rows in new.items():
                    first, last = (len(rows) * at // self.turns for at in (turn, turn + 1))
                    self._put(name, rows[first:last])

    def _put(self, name: str, rows: list[Row]) -> None:
        if rows:
            marks = ", ".join("?" * len(rows[0]))
            self.bare.many(f"INSERT INTO {name} VALUES ({marks})", rows)


def empty(bare: Bare) -> None:
    """Forgets all talks and people, within a transaction; the house stays."""
    for table in reversed(Base.metadata.sorted_tables):
        if table.name not in STAYS:
            bare.execute(f"DELETE FROM {table.name}")


def run(runs: int, kinds: tuple[Kind, ...]) -> Iterator[Result]:
    """Sign-up and plan by SMS and by USSD; the answer to a prompt."""
    for kind in kinds:
        with kind.fresh() as url:
            yield from _signing_up(runs, kind, url)
        with kind.fresh() as url:
            yield _answering(runs, kind, url)


def _signing_up(runs: int, kind: Kind, url: str) -> Iterator[Result]:
    store = Store(url)
    house = house_at(store)
    add_village(house, "Kijiji", ZONE)
    talks = Talks(house)
    numbers = [phone(number) for number in range(1, PHONES + 1)]
    with Bare(url) as bare:
        for what, talk, words in (
            ("a text of sign-up and plan", talks.by_sms, SIGN_UP),
            ("a screen of sign-up and plan", talks.by_ussd, SIGN_UP[1:]),
        ):

            def prepare() -> None:
                with bare.work():
                    empty(bare)

            ours = Side(
                f"receive: {what}, {kind.name}",
                partial(_everyone, talk, numbers, words),
                prepare,
            )
            new = dict.fromkeys(TALKED, "")
            yield _compared(ours, PHONES * len(SIGN_UP), bare, new, runs)
    store.close()


def _everyone(talk: object, numbers: Sequence[str], words: Sequence[str]) -> None:
    assert callable(talk)
    for number in numbers:
        talk(number, words)


def _answering(runs: int, kind: Kind, url: str) -> Result:
    """A hundred beds on day 5; everybody says that theirs is uncovered."""
    farmers = PHONES * 5
    Crowd(days=(5,), farmers=farmers).settle(url)
    store = Store(url)
    house = house_at(store)
    with Bare(url) as bare:
        numbers = [phone(number) for number in range(1, farmers + 1)]
        ours = Side(
            f"receive: the answer to a prompt, {kind.name}",
            partial(_everyone, Talks(house).by_sms, numbers, ["1"]),
            _prompted(house, bare, url),
        )
        at = bare.literal(NOON)
        new = {"incoming": "", "talk": "", "outbox": f"WHERE created_at = {at}"}
        found = _compared(ours, farmers, bare, new, runs)
    store.close()
    return found


def _prompted(house: House, bare: Bare, url: str) -> Thunk:
    """The morning's texts went out and were delivered."""
    kept = Replay(bare, 1, ("farmer", "nursery", "outbox", "reminder"))
    kept.learn({})

    def prepare() -> None:
        kept.restore()
        tick(house, MORNING)
        at = bare.moment(MORNING + timedelta(seconds=5))
        with bare.work():
            bare.rows(
                "UPDATE outbox SET state = 'delivered', accepted_at = ?, delivered_at = ? "
                "RETURNING id",
                (at, at),
            )

    return prepare


def _compared(ours: Side, turns: int, bare: Bare, new: Mapping[str, str], runs: int) -> Result:
    ours.prepare()
    ours.run()
    replay = Replay(bare, turns)
    replay.learn(new)
    floor = Side("the driver alone, same new rows", replay.run, replay.restore)
    return compare(ours.name, turns, "turns", ours, floor, runs=runs)
