"""A bad day of a line, by script or by seed: what goes wrong on its connection, one fault a
text, and in the network behind it."""

from datetime import timedelta
from random import Random

from gateway_sim.handlers import Chain, Handler, MessageDelay, ReceiptLater, Repeat, Sometimes

SHARE = 0.3  # of the texts meet a fault of the connection


def by_script(words: str, kinds: tuple[str, ...]) -> tuple[str, ...]:
    """Faults with commas, one a text; nothing between two is none. Raises ValueError for one
    that is not among the kinds."""
    faults = tuple(each.strip() for each in words.split(","))
    strange = [each for each in faults if each and each not in kinds]
    if strange:
        raise ValueError(f"no fault {strange[0]}; this line has {', '.join(kinds) or 'none'}")
    return faults


def by_seed(seed: int, count: int, share: float, kinds: tuple[str, ...]) -> tuple[str, ...]:
    """Faults for a share of so many texts, by chance; the same seed is the same chance. The
    kinds are those that a side of the line names (`FAULTS`); empty is none."""
    chance = Random(seed)  # noqa: S311 a game of faults, no secret
    return tuple(chance.choice(kinds) if chance.random() < share else "" for _ in range(count))


def bad_network(seed: int) -> Handler:
    """A bad day of the network, by a seed: half of what phones write comes late, though in
    order; texts to phones take a minute; of both some come twice; a tenth of receipts is an
    hour late, behind those of later texts.

    No text overtakes another to the same phone: a digit answers the question that was read
    last, and the day would have another end by right. Seasons that say so have that.
    """
    late = MessageDelay(timedelta(seconds=40), ways=("to_assistant",))
    return Chain(
        Sometimes(late, 0.5, seed),
        MessageDelay(timedelta(seconds=70), ways=("to_phone",)),
        Sometimes(Repeat(), 0.1, seed + 1),
        Sometimes(ReceiptLater(timedelta(hours=1)), 0.1, seed + 2),
    )
