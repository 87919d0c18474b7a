"""Which tables a database has, and bringing it to those of this release."""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from importlib.resources import files

from sqlalchemy import Engine, inspect, text

from assistant.store.errors import StoreError
from assistant.store.making import VERSION_TABLE, make_tables

# The tables of 0.1.0, with which the way up begins, and of 0.2.0, where the way down ends:
# below it people would lose what 0.2.0 keeps of them and never learn of it.
FIRST, LOWEST = "v0056", "v0076"

_NAMES = re.compile(r'^(down_)?revision\s*(?::[^=]*)?=\s*(?:"(.+?)"|None)', re.MULTILINE)


@dataclass(frozen=True)
class Tables:
    """Which tables a database has and which this release works with, each by the name of its
    last change; `there` is None for a new database, `known` whether this release knows it."""

    there: str | None
    wanted: str
    known: bool

    @property
    def fit(self) -> bool:
        """Whether this release can work with them as they are."""
        return self.there == self.wanted

    @property
    def advice(self) -> str:
        """What to do."""
        if self.fit:
            return "They fit."
        if self.there is None:
            return "The database is new: nursery start or nursery migrate makes its tables."
        if self.known:
            return (
                f"The database has the tables of {self.there}, this release works with "
                f"{self.wanted}: make a copy with nursery backup FILE, then run nursery migrate"
            )
        if self.there < self.wanted:
            return (
                f"The database has the tables of {self.there}, older than the first release: "
                f"bring them to {FIRST} with release 0.1.0, then run nursery migrate"
            )
        return (
            f"The database has the tables of {self.there}, which a later release made: start "
            f"that release, or run its nursery downgrade {self.wanted}"
        )


def tables(engine: Engine) -> Tables:
    """Looks at the tables and changes nothing."""
    there, chain = _there(engine), _chain()
    return Tables(there, _last(chain), there is None or there in chain)


def migrate(engine: Engine, revision: str = "head") -> None:
    """Makes the tables of a new database; in another, runs the migrations that were not run
    yet, all in one transaction.

    Raises:
        StoreError: tables that no migration starts from.
    """
    found = tables(engine)
    if found.there is None and revision == "head":
        make_tables(engine, found.wanted)
        return
    if not found.known:
        raise StoreError(found.advice)
    from assistant.store import migrating  # noqa: PLC0415  # large; most starts change nothing

    migrating.migrate(engine, revision)


def downgrade(engine: Engine, revision: str) -> None:
    """Takes the tables back to an earlier state.

    Raises:
        StoreError: no such state, a later one than the database has, or one before 0.2.0.
    """
    found = tables(engine)
    if revision in _before(LOWEST):
        raise StoreError(
            f"the tables go back to {LOWEST}, those of release 0.2.0: for {revision} restore "
            "the copy made before that release, with the release that goes with it"
        )
    if found.there is None or not found.known or revision not in _before(found.there):
        raise StoreError(
            f"expected a state before {found.there} and not before {LOWEST}, got {revision!r}: "
            "see nursery status"
        )
    from assistant.store import migrating  # noqa: PLC0415  # large; most starts change nothing

    migrating.downgrade(engine, revision)


def _there(engine: Engine) -> str | None:
    """The last change of the tables that there are, as Alembic notes it."""
    with engine.connect() as connection:
        if not inspect(connection).has_table(VERSION_TABLE):
            return None
        asked = text("SELECT version_num FROM alembic_version")
        found: str | None = connection.execute(asked).scalar()
        return found


def _chain() -> Mapping[str, str | None]:
    """Each change and the one before it, read from their modules without opening them."""
    room = files("assistant.store.migrations") / "versions"
    modules = (each for each in room.iterdir() if each.name.endswith(".py"))
    rows = (_NAMES.findall(each.read_text("utf-8")) for each in modules)
    said = ({bool(down): name or None for down, name in row} for row in rows if row)
    return {str(each[False]): each[True] for each in said}


def _last(chain: Mapping[str, str | None]) -> str:
    """The change that no other follows."""
    (last,) = set(chain) - set(chain.values())
    return last


def _before(revision: str) -> set[str]:
    """The states before one. Their numbers need not be in the order of the chain."""
    return set(_walked(_chain(), revision))


def _walked(chain: Mapping[str, str | None], revision: str) -> Iterator[str]:
    before = chain[revision]
    while before is not None:
        yield before
        before = chain[before]
