"""What Alembic runs: the migrations, on the connection that `schema.migrate` hands in."""

from alembic import context

from assistant.store.tables import Base

context.configure(
    connection=context.config.attributes["connection"],
    target_metadata=Base.metadata,
    render_as_batch=True,
)
with context.begin_transaction():
    context.run_migrations()
