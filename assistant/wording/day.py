"""Words the work of one day: the sentence of a task, its slots, and what may be answered."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from assistant.agronomy import constants as c
from assistant.agronomy import constants_work as w
from assistant.agronomy.calendar import TaskCode, day_after
from assistant.agronomy.growth.overdue import seedlings_when_late
from assistant.agronomy.growth.stand import needed_shoots
from assistant.agronomy.life.again import sown_again
from assistant.agronomy.life.making import ground_m2, laid_m2
from assistant.agronomy.life.rows import TASKS, Ask
from assistant.agronomy.mat import watered_every_d, watering_l
from assistant.agronomy.measures import shared_by_tin
from assistant.agronomy.nursery import Nursery
from assistant.agronomy.practices import Practice
from assistant.agronomy.rounding import Measure, measured, nearest, whole_up
from assistant.agronomy.told import (
    MixTold,
    heap_told_g,
    mix_told,
    sprouted_told_kg,
    square_metre_told_g,
)
from assistant.agronomy.work.loads import pail_of_mix_kg, square_metre_kg, wet_mat_kg
from assistant.wording import amounts
from assistant.wording import messages_again as again
from assistant.wording import messages_cautions as h
from assistant.wording import messages_dangers as dangers
from assistant.wording import messages_delay as d
from assistant.wording import messages_plan as plan
from assistant.wording import messages_planting as g
from assistant.wording import messages_practice as p
from assistant.wording import messages_steps as steps
from assistant.wording import messages_tasks as t
from assistant.wording import messages_when as tin
from assistant.wording.day_practice import (
    as_cm,
    batch_of,
    depth_cm,
    fitting,
    most_cm,
    own_name,
)
from assistant.wording.figures import FIGURES
from assistant.wording.message import Message, Named, Say, Slot, slots_of


@dataclass(frozen=True)
class TaskText:
    """How a task is said: its short name and its sentence, and the one while rain is warned of
    where it must wait."""

    what: Message
    prompt: Message
    in_rain: Message | None = None


TASK_TEXTS: Mapping[TaskCode, TaskText] = {
    TaskCode.SEED_TEST: TaskText(t.N_SEED_TEST, t.P_SEED_TEST),
    TaskCode.SEED_COUNT: TaskText(t.N_SEED_COUNT, t.P_SEED_COUNT),
    TaskCode.SEED_HELD: TaskText(t.N_SEED_HELD, t.P_SEED_HELD),
    TaskCode.COLLECT: TaskText(t.N_COLLECT, t.P_COLLECT),
    TaskCode.MIX: TaskText(t.N_MIX, t.P_MIX),
    TaskCode.SOAK: TaskText(t.N_SOAK, t.P_SOAK),
    TaskCode.DRAIN_SEED: TaskText(t.N_DRAIN_SEED, t.P_DRAIN_SEED),
    TaskCode.MAKE_BED: TaskText(plan.N_MAKE_BED, steps.P_MAKE_BED),
    TaskCode.SOW: TaskText(t.N_SOW, t.P_SOW, t.P_SOW_RAIN),
    TaskCode.WATER: TaskText(t.N_WATER, t.P_WATER),
    TaskCode.RAIN_WATCH: TaskText(t.N_RAIN_WATCH, t.P_RAIN_WATCH),
    TaskCode.UNCOVER_FLOOD: TaskText(t.N_UNCOVER, t.P_UNCOVER, t.P_UNCOVER_RAIN),
    TaskCode.KEEP_WATER: TaskText(t.N_KEEP_WATER, t.P_KEEP_WATER),
    TaskCode.COLOUR_CHECK: TaskText(t.N_COLOUR, t.P_COLOUR),
    TaskCode.LEAF_COUNT: TaskText(t.N_LEAVES, t.P_LEAVES),
    TaskCode.CHOOSE_DAY: TaskText(t.N_CHOOSE, t.P_WINDOW),
    TaskCode.DRAIN_BED: TaskText(t.N_DRAIN_BED, t.P_DRAIN_BED),
    TaskCode.TRANSPLANT: TaskText(t.N_TRANSPLANT, t.P_TRANSPLANT),
    TaskCode.OVERDUE: TaskText(t.N_OVERDUE, t.P_OVERDUE),
    TaskCode.MORE_SOW: TaskText(t.N_MORE_SOW, t.P_MORE_SOW, t.P_SOW_RAIN),
    TaskCode.MORE_UNCOVER: TaskText(t.N_MORE_UNCOVER, t.P_MORE_UNCOVER),
    TaskCode.MORE_READY: TaskText(t.N_MORE_READY, t.P_MORE_READY),
    TaskCode.AFTER_FLOOD: TaskText(t.N_AFTER_FLOOD, t.P_AFTER_FLOOD),
    TaskCode.YOUNG_FIELD: TaskText(t.N_YOUNG_FIELD, t.P_YOUNG_FIELD),
    TaskCode.FIRST_FEED: TaskText(t.N_FIRST_FEED, t.P_FIRST_FEED),
    TaskCode.FILL_GAPS: TaskText(t.N_FILL_GAPS, t.P_FILL_GAPS),
    TaskCode.SEASON_RESULT: TaskText(t.N_RESULT, t.P_RESULT),
    TaskCode.FIELD_FLOOD: TaskText(t.N_FIELD_FLOOD, t.P_FIELD_FLOOD),
    TaskCode.FIELD_PLOUGH: TaskText(t.N_FIELD_PLOUGH, t.P_FIELD_PLOUGH),
    TaskCode.FIELD_PUDDLE: TaskText(t.N_FIELD_PUDDLE, t.P_FIELD_PUDDLE),
    TaskCode.FIELD_LEVEL: TaskText(t.N_FIELD_LEVEL, t.P_FIELD_LEVEL),
}

_PLANTING = (TaskCode.TRANSPLANT, TaskCode.OVERDUE)
OLD_AFTER_D = 4  # past the window an overdue bed is also told what waiting costs
# Work that a beginner has never seen done: the day's text says how the steps are had.
# Not on the sowing day: its text fills a screen, and whoever made the bed has seen the word.
TOLD_BY_STEPS = frozenset({TaskCode.COLLECT, TaskCode.MIX, TaskCode.MAKE_BED})
# What can hurt in the work of a day, said with it.
HAZARDS: Mapping[TaskCode, Message] = {
    TaskCode.COLLECT: h.TREATED_SEED,
    TaskCode.FIELD_PLOUGH: h.MACHINES,
    TaskCode.MIX: h.HANDS_HULL,
    TaskCode.SOAK: h.SOAK_POISON,
    TaskCode.FIELD_PUDDLE: h.MACHINES,
    TaskCode.UNCOVER_FLOOD: h.SNAKES_AND_WATER,
    TaskCode.TRANSPLANT: h.IN_WATER,
}
UNSURE_D = 5  # as long as the question whether the bed is uncovered can be answered


@dataclass(frozen=True)
class Late:
    """A task of an earlier day whose text never arrived."""

    task: TaskCode
    day: date


@dataclass(frozen=True)
class DayWork:
    """One nursery's work on one day, as it will be said."""

    nursery: Nursery
    tasks: tuple[TaskCode, ...]
    today: date
    late: tuple[Late, ...] = ()
    rain: bool = False  # warned of
    held: bool = False  # by a warning of another danger
    cautioned: bool = False  # the caution of planting was said some days ago

    @property
    def asked(self) -> tuple[TaskCode, ...]:
        """The tasks of today and the late ones that may be answered, in order of work."""
        unique = dict.fromkeys((*(late.task for late in self.late), *self.tasks))
        return tuple(
            code for code in unique if code not in self.only_told and TASKS[code].is_asked
        )

    @property
    def only_told(self) -> frozenset[TaskCode]:
        """Tasks that are said but cannot be done today."""
        early = self.today < self.nursery.anchors.transplant_date
        waits = self.rain or self.held
        return frozenset(
            (TASKS.codes(lambda row: row.waits_for_rain) if waits else frozenset())
            | ({TaskCode.TRANSPLANT} if early else set())
        )


