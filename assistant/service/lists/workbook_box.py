"""Workbooks are read in a process of their own, with so much memory and time and no more.

A file of a few kilobytes can hold a row number of 400 million, or unpack to gigabytes; and the
XML parser of older Pythons takes for ever over a long word (CVE-2023-52425). The web process is
also the operator's door, so none of that may happen in it. What was read, and what could not
be, is kept a while: each page of a list asks for it again.
"""

import json
import os
import resource
import subprocess
import sys
from functools import lru_cache
from pathlib import Path

from assistant.service.lists.sheets import Sheet, SheetError, Unreadable
from assistant.service.office.rows import SheetRow

MOST_MEMORY = 700_000_000  # octets more than the reader itself takes; 5 MB of rows need 200
MOST_CPU_S = 20
MOST_S = 40  # by the clock, on a busy machine
_KEPT = 4
_SELF = "from assistant.service.lists.workbook_box import inside; inside()"


def read_boxed(content: bytes, wanted: str) -> Sheet:
    """The rows of one sheet of a workbook, as `read_workbook` tells.

    Raises:
        SheetError: it cannot be read, or not with what it is given.
    """
    found = _boxed(content, wanted)
    if isinstance(found, Unreadable):
        raise SheetError(found)
    return found


@lru_cache(_KEPT)
def _boxed(content: bytes, wanted: str) -> Sheet | Unreadable:
    try:
        # Our own interpreter and our own words; the file comes by the pipe.
        done = subprocess.run(  # noqa: S603
            [sys.executable, "-c", _SELF, wanted],
            input=content,
            capture_output=True,
            timeout=MOST_S,
            env={"PYTHONPATH": os.pathsep.join(filter(None, sys.path))},
            check=False,
        )
    except subprocess.TimeoutExpired:
        return Unreadable.TOO_BIG
    if done.returncode != 0:
        return Unreadable.TOO_BIG
    told = json.loads(done.stdout)
    if "why" in told:
        return Unreadable(told["why"])
    rows = tuple(SheetRow(line, tuple(cells)) for line, cells in told["rows"])
    return Sheet(rows, tuple(told["sheets"]), told["sheet"])


def inside() -> None:
    """The reader's side: a workbook on standard input, JSON on standard output."""
    from assistant.service.lists.workbooks import read_workbook  # noqa: PLC0415  # slow, only here

    _keep_to_limits()
    try:
        sheet = read_workbook(sys.stdin.buffer.read(), sys.argv[1])
        rows = [[row.line, row.cells] for row in sheet.rows]
        told: dict[str, object] = {"rows": rows, "sheets": sheet.sheets, "sheet": sheet.sheet}
    except SheetError as fault:
        told = {"why": fault.why}
    except MemoryError:
        told = {"why": Unreadable.TOO_BIG}
    json.dump(told, sys.stdout)


def _keep_to_limits() -> None:
    """From now on; what the libraries took before is not counted."""
    pages = Path("/proc/self/statm").read_text(encoding="ascii").split()[0]
    most = int(pages) * resource.getpagesize() + MOST_MEMORY
    resource.setrlimit(resource.RLIMIT_AS, (most, most))
    resource.setrlimit(resource.RLIMIT_CPU, (MOST_CPU_S, MOST_CPU_S))
    resource.setrlimit(resource.RLIMIT_CORE, (0, 0))
