"""Questions that an office answers, and how often each question is asked."""

import sqlalchemy as sa
from alembic import op

revision = "v0074"
down_revision = "v0073"
branch_labels = None
depends_on = None

_KEY = sa.BigInteger().with_variant(sa.Integer(), "sqlite")
_MOMENT = sa.DateTime(timezone=True)


def _officer(name: str) -> sa.ForeignKeyConstraint:
    constraint = op.f(f"fk_office_question_{name}_officer")
    return sa.ForeignKeyConstraint([name], ["officer.id"], name=constraint)


def upgrade() -> None:
    op.create_table(
        "office_question",
        sa.Column("id", _KEY, nullable=False),
        sa.Column("language", sa.String(), nullable=False),
        sa.Column("village_id", _KEY, nullable=True),
        sa.Column("ways", sa.JSON(), nullable=False),
        sa.Column("answer", sa.String(), nullable=False),
        sa.Column("added_by", _KEY, nullable=True),
        sa.Column("added_at", _MOMENT, nullable=False),
        sa.Column("read_by", _KEY, nullable=True),
        sa.Column("read_at", _MOMENT, nullable=True),
        sa.Column("withdrawn_at", _MOMENT, nullable=True),
        _officer("added_by"),
        _officer("read_by"),
        sa.ForeignKeyConstraint(
            ["village_id"], ["village.id"], name=op.f("fk_office_question_village_id_village")
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_office_question")),
    )
    op.create_table(
        "question_count",
        sa.Column("month", sa.Date(), nullable=False),
        sa.Column("village_id", _KEY, nullable=False),
        sa.Column("code", sa.String(), nullable=False),
        sa.Column("answered", sa.Integer(), nullable=False),
        sa.Column("offered", sa.Integer(), nullable=False),
        sa.PrimaryKeyConstraint("month", "village_id", "code", name=op.f("pk_question_count")),
    )


def downgrade() -> None:
    op.drop_table("question_count")
    op.drop_table("office_question")
