"""A file of an office as rows of plain texts, whichever program wrote it.

Nothing is guessed and nothing computed: a date comes as 2026-06-10, a number with all its
digits or as the program cut it (4.47701E+11), a formula that was never worked out as it was
written. Who reads the cells decides what can be used.

csv.Sniffer proposes a delimiter, and is believed only where the rows bear it out; letters that
are not Unicode are named by charset-normalizer among the few codes that spreadsheet programs
write, and the officer sees them and may name another.
"""

import csv
import io
from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from enum import StrEnum

from charset_normalizer import from_bytes

from assistant.service.office.rows import SheetRow

MOST_BYTES = 5_000_000
MOST_ROWS = 20_000
MOST_COLUMNS = 100
LONGEST_CELL = 2_000
_SAMPLE_ROWS = 50
_SAMPLE_CHARACTERS = 20_000
_STRAY = 300  # characters with line breaks in one cell: a quote that was never closed
DELIMITERS = ",;\t|"
# What spreadsheet programs write where it is not Unicode; the first is the usual one.
OLD_ENCODINGS = ("cp1252", "cp1258", "cp1250", "mac_roman")
ENCODINGS = ("utf-8", *OLD_ENCODINGS, "utf-16")
_MARKS = (
    (b"\xef\xbb\xbf", "utf-8-sig"),
    (b"\xff\xfe", "utf-16"),
    (b"\xfe\xff", "utf-16"),
)


class Unreadable(StrEnum):
    """Why a file cannot be read at all."""

    EMPTY = "empty"
    TOO_BIG = "too_big"
    TOO_MANY_ROWS = "too_many_rows"
    OLD_OR_LOCKED = "old_or_locked"  # .xls, or a workbook with a password
    BROKEN = "broken"
    NOT_A_TABLE = "not_a_table"


class SheetError(Exception):
    """The file cannot be read; `why` says what to tell the person who sent it."""

    def __init__(self, why: Unreadable) -> None:
        super().__init__(f"expected a CSV or XLSX file of farmers: {why.value}")
        self.why = why


@dataclass(frozen=True)
class Sheet:
    """The rows of a file that hold something.

    `sheets` are the names of a workbook's sheets, `sheet` the one that was read; `encoding`
    and `delimiter` say how a CSV was read.
    """

    rows: tuple[SheetRow, ...]
    sheets: tuple[str, ...] = ()
    sheet: str = ""
    encoding: str = ""
    delimiter: str = ""


def kept_rows(rows: Iterable[tuple[int, Iterable[str]]]) -> tuple[SheetRow, ...]:
    """The rows that hold something, each cell without blanks around it.

    Raises:
        SheetError: there are none, or too many.
    """
    kept: list[SheetRow] = []
    for line, cells in rows:
        trimmed = [_trimmed(cell) for cell in cells][:MOST_COLUMNS]
        while trimmed and not trimmed[-1]:
            trimmed.pop()
        if trimmed:
            kept.append(SheetRow(line, tuple(trimmed)))
        if len(kept) > MOST_ROWS:
            raise SheetError(Unreadable.TOO_MANY_ROWS)
    if not kept:
        raise SheetError(Unreadable.EMPTY)
    return tuple(kept)


def _trimmed(cell: str) -> str:
    cut = " ".join(cell.replace("\0", "")[:LONGEST_CELL].split())
    # What a list of ours, or a careful person, put before a sign so that it is no formula, or
    # before a digit so that it keeps its nought.
    marked = len(cut) > 1 and cut[0] == "'" and (cut[1] in "=+-@" or cut[1].isdigit())
    return cut[1:] if marked else cut


# --- CSV -------------------------------------------------------------------------------------


def read_csv(content: bytes, asked: str) -> Sheet:
    text, encoding = decoded(content, asked)
    text, told = _told_delimiter(text)
    delimiter = told or delimiter_of(text)
    rows = list(_parsed(text, delimiter, csv.QUOTE_MINIMAL))
    if any(len(cell) > _STRAY and "\n" in cell for _, cells in rows for cell in cells):
        rows = list(_parsed(text, delimiter, csv.QUOTE_NONE))
    return Sheet(kept_rows(rows), encoding=encoding, delimiter=delimiter)


