"""Who agreed to which words, who wants to be forgotten, seals of the trail."""

import sqlalchemy as sa
from alembic import op

revision = "v0062"
down_revision = "v0061"
branch_labels = None
depends_on = None


def upgrade() -> None:
    number = sa.BigInteger().with_variant(sa.Integer(), "sqlite")
    moment = sa.DateTime(timezone=True)
    op.create_table(
        "agreement",
        sa.Column("id", number, primary_key=True),
        sa.Column("farmer_id", number, sa.ForeignKey("farmer.id"), nullable=False),
        sa.Column("at", moment, nullable=False),
        sa.Column("channel", sa.String(), nullable=False),
        sa.Column("language", sa.String(), nullable=False),
        sa.Column("words", sa.String(), nullable=False),
    )
    op.create_index(op.f("ix_agreement_farmer_id"), "agreement", ["farmer_id"])
    op.create_table(
        "erasure",
        sa.Column("phone", sa.String(), primary_key=True),
        sa.Column("asked_at", moment, nullable=False),
        sa.Column("due_at", moment),
        sa.Column("officer_id", number, sa.ForeignKey("officer.id")),
    )
    op.create_index(op.f("ix_erasure_due_at"), "erasure", ["due_at"])
    op.create_table(
        "trail_seal",
        sa.Column("last_id", sa.Integer(), primary_key=True, autoincrement=False),
        sa.Column("at", moment, nullable=False),
        sa.Column("count", sa.Integer(), nullable=False),
        sa.Column("digest", sa.String(), nullable=False),
    )
    with op.batch_alter_table("audit") as audit:
        audit.add_column(sa.Column("detail_digest", sa.String()))
