"""Merged cells of a workbook: what stands once beside several rows is said of each of them.

A file keeps the words in the first cell of such a block only. They are written into the other
rows of the block that hold something themselves; above the first row with a telephone number,
among titles and heads, nothing is filled in.
"""

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from openpyxl.utils import column_index_from_string

from assistant.service.lists.sheets import MOST_COLUMNS
from assistant.service.office.rows import SheetRow

# ECMA-376, part 1, 18.3.1.54: mergeCell, after the rows of the sheet.
_BLOCK = re.compile(
    rb'<(?:\w+:)?mergeCell\s[^>]*?ref="([A-Z]{1,3})([0-9]{1,7}):[A-Z]{1,3}([0-9]{1,7})"'
)
_ROWS_END = b"sheetData>"
_FEWEST_DIGITS = 9  # of a telephone number with its country or its nought; a date has eight


@dataclass(frozen=True)
class Block:
    """Merged cells: the column of the first one, and the first and last row, from 0."""

    column: int
    first: int
    last: int


def blocks_of(sheet: bytes) -> tuple[Block, ...]:
    """The blocks of several rows in the XML of a sheet."""
    after = sheet[max(sheet.rfind(_ROWS_END), 0) :]
    found = (
        Block(column_index_from_string(column.decode()) - 1, int(first) - 1, int(last) - 1)
        for column, first, last in _BLOCK.findall(after)
    )
    return tuple(
        each for each in found if each.first < each.last and each.column < MOST_COLUMNS
    )


def filled(rows: Sequence[SheetRow], blocks: Iterable[Block]) -> tuple[SheetRow, ...]:
    """All rows of a sheet, from its first, with what their blocks say."""
    cells = [list(row.cells) for row in rows]
    first = next((at for at, row in enumerate(rows) if _has_number(row)), len(rows))
    for block in blocks:
        for at in range(max(block.first + 1, first), min(block.last + 1, len(rows))):
            _fill(cells[at], block.column, cells[block.first])
    return tuple(SheetRow(row.line, tuple(kept)) for row, kept in zip(rows, cells, strict=True))


def _fill(row: list[str], column: int, above: Sequence[str]) -> None:
    if column < min(len(row), len(above)) and any(row) and not row[column]:
        row[column] = above[column]


def _has_number(row: SheetRow) -> bool:
    return any(_digits(cell) >= _FEWEST_DIGITS for cell in row.cells)


def _digits(cell: str) -> int:
    return 0 if any(map(str.isalpha, cell)) else sum(map(str.isdigit, cell))
