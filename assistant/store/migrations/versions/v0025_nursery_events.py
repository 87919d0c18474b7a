"""What happened to each nursery, an event a row: the story that its page shows."""

import sqlalchemy as sa
from alembic import op

revision = "v0025"
down_revision = "v0024"
branch_labels = None
depends_on = None

_EVENTS = "nursery_event"


def upgrade() -> None:
    number = sa.BigInteger().with_variant(sa.Integer(), "sqlite")
    op.create_table(
        _EVENTS,
        sa.Column("id", number, primary_key=True),
        sa.Column("nursery_id", number, sa.ForeignKey("nursery.id"), nullable=False),
        sa.Column("kind", sa.String(), nullable=False),
        sa.Column("day", sa.Date(), nullable=False),
        sa.Column("by", sa.String(length=32), nullable=False),
        sa.Column("about", sa.JSON(), nullable=False),
        sa.Column("at", sa.DateTime(timezone=True), nullable=False),
    )
    op.create_index(op.f("ix_nursery_event_nursery_id"), _EVENTS, ["nursery_id"])


def downgrade() -> None:
    op.drop_table(_EVENTS)
