"""Days in calendar files by village and task; what was handed out by nursery is forgotten."""

import sqlalchemy as sa
from alembic import op

revision = "v0019"
down_revision = "v0018"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.drop_table("calendar_day")
    number = sa.BigInteger().with_variant(sa.Integer(), "sqlite")
    op.create_table(
        "calendar_day",
        sa.Column("id", number, primary_key=True),
        sa.Column("village_id", number, sa.ForeignKey("village.id"), nullable=False),
        sa.Column("task", sa.String(32), nullable=False),
        sa.Column("day", sa.Date(), nullable=False),
        sa.Column("names", sa.String(), nullable=False),
        sa.Column("sequence", sa.Integer(), nullable=False),
        sa.Column("changed_at", sa.DateTime(timezone=True), nullable=False),
        sa.UniqueConstraint("village_id", "day", "task"),
    )


def downgrade() -> None:
    op.drop_table("calendar_day")
    number = sa.BigInteger().with_variant(sa.Integer(), "sqlite")
    op.create_table(
        "calendar_day",
        sa.Column("id", number, primary_key=True),
        sa.Column("nursery_id", number, sa.ForeignKey("nursery.id"), nullable=False),
        sa.Column("task", sa.String(32), nullable=False),
        sa.Column("place", sa.Integer(), nullable=False),
        sa.Column("day", sa.Date(), nullable=False),
        sa.Column("gone", sa.Boolean(), nullable=False),
        sa.Column("sequence", sa.Integer(), nullable=False),
        sa.Column("changed_at", sa.DateTime(timezone=True), nullable=False),
        sa.UniqueConstraint("nursery_id", "task", "place"),
    )
