"""Inserting what is not there yet: the one place where the two databases are told apart."""

from collections.abc import Mapping, Sequence

from sqlalchemy.dialects import postgresql, sqlite
from sqlalchemy.orm import InstrumentedAttribute, Session

from assistant.store.tables import Base


def insert_missing(
    session: Session,
    table: type[Base],
    rows: Sequence[Mapping[str, object]],
    key: Sequence[InstrumentedAttribute[object]],
) -> int:
    """Inserts the rows whose unique key is not taken, and says how many those were."""
    if not rows:
        return 0
    on_sqlite = session.get_bind().dialect.name == "sqlite"
    insert = sqlite.insert if on_sqlite else postgresql.insert
    statement = insert(table).on_conflict_do_nothing(index_elements=list(key)).returning(key[0])
    return len(session.execute(statement, [dict(row) for row in rows]).all())
