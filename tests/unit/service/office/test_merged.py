"""What stands once beside several rows of a workbook. The file is written by openpyxl."""

import io

from openpyxl import Workbook

from assistant.service.lists.merged import Block, blocks_of
from assistant.service.lists.workbooks import read_workbook

ROWS = (
    ("Farmers of the valley", None, None, None),
    ("Name", "Phone", "Field", "Place"),
    (None, None, None, "village"),
    ("Amina", "+447700900101", "0.4 ha", "Kijani"),
    ("Baraka", "+447700900102", "1 acre", None),
    (None, None, None, None),
    ("Zawadi", "+447700900103", None, None),
    ("Tatu", "+447700900104", None, "Mwanga"),
)


def test_a_merged_cell_is_said_of_each_of_its_rows() -> None:
    """But not of rows that hold nothing else, nor of those among the heads."""
    book = Workbook()
    sheet = book.active
    assert sheet is not None
    for row in ROWS:
        sheet.append(row)
    for merged in ("A1:D1", "B2:B3", "D4:D7"):
        sheet.merge_cells(merged)
    kept = io.BytesIO()
    book.save(kept)
    read = {row.line: row.cells for row in read_workbook(kept.getvalue()).rows}
    assert [read[line][3] for line in (4, 5, 7, 8)] == ["Kijani"] * 3 + ["Mwanga"]
    assert 6 not in read
    assert read[3] == ("", "", "", "village")


def test_blocks_are_found_after_the_rows() -> None:
    """ECMA-376, part 1, 18.3.1.54 and 18.3.1.55; a prefix may stand before each name."""
    xml = (
        b"<x:sheetData>mergeCell ref='no'</x:sheetData><x:mergeCells count='2'>"
        b'<x:mergeCell ref="D6:D9"/><x:mergeCell ref="A1:D1"/></x:mergeCells>'
    )
    assert blocks_of(xml) == (Block(column=3, first=5, last=8),)
