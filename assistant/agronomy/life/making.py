"""The making of a bed of mats or trays: a task of the ground, beside those of the seed.

An open bed is made with its own rows ("mix" is there the making of the bed).
"""

from datetime import date

from assistant.agronomy import constants_work as w
from assistant.agronomy.calendar import Task, TaskCode, day_after
from assistant.agronomy.practices import PieceKind, Practice
from assistant.agronomy.quantities import Quantities


def making(sow: date, practice: Practice) -> tuple[Task, ...]:
    """The day on which the bed is made, before the sprouted seed waits for it."""
    if practice.bed.piece is None:
        return ()
    day = w.MAKE_BED_DAY.value
    return (Task(TaskCode.MAKE_BED, int(day), day_after(sow, day)),)


def laid_m2(q: Quantities, practice: Practice) -> float:
    """What its pieces lie on, side by side [m2]: trays have a rim, mats are cut of the bed."""
    piece = practice.bed.piece
    if piece is None or piece.kind is not PieceKind.TRAY:
        return q.nursery_area_m2
    rim = 2 * w.TRAY_RIM_M.value
    return q.mats * (piece.length_m.value + rim) * (piece.width_m.value + rim)


def ground_m2(bed_m2: float) -> float:
    """The ground [m2] for strips of a bed with a path beside each."""
    strip, path = w.STRIP_WIDTH_M.value, w.PATH_WIDTH_M.value
    return bed_m2 * (strip + path) / strip
