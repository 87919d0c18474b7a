"""`nursery import`: shown first, taken in with --apply, refusals in one line."""

from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from assistant.__main__ import main

SAMPLE = Path(__file__).parents[2] / "scenarios" / "district" / "farmers.csv"


@pytest.fixture
def run(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> CliRunner:
    """A deployment of the invented district."""
    monkeypatch.setenv("NURSERY_DATABASE_URL", f"sqlite:///{tmp_path / 'n.db'}")
    runner = CliRunner()
    for village in ("Mto Mwanga", "Kijani", "Bonde Jipya"):
        assert runner.invoke(main, ["village", "add", village]).exit_code == 0
    return runner


def _import(runner: CliRunner, *given: object) -> Result:
    return runner.invoke(main, ["import", *map(str, given)])


def test_a_list_is_shown_then_taken_in_and_then_does_nothing(run: CliRunner) -> None:
    """The sample of the district has eight farmers."""
    assert "Would take in: 8 new" in _import(run, SAMPLE).output
    assert "Taken in: 8 new" in _import(run, SAMPLE, "--apply").output
    assert "Would take in: 0 new, 0 changed, 8 rows as they are" in _import(run, SAMPLE).output


def test_rows_left_out_are_written_to_be_mended(run: CliRunner, tmp_path: Path) -> None:
    """With the reason beside them."""
    odd, rejects = tmp_path / "odd.csv", tmp_path / "mend.csv"
    odd.write_text("Phone,Village\n4.47701E+11,Kijani\n", encoding="utf-8")
    assert _import(run, odd, "--rejects", rejects).exit_code == 0
    assert "has cut this number" in rejects.read_text(encoding="utf-8-sig")


REFUSED = (
    ("nowhere.csv",),
    (SAMPLE, "--officer", "+447700900001"),
    (SAMPLE, "--village", "Nowhere"),
    (SAMPLE, "--column", "Nothing=phone"),
    (SAMPLE, "--lang", "xx"),
    (SAMPLE, "--sheet", "Two"),
    (SAMPLE, "--shared", "merge"),
)


@pytest.mark.parametrize("given", REFUSED, ids=lambda given: str(given[-1])[-20:])
def test_what_cannot_be_done_is_one_line(run: CliRunner, given: tuple[object, ...]) -> None:
    """And exit 2."""
    result = _import(run, *given)
    assert result.exit_code == 2
    assert result.output.strip().splitlines()[-1].startswith("Error: ")
    assert "Traceback" not in result.output