def small_mix(nursery: Nursery) -> bool:
    """Whether the farmer's pails are too coarse for the soil mix."""
    return not _mix(nursery).in_pails


def _mix(nursery: Nursery) -> MixTold:
    return mix_told(nursery.quantities, nursery.practice)


def watering_water(nursery: Nursery) -> Say:
    """The water for one watering of the bed by hand, in the farmer's pails."""
    area_m2 = nursery.quantities.nursery_area_m2 * nursery.bed_part
    litres = watering_l(area_m2, nursery.practice)
    return amounts.water(litres, nursery.inputs.pail_litres)


def _spacing(nursery: Nursery) -> str:
    inputs = nursery.inputs
    return f"{inputs.spacing_row_cm:g}x{inputs.spacing_hill_cm:g}"


def _ready(nursery: Nursery) -> date:
    """The first day of its window."""
    return day_after(nursery.sow_date, nursery.paced.window.first.value)


_FACTS: Mapping[str, Callable[[Nursery, date], Slot]] = {
    "label": lambda n, d: n.called,
    "day": lambda n, d: n.day(d),
    "soil": lambda n, d: _mix(n).soil,
    "manure": lambda n, d: _mix(n).manure,
    "hull": lambda n, d: _mix(n).hull,
    "batches": lambda n, d: _mix(n).pails,
    "litres": lambda n, d: n.inputs.pail_litres,
    "mix": lambda n, d: measured(n.quantities.soil_mix_m3 * 1000, Measure.MIX_L),
    "sheet": lambda n, d: measured(n.quantities.sheet_m2, Measure.AREA_M2),
    "bed": lambda n, d: measured(n.quantities.nursery_area_m2 * n.bed_part, Measure.AREA_M2),
    "seed": lambda n, d: amounts.seed_weight(n.quantities.seed_kg),
    "sprouted": lambda n, d: amounts.seed_told(sprouted_told_kg(n.quantities)),
    "mats": lambda n, d: amounts.mats(n.practice, n.mats_left or n.quantities.mats),
    "heaps": lambda n, d: amounts.heaps(n.quantities, n.practice),
    "pails": lambda n, d: amounts.water(
        n.quantities.flood_water_l * n.bed_part, n.inputs.pail_litres
    ),
    "cans": lambda n, d: watering_water(n),
    "water": lambda n, d: measured(n.quantities.spray_water_l, Measure.SPRAY_L),
    "spacing": lambda n, d: _spacing(n),
    "seedlings": lambda n, d: n.hill_seedlings or n.inputs.seedlings_per_hill,
    "area": lambda n, d: n.area_typed,
    "needed": lambda n, d: nearest(needed_shoots(n.quantities)),
    "row": lambda n, d: n.inputs.spacing_row_cm,
    "hill": lambda n, d: n.inputs.spacing_hill_cm,
    "percent": lambda n, d: round(n.inputs.germination * 100, 1),
    "date": lambda n, d: n.anchors.transplant_date,
    "sow": lambda n, d: n.sow_date,
    "uncover": lambda n, d: n.anchors.uncover_date,
    "drain": lambda n, d: n.anchors.drain_date,
    "transplant": lambda n, d: n.anchors.transplant_date,
    "latest": lambda n, d: n.latest,
    "before": lambda n, d: n.paced.days.drain_before.value,
    "days": lambda n, d: w.SEED_CHECK_D.value,
    "again": lambda n, d: _ready(sown_again(n, d)),
    "first": lambda n, d: _task(n, TaskCode.TRANSPLANT)[0],
    "last": lambda n, d: _task(n, TaskCode.TRANSPLANT)[1],
    "soak": lambda n, d: _task(n, TaskCode.SOAK)[0],
    "drained": lambda n, d: _task(n, TaskCode.DRAIN_SEED)[0],
    "practice": lambda n, d: Named(n.practice.names, n.practice.code),
    "grams": lambda n, d: square_metre_told_g(n.quantities),
    "thousand": lambda n, d: n.inputs.grain_weight_g,
    "gaps": lambda n, d: round(n.inputs.gap_filling * 100),
    "depth": lambda n, d: depth_cm(n.practice),
    "every": lambda n, d: watered_every_d(n.practice),
    "most": lambda n, d: most_cm(n.practice),
    "few": lambda n, d: n.practice.window.leaves_first.value,
    "many": lambda n, d: n.practice.window.leaves_last.value,
    "low": lambda n, d: int(n.paced.window.first.value),
    "high": lambda n, d: int(n.paced.window.last.value),
    "parts": lambda n, d: batch_of(n.practice),
    "ground": lambda n, d: measured(
        ground_m2(laid_m2(n.quantities, n.practice) * n.bed_part), Measure.AREA_M2
    ),
    "fill_by": lambda n, d: day_after(_planted(n), c.GAP_FILL_LAST_D.value),
    "thick": lambda n, d: as_cm(n.practice.bed.depth_m.value),
    "length": lambda n, d: _side_cm(n, 0),
    "width": lambda n, d: _side_cm(n, 1),
    "weight": lambda n, d: measured(wet_mat_kg(n.practice), Measure.WEIGHT_KG),
    "heavy": lambda n, d: nearest(square_metre_kg(n.practice)),
    "pail_low": lambda n, d: nearest(pail_of_mix_kg(n.inputs.pail_litres).low),
    "pail_high": lambda n, d: nearest(pail_of_mix_kg(n.inputs.pail_litres).high),
}


