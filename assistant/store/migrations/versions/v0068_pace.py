"""Farmers who want texts only on days with work."""

import sqlalchemy as sa
from alembic import op

revision = "v0068"
down_revision = "v0067"
branch_labels = None
depends_on = None


def upgrade() -> None:
    with op.batch_alter_table("farmer") as farmer:
        farmer.add_column(
            sa.Column("only_work", sa.Boolean(), nullable=False, server_default=sa.false())
        )
