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
from assistant.wording import messages_steps as steps
from assistant.wording.day import about
from assistant.wording.day_practice import Make, make_of
from assistant.wording.message import Message, Say

Chapter = tuple[Message, ...]

_READY = (steps.GROUND, steps.NOT_HERE)
_MIXED = (steps.SOIL, steps.MANURE, steps.HULL)
_SEED = (steps.GOOD_SEED, steps.TREATED)
_SOAK = (steps.BAG, steps.SOAK_WATER, steps.DRAINING)
_MIX = (steps.MANURE, steps.HULL, steps.MEASURE, steps.TURN, steps.KEEP_DRY)
_COVERED = (steps.SPREAD, steps.COVER_THIN, steps.RINSE, steps.ABOVE, steps.GUARD)
_LIFTED = (steps.CUT, steps.CARRY, steps.PULL, steps.PLANT, steps.BODY)
_PULLED = (steps.PULL, steps.PLANT, steps.BODY)

_MAT: Mapping[TaskCode, Chapter] = {
    TaskCode.COLLECT: (*_READY, *_MIXED, steps.SHEET, steps.FRAME, *_SEED),
    TaskCode.MIX: _MIX,
    TaskCode.SOAK: _SOAK,
    TaskCode.MAKE_BED: (
        steps.LEVEL,
        steps.STRIPS,
        steps.UNDER,
        steps.SET,
        steps.LIFT,
        steps.FENCE,
        steps.WET,
    ),
    TaskCode.SOW: (steps.HEAPS, *_COVERED),
    TaskCode.UNCOVER_FLOOD: (steps.STRAW, steps.EVENING, steps.LET_IN, steps.PALE),
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
        TaskCode.MAKE_BED: (
            steps.LEVEL,
            steps.STRIPS,
            steps.FILL_TRAYS,
            steps.STAND_TRAYS,
            steps.WET,
        ),
        TaskCode.SOW: (steps.HEAPS, *_COVERED),
        TaskCode.UNCOVER_FLOOD: (steps.STRAW, steps.EVENING, steps.LET_IN, steps.PALE),
        TaskCode.DRAIN_BED: (steps.CARRY_TRAYS, steps.BODY),
        TaskCode.TRANSPLANT: (steps.CARRY_TRAYS, steps.BODY),
    },
    Make.WET: {
        TaskCode.COLLECT: (*_READY, steps.MANURE, *_SEED),
        TaskCode.MIX: (steps.PUDDLE, steps.RAISE_WET, steps.SPREAD_MANURE, steps.SMOOTH),
        TaskCode.SOAK: _SOAK,
        TaskCode.SOW: (steps.SQUARE, steps.SPREAD, steps.HALF_IN, steps.GUARD),
        TaskCode.UNCOVER_FLOOD: (steps.PALE,),
        TaskCode.TRANSPLANT: _PULLED,
    },
    Make.DRY: {
        TaskCode.COLLECT: (*_READY, steps.MANURE, *_SEED),
        TaskCode.MIX: (steps.DIG, steps.RAISE_DRY, steps.SPREAD_MANURE, steps.RAKE),
        TaskCode.SOAK: _SOAK,
        TaskCode.SOW: (steps.SQUARE, *_COVERED),
        TaskCode.UNCOVER_FLOOD: (steps.STRAW, steps.EVENING, steps.PALE),
        TaskCode.TRANSPLANT: _PULLED,
    },
}
_WHAT: Mapping[Make, Message] = {
    Make.MAT: steps.WHAT_MAT,
    Make.OTHER_MAT: steps.WHAT_MAT,
    Make.TRAY: steps.WHAT_TRAY,
    Make.WET: steps.WHAT_OPEN,
    Make.DRY: steps.WHAT_OPEN,
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
