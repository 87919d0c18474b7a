"""How the service runs: pulses, the line, rows set aside; and which texts leave first."""

import sqlalchemy as sa
from alembic import op

revision = "v0026"
down_revision = "v0025"
branch_labels = None
depends_on = None

_ORDER = ["state", "lane", "due_at", "id"]
# As the kinds were called when this was written; what is urgent goes before all.
_LANES = {
    0: ("warning", "all_clear"),
    1: ("reply", "notice"),
    4: ("letter", "consent"),
}


def upgrade() -> None:
    number = sa.BigInteger().with_variant(sa.Integer(), "sqlite")
    moment = sa.DateTime(timezone=True)
    op.create_table(
        "set_aside",
        sa.Column("nursery_id", number, sa.ForeignKey("nursery.id"), primary_key=True),
        sa.Column("why", sa.String(), nullable=False),
        sa.Column("since", moment, nullable=False),
    )
    op.create_table(
        "pulse",
        sa.Column("part", sa.String(), primary_key=True),
        sa.Column("at", moment, nullable=False),
    )
    op.create_table(
        "line",
        sa.Column("name", sa.String(), primary_key=True),
        sa.Column("answered_at", moment),
        sa.Column("took_at", moment),
        sa.Column("rests_until", moment),
        sa.Column("said", sa.String(), nullable=False),
        sa.Column("held_at", moment),
        sa.Column("held_why", sa.String(), nullable=False),
    )
    with op.batch_alter_table("outbox") as outbox:
        outbox.add_column(sa.Column("lane", sa.Integer(), nullable=False, server_default="2"))
    for lane, kinds in _LANES.items():
        named = ", ".join(f"'{kind}'" for kind in kinds)
        op.execute(f"UPDATE outbox SET lane = {lane} WHERE kind IN ({named})")
    op.execute("UPDATE outbox SET lane = 0 WHERE urgent")
    op.create_index(op.f("ix_outbox_state_lane_due_at_id"), "outbox", _ORDER)


def downgrade() -> None:
    op.drop_index(op.f("ix_outbox_state_lane_due_at_id"), "outbox")
    with op.batch_alter_table("outbox") as outbox:
        outbox.drop_column("lane")
    for table in ("line", "pulse", "set_aside"):
        op.drop_table(table)
