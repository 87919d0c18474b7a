"""A deployment in a file of its own, with two villages; the way to where a test begins is gone
once and copied."""

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest

from assistant.people import Village
from assistant.store import Store
from tests.valley import KIJANI, MWANGA, Staged, Valley, Way, at, house_of, settle


class Stages:
    """Valleys as they stood after a way into them."""

    def __init__(self, tables: Path, folder: Path) -> None:
        self._tables, self._folder = tables, folder
        self._made: dict[Way, tuple[Path, Valley]] = {}

    def copy(self, way: Way, path: Path) -> Valley:
        """The valley at the end of a way, in a file of its own."""
        if way not in self._made:
            self._made[way] = self._go(way)
        made, valley = self._made[way]
        shutil.copy(made, path)
        return valley.copied(Store(f"sqlite:///{path}"))

    def _go(self, way: Way) -> tuple[Path, Valley]:
        path = self._folder / f"{len(self._made)}.db"
        shutil.copy(self._tables, path)
        store = Store(f"sqlite:///{path}")
        valley = Valley(house_of(store), at("1 Jun 08:00"))
        way(valley)
        store.close()  # the last connection writes all into the one file
        return path, valley


@pytest.fixture(scope="session")
def _stages(_sqlite_tables: Path, tmp_path_factory: pytest.TempPathFactory) -> Stages:
    return Stages(_sqlite_tables, tmp_path_factory.mktemp("stages"))


@pytest.fixture
def staged(_stages: Stages, tmp_path: Path) -> Iterator[Staged]:
    """Gives the valley at the end of a way, such as after a sign-up."""
    opened: list[Valley] = []

    def at_the_end_of(way: Way) -> Valley:
        valley = _stages.copy(way, tmp_path / f"{len(opened)}.db")
        opened.append(valley)
        return valley

    yield at_the_end_of
    for valley in opened:
        valley.house.store.close()


@pytest.fixture
def valley(staged: Staged) -> Valley:
    """The first of June, eight in the morning; two villages and nobody in them."""
    return staged(settle)


@pytest.fixture
def kijani() -> Village:
    """The first village by name."""
    return KIJANI


@pytest.fixture
def mwanga() -> Village:
    """The second village by name."""
    return MWANGA
