"""The migrations make the tables that the code expects."""

from alembic.autogenerate import compare_metadata
from alembic.migration import MigrationContext

from assistant.store import Store
from assistant.store.engine import open_engine
from assistant.store.schema import migrate
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
