"""An index for the few answers that an officer must look at, among all that were given."""

from alembic import op

revision = "v0007"
down_revision = "v0006"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_index(op.f("ix_reminder_answer_day"), "reminder", ["answer", "day"])


def downgrade() -> None:
    op.drop_index(op.f("ix_reminder_answer_day"), "reminder")
