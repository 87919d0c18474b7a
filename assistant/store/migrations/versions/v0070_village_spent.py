"""Segments that the operator took for a village on a day, for limits of its day and month."""

import sqlalchemy as sa
from alembic import op

number = sa.BigInteger().with_variant(sa.Integer(), "sqlite")

revision = "v0070"
down_revision = "v0069"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "village_spent",
        sa.Column("village_id", number, sa.ForeignKey("village.id"), primary_key=True),
        sa.Column("day", sa.Date(), primary_key=True),
        sa.Column("segments", sa.Integer(), nullable=False),
    )
