"""Drafts of rain warnings, calling back, the second text, and where a village lies.

A warning that was given before has a draft too, sent when it was made: the page shows
warnings by their drafts.
"""

from typing import Any

import sqlalchemy as sa
from alembic import op

revision = "v0010"
down_revision = "v0009"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.add_column("warning", _moment("recalled_at", null=True))
    op.add_column("warning_phone", _moment("asked_again_at", null=True))
    for name in ("latitude", "longitude"):
        op.add_column("village", sa.Column(name, sa.Double(), nullable=True))
    draft = _draft()
    village = op.create_table(
        "warning_draft_village",
        _of("warning_draft", name="draft_id", primary_key=True),
        _of("village", primary_key=True, index=True),
        _of("warning", null=True, index=True),
    )
    _keep_what_was_sent(draft, village)


def downgrade() -> None:
    raise NotImplementedError("warnings are not taken away: restore a backup instead")


def _draft() -> sa.Table:
    return op.create_table(
        "warning_draft",
        sa.Column("id", _number(), primary_key=True),
        _name("source"),
        _of("officer", name="made_by", null=True),
        sa.Column("alert_id", _number(), nullable=True, index=True),
        _moment("starts_at"),
        _moment("ends_at", index=True),
        _name("certainty"),
        sa.Column("hazard", sa.String(), nullable=False),
        sa.Column("words", sa.String(), nullable=False),
        _moment("created_at"),
        _moment("decided_at", null=True),
        _of("officer", name="decided_by", null=True),
        _name("decision", null=True),
    )


def _keep_what_was_sent(draft: sa.Table, village: sa.Table) -> None:
    given = sa.table(
        "warning",
        *(sa.column(name) for name in ("id", "village_id", "officer_id")),
        *(sa.column(name, _time()) for name in ("starts_at", "ends_at", "issued_at")),
    )
    connection = op.get_bind()
    for row in connection.execute(sa.select(given)).all():
        sent = {"decided_at": row.issued_at, "decided_by": row.officer_id, "decision": "sent"}
        new = sa.insert(draft).values(
            source="text",
            made_by=row.officer_id,
            starts_at=row.starts_at,
            ends_at=row.ends_at,
            certainty="unknown",
            hazard="rain",
            words="",
            created_at=row.issued_at,
            **sent,
        )
        draft_id = connection.execute(new.returning(draft.c.id)).scalar_one()
        link = {"draft_id": draft_id, "village_id": row.village_id, "warning_id": row.id}
        connection.execute(sa.insert(village).values(**link))


def _number() -> sa.types.TypeEngine[int]:
    return sa.BigInteger().with_variant(sa.Integer(), "sqlite")


def _time() -> sa.types.TypeEngine[Any]:
    return sa.DateTime(timezone=True)


def _of(table: str, *, name: str = "", null: bool = False, **more: Any) -> sa.Column[int]:
    """The column that names a row of another table."""
    place = sa.ForeignKey(f"{table}.id")
    return sa.Column(name or f"{table}_id", _number(), place, nullable=null, **more)


def _name(name: str, *, null: bool = False) -> sa.Column[str]:
    return sa.Column(name, sa.String(32), nullable=null)


def _moment(name: str, *, null: bool = False, **more: Any) -> sa.Column[Any]:
    return sa.Column(name, _time(), nullable=null, **more)
