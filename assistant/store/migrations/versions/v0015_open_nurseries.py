"""An index of the open nurseries only, to find those that nobody will tell the end of."""

import sqlalchemy as sa
from alembic import op

revision = "v0015"
down_revision = "v0014"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_index(
        op.f("ix_nursery_open"),
        "nursery",
        ["sow_date"],
        sqlite_where=sa.text("closed IS 0"),
        postgresql_where=sa.text("closed IS false"),
    )


def downgrade() -> None:
    op.drop_index(op.f("ix_nursery_open"), "nursery")
