"""The benchmarks of what the clock brings, and of what a text costs, run small, so that none of
them is broken unseen."""

import os
import subprocess
import sys

import pytest

from assistant.channel import Channel
from tests.benchmarks.__main__ import NAMES, PLAIN
from tests.benchmarks.segments import season

TOGETHER = (
    "receive morning tick dispatch receipts growth ussd",
    "alphabet agronomy reading lines warning office_list",
    "memory",
    "pages",
)
WITH_TESTS_OF_THEIR_OWN = {"segments", "line_morning", "clicks"}


def test_none_is_left_out() -> None:
    """One that is new must be put into a row above."""
    run = {name for names in TOGETHER for name in names.split()}
    assert run | WITH_TESTS_OF_THEIR_OWN == {*NAMES, *PLAIN}


@pytest.mark.parametrize("names", TOGETHER)
def test_they_run_small(names: str, postgres_server: str, pytestconfig: pytest.Config) -> None:
    """On both databases, in a process of their own as at a desk. Nothing is timed here."""
    env = os.environ | {
        "NURSERY_BENCHMARKS": "small",
        "NURSERY_TEST_POSTGRES_URL": postgres_server,
    }
    command = [sys.executable, "-m", "tests.benchmarks", *names.split(), "--runs", "1"]
    done = subprocess.run(
        command, cwd=pytestconfig.rootpath, env=env, capture_output=True, text=True
    )
    assert done.returncode == 0, done.stderr[-2000:]
    assert done.stdout


@pytest.mark.parametrize("channel", Channel)
def test_a_season_is_played_to_its_end_and_costs_what_was_sent(channel: Channel) -> None:
    """In one language: every question that comes has its answer, and nothing stays open."""
    bill = season("en", channel)
    assert bill.texts <= bill.segments <= bill.texts * bill.longest
    assert bill.wide == 0, "English needs no letter that the GSM alphabet lacks"
