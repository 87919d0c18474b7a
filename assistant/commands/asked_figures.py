"""How well the table of questions routes, by ways it has not seen."""

from collections.abc import Iterator, Sequence

from assistant.commands.asked_training import CODES, Matched
from assistant.hearing.matching import NONE

CUTS = (0.5, 0.6, 0.7, 0.8, 0.9, 0.95)
FIRST = (1, 2, 3)


def match_figures(trained: Matched) -> Iterator[str]:
    """The share that is answered, right and wrong, from each score on; and how often the right
    one is among those that would be offered."""
    order = trained.shares.argsort(1)[:, ::-1]
    asked = [at for at, way in enumerate(trained.ways) if way.code != NONE]
    for first in FIRST:
        hits = sum(_is_among(trained, order, at, first) for at in asked)
        yield f"right among the first {first}: {hits / len(asked):.3f}"
    yield "from share   answered   right   wrong"
    for cut in CUTS:
        best = [(at, int(order[at, 0])) for at in asked]
        taken = [
            (at, top)
            for at, top in best
            if trained.shares[at, top] >= cut and CODES[top] != NONE
        ]
        right = sum(CODES[top] == trained.ways[at].code for at, top in taken)
        shares = [n / len(asked) for n in (len(taken), right, len(taken) - right)]
        yield f"{cut:10.2f} " + " ".join(f"{share:9.3f}" for share in shares)


def _is_among(trained: Matched, order: Sequence[Sequence[int]], at: int, first: int) -> bool:
    return trained.ways[at].code in {CODES[int(place)] for place in order[at][:first]}
