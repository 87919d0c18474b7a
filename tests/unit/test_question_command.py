"""`nursery question`: the office's questions by command and file."""

from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from assistant.__main__ import main
from assistant.commands import questions, village
from assistant.settings import Settings

FILE = """
[[question]]
language = "en"
ways = ["when does the ferry run", "ferry hours"]
answer = "The ferry runs at 7 and at 16."

[[question]]
language = "sw"
ways = ["kivuko kinaenda saa ngapi"]
answer = "Kivuko kinaenda saa moja."
village = "Kijani"
"""


@pytest.fixture
def settings(_copied_sqlite: str, monkeypatch: pytest.MonkeyPatch) -> Settings:
    """A deployment of its own, as the environment names it."""
    monkeypatch.setenv("NURSERY_DATABASE_URL", _copied_sqlite)
    return Settings(database_url=_copied_sqlite)


def _nursery(command: object, *arguments: str) -> Result:
    return CliRunner().invoke(command, arguments)  # type: ignore[arg-type]


def _file(tmp_path: Path, text: str) -> str:
    place = tmp_path / "questions.toml"
    place.write_text(text, "utf-8")
    return str(place)


@pytest.mark.usefixtures("settings")
def test_questions_go_in_by_a_file_and_come_out_as_one(tmp_path: Path) -> None:
    """What is exported can be added again; nothing is used before somebody has read it."""
    _nursery(village.command, "add", "Kijani")
    added = _nursery(questions.command, "add", _file(tmp_path, FILE))
    assert added.exit_code == 0 and added.output.count("Added") == 2
    shown = _nursery(questions.command, "list").output.splitlines()
    assert shown[0] == "1\tto be read\ten\teverywhere\twhen does the ferry run"
    assert shown[1].startswith("2\tto be read\tsw\tKijani")
    out = _nursery(questions.command, "export").output
    assert _nursery(questions.command, "withdraw", "1").exit_code == 0
    assert _nursery(questions.command, "withdraw", "1").exit_code == 1
    again = _nursery(questions.command, "add", _file(tmp_path, out))
    assert again.output.count("Added") == 2


@pytest.mark.usefixtures("settings")
def test_each_fault_of_a_file_is_told(tmp_path: Path) -> None:
    """The others are added."""
    _nursery(village.command, "add", "Kijani")
    wrong = FILE.replace("The ferry runs at 7 and at 16.", "Put 20 ml in a can.")
    added = _nursery(questions.command, "add", _file(tmp_path, wrong))
    assert (
        added.exit_code == 1
        and "question 1: an amount that may be a dose: 20 ml" in added.output
    )
    assert added.output.count("Added") == 1
    for text in ("", "question = 1", "[[question]]\nlanguage = 1", "[[question]]\nway = []"):
        found = _nursery(questions.command, "add", _file(tmp_path, text))
        assert (
            found.exit_code == 1 and "[[question]]" in found.output or "write" in found.output
        )


def test_the_command_is_one_of_nursery() -> None:
    """Found by its name."""
    found = CliRunner().invoke(main, ["question", "--help"])
    assert found.exit_code == 0 and "withdraw" in found.output
