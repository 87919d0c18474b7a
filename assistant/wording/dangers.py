"""The texts of each danger but rain, whose own stand in `messages_rain`: its name, what to do
first by the stage of the bed, and what once it is over.

A row of `dangers.toml` without its texts here ends the start.
"""

from collections.abc import Iterator, Mapping

from assistant.agronomy.dangers.rows import RAIN, BedStage, DangerRow
from assistant.wording import messages_dangers as d
from assistant.wording.message import Message, Say

COVERED, SOON, UNCOVERED, DRAINED = (
    BedStage.COVERED,
    BedStage.SOON,
    BedStage.UNCOVERED,
    BedStage.DRAINED,
)
NAMES: Mapping[str, Message] = {
    RAIN: d.N_RAIN,
    "cold": d.N_COLD,
    "hail": d.N_HAIL,
    "wind": d.N_WIND,
    "dry": d.N_DRY,
    "pests": d.N_PESTS,
    "flood": d.N_FLOOD,
}
FIRST: Mapping[str, Mapping[BedStage, Message]] = {
    "cold": {
        SOON: d.COLD_SOON,
        COVERED: d.COLD_COVERED,
        UNCOVERED: d.COLD_UNCOVERED,
        DRAINED: d.COLD_DRAINED,
    },
    "hail": {
        SOON: d.WAIT_SOON,
        COVERED: d.HAIL_COVERED,
        UNCOVERED: d.HAIL_UNCOVERED,
        DRAINED: d.HAIL_UNCOVERED,
    },
    "wind": {
        COVERED: d.WIND_COVERED,
        UNCOVERED: d.WIND_UNCOVERED,
        DRAINED: d.WIND_UNCOVERED,
    },
    "dry": {
        SOON: d.DRY_SOON,
        COVERED: d.DRY_COVERED,
        UNCOVERED: d.DRY_UNCOVERED,
        DRAINED: d.DRY_DRAINED,
    },
    "pests": {
        SOON: d.PESTS_SOON,
        COVERED: d.PESTS_COVERED,
        UNCOVERED: d.PESTS_UNCOVERED,
        DRAINED: d.PESTS_UNCOVERED,
    },
    "flood": {
        SOON: d.FLOOD_SOON,
        COVERED: d.FLOOD_BED,
        UNCOVERED: d.FLOOD_BED,
        DRAINED: d.FLOOD_BED,
    },
}
AFTER: Mapping[str, Message] = {
    "cold": d.AFTER_COLD,
    "hail": d.AFTER_STORM,
    "wind": d.AFTER_STORM,
    "dry": d.AFTER_DRY,
    "pests": d.AFTER_PESTS,
    "flood": d.AFTER_FLOOD,
}


def name_of(code: str) -> Say:
    """What a danger is called within a sentence."""
    return NAMES[code]()


def without_texts(danger: DangerRow) -> Iterator[str]:
    """Which of a danger's texts are missing, so that it cannot be warned of."""
    if danger.code not in NAMES:
        yield "has no name in wording/dangers.py"
    if danger.code == RAIN:
        return
    if danger.code not in AFTER:
        yield "has no text for when it is over in wording/dangers.py"
    for stage in sorted(danger.stages - FIRST.get(danger.code, {}).keys()):
        yield f"has no text for beds that are {stage} in wording/dangers.py"
