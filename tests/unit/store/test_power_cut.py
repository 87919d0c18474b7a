"""What the operator was told is kept must outlive a power cut."""

import sys
from pathlib import Path
from subprocess import run

ASKED = """
import sys
from assistant.store.engine import open_engine
with open_engine(sys.argv[1]).connect() as connection:
    print(connection.exec_driver_sql("pragma synchronous").scalar())
"""
FULL = "2"  # https://sqlite.org/pragma.html#pragma_synchronous


def test_sqlite_waits_for_the_disk(tmp_path: Path) -> None:
    """In a process of its own: tests themselves do not wait."""
    url = f"sqlite:///{tmp_path / 'nursery.sqlite3'}"
    said = run([sys.executable, "-c", ASKED, url], capture_output=True, text=True, check=True)
    assert said.stdout.strip() == FULL
