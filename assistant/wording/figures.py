"""Numbers of the trade that hold for every bed, as slots that fill themselves.

A text names such a slot and nobody passes it: what it says is read from its constant when the
text is worded, so that a figure stands in one place and every text in every language follows.
What differs from bed to bed (its depth, its days, its leaves) is filled from the nursery
instead, see `day.about`.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from assistant.agronomy import constants as c
from assistant.agronomy import constants_work as w
from assistant.agronomy.sourced.constant import Constant

_CM_PER_M = 100.0
_PERCENT = 100.0
_G_PER_L_PERCENT = 10.0
_PLACES = 6  # enough for any figure, too few to show float noise


@dataclass(frozen=True)
class Figure:
    """A constant as a text tells it: its value, or an end of its range, in the text's unit.

    `times` turns the constant's unit into the text's; `end` is "value", "low" or "high".
    """

    constant: Constant
    times: float = 1.0
    end: str = "value"

    @property
    def told(self) -> float:
        """The number to say; the value where the range has no such end."""
        found = getattr(self.constant, self.end)
        return round((self.constant.value if found is None else found) * self.times, _PLACES)


FIGURES: Mapping[str, Figure] = MappingProxyType(
    {
        # seed
        "assumed": Figure(c.GOOD_GERMINATION, _PERCENT),
        "test_days": Figure(c.SEED_TEST_COUNT_D),
        "soak_hours": Figure(c.SOAK_H),
        "slow_hours": Figure(c.SOAK_H, end="high"),
        "lie_hours": Figure(c.INCUBATE_H),
        "root_low": Figure(c.ROOT_LOW_MM),
        "root_high": Figure(c.ROOT_HIGH_MM),
        "no_sprout": Figure(w.NO_SPROUT_D),
        "salt_minutes": Figure(w.BRINE_MINUTES),
        "rinses": Figure(w.BRINE_RINSES),
        # the bed
        "least_mm": Figure(c.COVER_LOW_MM),
        "most_mm": Figure(c.COVER_HIGH_MM),
        "strip": Figure(w.STRIP_WIDTH_M),
        "path": Figure(w.PATH_WIDTH_M, _CM_PER_M),
        "raised": Figure(w.DRY_BED_HEIGHT_M, _CM_PER_M),
        "guard_until": Figure(c.RAIN_WATCH_LAST_DAY),
        "pale": Figure(c.PALE_AFTER_UNCOVERING_D),
        "dries": Figure(w.DRAINED_DRIES_D),
        "night_deep": Figure(c.NIGHT_WATER_CM),
        # care
        "strength": Figure(c.UREA_PERCENT, _G_PER_L_PERCENT),
        "colour_day": Figure(c.COLOUR_CHECK_DAY),
        "square": Figure(w.SQUARE_CM),
        "squares": Figure(w.SQUARES_COUNTED),
        "fewest": Figure(c.SEEDLINGS_PER_HILL, end="low"),
        # the field
        "gap_days": Figure(c.GAP_FILL_LAST_D),
        "weed_low": Figure(w.FIRST_WEEDING_D, end="low"),
        "weed_high": Figure(w.FIRST_WEEDING_D, end="high"),
        "low_cm": Figure(w.FIELD_WATER_LOW_M, _CM_PER_M),
        "high_cm": Figure(w.FIELD_WATER_HIGH_M, _CM_PER_M),
        "plough_days": Figure(c.PLOUGH_BEFORE_D),
        "harrow_days": Figure(c.HARROW_EVERY_D),
        "level_low": Figure(c.LEVEL_LAST_BEFORE_D, end="low"),
        "level_high": Figure(c.LEVEL_LAST_BEFORE_D, end="high"),
        "plough_low": Figure(w.PLOUGH_DEPTH_CM, end="low"),
        "plough_high": Figure(w.PLOUGH_DEPTH_CM, end="high"),
        "plant_low": Figure(w.PLANT_DEPTH_CM, end="low"),
        "plant_high": Figure(w.PLANT_DEPTH_CM, end="high"),
        "dry_low": Figure(w.GRAIN_DRIES_D, end="low"),
        "dry_high": Figure(w.GRAIN_DRIES_D, end="high"),
        "duck_weeks": Figure(w.DUCKS_AFTER_WEEKS),
    }
)
