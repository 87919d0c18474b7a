"""By whose key the signature of an official alert was found right; empty where it was wrong."""

import sqlalchemy as sa
from alembic import op

revision = "v0021"
down_revision = "v0020"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.add_column("alert", sa.Column("sealed_by", sa.String(), nullable=True))


def downgrade() -> None:
    op.drop_column("alert", "sealed_by")
