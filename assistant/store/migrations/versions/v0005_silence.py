"""An index for what was asked and not answered, among all that was sent."""

from alembic import op

revision = "v0005"
down_revision = "v0004"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_index(
        op.f("ix_reminder_state_task_due_at"), "reminder", ["state", "task", "due_at"]
    )


def downgrade() -> None:
    op.drop_index(op.f("ix_reminder_state_task_due_at"), "reminder")
