"""Times a piece of work against a floor: the least that any program must do for the same end.

Both are run in turn, several times, in one process; the medians are compared. The ratio says
more than the seconds, which depend on the machine.
"""

import gc
from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from statistics import median
from time import perf_counter, process_time

Thunk = Callable[[], object]
FEWEST, ENOUGH_S = 3, 5.0  # after so many runs and seconds no more are needed


@dataclass(frozen=True)
class Side:
    """One piece of work. `prepare` makes ready what a run uses up; it is not timed."""

    name: str
    run: Thunk
    prepare: Thunk = lambda: None

    def seconds(self) -> float:
        """How long one run takes [s]."""
        return self.took()[0]

    def took(self) -> tuple[float, float]:
        """How long one run takes by the clock, and of our process's time [s]."""
        self.prepare()
        with _no_collector():
            begun, at_work = perf_counter(), process_time()
            self.run()
            return perf_counter() - begun, process_time() - at_work


@dataclass(frozen=True)
class Result:
    """What was measured: `seconds` for `count` things done, and the floor's for as many.

    A floor of None: there is no smaller program to compare with, or the figure is a plain one.
    `busy` is our process's own time [s], which a loaded machine changes little.
    """

    what: str
    count: int
    unit: str
    seconds: float
    floor: str | None = None
    floor_seconds: float | None = None
    busy: float | None = None

    @property
    def rate(self) -> float:
        """Things done in a second."""
        return self.count / self.seconds

    @property
    def ratio(self) -> float | None:
        """How many times the floor it takes."""
        return self.seconds / self.floor_seconds if self.floor_seconds else None


def compare(
    what: str, count: int, unit: str, ours: Thunk | Side, floor: Side | None, *, runs: int
) -> Result:
    """Runs ours and the floor in turn and takes the medians; what is slow runs less often."""
    side = ours if isinstance(ours, Side) else Side(what, ours)
    took: list[float] = []
    busy: list[float] = []
    least: list[float] = []
    while len(took) < runs and (len(took) < FEWEST or sum(took) < ENOUGH_S):
        if floor is not None:
            least.append(floor.seconds())
        by_clock, at_work = side.took()
        took.append(by_clock)
        busy.append(at_work)
    name = floor.name if floor is not None else None
    lowest = median(least) if least else None
    return Result(what, count, unit, median(took), name, lowest, median(busy))


@contextmanager
def _no_collector() -> Iterator[None]:
    """Garbage of what was timed before is not collected while the next is timed."""
    gc.collect()
    gc.disable()
    try:
        yield
    finally:
        gc.enable()


def table(rows: Iterable[tuple[str, ...]], head: tuple[str, ...]) -> str:
    """Rows in columns; all but the first to the right where they hold figures."""
    lines = [head, *rows]
    widths = [max(len(line[at]) for line in lines) for at in range(len(head))]
    return "\n".join(
        "  ".join(_cell(cell, width) for cell, width in zip(line, widths, strict=True)).rstrip()
        for line in lines
    )


def _cell(text: str, width: int) -> str:
    return text.rjust(width) if text[:1].isdigit() else text.ljust(width)


def shown(result: Result) -> tuple[str, ...]:
    """A result as a row of the table."""
    ratio = f"{result.ratio:,.1f}" if result.ratio else "-"
    return (
        result.what,
        f"{result.count:,} {result.unit}",
        _duration(result.seconds),
        f"{result.rate:,.0f}/s" if result.count > 1 else "-",
        _duration(result.busy / result.count) if result.busy else "-",
        _duration(result.floor_seconds) if result.floor_seconds else "-",
        ratio,
        result.floor or "-",
    )


HEAD = ("what", "how many", "median", "rate", "our CPU each", "floor", "ratio", "the floor is")


def _duration(seconds: float) -> str:
    if seconds >= 1:
        return f"{seconds:.2f} s"
    return f"{seconds * 1e3:.2f} ms" if seconds >= 1e-3 else f"{seconds * 1e6:.1f} us"
