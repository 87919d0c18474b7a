"""Trains the table of acts from the project's own sentences. Needs the dev extra.

A linear machine over hashed pieces (scikit-learn's LinearSVC, one act against the rest), its
scores calibrated by a logistic regression on scores that each fifth gave of the others. Near
alike sentences never stand on both sides of a cut, so that the figures are of texts not seen.
Chosen: a linear model that is read without the library; refused: larger models (they need a
library at run time and cannot be looked into).
"""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any, NamedTuple

from assistant.acts.act import Act
from assistant.acts.pieces import pieces, rows_of
from assistant.acts.table import ActTable, read_table, written
from assistant.commands.acts_long import composed

BITS = 19
FOLDS = 5
SEED = 20261130
SOFTNESS = 0.5  # the machine's C; 0.25 to 1 give the same figures within their spread
ALIKE = 0.5  # shared triples of letters, of all triples, from which two texts are near alike
SHARE_KEPT = 0.9995  # of weights; the few larger ones are cut so that a byte is fine enough
MOST = 127  # of a signed byte
ACTS = tuple(Act)


class Sentence(NamedTuple):
    """One text of the corpus."""

    language: str
    act: Act
    text: str


@dataclass(frozen=True)
class Trained:
    """A table, and how likely it made each act of each sentence when it had not seen it."""

    table: ActTable
    likely: Any  # sentences x acts


def read_sentences(folder: Path) -> tuple[Sentence, ...]:
    """The rows `act<TAB>text` of every <language>.tsv in a folder.

    Raises:
        ValueError: a row is of no act or has no text; says which.
    """
    return tuple(row for path in sorted(folder.glob("*.tsv")) for row in _rows(path))


def _rows(path: Path) -> Iterator[Sentence]:
    lines = path.read_text(encoding="utf-8").splitlines()
    for number, line in enumerate(lines, start=1):
        act, _, text = line.partition("\t")
        if act not in set(ACTS) or not text.strip():
            raise ValueError(
                f"{path.name}:{number}: expected an act, a tab and a text, got {line!r}; "
                f"acts are {', '.join(ACTS)}"
            )
        yield Sentence(path.stem, Act(act), text.strip())


def train(sentences: Sequence[Sentence]) -> Trained:
    """The table from these sentences, the same at each run."""
    import numpy as np
    from sklearn.model_selection import StratifiedGroupKFold

    wanted = np.array([ACTS.index(each.act) for each in sentences])
    seen = _matrix([rows_of(each.text, BITS) for each in sentences])
    strata = [f"{each.language}{each.act}" for each in sentences]
    cuts = StratifiedGroupKFold(FOLDS, shuffle=True, random_state=SEED)
    parts = list(cuts.split(seen, strata, groups(sentences)))
    scores = np.zeros((len(sentences), len(ACTS)))
    long_ones = []  # of sentences that a cut had not seen: what it made of them, what they are
    for known, unknown in parts:
        machine = _quantised(*_fit(*_with_long(sentences, seen, wanted, known)))
        scores[unknown] = _score(seen[unknown], *machine)
        rows, acts = _long(sentences, unknown)
        long_ones.append((_score(rows, *machine), acts))
    likely = np.zeros_like(scores)
    for at, (known, unknown) in enumerate(parts):
        others = [each for cut, each in enumerate(long_ones) if cut != at]
        beside = _turned([(scores[known], wanted[known]), *others])
        likely[unknown] = beside.predict_proba(scores[unknown])
    turned = _turned([(scores, wanted), *long_ones])
    whole = _with_long(sentences, seen, wanted, np.arange(len(sentences)))
    return Trained(_table(*_quantised(*_fit(*whole)), turned), likely)


def _turned(weighed: Sequence[tuple[Any, Any]]) -> Any:
    """What turns scores into how likely an act is."""
    import numpy as np
    from sklearn.linear_model import LogisticRegression

    scores, acts = (np.concatenate(each) for each in zip(*weighed, strict=True))
    return LogisticRegression(C=10, max_iter=1000).fit(scores, acts)


def _long(sentences: Sequence[Sentence], which: Any) -> tuple[Any, Any]:
    """Long texts made of some of the sentences, as rows of a matrix, and what they are."""
    import numpy as np

    made = list(composed([sentences[at] for at in which], SEED))
    acts = np.array([ACTS.index(act) for _, act, _ in made])
    return _matrix([rows_of(text, BITS) for _, _, text in made]), acts


