"""The day on which the first part of a bed was sown, whose rest is sown later."""

import sqlalchemy as sa
from alembic import op

revision = "v0077"
down_revision = "v0076"
branch_labels = None
depends_on = None


def upgrade() -> None:
    with op.batch_alter_table("nursery") as nursery:
        nursery.add_column(sa.Column("part_sown_on", sa.Date(), nullable=True))


def downgrade() -> None:
    with op.batch_alter_table("nursery") as nursery:
        nursery.drop_column("part_sown_on")
