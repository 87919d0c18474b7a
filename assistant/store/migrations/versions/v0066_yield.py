"""The paddy of a season, asked once after the harvest."""

import sqlalchemy as sa
from alembic import op

revision = "v0066"
down_revision = "v0065"
branch_labels = None
depends_on = None


def upgrade() -> None:
    with op.batch_alter_table("season_result") as season:
        season.add_column(sa.Column("yield_kg", sa.Double(), nullable=True))
        season.add_column(sa.Column("yield_asked", sa.Date(), nullable=True))
        season.create_index(op.f("ix_season_result_ended_on"), ["ended_on"])
