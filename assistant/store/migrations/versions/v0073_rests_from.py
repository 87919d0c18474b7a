"""When a line's pause began. One that begins later than now was kept by a wrong clock."""

import sqlalchemy as sa
from alembic import op

revision = "v0073"
down_revision = "v0072"
branch_labels = None
depends_on = None


def upgrade() -> None:
    with op.batch_alter_table("line") as line:
        line.add_column(sa.Column("rests_from", sa.DateTime(timezone=True), nullable=True))


def downgrade() -> None:
    with op.batch_alter_table("line") as line:
        line.drop_column("rests_from")
