"""The short form of `python -m tests.chaos`: some kills and faults, and a copy put back."""

import subprocess
import sys

import pytest

FAULTS = 8


@pytest.mark.parametrize("seed", [4])
def test_nothing_is_lost_or_double(seed: int, pytestconfig: pytest.Config) -> None:
    """In a process of its own, as at a desk."""
    command = [sys.executable, "-m", "tests.chaos", "--kills", str(FAULTS), "--seed", str(seed)]
    done = subprocess.run(command, cwd=pytestconfig.rootpath, capture_output=True, text=True)
    assert done.returncode == 0, done.stdout + done.stderr[-2000:]
    assert f"seed {seed}" in done.stdout
