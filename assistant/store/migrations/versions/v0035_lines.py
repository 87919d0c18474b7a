"""Several lines: by which a phone wrote, by which a text went, the operator's ids of its parts,
and whose the connections are."""

import sqlalchemy as sa
from alembic import op

revision = "v0035"
down_revision = "v0029"
branch_labels = None
depends_on = None


def upgrade() -> None:
    number = sa.BigInteger().with_variant(sa.Integer(), "sqlite")
    moment = sa.DateTime(timezone=True)
    op.create_table(
        "heard_by",
        sa.Column("phone", sa.String(), primary_key=True),
        sa.Column("line", sa.String(), nullable=False),
        sa.Column("at", moment, nullable=False),
    )
    op.create_table(
        "part",
        sa.Column("id", number, primary_key=True),
        sa.Column("line", sa.String(), nullable=False),
        sa.Column("part", sa.String(), nullable=False),
        sa.Column("message_id", sa.String()),
        sa.Column("fate", sa.String()),
        sa.Column("at", moment, nullable=False),
        sa.Column("detail", sa.String(), nullable=False),
    )
    for columns in (["line", "part"], ["message_id"], ["at"]):
        op.create_index(op.f(f"ix_part_{'_'.join(columns)}"), "part", columns)
    op.create_table(
        "line_owner",
        sa.Column("name", sa.String(), primary_key=True),
        sa.Column("owner", sa.String(), nullable=False),
        sa.Column("until", moment, nullable=False),
    )
    with op.batch_alter_table("outbox") as outbox:
        outbox.add_column(sa.Column("line", sa.String()))


def downgrade() -> None:
    with op.batch_alter_table("outbox") as outbox:
        outbox.drop_column("line")
    for table in ("line_owner", "part", "heard_by"):
        op.drop_table(table)
