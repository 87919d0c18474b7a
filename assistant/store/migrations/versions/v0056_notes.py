"""Notes that officers' phones send when they have a line are taken once."""

import sqlalchemy as sa
from alembic import op

revision = "v0056"
down_revision = "v0055"
branch_labels = None
depends_on = None


def upgrade() -> None:
    number = sa.BigInteger().with_variant(sa.Integer(), "sqlite")
    op.create_table(
        "desk_note",
        sa.Column("key", sa.String(), primary_key=True),
        sa.Column("officer_id", number, sa.ForeignKey("officer.id"), primary_key=True),
        sa.Column("at", sa.DateTime(timezone=True), nullable=False),
    )


def downgrade() -> None:
    op.drop_table("desk_note")
