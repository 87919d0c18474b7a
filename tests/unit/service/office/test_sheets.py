"""Files as spreadsheet programs write them: letters, delimiters, workbooks, odd bytes."""

import codecs
import csv
import io
from datetime import date, datetime

import openpyxl
import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from assistant.service.lists.files import read_sheet
from assistant.service.lists.rejects import written
from assistant.service.lists.sheets import SheetError, Unreadable
from assistant.service.office.columns import Field, columns_of, head_row

ROWS = (
    ("Téléphone", "Nom"),
    ("+447700900101", "José Ágústo"),
    ("+447700900102", "Zoé; Amélie"),
)


def as_csv(delimiter: str, encoding: str, mark: bytes = b"") -> bytes:
    text = io.StringIO(newline="")
    csv.writer(text, delimiter=delimiter).writerows(ROWS)
    return mark + text.getvalue().encode(encoding)


# How spreadsheet programs write CSV and "Unicode text"; common practice, no source.
WAYS = {
    "UTF-8": as_csv(",", "utf-8"),
    "UTF-8 with its mark, semicolons": as_csv(";", "utf-8", codecs.BOM_UTF8),
    "Windows-1252, semicolons": as_csv(";", "cp1252"),
    "UTF-16 with tabs": as_csv("\t", "utf-16"),
    "UTF-16 without a mark": as_csv("\t", "utf-16-le"),
    "a first line that names the delimiter": b"sep=|\r\n" + as_csv("|", "utf-8"),
}


@pytest.mark.parametrize("content", WAYS.values(), ids=WAYS)
def test_a_csv_is_read_whatever_program_wrote_it(content: bytes) -> None:
    """The same cells from each."""
    assert tuple(row.cells for row in read_sheet(content).rows) == ROWS


def test_vietnamese_and_hindi_names_come_through() -> None:
    """As UTF-8, which every program of our days can write."""
    rows = [["Họ và tên", "नाम"], ["Nguyễn Văn Ánh", "सीता देवी"]]
    sheet = read_sheet(written(rows, ";"))
    assert [list(row.cells) for row in sheet.rows] == rows


def test_a_quote_that_is_never_closed_swallows_no_rows() -> None:
    """The rows below it are read all the same."""
    rows = "".join(f"+4477009001{n:02},Amina {n}\n" for n in range(30))
    sheet = read_sheet(f'Phone,Name\n+447700900199,"Amina\n{rows}'.encode())
    assert len(sheet.rows) == 32


def workbook(rows: list[list[object]], **formats: str) -> bytes:
    book = openpyxl.Workbook()
    sheet = book.active
    assert sheet is not None
    for row in rows:
        sheet.append(row)
    for place, number_format in formats.items():
        sheet[place].number_format = number_format
    kept = io.BytesIO()
    book.save(kept)
    return kept.getvalue()


def test_a_workbooks_cells_are_read_exactly() -> None:
    """Dates as dates, numbers with all digits, percents as percents, formulas as written."""
    row: list[object] = [
        447700900101,
        4.47701e11,
        datetime(2026, 6, 10),
        date(2026, 6, 11),
        0.85,
        0.4,
        "=1+1",
        "+447700900101",
        None,
        True,
    ]
    content = workbook([["h"] * len(row), row], E2="0%")
    assert read_sheet(content).rows[1].cells == (
        "447700900101",
        "447701000000",
        "2026-06-10",
        "2026-06-11",
        "85%",
        "0.4",
        "=1+1",
        "+447700900101",
        "",
        "True",
    )


def test_the_sheet_with_phone_numbers_is_read_first() -> None:
    """An office's notes and prices stand before and behind its list; a title above it."""
    book = openpyxl.Workbook()
    book["Sheet"].append(["Notes of the office"])
    register = book.create_sheet("Register")
    register.append(["Register of farmers, 2026"])
    register.append([])
    register.append(["Farmer", None, "Field"])
    register.append(["Name", "Mobile no.", "Area (acres)"])
    register.append(["Amina", "'07700900101", 1])
    book.create_sheet("Prices").append(["Seed", 3])
    kept = io.BytesIO()
    book.save(kept)
    sheet = read_sheet(kept.getvalue())
    assert (sheet.sheet, sheet.sheets) == ("Register", ("Sheet", "Register", "Prices"))
    assert sheet.rows[-1].cells == ("Amina", "07700900101", "1")
    assert head_row(sheet.rows) == 2  # of the rows that hold something


