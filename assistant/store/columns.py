"""The kinds of column: moments, words, names of states, and numbers that identify a row."""

from datetime import UTC, datetime
from enum import StrEnum
from typing import Annotated

from sqlalchemy import BigInteger, DateTime, Dialect, Enum, Integer, String
from sqlalchemy.orm import mapped_column
from sqlalchemy.types import TypeDecorator

from assistant.store.errors import NaiveTimeError

# SQLite numbers rows by itself only in a column that is exactly INTEGER.
NUMBER = BigInteger().with_variant(Integer(), "sqlite")
Key = Annotated[int, mapped_column(NUMBER, primary_key=True)]


class UtcMoment(TypeDecorator[datetime]):
    """An aware time, in and out, in UTC.

    SQLite keeps no zone: there it is written in UTC without one and gets it back when read.

    Raises:
        NaiveTimeError: a time without a zone.
    """

    impl = DateTime(timezone=True)
    cache_ok = True

    def process_bind_param(self, value: datetime | None, dialect: Dialect) -> datetime | None:
        if value is None:
            return None
        if value.tzinfo is not UTC and value.utcoffset() is None:
            raise NaiveTimeError(f"expected an aware time, got {value!r}: give it a time zone")
        utc = value if value.tzinfo is UTC else value.astimezone(UTC)
        return utc.replace(tzinfo=None) if dialect.name == "sqlite" else utc

    def process_result_value(self, value: datetime | None, dialect: Dialect) -> datetime | None:
        if value is None:
            return None
        return value.replace(tzinfo=UTC) if value.tzinfo is None else value.astimezone(UTC)


class Words(TypeDecorator[str]):
    """Text that a person may have typed.

    PostgreSQL keeps no NUL and neither database keeps half a surrogate pair, so both become
    U+FFFD: a strange character must not lose the message it stood in.
    """

    impl = String()
    cache_ok = True

    def process_bind_param(self, value: str | None, dialect: Dialect) -> str | None:
        if value is None:
            return None
        whole = value.encode("utf-16", "surrogatepass").decode("utf-16", "replace")
        return whole.replace("\0", "\N{REPLACEMENT CHARACTER}")


def named(kind: type[StrEnum]) -> Enum:
    """A column for one of a list of names, kept as its value so that people can read it."""
    return Enum(
        kind,
        native_enum=False,
        length=32,
        values_callable=lambda members: [member.value for member in members],
    )
