"""Tables as files: what is typed stays words, numbers and dates are what they are."""

import csv
from datetime import date, datetime
from io import BytesIO, StringIO

import pytest
from openpyxl import load_workbook
from openpyxl.cell import Cell as BookCell

from assistant.web.sheets import Cell, csv_file, xlsx_file

# Beginnings after OWASP, "CSV Injection": = + - @, tab, carriage return, East Asian width.
EVIL = (
    '=HYPERLINK("http://example.org","x")',
    "+1+1",
    "-2+3",
    "@SUM(A1)",
    "\t=1+1",
    "\r=1+1",
    "  =1+1",
    "＝1+1",
)


def _csv(*rows: list[Cell]) -> list[list[str]]:
    text = csv_file(["Name", "Area (m2)"], rows).decode("utf-8-sig")
    return list(csv.reader(StringIO(text, newline="")))


@pytest.mark.parametrize("typed", EVIL)
def test_what_looks_like_a_formula_is_words_in_csv(typed: str) -> None:
    """It begins with an apostrophe, and nothing of it is lost."""
    assert _csv([typed])[1] == [f"'{typed}"]


@pytest.mark.parametrize("typed", EVIL)
def test_what_looks_like_a_formula_is_a_string_in_xlsx(typed: str) -> None:
    """Its type says so, and the file computes nothing."""
    book = load_workbook(BytesIO(xlsx_file("Results", ["Name"], [[typed]])))
    cell = book.worksheets[0]["A2"]
    assert (cell.data_type, str(cell.value).strip()) == ("s", typed.strip())


@pytest.mark.parametrize("typed", ['Amina, "Juma"', "two\nlines", "o'clock", "नाम", "3-4"])
def test_other_words_are_left_as_they_are(typed: str) -> None:
    """Whatever they hold."""
    assert _csv([typed])[1] == [typed]
    book = load_workbook(BytesIO(xlsx_file("Results", ["Name"], [[typed]])))
    assert book.worksheets[0]["A2"].value == typed


def test_numbers_and_dates_are_no_words() -> None:
    """A negative number is a number; a date is a date; what is not known is empty."""
    row: list[Cell] = [-1.5, 3, date(2026, 6, 10), None]
    assert _csv(row)[1] == ["-1.5", "3", "2026-06-10", ""]
    book = load_workbook(BytesIO(xlsx_file("Results", list("abcd"), [row])))
    cells = list(book.worksheets[0].iter_rows(min_row=2, max_row=2))[0]
    assert [cell.value for cell in cells] == [-1.5, 3, datetime(2026, 6, 10), None]
    assert isinstance(cells[2], BookCell) and cells[2].is_date


def test_signs_that_no_xml_holds_do_not_break_the_file() -> None:
    """A phone may have sent them."""
    book = load_workbook(BytesIO(xlsx_file("[a]:b*", ["a"], [["x\x00\x0by"]])))
    assert book.worksheets[0]["A2"].value == "xy"


def test_the_head_stays_in_sight() -> None:
    """When the list is long."""
    book = load_workbook(BytesIO(xlsx_file("Results", ["a"], [])))
    assert book.worksheets[0].freeze_panes == "A2"
