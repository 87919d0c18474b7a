"""Plays sentences kept aside through the talk: what is heard, what rings falsely, what is
written down that was not said.

    python -m tests.corpus.acts [--lang sw] [--misses]

`aside/*.tsv` (act, text) were written by another hand than the rules and the sentences of
assistant/acts, who had seen neither. Nothing is tuned on them.
"""

from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator
from math import sqrt
from pathlib import Path

import click

from assistant.dialogue.turns import turn
from tests.corpus.talk.judging import DEEDS, Outcome, outcome
from tests.corpus.talk.moments import MOMENTS

FOLDER = Path(__file__).parent / "aside"
TASKS = ("soak", "sow", "uncover", "transplant", "warning")
ALARMS = frozenset({"harm", "die", "danger"})
WANTED = {
    "harm": {"harm", "die"},
    "die": {"die", "harm"},
    "danger": {"danger", "harm", "die"},
    "refuse": {"refuse"},
    "person": {"person", "danger", "harm", "passed", "unread"},
    "trouble": {"trouble", "person", "passed", "danger", "unread", "harm"},
}
Z = 1.96  # of a 95 % interval


def rows(language: str | None) -> Iterator[tuple[str, str, str]]:
    """Language, act and text."""
    for path in sorted(FOLDER.glob("*.tsv")):
        if language in (None, path.stem):
            for line in path.read_text(encoding="utf-8").splitlines():
                act, _, text = line.partition("\t")
                yield path.stem, act, text


def played(language: str, text: str, moment: str) -> Outcome:
    """What a text leads to at a moment."""
    return outcome(turn(text, MOMENTS[moment](language)))


def wilson(hits: int, whole: int) -> tuple[float, float]:
    """The 95 % interval of a share (Wilson 1927)."""
    share, spread = hits / whole, Z * Z / whole
    middle = (share + spread / 2) / (1 + spread)
    half = Z * sqrt(share * (1 - share) / whole + spread / whole / 4) / (1 + spread)
    return middle - half, middle + half


@click.command()
@click.option("--lang", default=None)
@click.option("--misses", is_flag=True)
def main(lang: str | None, misses: bool) -> None:
    """Print shares by act and language, with intervals over all."""
    hits: dict[str, Counter[str]] = defaultdict(Counter)
    whole: dict[str, Counter[str]] = defaultdict(Counter)
    wrong = []
    for language, act, text in rows(lang):
        for what, right in _judged(language, act, text):
            whole[what][language] += 1
            hits[what][language] += right
            if not right:
                wrong.append(f"{what}\t{language}\t{text}")
    for what in whole:
        _print(what, hits[what], whole[what])
    for line in wrong if misses else ():
        click.echo(line)


def _judged(language: str, act: str, text: str) -> Iterator[tuple[str, bool]]:
    calm = played(language, text, "nothing")
    at_tasks = {moment: played(language, text, moment) for moment in TASKS}
    if act in WANTED:
        yield f"{act} heard", bool(calm.reached & WANTED[act])
    if act in ("harm", "die", "danger"):
        heard = at_tasks["warning"].reached & WANTED[act]
        yield f"{act} heard under a warning", bool(heard)
    if act in ("done", "notdone", "value", "greeting", "talk", "question"):
        yield f"{act}: no false alarm", not calm.reached & ALARMS
        yield f"{act}: not asked to stop", "refuse" not in calm.reached
        tasks = [got for moment, got in at_tasks.items() if moment != "warning"]
        yield f"{act}: no false alarm at a task", not _any(tasks, ALARMS)
    if act == "done":
        yield "done: taken at its task", any(got.written & DEEDS for got in at_tasks.values())
    elif act != "value":
        yield f"{act}: no deed written", not any(g.written & DEEDS for g in at_tasks.values())


def _any(outcomes: Iterable[Outcome], who: frozenset[str]) -> bool:
    return any(got.reached & who for got in outcomes)


def _print(what: str, hits: Counter[str], whole: Counter[str]) -> None:
    right, total = sum(hits.values()), sum(whole.values())
    low, high = wilson(right, total)
    cells = " ".join(f"{code} {hits[code]}/{whole[code]}" for code in sorted(whole))
    click.echo(f"{what:34} {right}/{total} {right / total:.1%} ({low:.1%}-{high:.1%})  {cells}")


if __name__ == "__main__":
    main()
