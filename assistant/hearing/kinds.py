"""What can be heard by an exact rule, in the order in which it is looked for."""

from enum import StrEnum


class Kind(StrEnum):
    """The kinds that the rules tell apart. The first ten are somebody in danger."""

    DIE = "die"
    ANIMAL = "animal"  # an animal is hurt or poisoned, and no person
    SNAKE = "snake"
    LIGHTNING = "lightning"
    WIRE = "wire"
    DROWNING = "drowning"
    EYES = "eyes"  # a chemical in the eyes or on the skin
    POISON = "poison"  # swallowed or breathed in
    SMOKE = "smoke"
    WOUND = "wound"
    HURT = "hurt"  # hurt or sick, no matter how
    DANGER = "danger"  # weather, flood: the bed or field, and who stands in it
    LOST = "lost"  # the bed or field is lost or in danger otherwise
    ERASE = "erase"  # wants what is kept of them deleted
    REFUSE = "refuse"  # no more texts
    PERSON = "person"  # wants a person


HARMS = frozenset(
    {
        Kind.ANIMAL,
        Kind.SNAKE,
        Kind.LIGHTNING,
        Kind.WIRE,
        Kind.DROWNING,
        Kind.EYES,
        Kind.POISON,
        Kind.SMOKE,
        Kind.WOUND,
        Kind.HURT,
    }
)
LOSSES = frozenset({Kind.DANGER, Kind.LOST})