def _planted(nursery: Nursery) -> date:
    """The day on which all is planted, or will be."""
    planted = nursery.transplanted_on or nursery.anchors.transplant_date
    return max(planted, nursery.added.ready) if nursery.added else planted


def _side_cm(nursery: Nursery, place: int) -> float:
    """The length (0) or the width (1) of a mat or tray, inside [cm]."""
    piece = nursery.practice.bed.piece
    return as_cm((piece.length_m, piece.width_m)[place].value) if piece else 0


def _task(nursery: Nursery, code: TaskCode) -> tuple[date, date]:
    found = next(task for task in nursery.tasks if task.code is code)
    return found.date, found.until or found.date


def about(message: Message, nursery: Nursery, today: date, **more: Slot) -> Say:
    """A message about a nursery, its slots filled from the plan as it is now.

    Where another text fits its kind of bed better, that one is said.
    """
    fits = fitting(message, nursery)
    wanted = slots_of(fits.text) | slots_of(fits.plural or "")
    if fits is not message:  # which may tell less than the text for mats
        more = {name: slot for name, slot in more.items() if name in wanted}
    unfilled = wanted - set(more) - FIGURES.keys()
    facts = {name: _FACTS[name](nursery, today) for name in unfilled}
    return fits(**facts, **more)


_HELD = {t.P_SOW_RAIN: dangers.SOW_WAITS, t.P_UNCOVER_RAIN: dangers.UNCOVER_WAITS}


