"""`nursery line`: a text by each line, what became of it, and how each line stands."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from assistant.__main__ import main
from gateway_sim import OperatorController
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
