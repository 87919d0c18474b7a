"""More of what plain questions are answered with: what is seen on the bed, a day that was
missed, what is left over, and what is no question of a nursery."""

from collections.abc import Mapping
from types import MappingProxyType

from assistant.agronomy.nursery import Nursery
from assistant.agronomy.tasks import TaskCode
from assistant.dialogue import answers_plan as plan
from assistant.dialogue.aid import person
from assistant.dialogue.values import Known
from assistant.hearing import Topic
from assistant.wording import messages_answers as a
from assistant.wording import messages_answers_field as field
from assistant.wording import messages_answers_more as more
from assistant.wording import messages_answers_work as work
from assistant.wording.day import about, watering_water
from assistant.wording.day_practice import depth_cm
from assistant.wording.message import Message, Say

fixed, of_any, of_bed = plan.fixed, plan.of_any, plan.of_bed


def _later(bed: Nursery, known: Known) -> Say:
    """What may still be put off: the sowing, then the uncovering, then the planting."""
    if bed.transplanted_on is not None:
        return more.GAPS()
    if not bed.sown:
        return about(more.LATER_SOW, bed, known.today)
    return about(a.PLANT_ON if bed.uncovered else more.LATER_UNCOVER, bed, known.today)


def _missed(bed: Nursery, known: Known) -> Say:
    """By hand while it is watered by hand; water that stands is told as it is."""
    if not bed.sown or bed.uncovered:
        return plan.water(bed, known)
    return about(more.MISSED_WATER, bed, known.today, pails=watering_water(bed))


def _not_up(bed: Nursery, known: Known) -> Say:
    """Seed that lies in the sack, a bed that is young, and one that should be green."""
    if not bed.sown:
        return more.SLOW_SPROUT()
    young = known.today < bed.anchors.uncover_date
    return about(more.NOT_UP, bed, known.today) if young else more.BARE()


def _flooded(bed: Nursery, known: Known) -> Say:
    """From when until when water stands, where it stands and is let off."""
    drains = any(task.code is TaskCode.DRAIN_BED for task in bed.tasks)
    if not depth_cm(bed.practice) or not drains:
        return plan.water(bed, known)
    return about(more.FLOOD_ON, bed, known.today)


def _passed(message: Message, stranger: Message | None = None) -> plan.Answer:
    """What a person must see to. A stranger's words reach nobody, so no text says that they do:
    `stranger` is said instead, or nothing."""

    def answer(text: str, known: Known) -> tuple[Say, ...] | None:
        if known.farmer is not None and known.farmer.consent_at is not None:
            return (message(person=person(known)),)
        return (stranger(),) if stranger else None

    return answer