def _prompt(work: DayWork, code: TaskCode) -> Message:
    in_rain = TASK_TEXTS[code].in_rain
    if in_rain is not None and (work.rain or work.held):
        return in_rain if work.rain else _HELD[in_rain]
    if code in _PLANTING:
        return _planting(work, code)
    of_seed = _of_seed(work, code)
    if of_seed is not None:
        return of_seed
    if code is TaskCode.KEEP_WATER and _unsure(work):
        return p.P_KEEP_UNSURE
    if small_mix(work.nursery):
        small = {TaskCode.COLLECT: t.P_COLLECT_SMALL, TaskCode.MIX: t.P_MIX_SMALL}
        return small.get(code, TASK_TEXTS[code].prompt)
    return TASK_TEXTS[code].prompt


def _of_seed(work: DayWork, code: TaskCode) -> Message | None:
    """Where this seed asks for other words than any."""
    nursery = work.nursery
    if code is TaskCode.SEED_TEST and nursery.germination_known:
        return t.P_SEED_TEST_AGAIN
    if nursery.part_sown_on is not None and code in _REST:
        return _REST[code]
    if code is TaskCode.SOAK and (nursery.sprouting or _waits_for_count(work)):
        return _soaking(work)
    if code is TaskCode.SEED_COUNT and nursery.resown:
        return again.P_CHECK_COUNT
    if code is TaskCode.DRAIN_SEED and nursery.sprouting:
        return p.P_DRAIN_SEED
    return None


