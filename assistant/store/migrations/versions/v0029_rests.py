"""What the clock looks at stands in two small indexes: what is to come, and what was asked.
What is planned or asked of who wants no texts rests, and is in neither."""

import sqlalchemy as sa
from alembic import op

revision = "v0029"
down_revision = "v0028"
branch_labels = None
depends_on = None

_BEFORE = "ix_reminder_state_task_due_at"
_INDEXES = (
    ("ix_reminder_to_come", ["due_at", "nursery_id"], "planned"),
    ("ix_reminder_asked", ["task", "due_at"], "sent"),
)


def upgrade() -> None:
    op.drop_index(_BEFORE, "reminder")
    with op.batch_alter_table("reminder") as reminder:
        reminder.add_column(
            sa.Column("rests", sa.Boolean(), nullable=False, server_default=sa.false())
        )
    for name, columns, state in _INDEXES:
        op.create_index(
            name,
            "reminder",
            columns,
            sqlite_where=sa.text(f"state = '{state}' AND rests IS 0"),
            postgresql_where=sa.text(f"state = '{state}' AND rests IS false"),
        )


def downgrade() -> None:
    for name, _, _ in _INDEXES:
        op.drop_index(name, "reminder")
    with op.batch_alter_table("reminder") as reminder:
        reminder.drop_column("rests")
    op.create_index(_BEFORE, "reminder", ["state", "task", "due_at"])
