"""Why a nursery's seed is soaked earlier, and how much seed was really sown in a season."""

import sqlalchemy as sa
from alembic import op

revision = "v0020"
down_revision = "v0019"
branch_labels = None
depends_on = None


def upgrade() -> None:
    with op.batch_alter_table("nursery") as nursery:
        for name in ("slow_seed", "cool_water"):
            nursery.add_column(
                sa.Column(name, sa.Boolean(), nullable=False, server_default=sa.false())
            )
        nursery.add_column(sa.Column("water_c", sa.Double(), nullable=True))
    with op.batch_alter_table("season_result") as season:
        season.add_column(
            sa.Column("seed_share", sa.Double(), nullable=False, server_default="1")
        )


def downgrade() -> None:
    with op.batch_alter_table("season_result") as season:
        season.drop_column("seed_share")
    with op.batch_alter_table("nursery") as nursery:
        for name in ("slow_seed", "cool_water", "water_c"):
            nursery.drop_column(name)
