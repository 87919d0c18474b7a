"""The mean temperature of each month in a village, which the days of its beds follow."""

import sqlalchemy as sa
from alembic import op

revision = "v0028"
down_revision = "v0027"
branch_labels = None
depends_on = None


def upgrade() -> None:
    with op.batch_alter_table("village") as village:
        village.add_column(sa.Column("climate", sa.JSON(), nullable=True))


def downgrade() -> None:
    with op.batch_alter_table("village") as village:
        village.drop_column("climate")
