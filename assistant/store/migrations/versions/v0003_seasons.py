"""What follows on a plan: a seed test begun, mats sown again, and the season's result."""

import sqlalchemy as sa
from alembic import op

revision = "v0003"
down_revision = "v0002"
branch_labels = None
depends_on = None


def upgrade() -> None:
    with op.batch_alter_table("nursery") as nursery:
        nursery.add_column(sa.Column("test_begun", sa.Date(), nullable=True))
        nursery.add_column(_flag("test_counted"))
        nursery.add_column(_flag("resown"))
    op.create_table(
        "season_result",
        sa.Column("id", _number(), primary_key=True),
        _of("nursery", unique=True),
        _of("farmer", index=True),
        sa.Column("ended_on", sa.Date(), nullable=False),
        _measure("field_area_m2"),
        _measure("planted_area_m2"),
        sa.Column("mats", sa.Integer(), nullable=False),
        _measure("mats_left"),
        sa.Column("resown", sa.Boolean(), nullable=False),
        _measure("establishment"),
    )


def downgrade() -> None:
    raise NotImplementedError("results are not taken away: restore a backup instead")


def _number() -> sa.types.TypeEngine[int]:
    return sa.BigInteger().with_variant(sa.Integer(), "sqlite")


def _of(table: str, *, index: bool = False, unique: bool = False) -> sa.Column[int]:
    place = sa.ForeignKey(f"{table}.id")
    name = f"{table}_id"
    return sa.Column(name, _number(), place, nullable=False, index=index, unique=unique)


def _flag(name: str) -> sa.Column[bool]:
    """A new flag of an old table: rows that are there already have it down."""
    return sa.Column(name, sa.Boolean(), nullable=False, server_default=sa.false())


def _measure(name: str) -> sa.Column[float]:
    return sa.Column(name, sa.Double(), nullable=False)
