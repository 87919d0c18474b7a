"""Official alerts, the codes by which they name villages, and where they are read."""

from typing import Any

import sqlalchemy as sa
from alembic import op

revision = "v0012"
down_revision = "v0011"
branch_labels = None
depends_on = None


def upgrade() -> None:
    _alerts()
    op.create_table(
        "alert_reference",
        sa.Column("id", _number(), primary_key=True),
        _of("alert", index=True),
        *_key(null=False),
        sa.Index(None, "sender", "identifier", "sent"),
    )
    op.create_table(
        "alert_village",
        _of("alert", primary_key=True),
        _of("village", primary_key=True, index=True),
    )
    op.create_table(
        "village_geocode",
        _of("village", primary_key=True),
        _words("name", primary_key=True),
        _words("value", primary_key=True),
    )
    op.create_table(
        "alert_source",
        _words("name", primary_key=True),
        _moment("looked_at", null=True),
        *map(_words, ("etag", "modified", "trouble")),
        _moment("well_at", null=True),
    )


def downgrade() -> None:
    raise NotImplementedError("what services said is not taken away: restore a backup instead")


def _alerts() -> None:
    op.create_table(
        "alert",
        sa.Column("id", _number(), primary_key=True),
        _words("source"),
        _words("digest", unique=True),
        sa.Column("raw", sa.LargeBinary(), nullable=False),
        _moment("received_at"),
        sa.Column("became", sa.String(32), nullable=False),
        *_key(null=True),
        *(_words(name, null=True) for name in ("status", "kind", "scope")),
        sa.Column("signed", sa.Boolean(), nullable=False),
        sa.Column("told", sa.JSON(), nullable=False),
        _moment("starts_at", null=True),
        _moment("ends_at", null=True),
        _of("alert", name="replaced_by", null=True, index=True),
        sa.Index(None, "sender", "identifier", "sent"),
    )


def _key(*, null: bool) -> tuple[sa.Column[Any], ...]:
    """What names a message among all."""
    return (
        _words("sender", null=null),
        _words("identifier", null=null),
        _moment("sent", null=null),
    )


def _number() -> sa.types.TypeEngine[int]:
    return sa.BigInteger().with_variant(sa.Integer(), "sqlite")


def _of(table: str, *, name: str = "", null: bool = False, **more: Any) -> sa.Column[int]:
    """The column that names a row of another table."""
    place = sa.ForeignKey(f"{table}.id")
    return sa.Column(name or f"{table}_id", _number(), place, nullable=null, **more)


def _words(name: str, *, null: bool = False, **more: Any) -> sa.Column[str]:
    return sa.Column(name, sa.String(), nullable=null, **more)


def _moment(name: str, *, null: bool = False) -> sa.Column[Any]:
    return sa.Column(name, sa.DateTime(timezone=True), nullable=null)
