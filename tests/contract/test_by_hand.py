"""The simulator as a person starts it to see what troubles of a line look like: by options of
the command, a process of its own."""

import re
import socket
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, datetime, timedelta

import pytest

from assistant.channel import Fate, Handover, Outgoing
from assistant.gateways.modem import ModemGateway, ModemTerms
from assistant.gateways.smpp import SmppGateway, SmppTerms
from gateway_sim.breaks import by_script, by_seed
from tests.contract.lines import SENDER

COMMAND = [sys.executable, "-m", "gateway_sim", "--port", "0"]


@contextmanager
def started(*options: str) -> Iterator[str]:
    """The simulator; the last line that it says, which tells how to reach it."""
    running = subprocess.Popen([*COMMAND, *options], stdout=subprocess.PIPE, text=True)
    try:
        assert running.stdout is not None
        yield [running.stdout.readline() for _ in range(4)][-1]
    finally:
        running.terminate()
        running.communicate(timeout=120)


def sent(gateway: SmppGateway | ModemGateway) -> Handover:
    """What is said of one text."""
    now = datetime.now(UTC)
    gateway.open(lambda news: None, lambda: datetime.now(UTC))
    try:
        assert gateway.wait_up(60), gateway.why
        return gateway.send(
            Outgoing("t-1", "+447700900101", "hi", now + timedelta(hours=1)), now
        )
    finally:
        gateway.close()


def test_a_card_without_credit_that_wants_its_pin() -> None:
    """As README's file of lines has it."""
    with started("--line", "modem", "--card", "no-credit", "--pin", "1234") as said:
        port = said.split()[-1]
        handover = sent(
            ModemGateway(ModemTerms(port, pin="1234", answer_s=60, send_s=60, poll_s=0.1))
        )
    assert handover.fate is Fate.TRY_LATER and "credit" in handover.detail


def test_faults_of_the_connection_by_script() -> None:
    """The first text meets the first."""
    with started("--line", "smpp", "--smpp-port", "0", "--faults", "throttle,,drop") as said:
        found = re.search(r":(\d+),", said)
        assert found, said
        handover = sent(
            SmppGateway(
                SmppTerms("127.0.0.1", "nursery", "secret", SENDER, int(found[1]), answer_s=60)
            )
        )
    assert handover.fate is Fate.TRY_LATER and handover.rest is not None


REFUSED = {
    "no such fault": (("--line", "smpp", "--smpp-port", "0", "--faults", "earthquake"), "drop"),
    "no card": (("--line", "smpp", "--smpp-port", "0", "--card", "missing"), "--line modem"),
    "no pin": (("--line", "smpp", "--smpp-port", "0", "--pin", "1"), "--line modem"),
}


@pytest.mark.parametrize("case", REFUSED)
def test_what_a_line_has_not_is_refused(case: str) -> None:
    """With what it has."""
    options, words = REFUSED[case]
    done = subprocess.run([*COMMAND, *options], capture_output=True, text=True, timeout=120)
    assert done.returncode == 2 and words in done.stderr


def test_a_port_that_is_taken_is_said() -> None:
    """In one line."""
    with socket.create_server(("127.0.0.1", 0)) as taken:
        port = str(taken.getsockname()[1])
        options = ("--line", "smpp", "--smpp-port", port)
        done = subprocess.run([*COMMAND, *options], capture_output=True, text=True, timeout=120)
    assert done.returncode == 2
    assert done.stderr.startswith(f"Error: port {port} is not free")


def test_a_seed_is_the_same_chance_each_time() -> None:
    """About the share that is asked for."""
    kinds = ("drop", "half")
    faults = by_seed(7, 1_000, 0.3, kinds)
    assert faults == by_seed(7, 1_000, 0.3, kinds) != by_seed(8, 1_000, 0.3, kinds)
    assert 250 < sum(map(bool, faults)) < 350
    assert by_script("drop, ,half", kinds) == ("drop", "", "half")
