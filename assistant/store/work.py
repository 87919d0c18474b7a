"""The store, and one transaction of it."""

from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path
from typing import Generic, TypeVar

from sqlalchemy import BigInteger, Engine, bindparam, func, select
from sqlalchemy.exc import (
    DBAPIError,
    InterfaceError,
    OperationalError,
    SQLAlchemyError,
    TimeoutError,
)
from sqlalchemy.orm import Session

from assistant.agronomy.practices import MAT_ONLY, Practice
from assistant.store import memo, rows
from assistant.store.backup import copy_out
from assistant.store.engine import READING, give_way, open_engine
from assistant.store.errors import DatabaseAwayError, DatabaseFailedError, NoRoomError
from assistant.store.locks import lock_number
from assistant.store.memo import Shelf, Transaction
from assistant.store.queries.accounts import Accounts
from assistant.store.queries.alarms import Alarms
from assistant.store.queries.alert_sources import AlertSources
from assistant.store.queries.alerts import Alerts
from assistant.store.queries.at_hand import AtHands
from assistant.store.queries.audit import Audit
from assistant.store.queries.brakes import Brakes
from assistant.store.queries.broadcasts import Broadcasts
from assistant.store.queries.calendar_days import CalendarDays
from assistant.store.queries.calls import CallQueries
from assistant.store.queries.danger import Danger
from assistant.store.queries.desk import DeskQueries
from assistant.store.queries.drafts import Drafts
from assistant.store.queries.enrolments import Enrolments
from assistant.store.queries.events import Events
from assistant.store.queries.handed import HandedCalls
from assistant.store.queries.inbox import Inbox
from assistant.store.queries.ledger import Ledger
from assistant.store.queries.lines import LineQueries
from assistant.store.queries.mornings import Mornings
from assistant.store.queries.nurseries import Nurseries
from assistant.store.queries.office_lists import OfficeLists
from assistant.store.queries.outbox import Outbox
from assistant.store.queries.own_groups import OwnGroups
from assistant.store.queries.people import People
from assistant.store.queries.phones import Phones
from assistant.store.queries.picture import Picture
from assistant.store.queries.pieces import Pieces
from assistant.store.queries.privacy import Privacy
from assistant.store.queries.questions import QuestionQueries
from assistant.store.queries.reminders import Reminders
from assistant.store.queries.roll import RollQueries
from assistant.store.queries.running import Running
from assistant.store.queries.seasons import Seasons
from assistant.store.queries.sending import Sending
from assistant.store.queries.story import Story
from assistant.store.queries.talks import Talks
from assistant.store.queries.warmth import Warmths
from assistant.store.queries.warnings import WarningQueries
from assistant.store.queries.watch import Watch
from assistant.store.schema import Tables, downgrade, migrate, tables

Q = TypeVar("Q")
_LOCK = select(func.pg_advisory_xact_lock(bindparam("number", type_=BigInteger)))


class _Subject(Generic[Q]):
    """A subject of a transaction, made when it is first asked for: most ask for two."""

    def __init__(self, made: Callable[[Session], Q]) -> None:
        self._made = made

    def __set_name__(self, owner: type, name: str) -> None:
        self._name = name

    def __get__(self, work: "Work", owner: type) -> Q:
        found = self._made(work._session)
        work.__dict__[self._name] = found  # which is found before this one from now on
        return found


class Work:
    """All that one transaction may ask, by subject."""

    people = _Subject(People)
    at_hand = _Subject(AtHands)
    accounts = _Subject(Accounts)
    audit = _Subject(Audit)
    nurseries = _Subject(Nurseries)
    seasons = _Subject(Seasons)
    running = _Subject(Running)
    talks = _Subject(Talks)
    inbox = _Subject(Inbox)
    outbox = _Subject(Outbox)
    lines = _Subject(LineQueries)
    pieces = _Subject(Pieces)
    questions = _Subject(QuestionQueries)
    reminders = _Subject(Reminders)
    mornings = _Subject(Mornings)
    warnings = _Subject(WarningQueries)
    drafts = _Subject(Drafts)
    danger = _Subject(Danger)
    sending = _Subject(Sending)
    warmth = _Subject(Warmths)
    alerts = _Subject(Alerts)
    alert_sources = _Subject(AlertSources)
    calls = _Subject(CallQueries)
    alarms = _Subject(Alarms)
    broadcasts = _Subject(Broadcasts)
    brakes = _Subject(Brakes)
    watch = _Subject(Watch)
    desk = _Subject(DeskQueries)
    handed = _Subject(HandedCalls)
    groups = _Subject(OwnGroups)
    story = _Subject(Story)
    events = _Subject(Events)
    roll = _Subject(RollQueries)
    privacy = _Subject(Privacy)
    ledger = _Subject(Ledger)
    calendar_days = _Subject(CalendarDays)
    enrolments = _Subject(Enrolments)
    phones = _Subject(Phones)
    lists = _Subject(OfficeLists)
    picture = _Subject(Picture)

    def __init__(self, session: Session) -> None:
        self._session = session

    @property
    def unreadable(self) -> Mapping[int, str]:
        """The nurseries that this transaction came upon and could not read, by id, and why."""
        return dict(self._session.info.get(rows.UNREADABLE, {}))

    def lock(self, phone: str) -> None:
        """Makes other transactions wait that lock the same phone, until this one ends.

        Take it before reading what the turn depends on, and several in the order of their
        numbers. On SQLite every transaction has the whole database to itself already.
        """
        if self._session.get_bind().dialect.name == "postgresql":
            self._session.execute(_LOCK, {"number": lock_number(phone)})
            self._session.expire_all()  # what was read before may have changed meanwhile
            memo.forget(self._session)


