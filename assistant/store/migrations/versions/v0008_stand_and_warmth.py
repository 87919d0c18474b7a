"""What became of a thin stand and of yellow leaves, and the warmth that officers enter."""

import sqlalchemy as sa
from alembic import op

revision = "v0008"
down_revision = "v0007"
branch_labels = None
depends_on = None


def upgrade() -> None:
    with op.batch_alter_table("nursery") as nursery:
        nursery.add_column(sa.Column("urea_on", sa.Date(), nullable=True))
        nursery.add_column(sa.Column("hill_seedlings", sa.Integer(), nullable=True))
        nursery.add_column(sa.Column("more_on", sa.Date(), nullable=True))
        nursery.add_column(sa.Column("more_mats", sa.Integer(), nullable=True))
    op.create_table(
        "village_warmth",
        sa.Column("id", _number(), primary_key=True),
        sa.Column("village_id", _number(), sa.ForeignKey("village.id"), nullable=False),
        sa.Column("day", sa.Date(), nullable=False),
        sa.Column("mean_c", sa.Double(), nullable=False),
        sa.Column("officer_id", _number(), sa.ForeignKey("officer.id"), nullable=False),
        sa.Column("at", sa.DateTime(timezone=True), nullable=False),
        sa.UniqueConstraint("village_id", "day"),
    )


def downgrade() -> None:
    raise NotImplementedError("what was noted is not taken away: restore a backup instead")


def _number() -> sa.types.TypeEngine[int]:
    return sa.BigInteger().with_variant(sa.Integer(), "sqlite")
