"""The tables of 0.1.0, the first release: what came before was joined into this one state.

A database of 0.1.0 is at this state and a new one is made at the last (`store/making.py`), so
that nobody goes through here. What it held stands in `tests/unit/store/release_0_1_0`.
"""

revision = "v0056"
down_revision = None
branch_labels = None
depends_on = None


def upgrade() -> None:
    raise NotImplementedError("a new database is made at the last state, never at this one")
