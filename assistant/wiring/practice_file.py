"""One practice file: its parsed table -> the value of the core, or all its faults."""

import datetime as dt
from collections.abc import Iterator, Mapping
from typing import Any

from assistant.agronomy.calendar import Anchors, calendar
from assistant.agronomy.errors import AgronomyError
from assistant.agronomy.life.rows import TASKS, Origin, tasks_of
from assistant.agronomy.practices import (
    Anchor,
    BedMake,
    DayPoint,
    Days,
    Labour,
    MatSize,
    PieceKind,
    Planting,
    Practice,
    TaskRule,
    Window,
)
from assistant.agronomy.practices.mat import plain_days
from assistant.agronomy.sourced.constant import Constant
from assistant.agronomy.tasks import TaskCode
from assistant.wiring.practice_numbers import NumberReader, UnitRange

_DAY = UnitRange("day", 1, 60)
_LEAVES = UnitRange("open leaves", 1, 8)
_PARTS = UnitRange("pails per batch", 0, 20)
_HOURS_PER_HA = UnitRange("person-hours per ha of field", 1, 1000)
_BED = {
    "share": UnitRange("m2 of bed per m2 of field", 0.0005, 0.3),
    "max_seeds_per_cm2": UnitRange("seeds per cm2", 0.05, 12),
    "depth_m": UnitRange("m", 0.0005, 0.1),
    "soil_parts": _PARTS,
    "manure_parts": _PARTS,
    "hull_parts": _PARTS,
    "flood_depth_m": UnitRange("m", 0, 0.1),
}
_PIECE = {"length_m": UnitRange("m", 0.1, 3), "width_m": UnitRange("m", 0.1, 3)}
_SHEET = UnitRange("fraction of the bed", 0, 0.5)
_PLANTING = {
    "row_cm": UnitRange("cm", 8, 60),
    "hill_cm": UnitRange("cm", 8, 60),
    "seedlings_per_hill": UnitRange("seedlings", 1, 6),
    "establishment": UnitRange("fraction", 0.05, 1),
}
_WINDOW = {
    **dict.fromkeys(("first", "last", "assumed", "earliest", "latest"), _DAY),
    "leaves_first": _LEAVES,
    "leaves_last": _LEAVES,
}
_DAYS = {
    "uncover": UnitRange("day", 1, 14),
    "uncover_latest": UnitRange("day", 1, 21),
    "drain_before": UnitRange("days", 0, 5),
}
_LABOUR = {
    "raise_h_per_m2": UnitRange("person-hours per m2 of bed", 0.001, 5),
    "lift_h_per_ha": _HOURS_PER_HA,
    "plant_h_per_ha": _HOURS_PER_HA,
}
_TOP = frozenset({"name", "bed", "planting", "window", "days", "labour", "task", "sources"})
_BED_MORE = frozenset({"sheet_allowance", "piece", "has_frame", "covers_seed"})
_TASK = frozenset(
    {"code", "from", "days", "until", "until_days", "every", "sure", "sources", "note"}
)
_MOST_DAYS = 90
_SOME_DAY = dt.date(2026, 6, 10)


def read_practice(
    code: str, table: Mapping[str, Any]
) -> tuple[Practice | None, tuple[str, ...]]:
    """A practice from its parsed file, and all its faults (then there is no practice)."""
    reader = NumberReader(code, table)
    reader.only(table, "", _TOP)
    names = reader.words(reader.section(table, "name"), "[name]")
    if "en" not in dict(names):
        reader.fault("[name] en", "is missing; write the English name")
    bed, days = _bed(reader, table), _days(reader, table)
    planting = _numbers(reader, table, "planting", _PLANTING)
    window = _numbers(reader, table, "window", _WINDOW)
    labour = _numbers(reader, table, "labour", _LABOUR)
    if reader.faults or bed is None or days is None:
        return None, tuple(reader.faults)
    practice = Practice(
        code=code,
        names=names,
        bed=bed,
        planting=Planting(**planting),
        window=Window(**window),
        days=days,
        labour=Labour(**labour),
    )
    faults = tuple(_at_odds(practice))
    return (None if faults else practice), faults


def _numbers(
    reader: NumberReader, table: Mapping[str, Any], name: str, spans: Mapping[str, UnitRange]
) -> dict[str, Constant]:
    """All numbers of a section that holds nothing else."""
    section = reader.section(table, name)
    reader.only(section, f"[{name}]", frozenset(spans))
    return _made(reader, section, name, spans)


def _made(
    reader: NumberReader, section: Mapping[str, Any], name: str, spans: Mapping[str, UnitRange]
) -> dict[str, Constant]:
    found = {
        key: reader.number(section.get(key), f"[{name}] {key}", span)
        for key, span in spans.items()
    }
    return {key: number for key, number in found.items() if number is not None}


def _bed(reader: NumberReader, table: Mapping[str, Any]) -> BedMake | None:
    section = reader.section(table, "bed")
    reader.only(section, "[bed]", frozenset(_BED) | _BED_MORE)
    numbers = _made(reader, section, "bed", _BED)
    sheet = section.get("sheet_allowance")
    allowance = sheet and reader.number(sheet, "[bed] sheet_allowance", _SHEET)
    piece = _piece(reader, section) if "piece" in section else None
    has_frame = reader.flag(section, "[bed]", "has_frame", default=False)
    covers_seed = reader.flag(section, "[bed]", "covers_seed", default=True)
    if len(numbers) < len(_BED):
        return None
    return BedMake(
        **numbers,
        sheet_allowance=allowance or None,
        piece=piece,
        has_frame=has_frame,
        covers_seed=covers_seed,
    )


