"""A table as an XLSX file: what a person typed is a string there, whatever it looks like."""

import re
from collections.abc import Iterable, Sequence
from io import BytesIO
from typing import Any

from openpyxl import Workbook
from openpyxl.cell import WriteOnlyCell
from openpyxl.styles import Font
from openpyxl.utils import get_column_letter

_CONTROL = re.compile(r"[\0-\x08\x0b\x0c\x0e-\x1f]")  # what no XML holds
_WIDTHS = (10, 40)  # of columns, in letters
_TITLE_MAX = 31  # letters of a sheet's name, and none of []:*?/\


def written(title: str, head: Sequence[str], rows: Iterable[Sequence[object]]) -> bytes:
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


def _typed(sheet: Any, cell: object) -> Any:
    return _text(sheet, cell) if isinstance(cell, str) else cell


def _text(sheet: Any, words: str) -> Any:
    """A string, whatever it looks like."""
    cell = WriteOnlyCell(sheet, value=_CONTROL.sub("", words))
    cell.data_type = "s"
    return cell
