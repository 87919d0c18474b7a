"""`nursery line`: a text by each line, what became of it, and how each line stands."""

import socket
from collections.abc import Iterator
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from assistant.__main__ import main
from gateway_sim import OperatorController
from gateway_sim.modem import Modem
from gateway_sim.smpp import Centre

LINES = """
[[line]]
name = "north"
kind = "smpp"
host = "127.0.0.1"
port = {port}
system_id = "nursery"
password = "{password}"
sender = "+447700900000"
a_day = 50
price = "0.50"
"""


@pytest.fixture
def operator() -> Iterator[OperatorController]:
    with OperatorController(side=lambda clock: Centre(clock, answer_seconds=5)) as found:
        yield found


def run(tmp_path: Path, operator: OperatorController, *words: str, password: str) -> Result:
    """The command, over a line with this password."""
    centre = operator.network.core.assistant
    assert isinstance(centre, Centre)
    path = tmp_path / "lines.toml"
    path.touch(mode=0o600)
    path.write_text(LINES.format(port=centre.port, password=password))
    env = {
        "NURSERY_LINES_FILE": str(path),
        "NURSERY_DATABASE_URL": f"sqlite:///{tmp_path / 'n.sqlite3'}",
        "NURSERY_CURRENCY": "KES",
    }
    return CliRunner().invoke(main, ["line", *words], env=env)


def test_a_text_is_sent_and_followed_to_its_phone(
    tmp_path: Path, operator: OperatorController, monkeypatch: pytest.MonkeyPatch
) -> None:
    """And counted for the day of its line, with what it cost."""
    done = run(tmp_path, operator, "test", "+447700900101", password="secret")
    assert (done.exit_code, done.output) == (0, "north: taken\nnorth: the phone has it\n")
    (text,) = operator.phone("+447700900101").texts
    assert "Test of north" in text
    shown = run(tmp_path, operator, "look", password="secret").output
    assert shown.startswith("north: 1 of 50 segments today; 0.50 KES; answered 20")
    monkeypatch.setattr("assistant.commands.line.UP_WITHIN_S", 0.5)
    done = run(tmp_path, operator, "test", "+447700900101", password="wrong")
    assert done.exit_code == 1 and "password is wrong" in done.output
    for words, said in (("nobody", "is no phone number"), ("+447700900101", "no line west")):
        only = () if words == "nobody" else ("--only", "west")
        refused = run(tmp_path, operator, "test", words, *only, password="secret")
        assert refused.exit_code == 2 and said in refused.output


TWO = """
[[line]]
name = "desk"
kind = "modem"
port = "{port}"
credit = "*100#"

[[line]]
name = "hill"
kind = "http"
mapping = "{mapping}"
sender = "+447700900000"
token = "example"
address = "http://127.0.0.1:{closed}"
"""
HILL = Path(__file__).parents[2] / "scenarios" / "district" / "lines" / "hill.toml"


def test_each_line_that_takes_nothing_says_why(tmp_path: Path) -> None:
    """A card without credit, with what the network says of it; a provider that is not there.
    Refilled, the card is fine, and the command still ends with 1."""
    path = tmp_path / "lines.toml"
    path.touch(mode=0o600)
    env = {
        "NURSERY_LINES_FILE": str(path),
        "NURSERY_DATABASE_URL": f"sqlite:///{tmp_path / 'n.sqlite3'}",
    }
    command = ["line", "test", "+447700900101"]
    with socket.socket() as closed, OperatorController(side=Modem) as operator:
        closed.bind(("127.0.0.1", 0))
        modem = operator.network.core.assistant
        assert isinstance(modem, Modem)
        modem.card.credit = False
        given = {"port": modem.port, "closed": closed.getsockname()[1], "mapping": HILL}
        path.write_text(TWO.format(**given))
        done = CliRunner().invoke(main, command, env=env)
        lines = done.output.splitlines()
        assert lines[0].startswith(
            "desk: not taken: the network refuses texts of this SIM card"
        )
        assert lines[1] == "desk: Credit 0.00. Top up."
        assert lines[2].startswith("hill: not taken: nobody answers at 127.0.0.1:")
        modem.card.credit = True
        again = CliRunner().invoke(main, command, env=env)
        assert again.output.splitlines()[:3] == [
            "desk: taken",
            "desk: the phone has it",
            "desk: Credit 12.40. Ends 30 Jun.",
        ]
        assert done.exit_code == again.exit_code == 1
