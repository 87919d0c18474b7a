"""The migrations make the tables that the code expects."""

from collections.abc import Mapping
from concurrent.futures import ThreadPoolExecutor

import pytest
from alembic.autogenerate import compare_metadata
from alembic.config import Config
from alembic.migration import MigrationContext
from alembic.script import ScriptDirectory
from sqlalchemy import Engine, MetaData, Table, func, inspect, select
from sqlalchemy.exc import IntegrityError

from assistant.store import Store, schema
from assistant.store.engine import open_engine
from assistant.store.making import make_tables
from assistant.store.schema import migrate, tables
from assistant.store.tables import Base
from tests.unit.store.first_release import of_first_release
from tests.valley import Valley, at, house_of

AMINA, BARAKA = "+447700900151", "+447700900152"  # of that release's demo; their beds are sown


def test_a_new_database_has_the_tables_that_the_way_up_leads_to(empty_url: str) -> None:
    """They are made from the models at once, the others step by step from 0.1.0."""
    engine = open_engine(empty_url)
    migrate(engine)
    made = _described(engine)
    assert tables(engine).fit
    engine.dispose()
    with of_first_release(empty_url) as old:
        migrate(old)
        with old.connect() as connection:
            differences = compare_metadata(
                MigrationContext.configure(connection), Base.metadata
            )
        assert differences == []
        assert _described(old) == made


def test_a_new_database_has_the_rows_that_the_way_up_leads_to(empty_url: str) -> None:
    """Those that migrations wrote and nobody typed."""
    engine = open_engine(empty_url)
    migrate(engine)
    with engine.connect() as connection:
        found = {
            table.name: count
            for table in Base.metadata.sorted_tables
            if (count := connection.scalar(select(func.count()).select_from(table)))
        }
    engine.dispose()
    assert found == {"counter": 1}


def test_several_that_start_at_once_make_a_new_database_once(empty_url: str) -> None:
    """Web and worker are started together."""
    engines = [open_engine(empty_url) for _ in range(4)]
    wanted = tables(engines[0]).wanted
    with ThreadPoolExecutor(4) as pool:
        list(pool.map(lambda each: make_tables(each, wanted), engines))
    assert tables(engines[0]).fit
    for engine in engines:
        engine.dispose()


def test_migrating_again_changes_nothing_and_loses_nothing(store: Store) -> None:
    """Every start migrates."""
    with store.work() as work:
        village = work.people.add_village("Mto Mdogo", "Africa/Nairobi")
    store.migrate()
    with store.work() as work:
        assert work.people.villages() == (village,)


def test_a_database_of_the_first_release_is_brought_to_this_one(empty_url: str) -> None:
    """With every row, and rows that name each other are watched again."""
    with of_first_release(empty_url) as engine:
        before = _counts(engine)
        migrate(engine)
        assert {name: _counts(engine)[name] for name in before} == before
        with pytest.raises(IntegrityError), engine.begin() as connection:
            connection.exec_driver_sql("DELETE FROM farmer")


def test_a_season_of_the_first_release_goes_on(empty_url: str) -> None:
    """The next morning's texts go out to its farmers, and what they answer is kept."""
    with of_first_release(empty_url) as engine:
        migrate(engine)
    valley = Valley(house_of(Store(empty_url)), at("17 Jun 08:50"))
    valley.go("18 Jun 06:05")
    for phone in (AMINA, BARAKA):
        assert valley.heard(phone)
        assert valley.text(phone, "done")
    valley.house.store.close()


def _described(engine: Engine) -> Mapping[str, object]:
    """All that two databases have in common whose tables are alike, but for the order of their
    columns and for what a new row has where nothing is said of it: our rows always say it."""
    found = inspect(engine)
    return {
        name: (
            {each["name"]: (str(each["type"]), each["nullable"]) for each in columns},
            found.get_pk_constraint(name),
            _sorted(found.get_foreign_keys(name)),
            _sorted(found.get_indexes(name)),
            _sorted(found.get_unique_constraints(name)),
            _sorted(found.get_check_constraints(name)),
        )
        for name in found.get_table_names()
        if (columns := found.get_columns(name))
    }


def _sorted(rules: object) -> list[str]:
    assert isinstance(rules, list)
    return sorted(str(_plain(each)) for each in rules)


def _plain(rule: object) -> object:
    """A condition of an index compares by its words."""
    if isinstance(rule, dict):
        return {name: _plain(value) for name, value in rule.items()}
    return str(rule)


def _counts(engine: Engine) -> Mapping[str, int]:
    with engine.connect() as connection:
        names = inspect(connection).get_table_names()
        asked = {
            name: select(func.count()).select_from(Table(name, MetaData())) for name in names
        }
        return {name: connection.scalar(each) or 0 for name, each in asked.items()}


def test_the_chain_is_read_as_alembic_reads_it(empty_url: str) -> None:
    """A start reads it from the modules' text, without Alembic."""
    engine = open_engine(empty_url)
    config = Config()
    config.set_main_option("script_location", "assistant.store:migrations")
    script = ScriptDirectory.from_config(config)
    assert tables(engine).wanted == script.get_current_head()
    assert set(schema._chain()) == {each.revision for each in script.walk_revisions()}
    assert tables(engine).there is None
    engine.dispose()
    with of_first_release(empty_url) as old:
        assert tables(old).there == schema.FIRST and not tables(old).fit
