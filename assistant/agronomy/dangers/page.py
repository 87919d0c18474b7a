"""The part of `SOURCES.md` on dangers: what is done first at each stage, and on what that
rests."""

from collections.abc import Iterable

from assistant.agronomy.dangers.rows import BedStage, DangerRow

_HEAD = """
# Dangers

What farmers are told to do first when an officer warns of a danger. **No agronomist has signed
these texts.** Once hail, wind or a flood is there they are told to stay in a safe place only.

| danger | beds | done first | rests on |
|---|---|---|---|
"""


def dangers_section(rows: Iterable[DangerRow]) -> str:
    """The section, in Markdown."""
    return _HEAD + "".join(map(_danger, rows))


def _danger(row: DangerRow) -> str:
    return "".join(
        f"| {row.code} | {', '.join(each for each in BedStage if each in advice.stages)} "
        f"| {advice.what} | {advice.rests_on} |\n"
        for advice in row.advice
    )
