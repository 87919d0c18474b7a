"""The days that were handed out in calendar files, with how often each was moved."""

import sqlalchemy as sa
from alembic import op

revision = "v0009"
down_revision = "v0008"
branch_labels = None
depends_on = None


def upgrade() -> None:
    number = sa.BigInteger().with_variant(sa.Integer(), "sqlite")
    nursery = sa.ForeignKey("nursery.id")
    op.create_table(
        "calendar_day",
        sa.Column("id", number, primary_key=True),
        sa.Column("nursery_id", number, nursery, nullable=False),
        sa.Column("task", sa.String(32), nullable=False),
        sa.Column("place", sa.Integer(), nullable=False),
        sa.Column("day", sa.Date(), nullable=False),
        sa.Column("gone", sa.Boolean(), nullable=False),
        sa.Column("sequence", sa.Integer(), nullable=False),
        sa.Column("changed_at", sa.DateTime(timezone=True), nullable=False),
        sa.UniqueConstraint("nursery_id", "task", "place"),
    )


def downgrade() -> None:
    op.drop_table("calendar_day")
