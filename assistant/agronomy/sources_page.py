"""The page that lists every constant with its range and source, and every sentence of first aid
(`SOURCES.md`)."""

from collections.abc import Iterable

from assistant.agronomy.aid_page import aid_section
from assistant.agronomy.constants import CONSTANTS
from assistant.agronomy.constants_measures import MEASURE_CONSTANTS
from assistant.agronomy.constants_work import WORK_CONSTANTS
from assistant.agronomy.dangers.page import dangers_section
from assistant.agronomy.dangers.rows import DANGERS
from assistant.agronomy.practices import DayPoint, Practice, TaskRule
from assistant.agronomy.sourced.conflicts import CONFLICTS, Conflict
from assistant.agronomy.sourced.constant import Constant, HowSure
from assistant.agronomy.sourced.tables import TABLES, Cell, Table
from assistant.agronomy.units import UNITS, LandUnit

ALL_CONSTANTS = (*CONSTANTS, *WORK_CONSTANTS, *MEASURE_CONSTANTS)
_HEAD = """\
# Where the numbers come from

Generated from the same data that the program computes with; do not edit it by hand.
To write it anew:

```sh
python -m assistant.wiring.practices > assistant/agronomy/SOURCES.md
```

How sure we are:

- **published**: the number stood in the named source, or follows from it by arithmetic, where
  the note says so.
- **common practice, no source**: growers use it; no independent source was seen to print it.
- **from memory**: known, not seen in print.
- **judgement**: set by us inside what the named sources allow.
- **design choice**: set by us for convenience; a neighbouring value would do as well.

A range is what published or usual values span; it is not a limit on what a person may type.

"""
_CONSTANT_HEAD = """\
| constant | value | range | unit | how sure | source and note |
|---|---|---|---|---|---|
"""
_TASK_HEAD = """\
| task | from | until | how sure | source and note |
|---|---|---|---|---|
"""
_PRACTICES = """
# Practices

The mat is built of the constants above; the others list what is theirs.

"""
_LAND = """
# Units of land

Where a unit has no row for a region, it is asked back.

| unit | region | m2 | how sure | source |
|---|---|---|---|---|
"""
_CONFLICTS = """\
# Where publishers disagree

What is accepted, and why, is our judgement from the spread of what was found.

| topic | who says what | accepted | why |
|---|---|---|---|
"""


def sources_page(practices: Iterable[Practice]) -> str:
    """The whole page, in Markdown, one row for each constant; no newline at its end."""
    practices = tuple(practices)
    own = tuple(number for practice in practices for number in own_numbers(practice))
    parts = (
        _HEAD,
        "# Constants\n\n" + _CONSTANT_HEAD,
        "".join(map(_row, ALL_CONSTANTS)),
        f"\n{_tally((*ALL_CONSTANTS, *own))}\n\n# Tables\n\n",
        "\n".join(map(_table, TABLES)),
        _PRACTICES,
        "\n".join(map(_practice, practices)),
        _LAND + "".join(map(_land, UNITS)),
        "\n" + _CONFLICTS + "".join(map(_conflict, CONFLICTS)),
        dangers_section(DANGERS.all),
        aid_section(),
    )
    return "".join(parts).rstrip()


def own_numbers(practice: Practice) -> tuple[Constant, ...]:
    """The numbers of a practice that are no constants of the trade, as its file has them."""
    found = dict.fromkeys(_numbers(practice))
    return tuple(number for number in found if number not in _KNOWN)


_KNOWN = frozenset(ALL_CONSTANTS)


def _numbers(practice: Practice) -> Iterable[Constant]:
    groups: tuple[object, ...] = (
        practice.bed,
        practice.bed.piece,
        practice.planting,
        practice.window,
        practice.days,
        practice.labour,
    )
    for group in groups:
        values = vars(group).values() if group is not None else ()
        yield from (value for value in values if isinstance(value, Constant))


def _row(constant: Constant) -> str:
    ends = [f"{end:g}" for end in (constant.low, constant.high) if end is not None]
    return (
        f"| `{constant.name}` | {constant.value:g} | {' to '.join(ends)} | {constant.unit} "
        f"| {constant.how_sure} | {_about(constant)} |\n"
    )


def _about(constant: Constant) -> str:
    return "; ".join([*map(str, constant.sources), *([constant.note] if constant.note else [])])


def _practice(practice: Practice) -> str:
    own = "".join(map(_row, own_numbers(practice)))
    numbers = f"{_CONSTANT_HEAD}{own}\n" if own else ""
    tasks = "".join(map(_task, practice.days.tasks))
    return f"## {practice.name('en')} (`{practice.code}`)\n\n{numbers}{_TASK_HEAD}{tasks}"


def _task(rule: TaskRule) -> str:
    days = rule.start.days
    until = _point(rule.end) if rule.end else ""
    every = f", every {rule.every_d} days" if rule.every_d > 1 else ""
    return (
        f"| `{rule.code}` | {_point(rule.start)} | {until}{every} "
        f"| {days.how_sure} | {_about(days)} |\n"
    )


def _point(point: DayPoint) -> str:
    return f"{point.anchor} {point.days.value:+g}" if point.days.value else point.anchor.value


def _land(unit: LandUnit) -> str:
    return (
        f"| {unit.key} | {unit.region or 'everywhere'} | {float(unit.m2):.10g} | {unit.sure} "
        f"| {unit.source} |\n"
    )


def _conflict(conflict: Conflict) -> str:
    return f"| {' | '.join(conflict)} |\n"


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