class Store:
    """The database of one programme. Safe to share between threads.

    Args:
        practices: by code, those that a kept nursery may name

    Raises:
        DatabaseUrlError: an address that is neither a SQLite file nor a PostgreSQL server.
    """

    def __init__(self, url: str, practices: Mapping[str, Practice] = MAT_ONLY) -> None:
        self._engine = open_engine(url)
        self._reading = self._engine.execution_options(**READING)
        self.practices = practices
        self._shelf = Shelf()
        self.changes = 0  # of settings, made by this process
        self.lacks_room = False  # whether a write failed for it, and none was tried since

    def migrate(self) -> None:
        """Makes or updates the tables. Safe to run at every start, by several at once.

        Raises:
            DatabaseFailedError: the database could not be reached or changed.
        """
        with _our_errors():
            migrate(self._engine)

    def tables(self) -> Tables:
        """Which tables the database has, and which this release works with.

        Raises:
            DatabaseFailedError: the database could not be reached.
        """
        with _our_errors():
            return tables(self._engine)

    def downgrade(self, revision: str) -> None:
        """Takes the tables back to those of an earlier release.

        Raises:
            StoreError: no such state of the tables.
        """
        with _our_errors():
            downgrade(self._engine, revision)

    @contextmanager
    def work(self) -> Iterator[Work]:
        """One transaction: kept when the block ends, undone when it raises.

        Raises:
            DatabaseFailedError: the database refused something or could not be reached.
        """
        try:
            with _our_errors(), self._session(self._engine) as session:
                with session.begin():
                    yield Work(session)
        except NoRoomError:
            self.lacks_room = True
            raise

    @property
    def has_one_writer(self) -> bool:
        """Whether who writes holds up all others who would."""
        return self._engine.dialect.name == "sqlite"

    def give_way(self) -> None:
        """Lets those write who wait, after a long transaction that is followed by another."""
        give_way(self._engine)

    @property
    def folder(self) -> Path | None:
        """Where the database lies; None where that is another program's."""
        url = self._engine.url
        if url.get_backend_name() != "sqlite":
            return None
        return Path(url.database or ".").absolute().parent

    @contextmanager
    def look(self) -> Iterator[Work]:
        """One transaction that only reads: a view of one moment, in nobody's way.

        Raises:
            DatabaseFailedError: it was written to, or the database could not be reached.
        """
        with _our_errors(), self._session(self._reading) as session:
            with session.begin():
                yield Work(session)

    def _session(self, engine: Engine) -> Session:
        kept = {rows.PRACTICES: self.practices, memo.VILLAGES: self._shelf}
        return Transaction(engine, expire_on_commit=False, info=kept)

    def backup(self, target: Path) -> None:
        """Copies the database into a new file while it is in use.

        Raises:
            StoreError: the file is there already, or PostgreSQL's programs are not.
        """
        copy_out(self._engine, target)

    def close(self) -> None:
        """Lets go of all connections."""
        self._engine.dispose()


@contextmanager
def _our_errors() -> Iterator[None]:
    try:
        yield
    except SQLAlchemyError as error:
        fault: type[DatabaseFailedError] = DatabaseFailedError
        if _lacks_room(error):
            fault = NoRoomError
        elif _is_away(error):
            fault = DatabaseAwayError
        raise fault(
            f"expected the database to do its part, got {_said(error)!r}; nothing of this "
            "transaction is kept: see that it can be reached and written to, then try again"
        ) from error


def _is_away(error: SQLAlchemyError) -> bool:
    """Whether waiting may help: locked, full, cut off. A wrong row or statement stays wrong."""
    if isinstance(error, DBAPIError) and error.connection_invalidated:
        return True
    return isinstance(error, (OperationalError, InterfaceError, TimeoutError))


# https://sqlite.org/rescode.html; class 53 of PostgreSQL's appendix A, and 58030 (io_error)
_NO_ROOM = frozenset({"SQLITE_FULL", "SQLITE_IOERR_WRITE", "SQLITE_READONLY"})
_NO_ROOM_STATES = frozenset({"53100", "58030"})


def _lacks_room(error: SQLAlchemyError) -> bool:
    """Whether the disk is full, or refuses to be written to."""
    said = getattr(error, "orig", None)
    name, state = getattr(said, "sqlite_errorname", ""), getattr(said, "sqlstate", "")
    return name in _NO_ROOM or state in _NO_ROOM_STATES


def _said(error: SQLAlchemyError) -> str:
    """What the database said, without the lines after the first: those repeat the data."""
    return str(getattr(error, "orig", None) or error).partition("\n")[0]
