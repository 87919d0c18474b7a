"""What stands under assistant/deploy says what is so."""

import re
import tomllib
from dataclasses import fields
from pathlib import Path
from shutil import which
from subprocess import run

import pytest
from click.testing import CliRunner

import assistant
from assistant.commands.deploying import settings as print_settings
from assistant.commands.deploying import units
from assistant.service.privacy import KEEPING
from assistant.settings import Settings, SettingsError
from assistant.settings.reading import from_file, read_settings

DEPLOY = Path(assistant.__file__).parent / "deploy"
UNIT = Path(__file__).parent
TREE = UNIT.parent.parent


def _read(name: str) -> str:
    return (DEPLOY / name).read_text(encoding="utf-8")


def test_the_settings_file_has_every_setting_with_its_default() -> None:
    """Each explained above it; taken whole it changes nothing."""
    text = CliRunner().invoke(print_settings).output
    for each in fields(Settings):
        assert re.search(rf"^# {each.name}: \S.*\n#{each.name} = ", text, re.M), each.name
    whole = re.sub(r"^#(\w+ = )", r"\1", text, flags=re.M)
    given = {
        name: value
        for name, value in from_file(whole, "settings").items()
        if value not in ("", "0")
    }
    assert read_settings(given) == Settings()


def test_an_unknown_setting_is_refused_with_the_nearest() -> None:
    """In the file, and where the environment has nearly one."""
    with pytest.raises(SettingsError, match="did you mean languages"):
        from_file('langauges = "en"', "settings")
    with pytest.raises(SettingsError, match="nursery settings lists all"):
        from_file('wingspan = "2 m"', "settings")
    with pytest.raises(SettingsError, match="did you mean quiet_from"):
        read_settings({"NURSERY_QUITE_FROM": "20:00"})
    with pytest.raises(SettingsError, match="prints one"):
        from_file("zone = ", "settings")


def test_the_units_are_filled_in(tmp_path: Path) -> None:
    """No brace is left, and both start what there is."""
    result = CliRunner().invoke(units, [str(tmp_path), "--user", "rice"])
    assert result.exit_code == 0
    for name in ("web", "worker"):
        text = (tmp_path / f"nursery-{name}.service").read_text(encoding="utf-8")
        assert "{" not in text and "User=rice" in text
        assert re.search(rf"^ExecStart=.*/nursery {name}$", text, re.M)


@pytest.mark.skipif(not which("systemd-analyze"), reason="no systemd here to ask")
def test_systemd_finds_nothing_wrong_with_the_units(tmp_path: Path) -> None:
    """As it would read them; nothing is started."""
    CliRunner().invoke(units, [str(tmp_path), "--user", "root"])
    names = [str(each) for each in sorted(tmp_path.glob("*.service"))]
    for name in names:  # the program that they start is of another environment than this one
        text = Path(name).read_text(encoding="utf-8")
        here = re.sub(r"^ExecStart=\S+", "ExecStart=/bin/true", text, flags=re.M)
        Path(name).write_text(here, encoding="utf-8")
    said = run(["systemd-analyze", "verify", *names], capture_output=True, text=True)
    assert (len(names), said.returncode, said.stderr) == (2, 0, "")


def test_the_image_copies_what_there_is_and_runs_what_there_is() -> None:
    """Not built here: no engine runs on the machine of the tests. Its lines are looked at."""
    lines = [each.split() for each in _read("Containerfile").splitlines() if each[:1] != "#"]
    verbs = [each[0] for each in lines if each]
    known = {"FROM", "RUN", "COPY", "USER", "WORKDIR", "VOLUME", "ENV", "EXPOSE", "CMD"}
    assert set(verbs) <= known and verbs[0] == "FROM"
    assert verbs.index("USER") < verbs.index("CMD")  # not as root
    extras = re.search(r"nursery\[([\w,]+)\]", _read("Containerfile"))
    offered = tomllib.loads((TREE / "pyproject.toml").read_text(encoding="utf-8"))
    assert extras is not None
    assert set(extras[1].split(",")) <= set(offered["project"]["optional-dependencies"])


def test_each_threat_names_a_test_that_there_is() -> None:
    """By file and name."""
    rows = [line for line in _read("THREATS.md").splitlines() if line.startswith("| ")][1:]
    assert len(rows) > 15
    for row in rows:
        place, _, name = row.split("`")[-2].partition("::")
        text = (UNIT / place).read_text(encoding="utf-8")
        assert not name or f"def {name}(" in text, row


def test_each_promise_stands_in_the_readme_and_names_a_test_that_there_is() -> None:
    """Who takes a test away, or the words, sees the other."""
    said = " ".join((TREE / "README.md").read_text(encoding="utf-8").split())
    rows = [line for line in _read("PROMISES.md").splitlines() if line.startswith("| ")][1:]
    assert len(rows) > 15
    for row in rows:
        words, test = row.strip("| ").rsplit(" | ", 1)
        place, _, name = test.strip("`").partition("::")
        assert words in said, words
        assert f"def {name}(" in (UNIT / place).read_text(encoding="utf-8"), row


def test_keeping_times_are_those_of_the_code() -> None:
    """The page is what the worker does."""
    text = _read("DATA.md")
    for each in KEEPING:
        assert f"| {each.kind} | {each.why} | {each.days} days |" in text


@pytest.mark.parametrize("name", ["RUNBOOK.md", "DATA.md", "THREATS.md", "ASVS.md"])
def test_each_command_that_is_named_is_one(name: str) -> None:
    """As `nursery x` in backquotes."""
    from assistant.__main__ import _COMMANDS

    named = re.findall(r"`nursery (\w+)", _read(name))
    assert set(named) <= set(_COMMANDS)


def test_each_file_that_is_named_is_there() -> None:
    """In the table of the standard."""
    for place in re.findall(r"`((?:service|web|gateways)/[\w/]+\.py)`", _read("ASVS.md")):
        assert (DEPLOY.parent / place).exists(), place


def test_settings_that_are_told_of_are_settings() -> None:
    """In the runbook, the example of a proxy, the units."""
    known = {each.name for each in fields(Settings)}
    for name in ("RUNBOOK.md", "proxy.conf"):
        for told in re.findall(
            r"(?<!\w)((?:day|month|web|gateway|village|officer)_[a-z_]+)", _read(name)
        ):
            assert told in known, told
    assert tomllib.loads(_read("settings.toml")) == {}


FLOORS = {"waitress": (3, 0, 1), "werkzeug": (3, 0, 6), "jinja2": (3, 1, 6), "urllib3": (2, 5)}


def test_floors_are_above_known_holes() -> None:
    """Also of what another package brings in: nobody else would name it."""
    table = tomllib.loads((TREE / "pyproject.toml").read_text(encoding="utf-8"))
    given = dict(each.split(">=") for each in table["project"]["dependencies"] if ">=" in each)
    for name, least in FLOORS.items():
        assert tuple(map(int, given[name].split("."))) >= least, name


@pytest.mark.parametrize("name", ["ATTACKS.md", "PROMISES.md"])
def test_each_row_names_a_test_that_there_is(name: str) -> None:
    """Its file and its name; and no place of the machine where it was tried."""
    text = _read(name)
    rows = [line for line in text.splitlines() if line.startswith("| ")][1:]
    assert len(rows) > 15
    for row in rows:
        place, _, test = row.split("`")[-2].partition("::")
        found = (UNIT / place).read_text(encoding="utf-8")
        assert not test or f"def {test}(" in found, row
    assert not re.search(r"/(?:tmp|work|home|root|Users)/", text)
