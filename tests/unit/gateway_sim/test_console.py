"""The phone in the terminal, as a person or a pipe uses it: a process of its own."""

import os
import re
import signal
import subprocess
import sys
from typing import Any

import pytest

from gateway_sim import OperatorController

COMMAND = [sys.executable, "-m", "gateway_sim"]
NUMBER = "07700900101"


def hold(op: OperatorController, lines: str, *more: str) -> tuple[list[str], str, int]:
    """Pipe these lines into the phone; its lines (without the time), complaints, exit code."""
    done = subprocess.run(
        [*COMMAND, "phone", NUMBER, "--url", op.url, "--quiet", "0.2", *more],
        input=lines,
        capture_output=True,
        text=True,
        encoding="utf-8",
        timeout=120,
    )
    out = [re.sub(r"^\[\d\d:\d\d\] ", "", line) for line in done.stdout.splitlines()]
    return out, done.stderr, done.returncode


@pytest.fixture
def echo(assistant: Any) -> None:
    """The stub answers each text with the same words."""
    assistant.on_text = lambda fields: assistant.hand_in(fields["text"], id=fields["id"])


@pytest.mark.usefixtures("echo")
def test_piped_lines_take_turns_with_the_answers(operator: OperatorController) -> None:
    """Each line is a text; the next goes when its answer has come."""
    out, complaints, code = hold(operator, "one\n" + "two " * 50 + "\nदो\n")
    size = {"one": "1 segment", "two": "2 segments", "दो": "1 segment"}
    assert out == [
        f"{way} +447700900000 ({size[word]}): {text}"
        for word, text in (("one", "one"), ("two", "two " * 50), ("दो", "दो"))
        for way in ("to", "from")
    ]
    assert (complaints, code) == ("", 0)


def test_a_text_of_several_lines_is_set_in(
    operator: OperatorController, assistant: Any
) -> None:
    """So that each text begins with its time."""
    assistant.on_text = lambda fields: assistant.hand_in("Seed: 7 kg\nMats: 267")
    out, _, _ = hold(operator, "0.4 ha\n")
    assert out[1:] == ["from +447700900000 (1 segment): Seed: 7 kg", "    Mats: 267"]


def test_earlier_texts_are_printed_when_asked_for(
    operator: OperatorController, assistant: Any
) -> None:
    """Else only how many there are, beside the talk."""
    assistant.hand_in("earlier")
    out, complaints, _ = hold(operator, "")
    assert (out, complaints.strip()) == (
        [],
        "Earlier texts in the inbox: 1 (--earlier prints them).",
    )
    out, _, _ = hold(operator, "", "--earlier")
    assert out == ["from +447700900000 (1 segment): earlier"]


def test_dialling_prints_each_screen_with_its_size(
    operator: OperatorController, assistant: Any
) -> None:
    """Lines after the end of the session are not dialled again."""
    assistant.screens = {
        "": ("1 Seed\n2 Back", True),
        "1": ("बीज", True),
        "2": ("Bye", False),
    }
    out, _, code = hold(operator, "1\n2\n3\n", "--ussd", "*555*7#")
    assert out == [
        "# dialled *555*7#",
        "(13 of 182 septets)",
        "    1 Seed",
        "    2 Back",
        "# answered 1",
        "(3 of 80 UCS-2 characters)",
        "    बीज",
        "# answered 2",
        "(3 of 182 septets)",
        "    Bye",
        "Session ended: the service closed it.",
    ]
    assert (code, assistant.steps) == (0, ["begin", "answer", "answer"])


def test_lines_that_end_within_a_session_hang_up(
    operator: OperatorController, assistant: Any
) -> None:
    """The assistant is told, and the phone is free to dial again."""
    for _ in range(2):
        out, _, code = hold(operator, "", "--ussd", "*555*7#")
        assert (out[-1], code) == ("Session ended: hung up at the end of input.", 0)
    assert assistant.steps == ["begin", "end"] * 2


def test_a_phone_without_an_operator_says_how_to_start_one() -> None:
    """One line, exit 2."""
    done = subprocess.run(
        [*COMMAND, "phone", NUMBER, "--url", "http://127.0.0.1:9"],
        input="hi\n",
        capture_output=True,
        text=True,
        timeout=120,
    )
    assert done.returncode == 2
    assert "start it with `python -m gateway_sim`" in done.stderr
    assert len(done.stderr.splitlines()) == 1


def test_a_number_of_somebody_is_refused(operator: OperatorController) -> None:
    """One line with the numbers to use, exit 2."""
    done = subprocess.run(
        [*COMMAND, "phone", "0712 345 678", "--url", operator.url],
        capture_output=True,
        stdin=subprocess.DEVNULL,
        text=True,
        timeout=120,
    )
    assert done.returncode == 2
    assert "use +447700900000 to +447700900999" in done.stderr
    assert len(done.stderr.splitlines()) == 1


@pytest.mark.parametrize("how", [signal.SIGINT, signal.SIGTERM])
def test_the_operator_runs_until_it_is_stopped(how: signal.Signals) -> None:
    """It says where the phones are; Ctrl-C and a polite kill are no errors."""
    running = subprocess.Popen(
        [*COMMAND, "--port", "0"],
        env={**os.environ, "NURSERY_GATEWAY_SECRET": "s"},
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    )
    assert running.stdout is not None
    said = [running.stdout.readline() for _ in range(3)]
    running.send_signal(how)
    _, complaints = running.communicate(timeout=120)
    assert re.search(r"http://127\.0\.0\.1:\d+/\?phone=%2B447700900101", said[0])
    assert (complaints, running.returncode) == ("", 0)


def test_the_operator_needs_a_secret() -> None:
    """One line that says what to set, exit 2."""
    free = {name: value for name, value in os.environ.items() if "SECRET" not in name}
    done = subprocess.run(COMMAND, env=free, capture_output=True, text=True, timeout=120)
    assert done.returncode == 2
    assert done.stderr == "Error: no secret: set NURSERY_GATEWAY_SECRET as for the assistant\n"
