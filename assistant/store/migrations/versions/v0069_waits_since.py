"""Since when a text could have left that a line put off."""

import sqlalchemy as sa
from alembic import op

revision = "v0069"
down_revision = "v0068"
branch_labels = None
depends_on = None


def upgrade() -> None:
    with op.batch_alter_table("outbox") as outbox:
        outbox.add_column(sa.Column("waits_since", sa.DateTime(timezone=True), nullable=True))


def downgrade() -> None:
    with op.batch_alter_table("outbox") as outbox:
        outbox.drop_column("waits_since")
