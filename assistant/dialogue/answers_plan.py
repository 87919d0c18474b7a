"""What a question is answered with: fixed texts, and those filled from the plan on its day.

An answer makes the sentences to say, a text each; None where it needs a nursery and there is
none. Nothing is stored.
"""

import re
from collections.abc import Callable, Iterator
from dataclasses import replace
from fractions import Fraction

from assistant.agronomy import constants
from assistant.agronomy.field import FieldInputs
from assistant.agronomy.nursery import Nursery
from assistant.agronomy.quantities import quantities
from assistant.agronomy.rounding import Measure, measured, whole_up
from assistant.agronomy.tasks import TaskCode
from assistant.agronomy.work.labour import planting_hours
from assistant.dialogue.endings import is_drained, stage_of
from assistant.dialogue.items import split_label
from assistant.dialogue.values import Known
from assistant.reading import Outcome, Reason, read_area
from assistant.reading.text.echo import unit_words
from assistant.reading.text.fold import fold
from assistant.wording import amounts
from assistant.wording import messages_answers as a
from assistant.wording import messages_answers_more as more
from assistant.wording import messages_care as care
from assistant.wording import messages_delay as d
from assistant.wording import messages_practice as p
from assistant.wording import messages_seed as seed
from assistant.wording import messages_steps as steps
from assistant.wording.day import about, too_old, watering_water
from assistant.wording.day_practice import batch_of, depth_cm
from assistant.wording.message import Message, Say
from assistant.wording.plan_costs import amount

Answer = Callable[[str, Known], tuple[Say, ...] | None]
"""From the question as it was typed, and what is known, to a text each."""

_HA_M2 = 10_000.0
_HANDS = 4


def fixed(say: Say) -> Answer:
    """The same for everybody."""
    return lambda text, known: (say,)


def of_bed(message: Message) -> Answer:
    """Of each nursery that is meant; None where there is none."""
    return of_each(lambda bed, known: about(message, bed, known.today))


def of_each(say: Callable[[Nursery, Known], Say]) -> Answer:
    """One sentence of each nursery that is meant, each once."""

    def answer(text: str, known: Known) -> tuple[Say, ...] | None:
        _, meant = split_label(text, known)
        # Seed that must not be sown has no days and no amounts.
        found = (seed.HELD(label=bed.called) if bed.held else say(bed, known) for bed in meant)
        unlike = {_key(each): each for each in found}
        return tuple(unlike.values()) or None

    return answer


def _key(say: Say) -> tuple[Message, str]:
    return say.message, str(say.slots)


def of_any(message: Message) -> Answer:
    """As of the first nursery; without one, as of the kind of bed that is usual there. Only
    for texts that hold nothing of one field."""

    def answer(text: str, known: Known) -> tuple[Say, ...]:
        return (about(message, _first(known), known.today),)

    return answer


def of_bed_or_any(message: Message, say: Callable[[Nursery, Known], Say]) -> Answer:
    """A sentence of each nursery that is meant; without one, the usual."""
    return lambda text, known: of_each(say)(text, known) or of_any(message)(text, known)


def of_bed_or(message: Message, otherwise: Answer) -> Answer:
    """Of each nursery; without one, something else."""
    planned = of_bed(message)
    return lambda text, known: planned(text, known) or otherwise(text, known)


def _first(known: Known) -> Nursery:
    """The first nursery, or one that nobody has: a hectare of the usual bed."""
    if known.nurseries:
        return known.nurseries[0]
    return Nursery(
        id=0,
        farmer_id=0,
        label="",
        name=None,
        inputs=FieldInputs(_HA_M2, constants.GOOD_GERMINATION.value),
        area_typed="",
        germination_known=False,
        sow_date=known.today,
        made_on=known.today,
        practice=known.practices[0],
    )


# --- amounts --------------------------------------------------------------------------------