def test_a_named_sheet_is_read_and_the_first_with_rows_otherwise() -> None:
    """An empty first sheet is passed over."""
    book = openpyxl.Workbook()
    second = book.create_sheet("Kijani")
    second.append(["Phone"])
    third = book.create_sheet("Mtoni")
    third.append(["Simu"])
    kept = io.BytesIO()
    book.save(kept)
    assert read_sheet(kept.getvalue()).sheet == "Kijani"
    assert read_sheet(kept.getvalue(), sheet="Mtoni").rows[0].cells == ("Simu",)


BROKEN = {
    b"": Unreadable.EMPTY,
    b"\xef\xbb\xbf": Unreadable.EMPTY,
    b"\xd0\xcf\x11\xe0\xa1\xb1": Unreadable.OLD_OR_LOCKED,
    b"PK\x03\x04garbage": Unreadable.BROKEN,
}


@pytest.mark.parametrize(("content", "why"), BROKEN.items(), ids=map(str, BROKEN.values()))
def test_what_is_no_list_says_why(content: bytes, why: Unreadable) -> None:
    """One reason each."""
    with pytest.raises(SheetError) as refused:
        read_sheet(content)
    assert refused.value.why is why


@settings(max_examples=150, deadline=None)
@given(st.binary(max_size=400))
@example(b"a,b\n\x00\x01")
@example(b"\xff\xfe\x00")
def test_any_bytes_are_read_or_refused(content: bytes) -> None:
    """Nothing else is raised, whatever is sent in."""
    try:
        sheet = read_sheet(content)
    except SheetError:
        return
    assert sheet.rows
    head_row(sheet.rows)
    columns_of(sheet.rows[0].cells)


_CELLS = st.text(st.characters(codec="utf-8", exclude_characters="\0"), max_size=12)


@settings(max_examples=150, deadline=None)
@given(st.lists(st.lists(_CELLS, min_size=2, max_size=4), min_size=1, max_size=6))
def test_rejects_are_no_formulas_and_come_back_as_they_were(rows: list[list[str]]) -> None:
    """OWASP, "CSV Injection": no cell may begin with = + - @ tab or CR."""
    content = written(rows)
    text = io.StringIO(content.decode("utf-8-sig"), newline="")
    cells = [cell for row in csv.reader(text) for cell in row]
    assert not any(cell.startswith(("=", "+", "-", "@", "\t", "\r")) for cell in cells)


# --- names of columns ------------------------------------------------------------------------

# What offices write; drafted by us in each language, common practice, no source.
HEADS = {
    "en": ("Mobile no.", "Name of farmer", "Village", "Field (ha)", "Planned sowing"),
    "sw": ("Namba ya simu", "Jina la mkulima", "Kijiji", "Ukubwa wa shamba", "Kusia"),
    "fr": ("N° téléphone", "Nom et prénom", "Village", "Superficie (ha)", "Date de semis"),
    "hi": ("मोबाइल नंबर", "किसान का नाम", "गाँव", "रकबा", "बुवाई की तारीख"),
    "bn": ("মোবাইল নম্বর", "কৃষকের নাম", "গ্রাম", "জমির পরিমাণ", "বপনের তারিখ"),
    "id": ("No. HP", "Nama petani", "Desa", "Luas lahan", "Tanggal semai"),
    "vi": ("Số điện thoại", "Họ và tên", "Thôn", "Diện tích (m2)", "Ngày gieo"),
    "pt": ("Telemóvel", "Nome do agricultor", "Aldeia", "Área", "Data de sementeira"),
    "fil": ("Numero ng telepono", "Pangalan", "Barangay", "Lawak", "Petsa ng pagpupunla"),
}
WANTED = [Field.PHONE, Field.NAME, Field.VILLAGE, Field.AREA, Field.SOWING]


@pytest.mark.parametrize("code", HEADS)
def test_columns_are_known_by_their_names_in(code: str) -> None:
    """In any order, and each only once."""
    forth = [column.field for column in columns_of(HEADS[code])]
    back = [column.field for column in columns_of(HEADS[code][::-1])]
    assert forth == back[::-1] == WANTED


def test_a_misspelt_or_longer_name_is_a_guess() -> None:
    """It is shown as one; a date of birth is no sowing, a serial number no phone."""
    found = columns_of(("S/N", "Mobile nummber of farmer", "Vilage", "Date of birth"))
    assert [(each.field, each.sure) for each in found] == [
        (None, False),
        (Field.PHONE, False),
        (Field.VILLAGE, False),
        (None, False),
    ]


def test_a_title_above_the_names_is_passed_over() -> None:
    """The names are the row in which most are known."""
    sheet = read_sheet(b"Rice farmers 2026;\n;\nPhone;Name\n1;2\n")
    assert sheet.rows[head_row(sheet.rows)].cells == ("Phone", "Name")
