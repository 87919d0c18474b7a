"""Valleys as they stood after a way into them: the way is gone once, its database copied.

A room's conftest takes the fixtures it wants: `from tests.stages import staged, stages`. A
module's own fixture is a way with `@stage` above it.
"""

import shutil
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from assistant.store import Store
from tests.valley import Staged, Valley, Way, at, house_of, settle


class Stages:
    """What each way leads to, gone when it is first asked for."""

    def __init__(self, tables: Path, folder: Path) -> None:
        self._tables, self._folder = tables, folder
        self._made: dict[Way, tuple[Path, Valley]] = {}

    def copy(self, way: Way, path: Path, furnish: Callable[[Valley], object]) -> Valley:
        """The valley at the end of a way, in a file of its own."""
        if way not in self._made:
            self._made[way] = self._go(way, furnish)
        made, valley = self._made[way]
        shutil.copy(made, path)
        return valley.copied(Store(f"sqlite:///{path}"))

    def _go(self, way: Way, furnish: Callable[[Valley], object]) -> tuple[Path, Valley]:
        path = self._folder / f"{len(self._made)}.db"
        shutil.copy(self._tables, path)
        store = Store(f"sqlite:///{path}")
        valley = Valley(house_of(store), at("1 Jun 08:00"))
        furnish(valley)
        way(valley)
        store.close()  # the last connection writes all into the one file
        return path, valley


@pytest.fixture(scope="session")
def stages(_sqlite_tables: Path, tmp_path_factory: pytest.TempPathFactory) -> Stages:
    """The ways that this process has gone."""
    return Stages(_sqlite_tables, tmp_path_factory.mktemp("stages"))


@pytest.fixture
def furnish() -> Callable[[Valley], object]:
    """What a room's valleys have before the way begins; a room may say another."""
    return lambda valley: None


@pytest.fixture
def staged(
    stages: Stages, tmp_path: Path, furnish: Callable[[Valley], object]
) -> Iterator[Staged]:
    """Gives the valley at the end of a way, such as after a sign-up."""
    opened: list[Valley] = []

    def at_the_end_of(way: Way) -> Valley:
        valley = stages.copy(way, tmp_path / f"{len(opened)}.db", furnish)
        opened.append(valley)
        return valley

    yield at_the_end_of
    for valley in opened:
        valley.house.store.close()


def stage(way: Way) -> Any:
    """A fixture named as a way: the two villages at the end of it."""

    def settled(valley: Valley) -> None:
        settle(valley)
        way(valley)

    @pytest.fixture
    def at_its_end(staged: Staged) -> Valley:
        return staged(settled)

    return at_its_end
