"""Officers whose account is closed: no way in by page or text, their story stays."""

import sqlalchemy as sa
from alembic import op

revision = "v0016"
down_revision = "v0015"
branch_labels = None
depends_on = None


def upgrade() -> None:
    with op.batch_alter_table("officer") as officer:
        officer.add_column(sa.Column("closed_at", sa.DateTime(timezone=True), nullable=True))


def downgrade() -> None:
    raise NotImplementedError("closed accounts would be open again: restore a backup instead")
