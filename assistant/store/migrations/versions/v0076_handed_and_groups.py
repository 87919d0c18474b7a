"""Calls handed to another officer, own groups, words that leave later; indexes of what pages
ask for: what lines took of a day, and advised urea."""

import sqlalchemy as sa
from alembic import op

revision = "v0076"
down_revision = "v0075"
branch_labels = None
depends_on = None

_KEY = sa.BigInteger().with_variant(sa.Integer(), "sqlite")
_MOMENT = sa.DateTime(timezone=True)
_ADVISED = sa.text("urea_on IS NOT NULL")


def _to(table: str, column: str, other: str) -> sa.ForeignKeyConstraint:
    name = op.f(f"fk_{table}_{column}_{other}")
    return sa.ForeignKeyConstraint([column], [f"{other}.id"], name=name)


def upgrade() -> None:
    op.create_table(
        "call_handed",
        sa.Column("id", _KEY, nullable=False),
        sa.Column("call_id", _KEY, nullable=False),
        sa.Column("from_id", _KEY, nullable=False),
        sa.Column("to_id", _KEY, nullable=False),
        sa.Column("at", _MOMENT, nullable=False),
        _to("call_handed", "call_id", "call_for_help"),
        _to("call_handed", "from_id", "officer"),
        _to("call_handed", "to_id", "officer"),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_call_handed")),
    )
    op.create_index(op.f("ix_call_handed_call_id"), "call_handed", ["call_id"])
    op.create_index(op.f("ix_call_handed_to_id"), "call_handed", ["to_id"])
    op.create_table(
        "own_group",
        sa.Column("id", _KEY, nullable=False),
        sa.Column("officer_id", _KEY, nullable=False),
        sa.Column("name", sa.String(), nullable=False),
        sa.Column("made_at", _MOMENT, nullable=False),
        _to("own_group", "officer_id", "officer"),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_own_group")),
    )
    op.create_index(op.f("ix_own_group_officer_id"), "own_group", ["officer_id"])
    op.create_table(
        "own_group_member",
        sa.Column("group_id", _KEY, nullable=False),
        sa.Column("farmer_id", _KEY, nullable=False),
        _to("own_group_member", "group_id", "own_group"),
        _to("own_group_member", "farmer_id", "farmer"),
        sa.PrimaryKeyConstraint("group_id", "farmer_id", name=op.f("pk_own_group_member")),
    )
    op.create_index(op.f("ix_own_group_member_farmer_id"), "own_group_member", ["farmer_id"])
    with op.batch_alter_table("broadcast") as broadcast:
        broadcast.add_column(sa.Column("group_id", _KEY, nullable=True))
        broadcast.add_column(sa.Column("due_at", _MOMENT, nullable=True))
    taken = op.f("ix_outbox_accepted_at_segments")
    op.create_index(taken, "outbox", ["accepted_at", "segments"])
    op.create_index(
        "ix_nursery_urea",
        "nursery",
        ["urea_on"],
        sqlite_where=_ADVISED,
        postgresql_where=_ADVISED,
    )


def downgrade() -> None:
    op.drop_index("ix_nursery_urea", "nursery")
    op.drop_index(op.f("ix_outbox_accepted_at_segments"), "outbox")
    with op.batch_alter_table("broadcast") as broadcast:
        broadcast.drop_column("due_at")
        broadcast.drop_column("group_id")
    op.drop_table("own_group_member")
    op.drop_table("own_group")
    op.drop_table("call_handed")
