"""Why planting waits, the last count of leaves, mats that are gone, and the warmth of a bed."""

import sqlalchemy as sa
from alembic import op

revision = "v0027"
down_revision = "v0026"
branch_labels = None
depends_on = None

_COLUMNS = ("delay_why", "leaves", "leaves_on", "lost_mats", "climate", "felt_c", "felt_on")


def upgrade() -> None:
    with op.batch_alter_table("nursery") as nursery:
        nursery.add_column(sa.Column("delay_why", sa.String(length=32), nullable=True))
        nursery.add_column(sa.Column("leaves", sa.Double(), nullable=True))
        nursery.add_column(sa.Column("leaves_on", sa.Date(), nullable=True))
        nursery.add_column(
            sa.Column("lost_mats", sa.Integer(), nullable=False, server_default="0")
        )
        nursery.add_column(sa.Column("climate", sa.JSON(), nullable=True))
        nursery.add_column(sa.Column("felt_c", sa.Double(), nullable=True))
        nursery.add_column(sa.Column("felt_on", sa.Date(), nullable=True))


def downgrade() -> None:
    with op.batch_alter_table("nursery") as nursery:
        for column in _COLUMNS:
            nursery.drop_column(column)
