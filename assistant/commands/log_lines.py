"""Lines of the log: of a phone number no more than its end, which is enough to find it; and one
line an event, a failure too, so that whoever searches for it finds all of it."""

import logging
import re
import traceback
from types import TracebackType
from typing import Any

NEAREST = 3  # places of a failure, the last first
END = 3  # digits that stay
# With its plus, or as it is dialled at home; not the digits of an id, a hash or a time.
_NUMBER = re.compile(r"(?<![\w.:/-])(\+\d{2}|0)(\d{5,12})(\d{3})(?![\w:-])")


def masked(text: str) -> str:
    """The text with numbers that tell nobody's phone."""
    return _NUMBER.sub(lambda found: f"{found[1]}...{found[3]}", text)


class Masked(logging.Formatter):
    """Masks whole lines, what a fault says included: it may quote a row."""

    def formatException(self, ei: Any) -> str:  # noqa: N802  # the name is Python's
        """What failed, in what words, and where."""
        kind, fault, trace = ei
        return f"{kind.__name__}: {fault} [{_places(trace)}]"

    def format(self, record: logging.LogRecord) -> str:
        """The line."""
        whole = masked(super().format(record))
        return " ".join(line.strip() for line in whole.splitlines())


def _places(trace: TracebackType | None) -> str:
    frames = reversed(traceback.extract_tb(trace)[-NEAREST:])
    return " < ".join(f"{_short(each.filename)}:{each.lineno} {each.name}" for each in frames)


def _short(path: str) -> str:
    """A path from the house on, or from where packages lie."""
    return re.split(r"/(?:site-packages|assistant)/", path)[-1]
