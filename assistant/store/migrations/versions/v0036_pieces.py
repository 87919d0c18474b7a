"""Pieces of long texts that a line brings one by one, until all of them are there."""

import sqlalchemy as sa
from alembic import op

revision = "v0036"
down_revision = "v0035"
branch_labels = None
depends_on = None

_KEY = ["line", "phone", "ref", "parts", "part"]


def upgrade() -> None:
    number = sa.BigInteger().with_variant(sa.Integer(), "sqlite")
    moment = sa.DateTime(timezone=True)
    op.create_table(
        "piece",
        sa.Column("id", number, primary_key=True),
        sa.Column("line", sa.String(), nullable=False),
        sa.Column("phone", sa.String(), nullable=False),
        sa.Column("ref", sa.String(), nullable=False),
        sa.Column("parts", sa.Integer(), nullable=False),
        sa.Column("part", sa.Integer(), nullable=False),
        sa.Column("gateway_id", sa.String(), nullable=False),
        sa.Column("text", sa.String(), nullable=False),
        sa.Column("at", moment, nullable=False),
        sa.Column("kept_at", moment, nullable=False),
        sa.Column("joined", sa.Boolean(), nullable=False),
        sa.UniqueConstraint(*_KEY, name=op.f("uq_piece_line_phone_ref_parts_part")),
    )
    op.create_index(op.f("ix_piece_kept_at"), "piece", ["kept_at"])


def downgrade() -> None:
    op.drop_table("piece")
