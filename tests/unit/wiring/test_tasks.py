"""The table of tasks: read whole, or not at all."""

import tomllib
from importlib.resources import files
from typing import Any

import pytest

from assistant.agronomy.errors import AgronomyError
from assistant.agronomy.life.rows import TASKS, TaskTable
from assistant.agronomy.tasks import TaskCode
from assistant.wiring.tasks import TaskError, read_tasks

FILE = files("assistant.agronomy") / "life" / "tasks.toml"
HOUSE: dict[str, Any] = tomllib.loads(FILE.read_text(encoding="utf-8"))


def test_every_task_has_its_row_in_the_order_of_work() -> None:
    """As the codes stand."""
    assert [row.code for row in read_tasks(HOUSE)] == list(TaskCode)
    assert list(HOUSE) == list(TaskCode)


FAULTS: dict[str, tuple[dict[str, Any], str]] = {
    "a row is missing": ({"sow": None}, "[sow]: is missing"),
    "a row of no task": ({"harvest": {"origin": "bed"}}, "[harvest]: is no task"),
    "a mistyped key": ({"sow": {"origin": "bed", "ask": "done"}}, "[sow] ask: is not known"),
    "a mistyped value": ({"sow": {"origin": "bed", "asks": "dne"}}, "[sow] asks: write one of"),
    "no origin": ({"sow": {}}, "[sow] origin: is missing"),
    "no yes or no": (
        {"sow": {"origin": "bed", "always": "yes"}},
        "[sow] always: write true or false",
    ),
    "no list": ({"sow": {"origin": "bed", "deeds": "sow"}}, "[sow] deeds: write a list"),
    "a fact nobody knows": (
        {"sow": {"origin": "bed", "ends_with": ["eaten"]}},
        "[sow] ends_with: write one of",
    ),
}


@pytest.mark.parametrize(("change", "says"), FAULTS.values(), ids=FAULTS.keys())
def test_a_fault_of_the_file_ends_the_start(change: dict[str, Any], says: str) -> None:
    """With what to write."""
    table = {name: row for name, row in (HOUSE | change).items() if row is not None}
    with pytest.raises(TaskError) as refused:
        read_tasks(table)
    assert says in str(refused.value)


def test_all_faults_are_told_together() -> None:
    """So that the file is mended once."""
    with pytest.raises(TaskError) as refused:
        read_tasks({})
    assert str(refused.value).count("is missing") == len(TaskCode)


def test_a_table_that_was_not_filled_answers_nothing() -> None:
    """There is no default."""
    with pytest.raises(AgronomyError, match="open_tasks"):
        TaskTable()[TaskCode.SOW]


def test_a_table_takes_all_rows_or_none_and_only_once() -> None:
    """Two tables in one program would disagree."""
    rows = read_tasks(HOUSE)
    table = TaskTable()
    with pytest.raises(AgronomyError, match="missing: season_result"):
        table.fill(rows[:-1])
    table.fill(rows)
    table.fill(rows)
    assert all(table[code] == TASKS[code] for code in TaskCode)
    with pytest.raises(AgronomyError, match="is filled"):
        table.fill(
            (
                rows[0],
                *(
                    row
                    for row in read_tasks(HOUSE | {"sow": {"origin": "bed"}})
                    if row.code is not rows[0].code
                ),
            )
        )
