"""Indexes that lead to one nursery's rows.

SQLite has no statistics here and guesses that `closed` picks few rows; it picks nearly all, so
each look for one farmer's nurseries read everybody's.
"""

from alembic import op

revision = "v0006"
down_revision = "v0005"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.drop_index(op.f("ix_nursery_closed_sow_date"), "nursery")
    op.create_index(op.f("ix_nursery_sow_date"), "nursery", ["sow_date"])
    op.create_index(
        op.f("ix_reminder_nursery_id_state_due_at"),
        "reminder",
        ["nursery_id", "state", "due_at"],
    )


def downgrade() -> None:
    op.drop_index(op.f("ix_reminder_nursery_id_state_due_at"), "reminder")
    op.drop_index(op.f("ix_nursery_sow_date"), "nursery")
    op.create_index(op.f("ix_nursery_closed_sow_date"), "nursery", ["closed", "sow_date"])