_REST: Mapping[TaskCode, Message] = {
    TaskCode.SOAK: again.P_SOAK_REST,
    TaskCode.SOW: again.P_SOW_REST,
}


def _planting(work: DayWork, code: TaskCode) -> Message:
    """Planting on its day, before and after it, and never past its last."""
    nursery, today = work.nursery, work.today
    if today > nursery.latest:
        return too_old(nursery)
    if today < nursery.anchors.transplant_date:
        return t.P_WINDOW if nursery.transplant_date else t.P_WINDOW_OPEN
    if code is TaskCode.OVERDUE:
        return t.P_OVERDUE_OLD if _is_old(work) else t.P_OVERDUE
    if _waits_drained(work):
        return d.WAITS_WITHOUT_WATER if _dries(work) else t.P_TRANSPLANT_WAIT
    late = nursery.day(today) > nursery.paced.window.last.value
    return d.PLANT_LATE if late else t.P_TRANSPLANT


def too_old(nursery: Nursery) -> Message:
    """What is said of seedlings past their last day; never that few leaves are old."""
    return d.OLD_YET_FEW_LEAVES if nursery.grows_slowly else d.TOO_OLD


def _is_old(work: DayWork) -> bool:
    old_from = work.nursery.paced.window.last.value + OLD_AFTER_D
    return work.nursery.day(work.today) >= old_from and work.nursery.hill_seedlings is None


def _dries(work: DayWork) -> bool:
    """Whether a drained bed needs its water back: sprinkling bridges a day."""
    waits = (work.today - work.nursery.anchors.transplant_date).days
    return waits >= w.DRAINED_DRIES_D.value and work.nursery.is_drained


def _beside(work: DayWork, code: TaskCode) -> tuple[Say, ...]:
    """What an overdue bed needs until it is planted; what seed added of late does not bear."""
    if code is TaskCode.SOW:
        return _by_tin(work.nursery)
    added = work.nursery.added
    if code is TaskCode.UNCOVER_FLOOD and added is not None:
        covered = work.today < day_after(added.sown, added.uncover_d)
        return (d.ADDED_STAY(),) if covered else ()
    lives = work.today <= work.nursery.latest
    if code is not TaskCode.OVERDUE or not (lives and _waits_drained(work)):
        return ()
    message = d.WATER_MEANWHILE if _dries(work) else d.KEEP_WET
    return (about(message, work.nursery, work.today),)


def _by_tin(nursery: Nursery) -> tuple[Say, ...]:
    """The seed for a mat in the farmer's own tin, where it is measured and fine enough."""
    q = nursery.quantities
    if nursery.tin_litres is None or not q.mats:
        return ()
    shared = shared_by_tin(heap_told_g(q), nursery.tin_litres)
    if shared is None:
        return ()
    told = amounts.mats(nursery.practice, shared.mats)
    return (tin.SEED_BY_TIN(tins=shared.tins, mats=told),)


def _sentence(work: DayWork, code: TaskCode) -> Say:
    """The sentence of a task; late seedlings are planted as many to a hill as was told."""
    nursery, today = work.nursery, work.today
    message = fitting(_prompt(work, code), nursery)
    if code not in _PLANTING:
        return about(message, nursery, today)
    slots = slots_of(message.text)
    more: dict[str, Slot] = {}
    if "seedlings" in slots:
        more["seedlings"] = hill_now(nursery, today)
    if "many" in slots:  # seedlings that have more leaves already are planted too
        counted = whole_up(nursery.leaves or 0)
        more["many"] = max(nursery.practice.window.leaves_last.value, counted)
    return about(message, nursery, today, **more)


def hill_now(nursery: Nursery, today: date) -> int:
    """Seedlings to plant in a hill on a day: more of late ones, as few as a thin stand has."""
    usual = nursery.inputs.seedlings_per_hill
    late = seedlings_when_late(usual, nursery.day(today), nursery.paced)
    return nursery.hill_seedlings or late


def _waits_drained(work: DayWork) -> bool:
    """Whether mats that were drained for planting lie longer than that was for."""
    late = work.today > work.nursery.anchors.transplant_date
    return late and work.nursery.is_drained