MORE_ANSWERS: Mapping[Topic, plan.Answer] = MappingProxyType(
    {
        # seed
        Topic.SEED_FLOATS: fixed(more.FLOATS()),
        Topic.SOAK_WATER: fixed(field.SOAK_WATER()),
        Topic.SPROUT_SLOW: fixed(more.SLOW_SPROUT()),
        Topic.SPROUTS_BROKEN: fixed(more.BROKEN()),
        # days
        Topic.DAY_LATER: plan.of_each(_later),
        Topic.RAIN_SOWING: fixed(more.RAIN_SOWING()),
        Topic.FLOOD_WHEN: plan.of_each(_flooded),
        Topic.STORM_PLANT: of_bed(more.STORM_PLANT),
        Topic.MANY_FIELDS: fixed(more.MANY_FIELDS()),
        # water
        Topic.WATER_MISSED: plan.of_each(_missed),
        Topic.WIND_HOT: fixed(more.HOT_WIND()),
        Topic.CLOUDS: fixed(more.CLOUDS()),
        Topic.LEAKS: fixed(more.LEAKS()),
        # the bed
        Topic.SOIL_THIN: of_any(more.THIN_SOIL),
        Topic.STONES: fixed(more.STONES()),
        Topic.SLOPE: fixed(more.SLOPE()),
        Topic.SHEET_HOLES: fixed(more.SHEET_HOLES()),
        Topic.SHEET_KIND: fixed(more.SHEET_KIND()),
        Topic.STRAW_GONE: fixed(more.STRAW_GONE()),
        Topic.STRAW_LEFT: fixed(more.STRAW_LEFT()),
        # what is seen
        Topic.NOT_UP: plan.of_each(_not_up),
        Topic.MOULD: fixed(more.MOULD()),
        Topic.WASHED: fixed(more.WASHED()),
        Topic.BARE: fixed(more.BARE()),
        Topic.PALE_STEMS: fixed(more.PALE_STEMS()),
        Topic.WEEDS: fixed(more.WEEDS()),
        Topic.PESTS: fixed(more.PESTS()),
        # lifting and planting
        Topic.MAT_TEARS: fixed(more.TEARS()),
        Topic.KEEP_LIFTED: fixed(more.KEEP_LIFTED()),
        Topic.LEFTOVER: fixed(more.LEFTOVER()),
        Topic.GAPS: fixed(more.GAPS()),
        Topic.WEEDING: fixed(more.WEEDING()),
        Topic.SHOCK: fixed(more.SHOCK()),
        # the service and people
        Topic.NEW_PHONE: _passed(more.NEW_NUMBER),
        Topic.MONEY_HELP: _passed(more.MONEY_HELP),
        Topic.SELL: fixed(more.SELL()),
        Topic.CHAT: fixed(more.CHAT()),
        # what strangers asked
        Topic.SCAM: _passed(more.SCAM, more.SCAM_NEW),
        Topic.CUT_OFF: fixed(more.CUT_OFF()),
        Topic.WRONG_KEY: fixed(more.WRONG_KEY()),
        Topic.TEXT_HOUR: fixed(more.TEXT_HOUR()),
        Topic.LOW_HEART: _passed(more.LOW_HEART),
        Topic.DIRTY_PAIL: fixed(more.DIRTY_PAIL()),
        Topic.EDGE_CRUMBLES: fixed(more.EDGE_CRUMBLES()),
        Topic.DRY_SOWN: fixed(more.DRY_SOWN()),
        Topic.PEEKED: fixed(more.PEEKED()),
        Topic.MAT_FLOATS: fixed(more.MAT_FLOATS()),
        Topic.FROGS: fixed(more.FROGS()),
        Topic.DEW: fixed(more.DEW()),
        Topic.ROOTED: fixed(more.ROOTED()),
        Topic.MOON: fixed(more.MOON()),
        Topic.PLANT_HOUR: fixed(more.PLANT_HOUR()),
        Topic.FIELD_DEEP: fixed(more.FIELD_DEEP()),
        Topic.HARVEST_WHEN: fixed(more.HARVEST_WHEN()),
        Topic.HARVEST_MUCH: fixed(more.HARVEST_MUCH()),
        Topic.FIELD_FERT: fixed(field.FIELD_FERT()),
        Topic.URINE: fixed(field.URINE()),
        Topic.SOW_HOUR: fixed(field.SOW_HOUR()),
        Topic.HARD_FLOOR: of_any(field.HARD_FLOOR),
        Topic.LIFT_HOW: fixed(field.LIFT_HOW()),
        Topic.DRY_STORE: fixed(field.DRY_STORE()),
        Topic.FISH_DUCKS: fixed(field.FISH_DUCKS()),
        Topic.LODGING: fixed(field.LODGING()),
        Topic.SOAK_SMELLS: fixed(field.SOAK_SMELLS()),
        Topic.TOO_WET: fixed(field.TOO_WET()),
        Topic.WHY_UNCOVER: fixed(field.WHY_UNCOVER()),
        Topic.RATS: fixed(field.RATS()),
        Topic.ASH: fixed(field.ASH()),
        # the work in hand
        Topic.SOAK_SACK: fixed(work.SOAK_SACK()),
        Topic.SEED_LEFT: fixed(work.SEED_LEFT()),
        Topic.WET_FIRST: fixed(work.WET_FIRST()),
        Topic.FRAME_OFF: fixed(work.FRAME_OFF()),
        Topic.SOIL_WHICH: fixed(work.SOIL_WHICH()),
        Topic.COVER_WITH: fixed(work.COVER_WHICH()),
        Topic.MANURE_TOP: fixed(work.MANURE_TOP()),
        Topic.HOW_MOIST: fixed(work.HOW_MOIST()),
        Topic.TRODDEN: fixed(work.TRODDEN()),
        Topic.UREA_MUCH: fixed(work.UREA_MUCH()),
        Topic.SPRAY_HOW: fixed(work.SPRAY_HOW()),
        Topic.THIN_TALL: fixed(work.THIN_TALL()),
        Topic.TIPS_DRY: fixed(work.TIPS_DRY()),
        Topic.FIELD_PREP: fixed(work.FIELD_PREP()),
        Topic.COUNT_BACK: of_any(work.COUNT_BACK),
        Topic.WHY_FEW: fixed(work.WHY_FEW()),
        Topic.CUT_TIPS: fixed(work.CUT_TIPS()),
        Topic.FEW_SEEDLINGS: fixed(work.FEW_SEEDLINGS()),
        Topic.WAGES: of_any(work.WAGES),
        Topic.KEEP_THINGS: fixed(work.KEEP_THINGS()),
        Topic.WHAT_WORD: fixed(work.WHAT_WORD()),
        Topic.NO_CREDIT: fixed(work.NO_CREDIT()),
    }
)
