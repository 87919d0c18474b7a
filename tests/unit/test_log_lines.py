"""No phone number stands whole in a line of the log."""

import json
import logging
import sys

import pytest
from structlog.stdlib import ProcessorFormatter

from assistant.commands import serve
from assistant.commands.log_lines import formatter, masked
from tests.valley import AMINA

NOT_PHONES = (
    "2026-06-01 08:30:15,123 INFO on 127.0.0.1:8470",
    "the message 5e1ff845a0934711223344556677 could not be answered",
    "in-0123456789012",
    "12345678 texts",
)


@pytest.mark.parametrize(
    "text", [f"what is due for {AMINA} failed", "from 0770090010199", AMINA]
)
def test_a_number_keeps_its_end_only(text: str) -> None:
    """Enough to find whose it is."""
    assert AMINA not in masked(text) and "7009001" not in masked(text)
    assert "..." in masked(text)


@pytest.mark.parametrize("text", NOT_PHONES)
def test_what_is_no_number_stays(text: str) -> None:
    """Ids by which a message is found, times, counts."""
    assert masked(text) == text


def test_what_a_fault_quotes_is_masked_too() -> None:
    """A traceback has values in it."""
    try:
        raise LookupError(f"{AMINA} is not enrolled")
    except LookupError:
        record = logging.LogRecord("n", 40, "p", 1, "failed", None, sys.exc_info())
    line = formatter().format(record)
    assert "is not enrolled" in line and AMINA not in line


def test_a_failure_is_one_line_with_its_kind_and_its_place() -> None:
    """Who searches the log for a failure finds all of it."""
    try:
        raise LookupError("no such bed\n  in this village")
    except LookupError:
        record = logging.LogRecord("n", 40, "p", 1, "failed", None, sys.exc_info())
    line = formatter().format(record)
    assert "Z ERROR failed LookupError: no such bed in this village [" in line
    assert "test_log_lines.py" in line and "test_a_failure_is_one_line" in line
    assert "Traceback" not in line and "\n" not in line


def test_the_processes_log_that_way(monkeypatch: pytest.MonkeyPatch) -> None:
    """Web side and worker both."""
    kept: dict[str, list[logging.Handler]] = {}
    monkeypatch.setattr(logging, "basicConfig", lambda **how: kept.update(how))
    serve._log("text")
    assert all(isinstance(each.formatter, ProcessorFormatter) for each in kept["handlers"])


def test_a_machine_may_have_it_as_json() -> None:
    """An object a line, masked as the words are."""
    try:
        raise LookupError(f"{AMINA} is not enrolled")
    except LookupError:
        record = logging.LogRecord("n", 40, "p", 1, "failed %s", (AMINA,), sys.exc_info())
    line = formatter("json").format(record)
    found = json.loads(line)
    assert list(found) == ["at", "level", "of", "event", "fault"]
    assert (found["level"], found["of"]) == ("error", "n")
    assert AMINA not in line and "\n" not in line