def area_in(text: str, known: Known) -> tuple[float, str] | None:
    """The size of land that a question is about [m2] and how it is shown back."""
    reading = read_area(text, known.land_words, known.region)
    rough = reading.outcome is Outcome.CONFIRM and reading.reason is Reason.ROUGH
    if reading.value is None or not (rough or reading.outcome is Outcome.UNDERSTOOD):
        return None
    return reading.value, reading.words


_LONGEST_SIZE, _SHORTEST_SIZE = 4, 2  # words: "one and a half acres", "2 ha"
_NOT_KNOWN_HERE = frozenset({Reason.REGION_UNIT, Reason.AMBIGUOUS})


def _parts(text: str) -> Iterator[str]:
    """A text, then the words in it that may be a size alone, the most words first: it may hold
    other numbers, "how many kg 4 my 1.5 acre"."""
    yield text
    words = text.split()
    for width in range(_LONGEST_SIZE, _SHORTEST_SIZE - 1, -1):
        for start in range(len(words) - width + 1):
            yield " ".join(words[start : start + width])


def land_in(text: str, known: Known) -> tuple[float, str] | None:
    """The size of land in a question, also where it holds other numbers."""
    found = (area_in(part, known) for part in _parts(text))
    return next((area for area in found if area is not None), None)


def names_land(text: str, known: Known) -> bool:
    """Whether a size of land is named, also in a unit whose size is not known here: a bigha is
    not the same everywhere, and the amounts of the plan are no answer to it."""
    if land_in(text, known) is not None:
        return True
    readings = (read_area(part, known.land_words, known.region) for part in _parts(text))
    return any(reading.reason in _NOT_KNOWN_HERE for reading in readings)


def summed(text: str, known: Known) -> tuple[Say, ...] | None:
    """For a field of that size; a hectare where none was named. No plan is changed."""
    hectare = (_HA_M2, unit_words(Fraction(1), "hectare", known.lexicon))
    m2, words = land_in(text, known) or hectare
    bed = _first(known)
    try:
        q = quantities(replace(bed.inputs, field_area_m2=m2), bed.practice)
    except ValueError:
        return None  # a field of no size, or of a county
    return (
        a.SUM(
            area=words,
            seed=amounts.seed_weight(q.seed_kg),
            bed=measured(q.nursery_area_m2, Measure.AREA_M2),
            mix=measured(q.soil_mix_m3 * 1000, Measure.MIX_L),
        ),
    )


def seed_amount(text: str, known: Known) -> tuple[Say, ...] | None:
    """The seed of the plan; for a hectare where there is none yet."""
    return of_bed_or(a.SEED_MUCH, summed)(text, known)


mixed = of_each(
    lambda bed, known: about(a.MIX_MUCH, bed, known.today, parts=batch_of(bed.practice))
)


def _size(bed: Nursery, known: Known) -> Say:
    if bed.practice.bed.piece is None:
        return about(a.BED_SIZE, bed, known.today)
    plants = round(bed.inputs.field_area_m2 / bed.quantities.mats)
    return about(a.MATS_MANY, bed, known.today, plants=plants)


bed_size = of_each(_size)


def _people(bed: Nursery, known: Known) -> Say:
    hours = planting_hours(bed.inputs.field_area_m2, _HANDS, bed.practice)
    low, high = whole_up(hours.low), whole_up(hours.high)
    return about(a.PEOPLE, bed, known.today, n=_HANDS, low=low, high=high)


people = of_each(_people)


def prices(text: str, known: Known) -> tuple[Say, ...]:
    """What the programme's list says of what is bought."""
    if known.prices is None:
        return (a.NO_PRICES(),)
    listed = known.prices
    return (
        a.PRICES(
            currency=listed.currency,
            urea=amount(listed.urea_per_kg),
            seed=amount(listed.seed_per_kg),
            sheet=amount(listed.sheet_per_m2),
        ),
    )


# --- days -----------------------------------------------------------------------------------


def _sown(bed: Nursery, known: Known) -> Say:
    return about(a.SOWN_ON if bed.sown else a.SOW_ON, bed, known.today)


