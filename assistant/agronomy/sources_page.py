"""The page that lists every constant with its range and source (`SOURCES.md`)."""

from collections.abc import Iterable

from assistant.agronomy.constant import Constant, HowSure
from assistant.agronomy.constants import CONSTANTS
from assistant.agronomy.tables import TABLES, Cell, Table

_HEAD = """\
# Where the numbers come from

Generated from the same data that the program computes with; do not edit it by hand.
To write it anew:

```sh
python -c "from assistant.agronomy.sources_page import sources_page as page; print(page())" \\
  > assistant/agronomy/SOURCES.md
```

How sure we are:

- **published**: the number stood in the named source.
- **common practice, no source**: growers use it; no independent source was seen to print it.
- **from memory**: known, not seen in print.
- **judgement**: set by us inside what the named sources allow.
- **design choice**: set by us for convenience; a neighbouring value would do as well.

A range is what published or usual values span; it is not a limit on what a person may type.

| constant | value | range | unit | how sure | source and note |
|---|---|---|---|---|---|
"""


def sources_page() -> str:
    """The whole page, in Markdown, one row for each constant; no newline at its end."""
    rows = "".join(_row(constant) for constant in CONSTANTS)
    tables = "\n".join(_table(table) for table in TABLES)
    return f"{_HEAD}{rows}\n{_tally(CONSTANTS)}\n\n# Tables\n\n{tables}".rstrip()


def _row(constant: Constant) -> str:
    ends = [f"{end:g}" for end in (constant.low, constant.high) if end is not None]
    about = "; ".join(
        [*map(str, constant.sources), *([constant.note] if constant.note else [])]
    )
    return (
        f"| `{constant.name}` | {constant.value:g} | {' to '.join(ends)} | {constant.unit} "
        f"| {constant.how_sure} | {about} |\n"
    )


def _tally(constants: Iterable[Constant]) -> str:
    kinds = [constant.how_sure for constant in constants]
    counts = (f"{kinds.count(kind)} {kind}" for kind in HowSure if kind in kinds)
    return f"{len(kinds)} constants: {', '.join(counts)}."


def _table(table: Table) -> str:
    about = "; ".join([*map(str, table.sources), *([table.note] if table.note else [])])
    rows = [table.head, tuple("---" for _ in table.head), *table.rows]
    lines = "\n".join(f"| {' | '.join(map(_cell, row))} |" for row in rows)
    return f"## `{table.name}`\n\n{table.how_sure.capitalize()}: {about}.\n\n{lines}\n"


def _cell(cell: Cell) -> str:
    return cell if isinstance(cell, str) else f"{cell:g}"
