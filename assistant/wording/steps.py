"""How the work of a day is done by hand: its steps in order, by the kind of bed.

A chapter belongs to a task and is open from the task's day until the next chapter's, or until
what it explains is done. The texts stand in `messages_steps`.
"""

from collections.abc import Mapping
from datetime import date

from assistant.agronomy.life.days import wanted
from assistant.agronomy.nursery import Nursery
from assistant.agronomy.practices import Practice
from assistant.agronomy.tasks import TaskCode
from assistant.wording import messages_steps as s
from assistant.wording.day import about
from assistant.wording.day_practice import Make, make_of
from assistant.wording.message import Message, Say

Chapter = tuple[Message, ...]

_READY = (s.GROUND, s.NOT_HERE)
_MIXED = (s.SOIL, s.MANURE, s.HULL)
_SEED = (s.GOOD_SEED, s.TREATED)
_SOAK = (s.BAG, s.SOAK_WATER, s.DRAINING)
_MIX = (s.MANURE, s.HULL, s.MEASURE, s.TURN, s.KEEP_DRY)
_COVERED = (s.SPREAD, s.COVER_THIN, s.RINSE, s.ABOVE, s.GUARD)
_LIFTED = (s.CUT, s.CARRY, s.PULL, s.PLANT, s.BODY)
_PULLED = (s.PULL, s.PLANT, s.BODY)

_MAT: Mapping[TaskCode, Chapter] = {
    TaskCode.COLLECT: (*_READY, *_MIXED, s.SHEET, s.FRAME, *_SEED),
    TaskCode.MIX: _MIX,
    TaskCode.SOAK: _SOAK,
    TaskCode.MAKE_BED: (s.LEVEL, s.STRIPS, s.UNDER, s.SET, s.LIFT, s.FENCE, s.WET),
    TaskCode.SOW: (s.HEAPS, *_COVERED),
    TaskCode.UNCOVER_FLOOD: (s.STRAW, s.EVENING, s.LET_IN, s.PALE),
    TaskCode.DRAIN_BED: _LIFTED,
    TaskCode.TRANSPLANT: _LIFTED,
}
CHAPTERS: Mapping[Make, Mapping[TaskCode, Chapter]] = {
    Make.MAT: _MAT,
    Make.OTHER_MAT: _MAT,
    Make.TRAY: {
        TaskCode.COLLECT: (*_READY, *_MIXED, *_SEED),
        TaskCode.MIX: _MIX,
        TaskCode.SOAK: _SOAK,
        TaskCode.MAKE_BED: (s.LEVEL, s.STRIPS, s.FILL_TRAYS, s.STAND_TRAYS, s.WET),
        TaskCode.SOW: (s.HEAPS, *_COVERED),
        TaskCode.UNCOVER_FLOOD: (s.STRAW, s.EVENING, s.LET_IN, s.PALE),
        TaskCode.DRAIN_BED: (s.CARRY_TRAYS, s.BODY),
        TaskCode.TRANSPLANT: (s.CARRY_TRAYS, s.BODY),
    },
    Make.WET: {
        TaskCode.COLLECT: (*_READY, s.MANURE, *_SEED),
        TaskCode.MIX: (s.PUDDLE, s.RAISE_WET, s.SPREAD_MANURE, s.SMOOTH),
        TaskCode.SOAK: _SOAK,
        TaskCode.SOW: (s.SQUARE, s.SPREAD, s.HALF_IN, s.GUARD),
        TaskCode.UNCOVER_FLOOD: (s.PALE,),
        TaskCode.TRANSPLANT: _PULLED,
    },
    Make.DRY: {
        TaskCode.COLLECT: (*_READY, s.MANURE, *_SEED),
        TaskCode.MIX: (s.DIG, s.RAISE_DRY, s.SPREAD_MANURE, s.RAKE),
        TaskCode.SOAK: _SOAK,
        TaskCode.SOW: (s.SQUARE, *_COVERED),
        TaskCode.UNCOVER_FLOOD: (s.STRAW, s.EVENING, s.PALE),
        TaskCode.TRANSPLANT: _PULLED,
    },
}
_WHAT: Mapping[Make, Message] = {
    Make.MAT: s.WHAT_MAT,
    Make.OTHER_MAT: s.WHAT_MAT,
    Make.TRAY: s.WHAT_TRAY,
    Make.WET: s.WHAT_OPEN,
    Make.DRY: s.WHAT_OPEN,
}


def chapter_of(code: TaskCode, practice: Practice) -> Chapter:
    """The steps of a task; none where its own text says all."""
    return CHAPTERS[make_of(practice)].get(code, ())


def making_code(practice: Practice) -> TaskCode:
    """The task by which a bed is made."""
    return TaskCode.MAKE_BED if practice.bed.piece is not None else TaskCode.MIX


def open_chapter(nursery: Nursery, today: date) -> TaskCode | None:
    """The task whose steps are wanted on a day: the last one begun, or before the first the
    first; None once all is planted."""
    tasks = [
        task
        for task in nursery.tasks
        if chapter_of(task.code, nursery.practice) and wanted(task.code, nursery)
    ]
    begun = [task for task in tasks if task.date <= today]
    return begun[-1].code if begun else tasks[0].code if tasks else None


def what_it_is(nursery: Nursery, today: date) -> Say:
    """What such a bed is, in one text."""
    return about(_WHAT[make_of(nursery.practice)], nursery, today)


def step(nursery: Nursery, code: TaskCode, place: int, today: date) -> Say | None:
    """One step of a task, counted from 0; None after the last."""
    chapter = chapter_of(code, nursery.practice)
    return about(chapter[place], nursery, today) if place < len(chapter) else None
