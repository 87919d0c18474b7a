"""Since when a text could have left that a line put off; when one may have left unanswered."""

import sqlalchemy as sa
from alembic import op

revision = "v0069"
down_revision = "v0068"
branch_labels = None
depends_on = None


def upgrade() -> None:
    with op.batch_alter_table("outbox") as outbox:
        for name in ("waits_since", "doubted_at"):
            outbox.add_column(sa.Column(name, sa.DateTime(timezone=True), nullable=True))
