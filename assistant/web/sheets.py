"""A table as a file for a spreadsheet: CSV and XLSX.

What a person typed is data there too: a name such as "=1+1" must not be computed when the file
is opened. In XLSX such a cell is typed as a string; in CSV, which has no types, it gets the
apostrophe that spreadsheets take as "this is text" (OWASP, CSV Injection). Numbers and dates
are written as such.
"""

import csv
import re
from collections.abc import Iterable, Sequence
from datetime import date
from io import StringIO

Cell = str | int | float | date | None

# Also as they look in East Asian width, and blanks that some programs leave out.
_FORMULA = re.compile(r"[\s\0]*[=+\-@＝＋－＠]")
_MARK = "\N{ZERO WIDTH NO-BREAK SPACE}"  # tells spreadsheets that a CSV file is in UTF-8


def csv_file(head: Sequence[str], rows: Iterable[Sequence[Cell]]) -> bytes:
    """A CSV file: UTF-8, commas, dates by ISO 8601, points in numbers."""
    out = StringIO()
    writer = csv.writer(out)
    writer.writerow([_inert(each) for each in head])
    writer.writerows([_inert(cell) for cell in row] for row in rows)
    return (_MARK + out.getvalue()).encode()


def _inert(cell: Cell) -> Cell:
    if isinstance(cell, date):
        return cell.isoformat()
    if isinstance(cell, str) and _FORMULA.match(cell):
        return f"'{cell}"
    return cell


def xlsx_file(title: str, head: Sequence[str], rows: Iterable[Sequence[Cell]]) -> bytes:
    """A workbook of one sheet whose head stays in sight."""
    from assistant.web.workbook import written  # noqa: PLC0415  # large, and few ask for it

    return written(title, head, rows)
