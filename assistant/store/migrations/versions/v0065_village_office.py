"""Whom to turn to from a village is said on its page, and a village is retired."""

import sqlalchemy as sa
from alembic import op

revision = "v0065"
down_revision = "v0064"
branch_labels = None
depends_on = None


def upgrade() -> None:
    with op.batch_alter_table("village") as village:
        for name in ("emergency", "health_post", "vet"):
            village.add_column(sa.Column(name, sa.String(), nullable=True))
        village.add_column(sa.Column("retired_at", sa.DateTime(timezone=True), nullable=True))
