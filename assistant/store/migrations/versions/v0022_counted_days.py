"""Messages counted day by day; the latest of all by an index that has their whole order."""

import sqlalchemy as sa
from alembic import op

revision = "v0022"
down_revision = "v0021"
branch_labels = None
depends_on = None

_COUNTS = ("waiting", "accepted", "delivered", "failed", "expired", "withdrawn", "segments",
           "texts", "sessions", "rings")  # fmt: skip
_ORDERS = (("outbox", "due_at", "id"), ("incoming", "at", "gateway_id"))


def upgrade() -> None:
    number = sa.BigInteger().with_variant(sa.Integer(), "sqlite")
    op.create_table("counted_day", sa.Column("day", sa.Date(), primary_key=True))
    op.create_table(
        "day_count",
        sa.Column("id", number, primary_key=True),
        sa.Column("day", sa.Date(), sa.ForeignKey("counted_day.day"), nullable=False),
        sa.Column("village_id", number, sa.ForeignKey("village.id")),
        *(sa.Column(name, sa.Integer(), nullable=False) for name in _COUNTS),
    )
    op.create_index(op.f("ix_day_count_day_village_id"), "day_count", ["day", "village_id"])
    for table, moment, key in _ORDERS:
        op.drop_index(op.f(f"ix_{table}_{moment}"), table)
        op.create_index(op.f(f"ix_{table}_{moment}_{key}"), table, [moment, key])


def downgrade() -> None:
    for table, moment, key in _ORDERS:
        op.drop_index(op.f(f"ix_{table}_{moment}_{key}"), table)
        op.create_index(op.f(f"ix_{table}_{moment}"), table, [moment])
    op.drop_index(op.f("ix_day_count_day_village_id"), "day_count")
    op.drop_table("day_count")
    op.drop_table("counted_day")
