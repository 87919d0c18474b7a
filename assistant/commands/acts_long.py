"""Long texts for the training of the table of acts, made of the short ones.

People who tell a story write forty words, and the sentences are short. A table that saw short
texts alone takes the many pieces of a long one for a cry. So some are made: several things said
one after the other, which together mean the gravest of them.
"""

from collections.abc import Iterator, Sequence
from itertools import groupby
from random import Random

from assistant.acts.act import Act

ORDINARY = frozenset(
    {Act.TROUBLE, Act.QUESTION, Act.GREETING, Act.DONE, Act.NOTDONE, Act.VALUE, Act.TALK}
)
CALM, GRAVE = 0.15, 0.1  # long texts made, as a share of the sentences of a language
FEWEST, MOST = 2, 5  # sentences of one
BETWEEN = (" ", ". ", ", ", " ")


def composed(rows: Sequence[tuple[str, Act, str]], seed: int) -> Iterator[tuple[str, Act, str]]:
    """Long texts of these rows (language, act, text), the same at each run."""
    for language, found in groupby(sorted(rows), key=lambda row: row[0]):
        own = list(found)
        chance = Random(f"{seed} {language} {len(own)}")  # noqa: S311 (nothing secret)
        ordinary = [row for row in own if row[1] in ORDINARY]
        grave = [row for row in own if row[1] not in ORDINARY]
        for _ in range(round(CALM * len(own)) if ordinary else 0):
            yield _joined(chance.choices(ordinary, k=chance.randint(FEWEST, MOST)), chance)
        for _ in range(round(GRAVE * len(own)) if ordinary and grave else 0):
            beside = chance.choices(ordinary, k=chance.randint(FEWEST - 1, MOST - 2))
            said = [chance.choice(grave), *beside]
            chance.shuffle(said)
            yield _joined(said, chance)


def _joined(said: Sequence[tuple[str, Act, str]], chance: Random) -> tuple[str, Act, str]:
    """Said one after the other; together they mean the first of `Act` among them."""
    order = list(Act)
    act = min((row[1] for row in said), key=order.index)
    return said[0][0], act, chance.choice(BETWEEN).join(row[2] for row in said)
