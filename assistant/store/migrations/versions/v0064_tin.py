"""A farmer's own tin, measured by the pail."""

import sqlalchemy as sa
from alembic import op

revision = "v0064"
down_revision = "v0063"
branch_labels = None
depends_on = None


def upgrade() -> None:
    with op.batch_alter_table("nursery") as nursery:
        nursery.add_column(sa.Column("tin_litres", sa.Double(), nullable=True))