def _uncovered(bed: Nursery, known: Known) -> Say:
    if bed.uncovered or bed.transplanted_on is not None:
        return water(bed, known)
    return about(a.UNCOVER_ON, bed, known.today)


def _drained(bed: Nursery, known: Known) -> Say:
    """An open bed is not drained: its seedlings are pulled from the wet. Once it is planted,
    the field is drained before the harvest."""
    if bed.transplanted_on is not None:
        return more.HARVEST_WHEN()
    drains = any(task.code is TaskCode.DRAIN_BED for task in bed.tasks)
    return about(a.DRAIN_ON if drains else a.PLANT_ON, bed, known.today)


sown = of_bed_or_any(a.SOW_FIRST, _sown)
uncovered, drained = of_each(_uncovered), of_each(_drained)


def _too_late(bed: Nursery, known: Known) -> Say:
    """By its own window and leaves, as the day's text has it; a field that is planted needs no
    day any more."""
    if bed.transplanted_on is not None:
        return about(a.AFTER_PLANT, bed, known.today)
    if known.today > bed.latest:
        return about(too_old(bed), bed, known.today)
    if bed.day(known.today) <= bed.paced.window.last.value:
        return about(a.PLANT_ON, bed, known.today)
    day = max(bed.anchors.transplant_date, known.today)
    return about(d.SET, bed, known.today, date=day, day=bed.day(day))


planted = of_each(_too_late)
too_late = of_bed_or_any(a.TOO_LATE, _too_late)

_YOUNGEST, _OLDEST = 5, 90  # days that are an age of seedlings, and no days of waiting
_NUMBER = re.compile(r"\d+")


def of_told_age(text: str, known: Known) -> tuple[Say, ...] | None:
    """As of seedlings of the age that a text tells, "they are 28 days, can I still plant?";
    None where it tells none, or that of a bed that is known."""
    ideas = known.ears.questions.ideas(text, (known.catalogue.language, "en"))
    ages = [int(each) for each in _NUMBER.findall(fold(text))]
    ages = [each for each in ages if _YOUNGEST <= each <= _OLDEST]
    if len(ages) != 1 or not ideas & {"days", "age", "day", "old"}:
        return None
    if any(bed.day(known.today) == ages[0] for bed in known.nurseries):
        return None
    first = _first(known)
    older = ages[0] > first.paced.window.last.value
    return (about(a.TOO_LATE if older else a.AGE, first, known.today),)


# --- water ----------------------------------------------------------------------------------


def water(bed: Nursery, known: Known) -> Say:
    """By hand while it is covered or only watered; then the water that stands, until it is let
    off; then that of the field."""
    if bed.transplanted_on is not None:
        return about(a.FIELD_WATER, bed, known.today)
    if is_drained(bed, known.today):
        return about(a.NONE_STANDS, bed, known.today)
    keeps = (task for task in bed.tasks if task.code is TaskCode.KEEP_WATER)
    if any(task.date <= known.today for task in keeps):
        return about(p.KEEP_NOW, bed, known.today)
    return about(care.WATERING, bed, known.today, pails=watering_water(bed))


def _dry(bed: Nursery, known: Known) -> Say:
    if bed.transplanted_on is not None:
        return about(a.DRY_FIELD, bed, known.today)
    stage = stage_of(bed, known.today)
    if stage == "before":
        return about(steps.NOT_HERE, bed, known.today)
    message = care.DRY_EARLY if stage == "early" else care.DRY_LATER
    return about(message, bed, known.today, pails=watering_water(bed))


def _deep(bed: Nursery, known: Known) -> Say:
    over = bed.transplanted_on is not None or is_drained(bed, known.today)
    if over or not depth_cm(bed.practice):
        return water(bed, known)
    return about(a.WATER_DEEP, bed, known.today)


watered, dry, deep = of_each(water), of_each(_dry), of_each(_deep)
