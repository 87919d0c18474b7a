"""The day of the last flood or storm over a bed."""

import sqlalchemy as sa
from alembic import op

revision = "v0063"
down_revision = "v0062"
branch_labels = None
depends_on = None


def upgrade() -> None:
    with op.batch_alter_table("nursery") as nursery:
        nursery.add_column(sa.Column("flooded_on", sa.Date(), nullable=True))
