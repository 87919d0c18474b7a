"""Whose village a message is counted for, and seasons that ended without a result."""

import sqlalchemy as sa
from alembic import op

revision = "v0011"
down_revision = "v0010"
branch_labels = None
depends_on = None


def upgrade() -> None:
    for table in ("outbox", "incoming"):
        with op.batch_alter_table(table) as changed:
            changed.add_column(_village(table))
        op.execute(
            f"UPDATE {table} SET village_id = "
            f"(SELECT village_id FROM farmer WHERE farmer.phone = {table}.phone)"
        )
    _index("outbox", "village_id", "due_at", "state", "segments")
    _index("incoming", "village_id", "at", "channel", "step")
    with op.batch_alter_table("nursery") as nursery:
        nursery.add_column(
            sa.Column("no_result", sa.Boolean(), nullable=False, server_default=sa.false())
        )


def downgrade() -> None:
    raise NotImplementedError("what was counted is not taken away: restore a backup instead")


def _village(table: str) -> sa.Column[int]:
    number = sa.BigInteger().with_variant(sa.Integer(), "sqlite")
    key = sa.ForeignKey("village.id", name=op.f(f"fk_{table}_village_id_village"))
    return sa.Column("village_id", number, key, nullable=True)


def _index(table: str, *columns: str) -> None:
    op.create_index(op.f(f"ix_{table}_{'_'.join(columns)}"), table, list(columns))
