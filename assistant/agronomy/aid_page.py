"""The part of `SOURCES.md` on the emergency texts: each sentence and what bears it."""

from assistant.agronomy.sourced.aid_sentences import AID_SENTENCES, AidSentence, cited
from assistant.agronomy.sourced.aid_sources import AidSource

_HEAD = """
# First aid

Every sentence of the emergency texts, with the publications that bear it. **No health worker
and no vet has signed these texts, in any language.** They say only what to do; no remedy,
nothing to swallow, nobody sent towards the danger. Local rules and the local health worker come
first.

Grades: A official or peer-reviewed; B public body, university, Red Cross or professional
charity; C newspaper, company, or a page that repeats an official text. All were read in
archived copies. Where a sentence says more than its sources, or they are poor, it says so.

| text | sentence | sources, with grade | weak |
|---|---|---|---|
"""
_PUBLICATIONS = """
| source | grade | publisher | title, page or section | year | address and note |
|---|---|---|---|---|---|
"""


def aid_section() -> str:
    """The section, in Markdown."""
    rows = "".join(map(_sentence, AID_SENTENCES))
    return _HEAD + rows + _PUBLICATIONS + "".join(map(_source, cited(AID_SENTENCES)))


def _sentence(row: AidSentence) -> str:
    by = ", ".join(f"{source.key} ({source.grade})" for source in row.sources)
    return f"| {row.text} | {row.words} | {by} | {row.weak} |\n"


def _source(source: AidSource) -> str:
    about = "; ".join(filter(None, (source.address, source.note)))
    return (
        f"| {source.key} | {source.grade} | {source.publisher} | {source.title} "
        f"| {source.year} | {about} |\n"
    )
