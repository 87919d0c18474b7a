"""Which danger a warning tells of; all before were of rain."""

import sqlalchemy as sa
from alembic import op

revision = "v0072"
down_revision = "v0071"
branch_labels = None
depends_on = None

_TABLES = ("warning", "warning_draft")


def upgrade() -> None:
    for name in _TABLES:
        with op.batch_alter_table(name) as table:
            table.add_column(
                sa.Column("danger", sa.String(), nullable=False, server_default="rain")
            )


def downgrade() -> None:
    for name in _TABLES:
        with op.batch_alter_table(name) as table:
            table.drop_column("danger")
