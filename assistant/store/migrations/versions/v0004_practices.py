"""How a nursery is raised, what is raised for gaps, and what a village is offered."""

import sqlalchemy as sa
from alembic import op

revision = "v0004"
down_revision = "v0003"
branch_labels = None
depends_on = None


def upgrade() -> None:
    with op.batch_alter_table("nursery") as nursery:
        nursery.add_column(
            sa.Column("practice", sa.String(), nullable=False, server_default="mat")
        )
        nursery.add_column(
            sa.Column("gap_filling", sa.Double(), nullable=False, server_default="0")
        )
    with op.batch_alter_table("village") as village:
        village.add_column(
            sa.Column("practices", sa.JSON(), nullable=False, server_default='["mat"]')
        )


def downgrade() -> None:
    raise NotImplementedError("what beds were raised by is not taken away: restore a backup")
