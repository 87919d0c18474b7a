"""The rows that were not taken, as a file to mend and send in again."""

import csv
import io
from collections.abc import Iterable, Sequence

from assistant.service.office.judging import Judged, Verdict
from assistant.wording import messages_web_people as web_people
from assistant.wording.render import Catalogue, render, render_all

# A spreadsheet takes a cell that begins like this for a formula (OWASP, "CSV Injection"). The
# mark in front makes it words; it is taken off again when the file comes back.
_FORMULA_STARTS = ("=", "+", "-", "@", "\t", "\r")
_MARK = "'"
PLAIN = ","


def rejects_file(
    heads: Sequence[str],
    judged: Iterable[Judged],
    catalogue: Catalogue,
    delimiter: str = PLAIN,
) -> bytes:
    """The same columns and one more with the reasons; UTF-8 with the mark that spreadsheet
    programs look for."""
    width = len(heads)
    why = render(web_people.WHY(), catalogue)
    again = [at for at, head in enumerate(heads) if head.casefold() == why.casefold()]
    kept = [at for at in range(width) if at not in again]
    rows = [[heads[at] for at in kept] + [why]]
    for each in judged:
        if each.verdict is Verdict.REJECTED:
            cells = (*each.row.cells, *("",) * (width - len(each.row.cells)))
            reason = render_all(each.says, catalogue).replace("\n", " ")
            rows.append([cells[at] for at in kept] + [reason])
    return written(rows, delimiter)


def written(rows: Iterable[Sequence[str]], delimiter: str = PLAIN) -> bytes:
    """Rows as a CSV in which nothing is a formula."""
    text = io.StringIO(newline="")
    writer = csv.writer(text, delimiter=delimiter or PLAIN)
    writer.writerows([harmless(cell) for cell in row] for row in rows)
    return text.getvalue().encode("utf-8-sig")


def harmless(cell: str) -> str:
    """A cell that no spreadsheet program takes for a formula."""
    return f"{_MARK}{cell}" if cell.startswith(_FORMULA_STARTS) else cell
