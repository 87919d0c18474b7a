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
from io import BytesIO, StringIO
from typing import Any

from openpyxl import Workbook
from openpyxl.cell import WriteOnlyCell
from openpyxl.styles import Font
from openpyxl.utils import get_column_letter

Cell = str | int | float | date | None

# Also as they look in East Asian width, and blanks that some programs leave out.
_FORMULA = re.compile(r"[\s\0]*[=+\-@＝＋－＠]")
_CONTROL = re.compile(r"[\0-\x08\x0b\x0c\x0e-\x1f]")  # what no XML holds
_MARK = "\N{ZERO WIDTH NO-BREAK SPACE}"  # tells spreadsheets that a CSV file is in UTF-8
_WIDTHS = (10, 40)  # of columns, in letters
_TITLE_MAX = 31  # letters of a sheet's name, and none of []:*?/\


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
    book = Workbook(write_only=True)
    sheet = book.create_sheet(re.sub(r"[\[\]:*?/\\]", " ", title)[:_TITLE_MAX])
    sheet.freeze_panes = "A2"
    for number, name in enumerate(head, start=1):
        width = min(max(len(name) + 1, _WIDTHS[0]), _WIDTHS[1])
        sheet.column_dimensions[get_column_letter(number)].width = width
    sheet.append([_bold(sheet, name) for name in head])
    for row in rows:
        sheet.append([_typed(sheet, cell) for cell in row])
    out = BytesIO()
    book.save(out)
    return out.getvalue()


def _bold(sheet: Any, name: str) -> Any:
    cell = _text(sheet, name)
    cell.font = Font(bold=True)
    return cell


def _typed(sheet: Any, cell: Cell) -> Any:
    return _text(sheet, cell) if isinstance(cell, str) else cell


def _text(sheet: Any, words: str) -> Any:
    """A string, whatever it looks like."""
    cell = WriteOnlyCell(sheet, value=_CONTROL.sub("", words))
    cell.data_type = "s"
    return cell
