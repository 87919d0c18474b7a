"""What a bigha, a plot or a rante is in a village."""

import sqlalchemy as sa
from alembic import op

revision = "v0075"
down_revision = "v0074"
branch_labels = None
depends_on = None


def upgrade() -> None:
    with op.batch_alter_table("village") as village:
        village.add_column(sa.Column("units", sa.JSON(), nullable=True))


def downgrade() -> None:
    with op.batch_alter_table("village") as village:
        village.drop_column("units")
