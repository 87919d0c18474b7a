"""A way of raising seedlings as a value: area, depths, mix, tasks by day, window, labour.

Each number is a `Constant` and so carries its source. The wiring makes these values from the
files in this folder; `MAT` is the one that the core has without any file.
"""

from dataclasses import dataclass
from enum import StrEnum

from assistant.agronomy.sourced.constant import Constant
from assistant.agronomy.tasks import TaskCode


class PieceKind(StrEnum):
    """What the bed is lifted in."""

    MAT = "mat"
    TRAY = "tray"


@dataclass(frozen=True)
class MatSize:
    """A mat or a tray: what is sown, lifted and carried as one [m]."""

    kind: PieceKind
    length_m: Constant
    width_m: Constant

    @property
    def area_m2(self) -> float:
        """Its area [m2]."""
        return self.length_m.value * self.width_m.value


@dataclass(frozen=True)
class BedMake:
    """The bed and what it is made of.

    Args:
        share: bed for each area of field [m2 per m2]
        max_seeds_per_cm2: the thickest sowing, all seeds, dry; the bed is enlarged beyond it
        depth_m: what is brought onto the bed: the mix, or only manure [m]
        soil_parts, manure_parts, hull_parts: pails of each in one batch of it
        sheet_allowance: sheet for overlap and edges [fraction of the bed]; None: no sheet
        flood_depth_m: water that stands on or around it; 0 where it is only watered [m]
        piece: the mat or tray, None where seedlings are pulled from the bed
        has_frame: shaped in a frame that is lifted and moved on
        covers_seed: seed gets a thin cover of soil
    """

    share: Constant
    max_seeds_per_cm2: Constant
    depth_m: Constant
    soil_parts: Constant
    manure_parts: Constant
    hull_parts: Constant
    flood_depth_m: Constant
    sheet_allowance: Constant | None = None
    piece: MatSize | None = None
    has_frame: bool = False
    covers_seed: bool = True


@dataclass(frozen=True)
class Planting:
    """How the seedlings are usually planted, and how many seeds become seedlings."""

    row_cm: Constant
    hill_cm: Constant
    seedlings_per_hill: Constant
    establishment: Constant


@dataclass(frozen=True)
class Window:
    """When seedlings are planted out, in days from sowing and in open leaves.

    Args:
        first, last: good days; `assumed` stands until a day is chosen
        earliest, latest: outside these a wished day is asked about again
        leaves_first, leaves_last: open leaves of seedlings that are ready
    """

    first: Constant
    last: Constant
    assumed: Constant
    earliest: Constant
    latest: Constant
    leaves_first: Constant
    leaves_last: Constant


class Anchor(StrEnum):
    """What a day hangs on."""

    SOW = "sow"
    UNCOVER = "uncover"
    DRAIN = "drain"
    TRANSPLANT = "transplant"


@dataclass(frozen=True)
class DayPoint:
    """So many days after an anchor (before it, where negative)."""

    anchor: Anchor
    days: Constant


@dataclass(frozen=True)
class TaskRule:
    """When a task of the bed is done; one that lasts is done every `every_d` days."""

    code: TaskCode
    start: DayPoint
    end: DayPoint | None = None
    every_d: int = 1


@dataclass(frozen=True)
class Days:
    """The days of the bed.

    Args:
        uncover: the day it is uncovered, or water is let in, where all goes well
        uncover_latest: a bed still bare then has failed
        drain_before: days from draining to transplanting; 0 where it is not drained
        tasks: all but transplanting and overdue, which follow from the window
    """

    uncover: Constant
    uncover_latest: Constant
    drain_before: Constant
    tasks: tuple[TaskRule, ...]


@dataclass(frozen=True)
class Labour:
    """Person-hours: making and sowing the bed, lifting or pulling, planting out."""

    raise_h_per_m2: Constant
    lift_h_per_ha: Constant
    plant_h_per_ha: Constant


@dataclass(frozen=True)
class Practice:
    """One way of raising seedlings. `names` are what people call it: (language, name)."""

    code: str
    names: tuple[tuple[str, str], ...]
    bed: BedMake
    planting: Planting
    window: Window
    days: Days
    labour: Labour

    def first_day(self, code: TaskCode) -> int | None:
        """The day from sowing on which a task begins; None where it hangs on another day."""
        starts = (rule.start for rule in self.days.tasks if rule.code is code)
        found = next((each for each in starts if each.anchor is Anchor.SOW), None)
        return int(found.days.value) if found else None

    @property
    def soak_day(self) -> int:
        """The day from sowing on which its seed is soaked, where that takes no longer."""
        return self.first_day(TaskCode.SOAK) or 0

    def name(self, language: str) -> str:
        """What it is called in a language; its English name, else its code, stands in."""
        names = dict(self.names)
        return names.get(language) or names.get("en") or self.code
