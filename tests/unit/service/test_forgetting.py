"""A person is taken out of every table, also of one that somebody adds tomorrow."""

import json
from datetime import date, datetime, timedelta
from typing import Any

from sqlalchemy import JSON, Boolean, Date, Enum, LargeBinary, Table, insert, select
from sqlalchemy import text as sql

from assistant.service.privacy import erase_due, kept_of
from assistant.store import ForgottenPerson
from assistant.store.columns import UtcMoment, Words
from assistant.store.queries.forgetting import GONE, NAMING, OF_NOBODY, untold
from assistant.store.tables import Base
from tests.stages import stage
from tests.valley import AMINA, BARAKA, KIJANI, Valley

NAME, SECRET = "Wanjiru Ojukwu", "the goat ate it"
MARK = f"{NAME} {AMINA} {SECRET}"
OLD = "+447700900166"
LONG_AGO = timedelta(days=400)


def test_of_each_column_it_is_said_what_becomes_of_it() -> None:
    """Whoever adds a column of letters adds it to `forgetting`: to what goes, to what is
    emptied, or to what holds nothing of a farmer."""
    assert untold() == ()


def test_what_is_said_is_said_of_columns_that_there_are() -> None:
    """None was renamed since."""
    columns = {f"{t.name}.{c}" for t in Base.metadata.sorted_tables for c in t.c.keys()}
    told = {f"{name}.{column}" for name, each in GONE.items() for column in each}
    told |= {f"{name}.{column}" for name, each in NAMING.items() for column in each}
    assert told | OF_NOBODY <= columns


@stage
def wanjiru(valley: Valley) -> None:
    """She has a nursery, had another number before, and there is an officer."""
    valley.add_officer(KIJANI)
    valley.enrol(AMINA)
    valley.sow(AMINA, "31 May")


def _fill(valley: Valley) -> dict[str, int]:
    """A row of hers in every table, with her name, number and words wherever letters go."""
    made: dict[str, int] = {}
    with valley.house.store._engine.begin() as connection:
        connection.execute(sql("UPDATE farmer SET name = :name"), {"name": NAME})
        for table in Base.metadata.sorted_tables:
            kept = connection.execute(select(table).limit(1)).mappings().first()
            if table.name in ("farmer", "nursery", "officer", "village"):
                assert kept is not None
                made[table.name] = kept["id"]
                continue
            row = {c.name: _cell(table, c, made, valley.now) for c in table.columns}
            row = {name: cell for name, cell in row.items() if cell is not _OURS}
            result = connection.execute(insert(table).prefix_with("OR REPLACE").values(**row))
            key = result.inserted_primary_key
            made[table.name] = key[0] if key else 0
    return made


_OURS = object()  # numbered by the database


def _cell(table: Table, column: Any, made: dict[str, int], now: datetime) -> Any:
    name = f"{table.name}.{column.name}"
    if column.foreign_keys:
        return made.get(next(iter(column.foreign_keys)).column.table.name)
    numbered = table.name not in ("trail_seal", "question_count")
    if column.primary_key and column.type.python_type is int and numbered:
        return _OURS
    if column.name in ("closed_at", "cleared_at", "handled_at", "due_at"):
        return now
    return _of_kind(column, name, now)


def _of_kind(column: Any, name: str, now: datetime) -> Any:
    kind = column.type
    if isinstance(kind, Enum):
        return list(kind.python_type)[-1]
    if isinstance(kind, UtcMoment):
        return now - timedelta(days=8)
    if isinstance(kind, Date):
        return date(2026, 5, 1)
    if isinstance(kind, JSON):
        return [] if name in OF_NOBODY else {"said": MARK, "phone": AMINA}
    if isinstance(kind, Boolean):
        return True
    if isinstance(kind, LargeBinary):
        return (name if name in OF_NOBODY else MARK).encode()
    return _letters(column, name) if isinstance(kind, Words) else 1


def _letters(column: Any, name: str) -> str:
    if column.name in ("phone", "who"):
        return AMINA
    if name in OF_NOBODY or name in ("nursery_event.kind", "office_list.state"):
        return f"code of {name}"
    return MARK


def _found(valley: Valley) -> list[str]:
    """Where something of her still stands."""
    left = []
    with valley.house.store._engine.connect() as connection:
        for table in Base.metadata.sorted_tables:
            for row in connection.execute(sql(f'SELECT * FROM "{table.name}"')).mappings():
                for column, cell in row.items():
                    said = str(cell)
                    if any(part in said for part in (NAME, AMINA, SECRET, OLD)):
                        left.append(f"{table.name}.{column}: {said[:80]}")
    return left


def test_nothing_is_left_of_her_in_any_table(wanjiru: Valley) -> None:
    """Whatever wrote her name, number or words down."""
    _fill(wanjiru)
    full = {each.partition(".")[0] for each in _found(wanjiru)}
    assert len(full) > 20
    assert erase_due(wanjiru.house, wanjiru.now) == 1  # the row of `erasure` is filled, too
    assert _found(wanjiru) == []


def test_an_earlier_number_goes_as_far_as_it_was_hers(wanjiru: Valley) -> None:
    """What its next owner wrote stays theirs."""
    wanjiru.enrol(OLD)
    with wanjiru.house.store._engine.begin() as connection:
        hers = connection.execute(
            sql("SELECT id FROM farmer WHERE phone = :it"), {"it": AMINA}
        ).scalar_one()
        connection.execute(
            sql("INSERT INTO past_phone (farmer_id, phone, until) VALUES (:id, :it, :at)"),
            {"id": hers, "it": OLD, "at": f"{wanjiru.now:%Y-%m-%d 04:00:00.000000}"},
        )
        connection.execute(
            sql("UPDATE incoming SET at = '2026-05-01 00:00:00.000000' WHERE text = 'hello'")
        )
    for words in ("delete my data", "DELETE"):
        wanjiru.text(AMINA, words)
    wanjiru.now += timedelta(days=8)
    erase_due(wanjiru.house, wanjiru.now)
    with wanjiru.house.store._engine.connect() as connection:
        kept = connection.execute(
            sql("SELECT count(*) FROM incoming WHERE phone = :it"), {"it": OLD}
        ).scalar_one()
        early = connection.execute(
            sql("SELECT count(*) FROM incoming WHERE phone = :it AND at < '2026-05-02'"),
            {"it": OLD},
        ).scalar_one()
    assert kept > 0 and early == 0


def test_others_keep_what_is_theirs(wanjiru: Valley) -> None:
    """Baraka's nursery, words and texts stand as they were."""
    wanjiru.enrol(BARAKA)
    wanjiru.sow(BARAKA, "31 May")
    wanjiru.text(BARAKA, "my leaves are yellow please call me")
    before = kept_of(wanjiru.house, BARAKA, wanjiru.now)
    for words in ("delete my data", "DELETE"):
        wanjiru.text(AMINA, words)
    with wanjiru.house.store.work() as work:
        farmer = work.people.farmer(AMINA)
        assert farmer is not None
        work.privacy.forget(ForgottenPerson(farmer.id, AMINA, "Amina"), wanjiru.now)
    after = kept_of(wanjiru.house, BARAKA, wanjiru.now)
    assert before is not None and after is not None
    assert _but_reads(after) == _but_reads(before)


def _but_reads(export: str) -> object:
    """All but that it was taken, which leaves a line."""
    return {name: lines for name, lines in json.loads(export).items() if name != "audit"}
