"""An officer's words to many farmers."""

from typing import Any

import sqlalchemy as sa
from alembic import op

revision = "v0017"
down_revision = "v0016"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "broadcast",
        sa.Column("id", _number(), primary_key=True),
        sa.Column("made_by", _number(), sa.ForeignKey("officer.id"), nullable=False),
        _words("words"),
        sa.Column("village_ids", sa.JSON(), nullable=False),
        _words("stage"),
        _words("practice", null=True),
        _moment("made_at", index=True),
        _moment("sent_at", null=True),
    )
    op.create_table(
        "broadcast_phone",
        sa.Column("broadcast_id", _number(), sa.ForeignKey("broadcast.id"), primary_key=True),
        sa.Column("phone", sa.String(), primary_key=True),
        _words("message_id", unique=True),
    )


def downgrade() -> None:
    raise NotImplementedError("what was written is not taken away: restore a backup instead")


def _number() -> sa.types.TypeEngine[int]:
    return sa.BigInteger().with_variant(sa.Integer(), "sqlite")


def _words(name: str, *, null: bool = False, **more: Any) -> sa.Column[str]:
    return sa.Column(name, sa.String(), nullable=null, **more)


def _moment(name: str, *, null: bool = False, **more: Any) -> sa.Column[Any]:
    return sa.Column(name, sa.DateTime(timezone=True), nullable=null, **more)
