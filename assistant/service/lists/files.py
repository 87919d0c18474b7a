"""A file of an office, CSV or XLSX: what it is, its content says and not its name."""

from assistant.service.lists.sheets import MOST_BYTES, Sheet, SheetError, Unreadable, read_csv
from assistant.service.lists.workbook_box import read_boxed

_ZIP, _OLE = b"PK\x03\x04", b"\xd0\xcf\x11\xe0"


def read_sheet(content: bytes, *, sheet: str = "", encoding: str = "") -> Sheet:
    """The rows of a CSV or XLSX file; what it is, its content says and not its name.

    Args:
        sheet: which sheet of a workbook; that with phone numbers where none is named.
        encoding: one of `ENCODINGS`, where the officer said so.

    Raises:
        SheetError: it cannot be read.
    """
    if len(content) > MOST_BYTES:
        raise SheetError(Unreadable.TOO_BIG)
    if not content.strip(b" \t\r\n\0"):
        raise SheetError(Unreadable.EMPTY)
    if content.startswith(_OLE):
        raise SheetError(Unreadable.OLD_OR_LOCKED)
    if content.startswith(_ZIP):
        return read_boxed(content, sheet)
    return read_csv(content, encoding)
