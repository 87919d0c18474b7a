"""What an alarm may be about, and which of them go on from person to person."""

from assistant.store import PRIVATE

HURT = frozenset(
    {
        "poison",
        "eyes",
        "snake",
        "lightning",
        "drowning",
        "wire",
        "wound",
        "smoke",
        "animal",
        "hurt",
    }
)
"""A person or an animal is hurt or in danger; "hurt" where it is not known how."""

BED = frozenset({"danger", "lost"})
"""A bed or a field is in danger or lost: all officers of the village hear of it once."""

CLIMBS = HURT | {PRIVATE}
"""The next person is told where nobody answers."""

ALARMS = CLIMBS | BED

UNSAFE = frozenset({"lightning", "drowning", "wire", "smoke"}) | BED
"""Where whoever goes to help may be in danger too."""


def alike(kind: str) -> frozenset[str]:
    """The kinds that are one alarm with this one when the same phone tells of them."""
    return next((group for group in (HURT, BED) if kind in group), frozenset({PRIVATE}))