def _piece(reader: NumberReader, bed: Mapping[str, Any]) -> MatSize | None:
    section = reader.section(bed, "piece")
    reader.only(section, "[bed.piece]", frozenset(_PIECE) | {"kind"})
    sides = _made(reader, section, "bed.piece", _PIECE)
    kind = section.get("kind")
    if kind not in set(PieceKind):
        reader.fault("[bed.piece] kind", f"write one of {', '.join(PieceKind)}")
        return None
    return MatSize(PieceKind(kind), **sides) if len(sides) == len(_PIECE) else None


def _days(reader: NumberReader, table: Mapping[str, Any]) -> Days | None:
    numbers = _numbers(reader, table, "days", _DAYS)
    rows = table.get("task")
    if not isinstance(rows, list) or not all(isinstance(row, Mapping) for row in rows):
        reader.fault("[[task]]", "is missing; write one for each task of the bed")
        return None
    rules = tuple(rule for row in rows if (rule := _rule(reader, row)) is not None)
    _check_codes(reader, [rule.code for rule in rules])
    return Days(**numbers, tasks=rules) if len(numbers) == len(_DAYS) else None


def _check_codes(reader: NumberReader, codes: list[TaskCode]) -> None:
    for code in sorted({code for code in codes if codes.count(code) > 1}):
        reader.fault(f"[[task]] {code}", "stands here twice; leave one")
    for code in sorted(TASKS.codes(lambda row: row.always) - set(codes)):
        reader.fault(f"[[task]] {code}", "is missing; every practice has it")


def _rule(reader: NumberReader, row: Mapping[str, Any]) -> TaskRule | None:
    code = row.get("code")
    place = f"[[task]] {code}"
    reader.only(row, place, _TASK)
    known = {each.value: each for each in TaskCode if each in tasks_of(Origin.BED)}
    if code not in known:
        reader.fault(place, f"write a code of {', '.join(known)}")
        return None
    every = row.get("every", 1)
    if not isinstance(every, int) or not 1 <= every <= _DAY.high:
        reader.fault(f"{place} every", "write a whole number of days, 1 for each day")
        return None
    start = _point(reader, row, place, ("from", "days"))
    end = _point(reader, row, place, ("until", "until_days")) if "until" in row else None
    return TaskRule(known[str(code)], start, end, every) if start else None


def _point(
    reader: NumberReader, row: Mapping[str, Any], place: str, keys: tuple[str, str]
) -> DayPoint | None:
    anchor, days = row.get(keys[0]), row.get(keys[1], 0)
    if anchor not in set(Anchor):
        reader.fault(f"{place} {keys[0]}", f"write one of {', '.join(Anchor)}")
        return None
    span = UnitRange("days", -_MOST_DAYS, _MOST_DAYS)
    if isinstance(days, int) and not isinstance(days, bool) and "sure" not in row:
        if not span.low <= days <= span.high:
            reader.fault(f"{place} {keys[1]}", f"expected -{_MOST_DAYS} to {_MOST_DAYS} days")
        return DayPoint(Anchor(anchor), plain_days(days))
    given = days if isinstance(days, str) else {"value": days, **_told(row)}
    number = reader.number(given, f"{place} {keys[1]}", span)
    return DayPoint(Anchor(anchor), number) if number else None


def _told(row: Mapping[str, Any]) -> dict[str, Any]:
    return {key: row[key] for key in ("sure", "sources", "note") if key in row}


def _at_odds(practice: Practice) -> Iterator[str]:
    """What cannot be together, though each number is well by itself."""
    w, bed, days = practice.window, practice.bed, practice.days
    order = [each.value for each in (w.earliest, w.first, w.assumed, w.last, w.latest)]
    if order != sorted(order):
        yield "[window]: expected earliest, first, assumed, last, latest in rising order"
    if w.leaves_first.value > w.leaves_last.value:
        yield "[window]: leaves_first is more than leaves_last"
    parts = [each.value for each in (bed.soil_parts, bed.manure_parts, bed.hull_parts)]
    if not sum(parts) or any(part != int(part) for part in parts):
        yield "[bed]: write the parts of the mix as whole pails, not all of them 0"
    if days.uncover.value > days.uncover_latest.value:
        yield "[days]: uncover is after uncover_latest"
    seedlings = practice.planting.seedlings_per_hill.value
    if seedlings != int(seedlings):
        yield "[planting] seedlings_per_hill: write a whole number"
    yield from _calendar_faults(practice)


def _calendar_faults(practice: Practice) -> Iterator[str]:
    """Tasks that end before they begin, on a plain plan."""
    try:
        told = {task.code for task in calendar(Anchors(_SOME_DAY, practice=practice))}
    except AgronomyError as error:
        yield f"[days] and [window] do not go together: {error}"
        return
    for rule in practice.days.tasks:
        if rule.code not in told:
            yield f"[[task]] {rule.code}: until is before from"
