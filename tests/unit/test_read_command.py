"""`nursery read`, as a translator or an officer uses it."""

import json
import subprocess
import sys
from collections.abc import Iterable
from typing import Any

import pytest
from click.testing import CliRunner, Result

from assistant.commands.read import command


def read(replies: bytes | Iterable[str], *options: str) -> Result:
    """What the command prints for these bytes or lines, and its exit status."""
    given = replies if isinstance(replies, bytes) else "".join(f"{r}\n" for r in replies)
    return CliRunner().invoke(command, ["--today", "2026-06-10", *options], input=given)


def rows(replies: bytes | Iterable[str], *options: str) -> list[Any]:
    """The JSON objects of its output."""
    result = read(replies, "--json", *options)
    assert result.exit_code == 0
    return [json.loads(line) for line in result.stdout.splitlines()]


def test_each_line_gives_one_object():
    """Also an empty one; value and reading stand only where something was read."""
    assert rows(["2 acres", "", "2", "-2"], "--ask", "area") == [
        {
            "reply": "2 acres",
            "outcome": "understood",
            "value": 8093.7128448,
            "reading": "2 acres",
        },
        {"reply": "", "outcome": "again"},
        {"reply": "2", "outcome": "again"},
        {"reply": "-2", "outcome": "again"},
    ]


@pytest.mark.parametrize(
    ("ask", "lang", "reply", "outcome", "value"),
    [
        ("area", "en", "15 m2", "confirm", 15),
        ("germination", "en", "41 of 50", "understood", 82),
        ("date", "en", "tomorrow", "understood", "2026-06-11"),
        ("confirm", "en", "1", "understood", "yes"),
        ("confirm", "en", "2", "understood", "no"),
        ("confirm", "sw", "bado", "understood", "not_yet"),
        ("count", "en", "3 leaves", "understood", 3),
        ("command", "en", "change date", "understood", "change_date"),
        ("area", "hi", "मदद", "understood", "help"),
        ("date", "vi", "0", "understood", "back"),
    ],
)
def test_the_value_is_plain_data(ask, lang, reply, outcome, value):
    """Square metres, percent, ISO dates, numbers, words of answers and wishes."""
    (row,) = rows([reply], "--ask", ask, "--lang", lang)
    assert (row["outcome"], row["value"]) == (outcome, value)
    assert row["reading"]


def test_past_asks_for_a_day_gone_by():
    """A bare weekday is the last one."""
    options = ("--ask", "date")
    assert rows(["monday"], *options)[0]["value"] == "2026-06-15"
    assert rows(["monday"], *options, "--past")[0]["value"] == "2026-06-08"


def test_a_region_settles_local_units():
    """Typed in any case."""
    (row,) = rows(["1 bigha"], "--ask", "area", "--region", "bd")
    assert row["value"] == pytest.approx(33 * 40.468564224)


def test_an_unknown_region_counts_as_unset():
    """With a note on standard error, and the same exit status."""
    result = read(["1 bigha"], "--ask", "area", "--json", "--region", "XX")
    assert result.exit_code == 0
    assert json.loads(result.stdout) == {"reply": "1 bigha", "outcome": "again"}
    assert "'XX' is not known" in result.stderr


def test_any_bytes_are_read():
    """Broken UTF-8, a nul, no last line end, line ends of other systems and signs."""
    given = (
        b"\xff\xfe 3 ha\r\n\x00\n\xe2\x80\xa8 2 ha \xe2\x80\xa8\n\n" + b"x" * 5000 + b"\n2 ha"
    )
    found = rows(given, "--ask", "area")
    assert len(found) == 6
    assert [row.get("value") for row in found] == [30000, None, 20000, None, None, 20000]
    assert found[0]["reply"] == "\ufffd\ufffd 3 ha"


def test_nothing_given_prints_nothing():
    """And is no error."""
    assert rows(b"", "--ask", "area") == []


def test_without_json_a_person_can_read_it():
    """What was typed, what became of it, and why."""
    lines = read(["2 acres", "2", "12 m2"], "--ask", "area").stdout.splitlines()
    assert lines[0].split("  ") == ["'2 acres'", "understood", "2 acres", "= 8093.7128448"]
    assert lines[1].endswith("(missing unit)  likely: 2 ha, 2 acres")
    assert "(too small)" in lines[2]


@pytest.mark.parametrize("options", [[], ["--ask", "size"], ["--ask", "area", "--lang", "xx"]])
def test_an_option_that_cannot_be_read_is_refused_in_one_line(options):
    """Exit status 2; what is typed at the replies never is."""
    result = read(["2 acres"], *options)
    assert (result.exit_code, result.stdout) == (2, "")
    assert len(result.stderr.strip().splitlines()) == 1


def test_it_runs_by_itself_and_needs_no_settings(tmp_path):
    """As its own process, in an empty folder, with another encoding than UTF-8."""
    run = subprocess.run(
        [sys.executable, "-m", "assistant", "read", "--ask", "area", "--lang", "bn", "--json"],
        input="২ একর\n".encode(),
        capture_output=True,
        cwd=tmp_path,
        env={"PYTHONIOENCODING": "ascii", "NURSERY_DATABASE_URL": "nonsense", "PATH": ""},
        check=True,
        timeout=120,
    )
    row = json.loads(run.stdout)
    assert (row["reply"], row["reading"]) == ("২ একর", "২ একর")
    assert list(tmp_path.iterdir()) == []
