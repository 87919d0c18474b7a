"""Workbooks that are made to fill the memory, or to be read for ever: refused, and the web side
lives on."""

import io
import zipfile

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from openpyxl import Workbook

from assistant.service.lists import workbook_box
from assistant.service.lists.files import read_sheet
from assistant.service.lists.sheets import SheetError, Unreadable
from assistant.service.lists.workbook_box import _boxed, read_boxed
from assistant.service.lists.workbooks import read_workbook

ROWS = [["Phone", "Name"], ["+447700900101", "Amina"]]


def workbook(rows: list[list[str]]) -> bytes:
    """An ordinary one."""
    book, kept = Workbook(), io.BytesIO()
    assert book.active is not None
    for row in rows:
        book.active.append(row)
    book.save(kept)
    return kept.getvalue()


def with_sheet(xml: bytes) -> bytes:
    """An ordinary workbook whose sheet is another one."""
    kept = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(workbook(ROWS))) as old:
        with zipfile.ZipFile(kept, "w", zipfile.ZIP_DEFLATED) as new:
            for name in old.namelist():
                is_sheet = name.endswith("worksheets/sheet1.xml")
                new.writestr(name, xml if is_sheet else old.read(name))
    return kept.getvalue()


_HEAD = (
    b'<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>'
)
_CELL = b'<c r="A%d" t="inlineStr"><is><t>x</t></is></c>'
_TAIL = b"</sheetData></worksheet>"


def _far(line: int) -> bytes:
    return with_sheet(_HEAD + b'<row r="%d">' % line + _CELL % line + b"</row>" + _TAIL)


BOMBS = {
    "a word in the last row": _far(1_048_576),
    "row 400 million": _far(400_000_000),
    "millions of empty rows": with_sheet(_HEAD + b"<row/>" * 9_000_000 + _TAIL),
    "one long word": with_sheet(
        _HEAD
        + b'<row r="1"><c r="A1" t="inlineStr"><is><t>'
        + b"x" * 100_000_000
        + b"</t></is>"
        b"</c></row>" + _TAIL
    ),
}


@pytest.mark.parametrize("content", BOMBS.values(), ids=BOMBS.keys())
def test_a_bomb_is_refused(content: bytes, monkeypatch: pytest.MonkeyPatch) -> None:
    """It was up to six gigabytes and minutes in the process that answers the operator."""
    assert len(content) < 300_000
    monkeypatch.setattr(workbook_box, "MOST_S", 2)
    try:
        sheet = read_sheet(content)
    except SheetError as refused:
        assert refused.why in (Unreadable.TOO_BIG, Unreadable.TOO_MANY_ROWS, Unreadable.BROKEN)
    else:
        assert len(sheet.rows) == 1  # read, in its box


def test_what_was_read_is_not_read_again() -> None:
    """Each page of a list asks for it; nor is what could not be read."""
    for content in (workbook(ROWS), b"PK\x03\x04 nothing"):
        before = _boxed.cache_info().misses
        for _ in range(2):
            try:
                read_sheet(content)
            except SheetError:
                continue
        assert _boxed.cache_info().misses == before + 1


def test_the_box_reads_as_the_reader_does() -> None:
    """The same rows, names and sheet."""
    content = workbook(ROWS)
    assert read_boxed(content, "") == read_workbook(content)


@settings(max_examples=60)
@given(st.lists(st.tuples(st.integers(0, 4000), st.integers(0, 255)), max_size=8))
def test_any_broken_workbook_is_read_or_refused(changes: list[tuple[int, int]]) -> None:
    """Bytes of a good one changed; the reader itself, without its box."""
    content = bytearray(workbook(ROWS))
    for place, value in changes:
        content[place % len(content)] = value
    try:
        read_workbook(bytes(content))
    except SheetError:
        return
