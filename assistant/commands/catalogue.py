"""`nursery catalogue`: every text of a language as it would arrive, for a reviewer to mark."""

import csv
import sys
from collections.abc import Iterable, Iterator

import click

from assistant.alphabet import cost, plain
from assistant.people import LANGUAGES
from assistant.wiring.catalogues import SOURCE, CatalogueError, open_catalogue
from assistant.wiring.review import Review, catalogues, review
from assistant.wording.checks import Language, budget, form_for, widest_cost
from assistant.wording.message import Slot
from assistant.wording.render import Catalogue, slot_text
from assistant.wording.texts import Declared, declared
from assistant.wording.widest import usual

COLUMNS = (
    "id",
    "note",
    "english",
    "translation",
    "encoding",
    "segments",
    "most segments",
    "allowed segments",
    "fault",
    "ok?",
    "remark",
)


@click.command("catalogue")
@click.option("--lang", type=click.Choice(list(LANGUAGES)), help="The language to print.")
@click.option("--check", is_flag=True, help="Print faults only; exit 1 if there is one.")
def command(lang: str | None, check: bool) -> None:
    """Print the texts of a language as a CSV sheet for a native reviewer.

    The reviewer marks "ok?" and writes under "remark". Segments are those of a usual text and
    of its widest. With --check and no --lang all languages are checked.
    """
    if not check and lang is None:
        raise click.UsageError("say which language, such as --lang sw")
    try:
        reviews = [review(code) for code in ([lang] if lang else catalogues())]
    except CatalogueError as error:
        raise click.ClickException(str(error)) from error
    if check:
        sys.exit(_print_faults(reviews))
    writer = csv.writer(sys.stdout, lineterminator="\n")
    writer.writerow(COLUMNS)
    writer.writerows(sheet(reviews[0]))


def _print_faults(reviews: Iterable[Review]) -> int:
    found = [(each.language.code, fault) for each in reviews for fault in each.faults]
    for code, fault in found:
        click.echo(f"{code} {fault}", err=True)
    return int(bool(found))


def sheet(found: Review) -> Iterator[tuple[str | int, ...]]:
    """A row for each text, and for each form of a text with plurals."""
    faults: dict[str, str] = {}
    for fault in found.text_faults:
        faults[fault.place] = "; ".join(filter(None, (faults.get(fault.place), fault.what)))
    for text in declared():
        for place, values in _cases(text, found.language):
            yield _row(text, place, values, found.language, faults.get(text.place, ""))


def _cases(text: Declared, language: Language) -> Iterator[tuple[str, dict[str, Slot]]]:
    """The usual slots; with plurals, a count for each form."""
    values = {slot: usual(text, slot) for slot in text.slots}
    if text.message.plural is None:
        yield text.place, values
        return
    counts = {form_for(text, language.catalogue, n): n for n in range(20, 0, -1)}
    for number, count in enumerate(sorted(counts.values())):
        yield f"{text.place}[{number}]", {**values, "n": count}


def _row(
    text: Declared, place: str, values: dict[str, Slot], language: Language, fault: str
) -> tuple[str | int, ...]:
    english = _worded(text, values, open_catalogue(SOURCE))
    arrives = _worded(text, values, language.catalogue)
    price = cost(arrives)
    size: tuple[str | int, ...] = (price.encoding, price.segments)
    if text.printed:
        size += ("", "")
    else:
        size += (widest_cost(text, language).segments, budget(text, language))
    return (place, text.message.note, english, arrives, *size, fault, "", "")


def _worded(text: Declared, values: dict[str, Slot], catalogue: Catalogue) -> str:
    count = values.get("n")
    form = form_for(text, catalogue, count if isinstance(count, int) else 1)
    return plain(form.format_map({k: slot_text(v, catalogue) for k, v in values.items()}))
