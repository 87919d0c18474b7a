"""`nursery check` names what a deployment lacks."""

from pathlib import Path

import pytest
from click.testing import CliRunner

from assistant.commands.check import command

NUMBERS = 'emergency = "07700 900999"\nhealth_post = "Post A"\nvet = "Vet 07700 900997"\n'


@pytest.mark.parametrize("key", ["emergency", "health_post", "vet"])
def test_whom_to_turn_to_must_be_said(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, key: str
) -> None:
    """No number is built in: each that is missing is named with what to write."""
    lines = [line for line in NUMBERS.splitlines() if not line.startswith(key)]
    said = _checked(tmp_path, monkeypatch, "\n".join(lines))
    (line,) = [line for line in said if f'write {key} = "..."' in line]
    assert line.startswith("MEND ")


def test_what_is_said_is_shown(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """As a person would read it."""
    said = _checked(tmp_path, monkeypatch, NUMBERS)
    assert "ok    emergency number: 07700 900999" in said
    assert "ok    health post: Post A" in said and "ok    vet: Vet 07700 900997" in said


def _checked(folder: Path, monkeypatch: pytest.MonkeyPatch, text: str) -> list[str]:
    path = folder / "programme.toml"
    path.write_text(text, encoding="utf-8")
    monkeypatch.setenv("NURSERY_PROGRAMME_FILE", str(path))
    monkeypatch.setenv("NURSERY_DATABASE_URL", f"sqlite:///{folder / 'nursery.sqlite3'}")
    result = CliRunner().invoke(command)
    assert result.exit_code == 1  # there is no officer and no gateway
    return result.output.splitlines()
