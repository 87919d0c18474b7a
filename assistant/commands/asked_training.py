"""Trains the table of questions from the project's own ways of asking. Needs the dev extra.

Two linear layers (scikit-learn's MLPClassifier without a bend between them) over ideas and
pieces: the first gives each piece what it is about, the second holds the sum against each
question. What is no question of ours stands under `none`, with sentences of other acts. Each
way is also weighed by a table that has not seen it, for the figures and to cool the shares: a
machine that has seen all is surer than it may be.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any, NamedTuple
from warnings import catch_warnings, simplefilter

from assistant.acts import Act
from assistant.commands.acts_training import SEED, Sentence
from assistant.hearing import Questions
from assistant.hearing.matching import (
    NONE,
    ROWS,
    WIDTH,
    MatchTable,
    parts,
    read_match,
    written_match,
)
from assistant.hearing.topics import Topic

FOLDS = 3
ROUNDS, TOGETHER, STEP = 5, 512, 4e-3  # of learning; 6 by 256 gives the same within its spread
OTHERS = 120  # sentences of other acts a language, that are no questions
MOST = 127  # of a signed byte
CODES = (*(str(topic) for topic in Topic), NONE)


class AskingWay(NamedTuple):
    """One way to ask a question."""

    language: str
    code: str
    text: str


@dataclass(frozen=True)
class Matched:
    """A table, the ways it was made from, and how likely each of CODES is of each by a table
    that had not seen it (ways x CODES)."""

    table: MatchTable
    ways: tuple[AskingWay, ...]
    shares: Any


Asked = Mapping[str, Mapping[str, Sequence[str]]]


def ways_of(hands: Sequence[Asked], sentences: Sequence[Sentence]) -> tuple[AskingWay, ...]:
    """The ways of asking of all hands, and other sentences as what is none of them."""
    own = [
        AskingWay(language, code, text)
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
            Topic.SCAM,
            Topic.DIRTY_PAIL,
            Topic.LOW_HEART,
            Topic.TEXT_HOUR,
        ),
    )
)
"""Questions whose ways may be a cry, a refusal or a greeting too: "the canal is dry", "who gave
you my number", "many died, do I replace them", "I want to give up", "this can held poison"."""
ONE_IN = 3  # more would outnumber every other act


def as_sentences(asked: Asked) -> Iterator[Sentence]:
    """Ways of asking as sentences of the table of acts, so that it does not take a question
    with a river or a poison in it for a cry."""
    for language, rows in asked.items():
        near = NEAR_A_CRY | {NONE}
        ways = [way for code, found in rows.items() if code not in near for way in found]
        ways = [*ways[::ONE_IN], *rows.get(NONE, ())]
        yield from (Sentence(language, Act.QUESTION, way) for way in ways)


def _others(sentences: Sequence[Sentence]) -> Iterator[AskingWay]:
    """Every so many-th sentence of each language, so that all acts are among them."""
    for language in sorted({each.language for each in sentences}):
        rows = [s for s in sentences if s.language == language and s.act is not Act.QUESTION]
        step = max(1, len(rows) // OTHERS)
        yield from (AskingWay(language, NONE, row.text) for row in rows[::step])


def train_match(ways: Sequence[AskingWay], questions: Questions) -> Matched:
    """The table from these ways, the same at each run."""
    import numpy as np
    from sklearn.model_selection import StratifiedKFold

    wanted = np.array([CODES.index(way.code) for way in ways])
    seen = _matrix(ways, questions)
    odds = np.zeros((len(ways), len(CODES)))
    cuts = StratifiedKFold(FOLDS, shuffle=True, random_state=SEED)
    for known, unknown in cuts.split(seen, wanted):
        odds[unknown] = _odds(seen[unknown], *_fit(seen[known], wanted[known]))
    warmth = _warmth(odds, wanted)
    rows, scale, bias, held, shift = _fit(seen, wanted)
    table = _table(rows, scale, bias, held / warmth, shift / warmth)
    return Matched(table, tuple(ways), _shares(odds / warmth))


def _odds(seen: Any, rows: Any, scale: Any, bias: Any, held: Any, shift: Any) -> Any:
    return ((seen @ rows.astype(float)) * scale + bias) @ held.T + shift


def _shares(odds: Any) -> Any:
    from scipy.special import softmax

    return softmax(odds, axis=1)


def _warmth(odds: Any, wanted: Any) -> float:
    """By what the log odds of ways not seen are to be divided so that, of those with a share
    of 0.7, seven in ten are right."""
    import numpy as np
    from scipy.optimize import minimize_scalar
    from scipy.special import log_softmax

    each = np.arange(len(wanted))
    found = minimize_scalar(
        lambda warmth: -log_softmax(odds / warmth, axis=1)[each, wanted].mean(),
        bounds=(0.5, 5.0),
        method="bounded",
    )
    return float(found.x)


def _matrix(ways: Sequence[AskingWay], questions: Questions) -> Any:
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


def _fit(seen: Any, wanted: Any) -> tuple[Any, Any, Any, Any, Any]:
    """Rows as signed bytes, the scale and the bias of each of their numbers, the lines that
    questions are held against, and their shifts. A rare piece says more: that is put in its
    row."""
    import numpy as np
    from scipy.sparse import diags
    from sklearn.exceptions import ConvergenceWarning
    from sklearn.neural_network import MLPClassifier

    counts = np.asarray((seen > 0).sum(0)).ravel()
    rarity = np.log((1 + len(wanted)) / (1 + counts)) / 4
    machine = MLPClassifier(
        (WIDTH,),
        activation="identity",
        batch_size=TOGETHER,
        learning_rate_init=STEP,
        max_iter=ROUNDS,
        random_state=SEED,
    )
    with catch_warnings():
        simplefilter("ignore", ConvergenceWarning)  # it is stopped early on purpose
        machine.fit((seen @ diags(rarity)).tocsr().astype(np.float32), wanted)
    rows = machine.coefs_[0] * rarity[:, None]
    scale = np.abs(rows).max(0) / MOST
    inner, outer = machine.intercepts_
    return np.rint(rows / scale).astype(np.int8), scale, inner, machine.coefs_[1].T, outer


def _table(rows: Any, scale: Any, bias: Any, held: Any, shift: Any) -> MatchTable:
    table = MatchTable(
        topics=CODES,
        rows=memoryview(rows.tobytes()).cast("b"),
        scale=_short(scale),
        bias=_short(bias),
        held=[_short(line) for line in held],
        shift=_short(shift),
    )
    return read_match(written_match(table))


def _short(numbers: Any) -> list[float]:
    return [float(f"{each:.5g}") for each in numbers]
