"""A morning of many texts over a line of 50 a second, with a warning in the midst of it: how
long it lasts, whether the rate is kept, who comes first. On a clock of its own, with SQLite.

What it must show is held by `tests/unit/service/test_line_morning.py` on a few hundred texts.
"""

from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta

from assistant.channel import Fate, Handover, Outgoing
from assistant.dialogue.values import Kind
from assistant.gateways.lines import Lines, Terms
from assistant.service.dispatch import dispatch
from assistant.service.house import House
from assistant.settings import Settings
from assistant.store import Lane, Store
from tests.benchmarks.crowd import MORNING, a_text, house_at, phone
from tests.benchmarks.databases import SQLITE
from tests.benchmarks.harness import table
from tests.benchmarks.size import sized

A_SECOND = 50.0
TEXTS, WARNED = sized(10_000, small=200), sized(300, small=20)


@dataclass
class Morning:
    """A line that keeps when it took what, and a clock that runs while it is waited for."""

    house: House
    texts: int
    warned: int
    warned_after_s: float
    seconds: float = 0.0
    took: list[tuple[float, Outgoing]] = field(default_factory=list)

    def send(self, outgoing: Outgoing, now: datetime) -> Handover:
        """Takes everything at once."""
        self.took.append((self.seconds, outgoing))
        return Handover(Fate.ACCEPTED)

    def time(self) -> datetime | None:
        """It tells none."""
        return None

    def play(self) -> None:
        """Until nothing waits. Texts are due one after another, by the phone's number."""
        numbers = range(1, self.texts + 1)
        self._put(a_text(phone(n), MORNING + timedelta(microseconds=n)) for n in numbers)
        line = Lines(
            {"north": self},
            (),
            {"north": Terms(a_second=A_SECOND)},
            wait=self._wait,
            seconds=lambda: self.seconds,
        )
        batch, lease = Settings().send_batch, timedelta(seconds=Settings().lease_s)
        warned = False
        while True:
            if not warned and self.seconds >= self.warned_after_s:
                self._warn()
                warned = True
            now = MORNING + timedelta(hours=1, seconds=self.seconds)
            if not dispatch(self.house, line, now, limit=batch, lease=lease) and warned:
                return

    def _wait(self, seconds: float) -> None:
        self.seconds += seconds

    def _put(self, texts: object) -> None:
        with self.house.store.work() as work:
            work.outbox.add_all(texts)  # type: ignore[arg-type]

    def _warn(self) -> None:
        now = MORNING + timedelta(hours=1, seconds=self.seconds)
        texts = (a_text(phone(n), now) for n in range(1, self.warned + 1))
        self._put(replace(each, kind=Kind.WARNING, lane=Lane.DANGER) for each in texts)

    # --- what it came to ---------------------------------------------------------------------

    def of(self, kind: Kind) -> list[tuple[float, Outgoing]]:
        """When which texts of a kind left."""
        return [each for each in self.took if each[1].kind == kind.value]

    def most_in_a_second(self) -> int:
        """The most that left within one second, wherever it begins."""
        times = [at for at, _ in self.took]
        first = most = 0
        for place, at in enumerate(times):
            while at - times[first] >= 1 - 1e-6:
                first += 1
            most = max(most, place - first + 1)
        return most

    def overtaken(self) -> int:
        """Daily texts that left before one that was due earlier."""
        phones = [each.phone for _, each in self.of(Kind.PROMPT)]
        wanted = [phone(n) for n in range(1, self.texts + 1)]
        return sum(a != b for a, b in zip(phones, wanted, strict=True))


def morning(texts: int, warned: int, warned_after_s: float) -> Morning:
    """A morning as it went."""
    with SQLITE.fresh() as url:
        store = Store(url)
        found = Morning(house_at(store), texts, warned, warned_after_s)
        found.play()
        store.close()
    return found


def run() -> str:
    """The table."""
    found = morning(TEXTS, WARNED, warned_after_s=60.0 if TEXTS > 5_000 else 1.0)
    warned = [at for at, _ in found.of(Kind.WARNING)]
    before = sum(at < warned[0] for at, _ in found.of(Kind.PROMPT))
    rows = [
        ("daily texts, warnings", f"{TEXTS:,}, {WARNED:,}"),
        ("the whole lasted", f"{found.seconds:,.1f} s"),
        ("most in a second", f"{found.most_in_a_second()}"),
        ("daily texts before one due earlier", f"{found.overtaken()}"),
        ("daily texts gone when the warning began to leave", f"{before:,}"),
        ("first warning left, after it was sent", f"{warned[0] - found.warned_after_s:.1f} s"),
        ("last warning left, after it was sent", f"{warned[-1] - found.warned_after_s:.1f} s"),
    ]
    return f"A morning over a line of {A_SECOND:g} a second\n{table(rows, ('what', 'came to'))}"
