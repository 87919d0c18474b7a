"""XLSX files, read by openpyxl as data: what a cell shows, never what a formula would do."""

import io
import struct
import zipfile
import zlib
from collections.abc import Iterator
from datetime import date, datetime
from typing import Any
from zipfile import ZipFile

from openpyxl import load_workbook
from openpyxl.cell.cell import Cell, MergedCell
from openpyxl.cell.read_only import EmptyCell, ReadOnlyCell

from assistant.service.lists.merged import blocks_of, filled
from assistant.service.lists.sheets import (
    MOST_COLUMNS,
    MOST_ROWS,
    Sheet,
    SheetError,
    Unreadable,
    kept_rows,
)
from assistant.service.office.columns import has_phones
from assistant.service.office.rows import SheetRow

MOST_UNPACKED = 150_000_000  # octets; a file of 5 MB may unpack to much more
MOST_LINES = 5 * MOST_ROWS  # with empty ones: a word far below is a slip, and reads for minutes
MOST_EXACT = 10**15  # above it a cell's number has lost digits
# What zipfile lets through of a broken file.
_BROKEN = (
    zipfile.BadZipFile,
    NotImplementedError,
    RuntimeError,
    EOFError,
    zlib.error,
    OSError,
    ValueError,
    struct.error,
)
_FORMULA = (b"<f>", b"<f ")

Read = Cell | MergedCell | ReadOnlyCell | EmptyCell


def read_workbook(content: bytes, wanted: str = "") -> Sheet:
    """The rows of one sheet of a workbook: of the one that is wanted, else of the first with a
    column of phone numbers by its head, else of the first with rows.

    Raises:
        SheetError: it is no workbook, has no rows, or unpacks to more than can be meant.
    """
    has_formulas = _looked_into(content)
    try:
        names, name, rows = _rows(content, wanted, values=True)
        if has_formulas:
            _, _, written = _rows(content, name, values=False)
            rows = tuple(_with_formulas(*pair) for pair in zip(rows, written, strict=True))
    except (SheetError, MemoryError):
        raise
    except Exception as fault:  # openpyxl lets through whatever a broken file raises in it
        raise SheetError(Unreadable.BROKEN) from fault
    kept = kept_rows((row.line, row.cells) for row in rows)
    return Sheet(kept, sheets=names, sheet=name)


def _looked_into(content: bytes) -> bool:
    """Whether the workbook has formulas; refuses one that would fill the memory."""
    try:
        with ZipFile(io.BytesIO(content)) as packed:
            if sum(each.file_size for each in packed.infolist()) > MOST_UNPACKED:
                raise SheetError(Unreadable.TOO_BIG)
            sheets = [name for name in packed.namelist() if "worksheets/" in name]
            return any(mark in packed.read(name) for name in sheets for mark in _FORMULA)
    except _BROKEN as fault:
        raise SheetError(Unreadable.BROKEN) from fault


def _rows(
    content: bytes, wanted: str, *, values: bool
) -> tuple[tuple[str, ...], str, tuple[SheetRow, ...]]:
    book = load_workbook(io.BytesIO(content), read_only=True, data_only=values)
    try:
        names = tuple(sheet.title for sheet in book.worksheets)
        if not names:
            raise SheetError(Unreadable.EMPTY)
        order = (wanted,) if wanted in names else names
        read = ((name, _filled(content, book[name])) for name in order)
        held = [(name, rows) for name, rows in read if any(any(row.cells) for row in rows)]
        if not held:
            raise SheetError(Unreadable.EMPTY)
        name, rows = next((each for each in held if has_phones(each[1])), held[0])
        return names, name, rows
    finally:
        book.close()


def _filled(content: bytes, sheet: Any) -> tuple[SheetRow, ...]:
    """The rows of a sheet, what stands in merged cells beside each of their rows."""
    rows = tuple(_of(sheet.iter_rows(max_col=MOST_COLUMNS)))
    path = getattr(sheet, "_worksheet_path", "")  # the library tells it nowhere else
    with ZipFile(io.BytesIO(content)) as packed:
        blocks = blocks_of(packed.read(path)) if path in packed.namelist() else ()
    return filled(rows, blocks) if blocks else rows


def _of(rows: Iterator[tuple[Read, ...]]) -> Iterator[SheetRow]:
    held = 0
    for line, cells in enumerate(rows, start=1):
        row = SheetRow(line, tuple(map(_shown, cells)))
        held += any(row.cells)
        if held > MOST_ROWS or line > MOST_LINES:
            raise SheetError(Unreadable.TOO_MANY_ROWS)
        yield row


def _shown(cell: Read) -> str:
    """A cell as text, exact."""
    value = cell.value
    if value is None:
        return ""
    if isinstance(value, datetime):
        return value.date().isoformat() if value.time() == _MIDNIGHT else value.isoformat(" ")
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, bool) or not isinstance(value, int | float):
        return str(value)
    return _number(value, cell.number_format or "")


_MIDNIGHT = datetime.min.time()


def _number(value: int | float, number_format: str) -> str:
    if "%" in number_format:
        return f"{round(value * 100, 6):g}%"
    if isinstance(value, float) and (value != value or abs(value) >= MOST_EXACT):
        return f"{value:E}"
    return str(int(value)) if value == int(value) else repr(value)


def _with_formulas(shown: SheetRow, written: SheetRow) -> SheetRow:
    """A formula that no program has worked out stands as it was written."""
    cells = tuple(
        text if found == "" and text.startswith("=") else found
        for found, text in zip(shown.cells, written.cells, strict=True)
    )
    return SheetRow(shown.line, cells)
