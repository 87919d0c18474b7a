"""Indexes for the latest messages of all villages, whose list begins at its end."""

from alembic import op

revision = "v0014"
down_revision = "v0013"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_index(op.f("ix_outbox_due_at"), "outbox", ["due_at"])
    op.create_index(op.f("ix_incoming_at"), "incoming", ["at"])


def downgrade() -> None:
    op.drop_index(op.f("ix_incoming_at"), "incoming")
    op.drop_index(op.f("ix_outbox_due_at"), "outbox")
