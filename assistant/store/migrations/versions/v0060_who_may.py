"""Sessions kept by the server, browsers that are known, second factors, codes that roll. The
key that signed sessions no longer stands in the database."""

import sqlalchemy as sa
from alembic import op

revision = "v0060"
down_revision = "v0030"
branch_labels = None
depends_on = None


def upgrade() -> None:
    number = sa.BigInteger().with_variant(sa.Integer(), "sqlite")
    moment = sa.DateTime(timezone=True)
    for table, times, more in (
        ("web_session", ("begun_at", "seen_at", "proved_at"), ("browser",)),
        ("known_browser", ("at",), ()),
    ):
        op.create_table(
            table,
            sa.Column("key", sa.String(), primary_key=True),
            sa.Column("officer_id", number, sa.ForeignKey("officer.id"), nullable=False),
            *(sa.Column(name, moment, nullable=False) for name in times),
            *(sa.Column(name, sa.String(), nullable=False) for name in more),
        )
        op.create_index(op.f(f"ix_{table}_officer_id"), table, ["officer_id"])
    op.create_table(
        "one_time_code",
        sa.Column("phone", sa.String(), primary_key=True),
        sa.Column("code_hash", sa.String(), nullable=False),
        sa.Column("sent_at", moment, nullable=False),
        sa.Column("tries", sa.Integer(), nullable=False),
    )
    with op.batch_alter_table("officer") as officer:
        officer.drop_column("session_epoch")
        officer.add_column(sa.Column("totp_salt", sa.String()))
        officer.add_column(sa.Column("totp_last", sa.Integer()))
        officer.add_column(sa.Column("next_code_hash", sa.String()))
        officer.add_column(
            sa.Column("code_uses", sa.Integer(), nullable=False, server_default="0")
        )
    op.execute("DELETE FROM kept_secret WHERE name = 'web sessions'")


def downgrade() -> None:
    with op.batch_alter_table("officer") as officer:
        for column in ("totp_salt", "totp_last", "next_code_hash", "code_uses"):
            officer.drop_column(column)
        officer.add_column(
            sa.Column("session_epoch", sa.Integer(), nullable=False, server_default="0")
        )
    for table in ("web_session", "known_browser", "one_time_code"):
        op.drop_table(table)
