"""What stops texts: a person, or a limit on what is spent."""

import sqlalchemy as sa
from alembic import op

revision = "v0061"
down_revision = "v0056"
branch_labels = None
depends_on = None


def upgrade() -> None:
    number = sa.BigInteger().with_variant(sa.Integer(), "sqlite")
    moment = sa.DateTime(timezone=True)
    op.create_table(
        "brake",
        sa.Column("id", number, primary_key=True),
        sa.Column("what", sa.String(), nullable=False),
        sa.Column("which", sa.String(), nullable=False),
        sa.Column("village_id", number, sa.ForeignKey("village.id")),
        sa.Column("why", sa.String(), nullable=False),
        sa.Column("officer_id", number, sa.ForeignKey("officer.id")),
        sa.Column("at", moment, nullable=False),
        sa.Column("until", moment),
        sa.Column("let_go_at", moment),
    )
    op.create_index(op.f("ix_brake_at"), "brake", ["at"])
    op.create_table(
        "spent",
        sa.Column("day", sa.Date(), primary_key=True),
        sa.Column("segments", sa.Integer(), nullable=False),
    )
