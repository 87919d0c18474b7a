"""The migrations make the tables that the code expects."""

from datetime import UTC, datetime

import pytest
from alembic.autogenerate import compare_metadata
from alembic.config import Config
from alembic.migration import MigrationContext
from alembic.script import ScriptDirectory
from sqlalchemy import MetaData
from sqlalchemy.exc import IntegrityError

from assistant.store import Store, schema
from assistant.store.engine import open_engine
from assistant.store.schema import migrate, tables
from assistant.store.tables import Base


def test_an_empty_database_is_brought_to_the_tables_of_this_release(empty_url: str) -> None:
    """What the migrations make is what the models say, on both databases."""
    engine = open_engine(empty_url)
    migrate(engine)
    with engine.connect() as connection:
        differences = compare_metadata(MigrationContext.configure(connection), Base.metadata)
    engine.dispose()
    assert differences == []


def test_migrating_again_changes_nothing_and_loses_nothing(store: Store) -> None:
    """Every start migrates."""
    with store.work() as work:
        village = work.people.add_village("Mto Mdogo", "Africa/Nairobi")
    store.migrate()
    with store.work() as work:
        assert work.people.villages() == (village,)


def test_a_database_in_use_is_brought_to_this_release_with_all_its_rows(empty_url: str) -> None:
    """Rows that name each other survive tables that are made anew, and are watched again."""
    engine = open_engine(empty_url)
    migrate(engine, "v0007")
    with engine.begin() as connection:
        tables = MetaData()
        tables.reflect(connection)
        for name, row in _ROWS.items():
            connection.execute(tables.tables[name].insert().values(id=1, **row))
    migrate(engine)
    with engine.connect() as connection:
        counts = [connection.exec_driver_sql(f"SELECT count(*) FROM {name}") for name in _ROWS]
        assert [count.scalar_one() for count in counts] == [1] * len(_ROWS)
    with pytest.raises(IntegrityError), engine.begin() as connection:
        connection.exec_driver_sql("DELETE FROM farmer")
    engine.dispose()


_AT = datetime(2026, 6, 1, 6, tzinfo=UTC)
_ROWS: dict[str, dict[str, object]] = {
    "village": {"name": "Kijani", "zone": "Africa/Nairobi", "practices": ["mat"]},
    "farmer": {"phone": "+447700900101", "village_id": 1},
    "nursery": {
        "farmer_id": 1,
        "label": "A",
        "field_area_m2": 4000.0,
        "germination": 0.85,
        "spacing_row_cm": 20.0,
        "spacing_hill_cm": 20.0,
        "seedlings_per_hill": 2,
        "grain_weight_g": 25.0,
        "pail_litres": 10.0,
        "establishment": 0.5,
        "gap_filling": 0.0,
        "practice": "mat",
        "area_typed": "0.4 ha",
        "germination_known": True,
        "sow_date": _AT.date(),
        "made_on": _AT.date(),
        "sown": False,
        "sow_assumed": False,
        "uncovered": False,
        "closed": False,
        "test_counted": False,
        "resown": False,
        "changed_at": _AT,
    },
    "reminder": {
        "nursery_id": 1,
        "task": "sow",
        "day": _AT.date(),
        "due_at": _AT,
        "not_after": _AT,
        "state": "planned",
        "asked": 0,
    },
    "outbox": {
        "message_id": "text-1",
        "phone": "+447700900101",
        "text": "Sow.",
        "kind": "prompt",
        "nursery_id": 1,
        "due_at": _AT,
        "not_after": _AT,
        "urgent": False,
        "state": "waiting",
        "attempts": 0,
        "encoding": "",
        "segments": 0,
        "detail": "",
        "created_at": _AT,
    },
}


def test_the_chain_is_read_as_alembic_reads_it(empty_url: str) -> None:
    """A start reads it from the modules' text, without Alembic."""
    engine = open_engine(empty_url)
    config = Config()
    config.set_main_option("script_location", "assistant.store:migrations")
    script = ScriptDirectory.from_config(config)
    assert tables(engine).wanted == script.get_current_head()
    assert set(schema._chain()) == {each.revision for each in script.walk_revisions()}
    assert tables(engine).there is None
    migrate(engine, "v0007")
    assert tables(engine).there == "v0007"
    engine.dispose()
