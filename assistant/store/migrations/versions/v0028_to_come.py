"""What is due is found by one look at an index, whatever was said in seasons before."""

import sqlalchemy as sa
from alembic import op

revision = "v0028"
down_revision = "v0027"
branch_labels = None
depends_on = None

_INDEX = "ix_reminder_to_come"


def upgrade() -> None:
    planned = sa.text("state = 'planned'")
    op.create_index(
        _INDEX,
        "reminder",
        ["due_at", "nursery_id"],
        sqlite_where=planned,
        postgresql_where=planned,
    )


def downgrade() -> None:
    op.drop_index(_INDEX, "reminder")
