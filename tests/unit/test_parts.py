"""Official alerts and office lists: a deployment may do without, and a package too."""

import os
import socket
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest
from click.testing import CliRunner

from assistant.__main__ import main

TREE = Path(__file__).parents[2]
PYPROJECT = tomllib.loads((TREE / "pyproject.toml").read_text(encoding="utf-8"))
CONTRACTS = PYPROJECT["tool"]["importlinter"]["contracts"]
GONE = frozenset(
    name
    for each in CONTRACTS
    if "be left out" in each["name"]
    for name in each["protected_modules"]
)
START = """
import sys
from urllib.request import urlopen
from assistant.__main__ import main
from assistant.commands import serve

def look():
    port = serve.settings_now().port
    assert urlopen(f"http://127.0.0.1:{port}/sign-in").status == 200
    print("modules", *sys.modules)

serve._until_stopped = look
main(["start"], standalone_mode=False)
"""


def without(name: str, found: Path, into: Path) -> None:
    """The package `name` as it is, but for what may be left out."""
    into.mkdir()
    for each in found.iterdir():
        inner = f"{name}.{each.stem}"
        if inner in GONE:
            continue
        if each.is_dir() and any(gone.startswith(f"{inner}.") for gone in GONE):
            without(inner, each, into / each.name)
        else:
            (into / each.name).symlink_to(each)


@pytest.fixture
def free_port() -> int:
    """One that nobody has now."""
    with socket.socket() as found:
        found.bind(("127.0.0.1", 0))
        return int(found.getsockname()[1])


@pytest.fixture(scope="module")
def bare(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A tree whose packages of alerts and lists were taken out."""
    tree = tmp_path_factory.mktemp("bare")
    without("assistant", TREE / "assistant", tree / "assistant")
    for name in ("locales", "scenarios", "gateway_sim"):
        (tree / name).symlink_to(TREE / name)
    return tree


def started(
    tree: Path, folder: Path, port: int, **given: str
) -> subprocess.CompletedProcess[str]:
    """A start with the web side and the worker, looked at once it is up."""
    environment = {
        **os.environ,
        "PYTHONPATH": str(tree),
        "NURSERY_DATABASE_URL": f"sqlite:///{folder}/nursery.sqlite3",
        "NURSERY_GATEWAY_URL": "http://127.0.0.1:9",
        "NURSERY_GATEWAY_SECRET": "s" * 32,
        "NURSERY_PORT": str(port),
        **given,
    }
    return subprocess.run(
        [sys.executable, "-c", START], cwd=tree, env=environment, capture_output=True, text=True
    )


def test_a_start_without_them_opens_nothing_of_them(tmp_path: Path, free_port: int) -> None:
    """They are here, and switched off."""
    done = started(TREE, tmp_path, free_port, NURSERY_PARTS="")
    assert done.returncode == 0, done.stderr
    opened = done.stdout.partition("modules ")[2].split()
    assert "assistant.web.app" in opened and "assistant.worker" in opened
    assert not [name for name in opened if any(f"{name}.".startswith(f"{g}.") for g in GONE)]
    assert not {"defusedxml", "openpyxl", "shapely", "signxml"} & set(opened)


def test_a_package_without_them_starts(bare: Path, tmp_path: Path, free_port: int) -> None:
    """Their folders were taken out, and the machine's settings say so."""
    assert not (bare / "assistant" / "alerts").exists()
    assert not (bare / "assistant" / "service" / "lists").exists()
    done = started(bare, tmp_path, free_port, NURSERY_PARTS="")
    assert done.returncode == 0, done.stderr


def test_a_part_that_is_set_and_not_there_is_told_of(
    bare: Path, tmp_path: Path, free_port: int
) -> None:
    """With what to set, and no traceback."""
    done = started(bare, tmp_path, free_port, NURSERY_PARTS="alerts,lists")
    assert (
        done.returncode and "NURSERY_PARTS: alerts, lists is not installed here" in done.stderr
    )


@pytest.mark.parametrize(
    ("parts", "there", "gone"),
    [
        ("lists", "import", "alert"),
        ("alerts", "alert", "import"),
    ],
)
def test_commands_of_what_is_left_out_are_not_there(
    parts: str, there: str, gone: str, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    """Neither in the help nor when they are called; a settings file says so as well."""
    file = tmp_path / "settings.toml"
    file.write_text(f'parts = ["{parts}"]\n', encoding="utf-8")
    for name, value in (("PARTS", parts), ("SETTINGS_FILE", str(file))):
        monkeypatch.delenv("NURSERY_PARTS", raising=False)
        monkeypatch.setenv(f"NURSERY_{name}", value)
        shown = CliRunner().invoke(main, ["--help"]).output
        assert f"\n  {there} " in shown and f"\n  {gone} " not in shown
        refused = CliRunner().invoke(main, [gone, "x"])
        assert refused.exit_code == 2 and "No such command" in refused.output