def _with_long(
    sentences: Sequence[Sentence], seen: Any, wanted: Any, which: Any
) -> tuple[Any, Any]:
    """Some of the sentences and the long texts that are made of them."""
    import numpy as np
    from scipy.sparse import vstack

    rows, acts = _long(sentences, which)
    return vstack([seen[which], rows]).tocsr(), np.concatenate([wanted[which], acts])


def _matrix(rows: Sequence[Iterable[int]]) -> Any:
    """Sentences x rows; each sentence's pieces weigh together the same."""
    import numpy as np
    from scipy.sparse import csr_matrix

    kept = [sorted(each) for each in rows]
    ends = np.cumsum([0, *map(len, kept)])
    places = np.array([place for each in kept for place in each])
    shares = np.concatenate([np.full(len(each), len(each) ** -0.5) for each in kept])
    return csr_matrix((shares, places, ends), shape=(len(kept), 1 << BITS))


def _fit(seen: Any, wanted: Any) -> tuple[Any, Any]:
    """Weights (rows x acts) and biases. A rare piece says more: that is put in its weight."""
    import numpy as np
    from scipy.sparse import diags
    from sklearn.svm import LinearSVC

    counts = np.asarray((seen > 0).sum(0)).ravel()
    rarity = np.log((1 + len(wanted)) / (1 + counts)) / 4
    machine = LinearSVC(C=SOFTNESS, tol=1e-3, random_state=SEED)
    machine.fit((seen @ diags(rarity)).tocsr(), wanted)
    return (machine.coef_ * rarity).T, machine.intercept_


def _quantised(weights: Any, bias: Any) -> tuple[Any, Any, Any]:
    """Weights as signed bytes, the scale of each act, and the biases."""
    import numpy as np

    used = np.abs(weights[np.abs(weights).max(1) > 0])
    scale = np.quantile(used, SHARE_KEPT, axis=0) / MOST
    return np.clip(np.rint(weights / scale), -MOST, MOST).astype(np.int8), scale, bias


def _score(seen: Any, rows: Any, scale: Any, bias: Any) -> Any:
    return (seen @ rows.astype(float)) * scale + bias


def _table(rows: Any, scale: Any, bias: Any, turned: Any) -> ActTable:
    table = ActTable(
        bits=BITS,
        acts=ACTS,
        rows=memoryview(rows.tobytes()).cast("b"),
        scale=[float(f"{each:.6g}") for each in scale],
        bias=[float(f"{each:.6g}") for each in bias],
        turn=[[round(float(each), 4) for each in line] for line in turned.coef_],
        shift=[round(float(each), 4) for each in turned.intercept_],
    )
    return read_table(written(table))


# --- near alike ------------------------------------------------------------------------------


def groups(sentences: Sequence[Sentence]) -> list[int]:
    """A number for each sentence, the same for those that are near alike: within a language by
    the triples of letters they share, in any language where their words are the same."""
    joined = list(range(len(sentences)))

    def root(at: int) -> int:
        while joined[at] != at:
            joined[at] = joined[joined[at]]
            at = joined[at]
        return at

    for one, other in _alike(sentences):
        first, second = root(one), root(other)
        joined[max(first, second)] = min(first, second)
    return [root(at) for at in range(len(sentences))]


def _alike(sentences: Sequence[Sentence]) -> Iterator[tuple[int, int]]:
    triples = [_triples(each.text) for each in sentences]
    words: dict[frozenset[str], int] = {}
    holding: dict[tuple[str, str], list[int]] = defaultdict(list)
    for at, each in enumerate(sentences):
        own = frozenset(piece for piece in pieces(each.text) if piece.startswith("w"))
        yield at, words.setdefault(own, at)
        shared: dict[int, int] = defaultdict(int)
        for triple in triples[at]:
            for earlier in holding[each.language, triple]:
                shared[earlier] += 1
            holding[each.language, triple].append(at)
        for earlier, count in shared.items():
            if count / (len(triples[at]) + len(triples[earlier]) - count) >= ALIKE:
                yield at, earlier


def _triples(text: str) -> frozenset[str]:
    words = sorted(piece[1:] for piece in pieces(text) if piece.startswith("w"))
    joined = f" {' '.join(words)} "
    return frozenset(joined[at : at + 3] for at in range(len(joined) - 2))
