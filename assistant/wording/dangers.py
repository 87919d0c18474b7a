"""The texts of each danger but rain, whose own stand in `messages_rain`: its name, what to do
first by the stage of the bed, and what once it is over.

A row of `dangers.toml` without its texts here ends the start.
"""

from collections.abc import Iterator, Mapping

from assistant.agronomy.dangers.rows import RAIN, BedStage, DangerRow
from assistant.wording import messages_dangers as dangers
from assistant.wording.message import Message, Say

COVERED, SOON, UNCOVERED, DRAINED = (
    BedStage.COVERED,
    BedStage.SOON,
    BedStage.UNCOVERED,
    BedStage.DRAINED,
)
NAMES: Mapping[str, Message] = {
    RAIN: dangers.N_RAIN,
    "cold": dangers.N_COLD,
    "hail": dangers.N_HAIL,
    "wind": dangers.N_WIND,
    "dry": dangers.N_DRY,
    "pests": dangers.N_PESTS,
    "flood": dangers.N_FLOOD,
}
FIRST: Mapping[str, Mapping[BedStage, Message]] = {
    "cold": {
        SOON: dangers.COLD_SOON,
        COVERED: dangers.COLD_COVERED,
        UNCOVERED: dangers.COLD_UNCOVERED,
        DRAINED: dangers.COLD_DRAINED,
    },
    "hail": {
        SOON: dangers.WAIT_SOON,
        COVERED: dangers.HAIL_COVERED,
        UNCOVERED: dangers.HAIL_UNCOVERED,
        DRAINED: dangers.HAIL_UNCOVERED,
    },
    "wind": {
        COVERED: dangers.WIND_COVERED,
        UNCOVERED: dangers.WIND_UNCOVERED,
        DRAINED: dangers.WIND_UNCOVERED,
    },
    "dry": {
        SOON: dangers.DRY_SOON,
        COVERED: dangers.DRY_COVERED,
        UNCOVERED: dangers.DRY_UNCOVERED,
        DRAINED: dangers.DRY_DRAINED,
    },
    "pests": {
        SOON: dangers.PESTS_SOON,
        COVERED: dangers.PESTS_COVERED,
        UNCOVERED: dangers.PESTS_UNCOVERED,
        DRAINED: dangers.PESTS_UNCOVERED,
    },
    "flood": {
        SOON: dangers.FLOOD_SOON,
        COVERED: dangers.FLOOD_BED,
        UNCOVERED: dangers.FLOOD_BED,
        DRAINED: dangers.FLOOD_BED,
    },
}
AFTER: Mapping[str, Message] = {
    "cold": dangers.AFTER_COLD,
    "hail": dangers.AFTER_STORM,
    "wind": dangers.AFTER_STORM,
    "dry": dangers.AFTER_DRY,
    "pests": dangers.AFTER_PESTS,
    "flood": dangers.AFTER_FLOOD,
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
