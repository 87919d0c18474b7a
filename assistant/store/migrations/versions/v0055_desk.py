"""Officers mark what they have looked at, and can undo what they did a minute ago."""

import sqlalchemy as sa
from alembic import op

revision = "v0055"
down_revision = "v0060"
branch_labels = None
depends_on = None


def upgrade() -> None:
    number = sa.BigInteger().with_variant(sa.Integer(), "sqlite")
    op.create_table(
        "desk_mark",
        sa.Column("id", number, primary_key=True),
        sa.Column("kind", sa.String(), nullable=False),
        sa.Column("farmer_id", number, sa.ForeignKey("farmer.id"), nullable=False),
        sa.Column("officer_id", number, sa.ForeignKey("officer.id"), nullable=False),
        sa.Column("at", sa.DateTime(timezone=True), nullable=False),
    )
    op.create_index(op.f("ix_desk_mark_kind_farmer_id"), "desk_mark", ["kind", "farmer_id"])
    op.create_index(op.f("ix_desk_mark_farmer_id"), "desk_mark", ["farmer_id"])
    op.create_table(
        "desk_deed",
        sa.Column("id", number, primary_key=True),
        sa.Column("officer_id", number, sa.ForeignKey("officer.id"), nullable=False),
        sa.Column("at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("kind", sa.String(), nullable=False),
        sa.Column("count", sa.Integer(), nullable=False),
        sa.Column("before", sa.JSON(), nullable=False),
        sa.Column("undone_at", sa.DateTime(timezone=True), nullable=True),
    )
    op.create_index(op.f("ix_desk_deed_officer_id_at"), "desk_deed", ["officer_id", "at"])


def downgrade() -> None:
    op.drop_table("desk_deed")
    op.drop_table("desk_mark")
