"""Alarms: how far a cry for help has come, who was told; messages shown to nobody."""

import sqlalchemy as sa
from alembic import op

revision = "v0023"
down_revision = "v0022"
branch_labels = None
depends_on = None

_MESSAGES = ("incoming", "outbox")


def upgrade() -> None:
    number = sa.BigInteger().with_variant(sa.Integer(), "sqlite")
    moment = sa.DateTime(timezone=True)
    op.create_table(
        "alarm",
        sa.Column("call_id", number, sa.ForeignKey("call_for_help.id"), primary_key=True),
        sa.Column("village_id", number, sa.ForeignKey("village.id")),
        sa.Column("sure", sa.Boolean(), nullable=False),
        sa.Column("said", sa.String()),
        sa.Column("next_at", moment),
        sa.Column("turn", sa.Integer(), nullable=False),
        sa.Column("note", sa.String(), nullable=False),
    )
    op.create_index(op.f("ix_alarm_next_at"), "alarm", ["next_at"])
    op.create_table(
        "alarm_told",
        sa.Column("id", number, primary_key=True),
        sa.Column("call_id", number, sa.ForeignKey("alarm.call_id"), nullable=False),
        sa.Column("officer_id", number, sa.ForeignKey("officer.id"), nullable=False),
        sa.Column("turn", sa.Integer(), nullable=False),
        sa.Column("message_id", sa.String(), nullable=False),
        sa.Column("at", moment, nullable=False),
    )
    told = "alarm_told"
    op.create_index(op.f("ix_alarm_told_call_id_officer_id"), told, ["call_id", "officer_id"])
    op.create_index(op.f("ix_alarm_told_officer_id"), told, ["officer_id"])
    op.create_index(op.f("ix_alarm_told_message_id"), told, ["message_id"])
    for table in _MESSAGES:
        with op.batch_alter_table(table) as messages:
            messages.add_column(
                sa.Column("private", sa.Boolean(), nullable=False, server_default=sa.false())
            )


def downgrade() -> None:
    for table in _MESSAGES:
        with op.batch_alter_table(table) as messages:
            messages.drop_column("private")
    op.drop_table("alarm_told")
    op.drop_table("alarm")