def decoded(content: bytes, asked: str = "") -> tuple[str, str]:
    """The letters of a file and the code they were read by.

    Raises:
        SheetError: it is no text.
    """
    if asked in ENCODINGS:
        return content.decode(asked, errors="replace").lstrip("\ufeff"), asked
    for mark, encoding in _MARKS:
        if content.startswith(mark):
            return content.decode(encoding, errors="replace").lstrip("\ufeff"), encoding
    wide = _without_mark(content)
    if wide:
        return content.decode(wide, errors="replace"), wide
    try:
        return content.decode("utf-8"), "utf-8"
    except UnicodeDecodeError:
        return _old(content)


def _without_mark(content: bytes) -> str:
    """UTF-16 without its mark: every other octet of plain letters is nought."""
    head = content[:1000]
    odd, even = head[1::2].count(0), head[::2].count(0)
    most = len(head) // 2 * 0.3
    if odd > most and odd > 2 * even:
        return "utf-16-le"
    return "utf-16-be" if even > most and even > 2 * odd else ""


def _old(content: bytes) -> tuple[str, str]:
    if content.count(0) > len(content) // 100:
        raise SheetError(Unreadable.NOT_A_TABLE)
    found = from_bytes(content, cp_isolation=list(OLD_ENCODINGS)).best()
    encoding = found.encoding if found is not None else OLD_ENCODINGS[0]
    if not _has_letters(content, encoding):
        encoding = OLD_ENCODINGS[0]
    return content.decode(encoding, errors="replace"), encoding


def _has_letters(content: bytes, encoding: str) -> bool:
    """Whether what is no ASCII becomes letters; a few other marks may be among them."""
    strange = [ch for ch in content.decode(encoding, errors="replace") if ord(ch) > 127]
    letters = sum(ch.isalpha() for ch in strange)
    return letters * 2 >= len(strange)


def _told_delimiter(text: str) -> tuple[str, str]:
    """A first line such as "sep=;", which one spreadsheet program writes and reads."""
    first, _, rest = text.partition("\n")
    told = first.strip().removeprefix("sep=")
    if first.startswith("sep=") and len(told) == 1:
        return "\n" + rest, told  # the lines keep their numbers
    return text, ""


def delimiter_of(text: str) -> str:
    """The delimiter that parts the rows most alike; the sniffer's, where it does as well."""
    sample = text[:_SAMPLE_CHARACTERS]
    scores = {delimiter: _alike(sample, delimiter) for delimiter in DELIMITERS}
    best = max(DELIMITERS, key=lambda delimiter: scores[delimiter])
    try:
        sniffed = csv.Sniffer().sniff(sample, DELIMITERS).delimiter
    except csv.Error:
        return best
    return sniffed if scores.get(sniffed, (0.0, 0)) >= scores[best] else best


def _alike(sample: str, delimiter: str) -> tuple[float, int]:
    """The share of rows with the most common number of columns, and that number; nothing for
    a delimiter that parts none."""
    rows = [cells for _, cells in _parsed(sample, delimiter, csv.QUOTE_MINIMAL)]
    counts = Counter(len(cells) for cells in rows[:_SAMPLE_ROWS] if any(cells))
    if not counts:
        return 0.0, 0
    columns, times = counts.most_common(1)[0]
    return (times / counts.total(), columns) if columns > 1 else (0.0, 0)


def _parsed(text: str, delimiter: str, quoting: int) -> Iterator[tuple[int, list[str]]]:
    reader = csv.reader(
        io.StringIO(text, newline=""),
        delimiter=delimiter,
        quoting=quoting,  # type: ignore[arg-type]  # one of csv's constants
    )
    while True:
        line = reader.line_num + 1
        try:
            cells = next(reader)
        except StopIteration:
            return
        except csv.Error as fault:
            raise SheetError(Unreadable.NOT_A_TABLE) from fault
        yield line, cells