def _soaking(work: DayWork) -> Message:
    """Where the seed needs other than a day, or its amount is not known yet."""
    long = work.nursery.sprouting is not None
    if _waits_for_count(work):
        return g.P_SOAK_COUNT_LONG if long else g.P_SOAK_COUNT
    return g.P_SOAK_LONG


def _waits_for_count(work: DayWork) -> bool:
    """Whether a seed test is to be counted by today, and the count is not told yet."""
    counted = work.nursery.count_on
    due = counted is not None and counted <= work.today
    return due and not work.nursery.test_counted


def _unsure(work: DayWork) -> bool:
    """Whether it was asked of late if the bed is uncovered, and nobody has said so."""
    due, nursery = work.nursery.anchors.uncover_date, work.nursery
    asked = nursery.made_on <= due and (work.today - due).days <= UNSURE_D
    return asked and not nursery.uncovered


def what_of(code: TaskCode, practice: Practice) -> Say:
    """A task's short name, in the words that fit the practice."""
    return own_name(code, practice) or TASK_TEXTS[code].what()


def said(tasks: Sequence[TaskCode]) -> tuple[TaskCode, ...]:
    """The tasks whose sentence must be said; the others are in a neighbour's sentence."""
    due = frozenset(tasks)
    return tuple(code for code in tasks if not TASKS[code].said_by & due)


def work_says(work: DayWork) -> tuple[Say, ...]:
    """The sentences of one nursery's day, without the answers it offers."""
    begun = work.nursery.day(work.today) >= 0 and not work.nursery.held
    head = t.HEAD if begun else t.HEAD_BEFORE
    late = tuple(say for each in work.late for say in _late(work, each))
    late_codes = tuple(each.task for each in work.late)
    sentences = tuple(
        say
        for code in said((*work.tasks, *late_codes))
        if code not in late_codes
        for say in (_sentence(work, code), *_beside(work, code))
    )
    return (about(head, work.nursery, work.today), *late, *sentences)


def day_says(work: DayWork) -> tuple[Say, ...]:
    """The same as the day's text has it: with what can hurt, and the way to the steps."""
    codes = (*work.tasks, *(each.task for each in work.late))
    doable = tuple(code for code in codes if code not in work.only_told)
    new = (code for code in doable if not (work.cautioned and code is TaskCode.TRANSPLANT))
    warned = dict.fromkeys(HAZARDS[code] for code in new if code in HAZARDS)
    cautions = tuple(about(message, work.nursery, work.today) for message in warned)
    more: tuple[Say, ...] = (steps.HOW_NEXT(),) if TOLD_BY_STEPS & frozenset(doable) else ()
    unmeasured = work.nursery.tin_litres is None and bool(work.nursery.quantities.mats)
    if TaskCode.DRAIN_SEED in doable and unmeasured:
        more += (tin.HOW_TIN(),)
    return (*work_says(work), *cautions, *more)


def _late(work: DayWork, late: Late) -> tuple[Say, ...]:
    """What was missed, with how it is done; where it must wait, only what is said instead."""
    how = _sentence(work, late.task)
    if late.task in work.only_told:
        return (how,)
    what = what_of(late.task, work.nursery.practice)
    return t.CATCH_UP(date=late.day, what=what), how


def offer(asked: Sequence[tuple[Nursery, TaskCode]], today: date) -> tuple[Say, ...]:
    """The last line of a prompt: what may be answered to it today."""
    if not asked:
        return ()
    if len(asked) > 1:
        return (t.ASK_SEVERAL(label=asked[-1][0].called),)
    nursery, code = asked[0]
    if code is TaskCode.UNCOVER_FLOOD:
        return (t.ASK_UP(),)
    if code in _PLANTING and today > nursery.latest:
        return (d.ASK_PLANTED(),)
    by_ask = {
        Ask.DONE: t.ASK_DONE,
        Ask.COLOUR: t.ASK_COLOUR,
        Ask.TEST: t.ASK_BEGUN,
        Ask.SEED: t.ASK_SEED,
        Ask.RESULT: t.ASK_MATS,
        Ask.FLOOD: t.ASK_FLOOD,
    }
    message = by_ask.get(TASKS[code].asks)
    return (fitting(message, nursery)(),) if message else ()
