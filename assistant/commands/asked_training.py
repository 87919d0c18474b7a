"""Trains the table of questions from the project's own ways of asking. Needs the dev extra.

As `acts_training`: a linear machine (scikit-learn's LinearSVC, one question against the rest),
here over ideas and pieces. What is no question of ours stands under `none`, with sentences of
other acts. Each way is also weighed by a table that has not seen it, for the figures.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, NamedTuple

from assistant.acts import Act
from assistant.commands.acts_training import SEED, Sentence
from assistant.hearing import Questions
from assistant.hearing.matching import (
    NONE,
    ROWS,
    MatchTable,
    parts,
    read_match,
    written_match,
)
from assistant.hearing.topics import Topic

FOLDS = 5
SOFTNESS = 0.5  # the machine's C; 0.5 and 2 give the same figures within their spread
OTHERS = 70  # sentences of other acts a language, that are no questions
MOST = 127  # of a signed byte
CODES = (*(str(topic) for topic in Topic), NONE)


class Way(NamedTuple):
    """One way to ask a question."""

    language: str
    code: str
    text: str


@dataclass(frozen=True)
class Matched:
    """A table, the ways it was made from, and each one's scores by a table that had not seen
    it (ways x CODES)."""

    table: MatchTable
    ways: tuple[Way, ...]
    scores: Any


Asked = Mapping[str, Mapping[str, Sequence[str]]]


def ways_of(hands: Sequence[Asked], sentences: Sequence[Sentence]) -> tuple[Way, ...]:
    """The ways of asking of all hands, and other sentences as what is none of them."""
    own = [
        Way(language, code, text)
        for asked in hands
        for language, rows in asked.items()
        for code, texts in rows.items()
        for text in texts
    ]
    return (*own, *_others(sentences))


NEAR_A_CRY = frozenset(
    map(str, (Topic.NO_WATER, Topic.ANTS, Topic.GUARD, Topic.TREATED, Topic.MEDICINE))
) | frozenset(
    map(
        str,
        (
            Topic.MY_NUMBER,
            Topic.STOP_HOW,
            Topic.WASHED,
            Topic.STRAW_GONE,
            Topic.STORM_PLANT,
            Topic.GAPS,
            Topic.CHAT,
        ),
    )
)
"""Questions whose ways may be a cry, a refusal or a greeting too: "the canal is dry", "who gave
you my number", "many died, do I replace them"."""
ONE_IN = 3  # more would outnumber every other act


def as_sentences(asked: Asked) -> Iterator[Sentence]:
    """Ways of asking as sentences of the table of acts, so that it does not take a question
    with a river or a poison in it for a cry."""
    for language, rows in asked.items():
        near = NEAR_A_CRY | {NONE}
        ways = [way for code, found in rows.items() if code not in near for way in found]
        ways = [*ways[::ONE_IN], *rows.get(NONE, ())]
        yield from (Sentence(language, Act.QUESTION, way) for way in ways)


def _others(sentences: Sequence[Sentence]) -> Iterator[Way]:
    """Every so many-th sentence of each language, so that all acts are among them."""
    for language in sorted({each.language for each in sentences}):
        rows = [s for s in sentences if s.language == language and s.act is not Act.QUESTION]
        step = max(1, len(rows) // OTHERS)
        yield from (Way(language, NONE, row.text) for row in rows[::step])


def train_match(ways: Sequence[Way], questions: Questions) -> Matched:
    """The table from these ways, the same at each run."""
    import numpy as np
    from sklearn.model_selection import StratifiedKFold

    wanted = np.array([CODES.index(way.code) for way in ways])
    seen = _matrix(ways, questions)
    scores = np.zeros((len(ways), len(CODES)))
    cuts = StratifiedKFold(FOLDS, shuffle=True, random_state=SEED)
    for known, unknown in cuts.split(seen, wanted):
        rows, scale, bias = _fit(seen[known], wanted[known])
        scores[unknown] = (seen[unknown] @ rows.astype(float)) * scale + bias
    return Matched(_table(*_fit(seen, wanted)), tuple(ways), scores)


def _matrix(ways: Sequence[Way], questions: Questions) -> Any:
    """Ways x rows."""
    import numpy as np
    from scipy.sparse import csr_matrix

    data: list[float] = []
    places: list[int] = []
    ends = [0]
    for way in ways:
        ideas = questions.ideas(way.text, (way.language, "en"))
        for rows, weight in parts(way.text, ideas):
            places += sorted(rows)
            data += [weight * len(rows) ** -0.5] * len(rows)
        ends.append(len(places))
    return csr_matrix((data, places, np.array(ends)), shape=(len(ways), ROWS))


def _fit(seen: Any, wanted: Any) -> tuple[Any, Any, Any]:
    """Weights as signed bytes, the scale of each question, and the biases. A rare piece says
    more: that is put in its weight."""
    import numpy as np
    from scipy.sparse import diags
    from sklearn.svm import LinearSVC

    counts = np.asarray((seen > 0).sum(0)).ravel()
    rarity = np.log((1 + len(wanted)) / (1 + counts)) / 4
    machine = LinearSVC(C=SOFTNESS, tol=1e-3, random_state=SEED)
    machine.fit((seen @ diags(rarity)).tocsr(), wanted)
    weights = (machine.coef_ * rarity).T
    scale = np.abs(weights).max(0) / MOST
    return np.rint(weights / scale).astype(np.int8), scale, machine.intercept_


def _table(rows: Any, scale: Any, bias: Any) -> MatchTable:
    table = MatchTable(
        topics=CODES,
        rows=memoryview(rows.tobytes()).cast("b"),
        scale=[float(f"{each:.6g}") for each in scale],
        bias=[float(f"{each:.6g}") for each in bias],
    )
    return read_match(written_match(table))
