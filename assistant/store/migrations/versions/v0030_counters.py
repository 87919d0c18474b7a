"""How often the villages changed: processes keep them in memory and read them again then."""

import sqlalchemy as sa
from alembic import op

revision = "v0030"
down_revision = "v0036"
branch_labels = None
depends_on = None


def upgrade() -> None:
    counter = op.create_table(
        "counter",
        sa.Column("name", sa.String(), nullable=False),
        sa.Column("number", sa.Integer(), nullable=False),
        sa.PrimaryKeyConstraint("name", name="pk_counter"),
    )
    op.bulk_insert(counter, [{"name": "villages", "number": 0}])


def downgrade() -> None:
    op.drop_table("counter")
