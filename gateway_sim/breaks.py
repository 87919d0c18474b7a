"""What goes wrong on the connection of a line, one fault a text, by script or by seed."""

from random import Random


def by_seed(seed: int, count: int, share: float, kinds: tuple[str, ...]) -> tuple[str, ...]:
    """Faults for a share of so many texts, by chance; the same seed is the same chance. The
    kinds are those that a side of the line names (`FAULTS`); empty is none."""
    chance = Random(seed)  # noqa: S311 a game of faults, no secret
    return tuple(chance.choice(kinds) if chance.random() < share else "" for _ in range(count))
