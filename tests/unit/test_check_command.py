"""`nursery check` names what a deployment lacks."""

from pathlib import Path

import pytest
from click.testing import CliRunner

from assistant.commands.check import command

DISTRICT = Path(__file__).parents[2] / "scenarios" / "district" / "programme.toml"
LINES = '[[line]]\nname = "desk"\nkind = "modem"\nport = "/dev/ttyUSB0"\n'
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


def test_numbers_of_the_invented_district_are_not_taken_for_real(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Also where its file was copied and only the villages were written anew."""
    text = DISTRICT.read_text(encoding="utf-8")
    said = _checked(tmp_path, monkeypatch, text)
    wrong = [line for line in said if "of the invented district" in line]
    assert len(wrong) == 3 and all(line.startswith("MEND ") for line in wrong)


def test_the_file_of_lines_is_looked_at(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Instead of our own wire: its names, who may read it, what is wrong in it."""
    path = tmp_path / "lines.toml"
    path.write_text(LINES, encoding="utf-8")
    path.chmod(0o600)
    monkeypatch.setenv("NURSERY_LINES_FILE", str(path))
    said = _checked(tmp_path, monkeypatch, NUMBERS)
    assert "ok    lines: desk (modem); nursery line test sends a text by each" in said
    assert not any("gateway: none set" in line for line in said)
    path.chmod(0o644)
    said = _checked(tmp_path, monkeypatch, NUMBERS)
    assert any(line.startswith("MEND  lines: ") and "chmod 600" in line for line in said)
    path.chmod(0o600)
    path.write_text(LINES.replace("port", "prt"), encoding="utf-8")
    said = _checked(tmp_path, monkeypatch, NUMBERS)
    assert any(line.startswith("MEND  lines: ") and "prt" in line for line in said)


def _checked(folder: Path, monkeypatch: pytest.MonkeyPatch, text: str) -> list[str]:
    path = folder / "programme.toml"
    path.write_text(text, encoding="utf-8")
    monkeypatch.setenv("NURSERY_PROGRAMME_FILE", str(path))
    monkeypatch.setenv("NURSERY_DATABASE_URL", f"sqlite:///{folder / 'nursery.sqlite3'}")
    result = CliRunner().invoke(command)
    assert result.exit_code == 1  # there is no officer and no gateway
    return result.output.splitlines()
