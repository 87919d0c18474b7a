"""Lines of the log: of a phone number no more than its end, which is enough to find it; and one
line an event, a failure too, so that whoever searches for it finds all of it.

structlog puts a record together, in words or as JSON for a machine that gathers logs; what may
stand in it is ours: what failed and where in one line, and no whole number.
"""

import json
import logging
import re
import traceback
from collections.abc import Mapping, MutableMapping
from types import TracebackType
from typing import Any

import structlog
from structlog.stdlib import ProcessorFormatter

NEAREST = 3  # places of a failure, the last first
END = 3  # digits that stay
# With its plus, or as it is dialled at home; not the digits of an id, a hash or a time.
_NUMBER = re.compile(r"(?<![\w.:/-])(\+\d{2}|0)(\d{5,12})(\d{3})(?![\w:-])")
_Event = MutableMapping[str, Any]

WAYS = ("text", "json")


def masked(text: str) -> str:
    """The text with numbers that tell nobody's phone."""
    return _NUMBER.sub(lambda found: f"{found[1]}...{found[3]}", text)


def formatter(way: str = "text") -> logging.Formatter:
    """What writes a record as one line.

    Args:
        way: of WAYS: time, level and words; or a JSON object with `at`, `level`, `of` (who
            says it), `event` and, of a failure, `fault`
    """
    return ProcessorFormatter(
        foreign_pre_chain=[
            structlog.stdlib.add_log_level,
            structlog.stdlib.add_logger_name,
            structlog.processors.TimeStamper("iso", utc=True, key="at"),
        ],
        processors=[
            ProcessorFormatter.remove_processors_meta,
            _with_fault,
            _in_json if way == "json" else _in_words,
        ],
    )


def _with_fault(_logger: object, _method: str, event: _Event) -> _Event:
    """What failed, in what words, and where, under `fault`."""
    found = event.pop("exc_info", None)
    if found:
        kind, fault, trace = found
        event["fault"] = f"{kind.__name__}: {fault} [{_places(trace)}]"
    return {name: _line(str(value)) for name, value in event.items()}


def _line(text: str) -> str:
    return masked(" ".join(line.strip() for line in text.splitlines()))


def _in_words(_logger: object, _method: str, event: Mapping[str, str]) -> str:
    said = (event["at"], event["level"].upper(), event["event"], event.get("fault", ""))
    return " ".join(filter(None, said))


def _in_json(_logger: object, _method: str, event: Mapping[str, str]) -> str:
    names = ("at", "level", "logger", "event", "fault")
    found = {"of" if name == "logger" else name: event[name] for name in names if name in event}
    return json.dumps(found, ensure_ascii=False)


def _places(trace: TracebackType | None) -> str:
    frames = reversed(traceback.extract_tb(trace)[-NEAREST:])
    return " < ".join(f"{_short(each.filename)}:{each.lineno} {each.name}" for each in frames)


def _short(path: str) -> str:
    """A path from the house on, or from where packages lie."""
    return re.split(r"/(?:site-packages|assistant)/", path)[-1]
