"""The benchmarks of what the clock brings run, small, so that none of them is broken unseen."""

import os
import subprocess
import sys

import pytest

NAMES = ("morning", "tick", "dispatch", "receipts")


def test_they_run_small(postgres_server: str, pytestconfig: pytest.Config) -> None:
    """On both databases, in a process of their own as at a desk. Nothing is timed here."""
    env = os.environ | {
        "NURSERY_BENCHMARKS": "small",
        "NURSERY_TEST_POSTGRES_URL": postgres_server,
    }
    command = [sys.executable, "-m", "tests.benchmarks", *NAMES, "--runs", "1"]
    done = subprocess.run(
        command, cwd=pytestconfig.rootpath, env=env, capture_output=True, text=True
    )
    assert done.returncode == 0, done.stderr[-2000:]
    assert "workers" in done.stdout
