"""How long a bed's variety takes to harvest, and at which age it is planted."""

import sqlalchemy as sa
from alembic import op

revision = "v0071"
down_revision = "v0070"
branch_labels = None
depends_on = None

_NAMES = ("ripens_d", "age_first", "age_last")


def upgrade() -> None:
    with op.batch_alter_table("nursery") as nursery:
        for name in _NAMES:
            nursery.add_column(sa.Column(name, sa.Integer(), nullable=True))


def downgrade() -> None:
    with op.batch_alter_table("nursery") as nursery:
        for name in reversed(_NAMES):
            nursery.drop_column(name)
