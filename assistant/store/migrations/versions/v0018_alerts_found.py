"""An index for the few official alerts that concern us, among all that came."""

from alembic import op

revision = "v0018"
down_revision = "v0017"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_index(op.f("ix_alert_became_received_at"), "alert", ["became", "received_at"])


def downgrade() -> None:
    op.drop_index(op.f("ix_alert_became_received_at"), "alert")
