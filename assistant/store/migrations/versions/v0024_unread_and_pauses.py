"""Replies that could not be read with whose they were; daily texts that rest."""

import sqlalchemy as sa
from alembic import op

revision = "v0024"
down_revision = "v0023"
branch_labels = None
depends_on = None

_UNREAD = "unread_reply"
_LINK = "fk_unread_reply_farmer_id_farmer"


def upgrade() -> None:
    number = sa.BigInteger().with_variant(sa.Integer(), "sqlite")
    with op.batch_alter_table(_UNREAD) as unread:
        unread.add_column(sa.Column("phone", sa.String(), nullable=True))
        unread.add_column(sa.Column("farmer_id", number, nullable=True))
        unread.add_column(
            sa.Column("lately", sa.Boolean(), nullable=False, server_default=sa.false())
        )
        unread.create_foreign_key(_LINK, "farmer", ["farmer_id"], ["id"])
    op.create_index(op.f("ix_unread_reply_phone"), _UNREAD, ["phone"])
    op.create_index(op.f("ix_unread_reply_farmer_id"), _UNREAD, ["farmer_id"])
    with op.batch_alter_table("farmer") as farmer:
        farmer.add_column(sa.Column("paused_at", sa.DateTime(timezone=True), nullable=True))


def downgrade() -> None:
    with op.batch_alter_table("farmer") as farmer:
        farmer.drop_column("paused_at")
    for column in ("phone", "farmer_id"):
        op.drop_index(op.f(f"ix_unread_reply_{column}"), _UNREAD)
    with op.batch_alter_table(_UNREAD) as unread:
        unread.drop_constraint(_LINK, type_="foreignkey")
        for column in ("phone", "farmer_id", "lately"):
            unread.drop_column(column)
