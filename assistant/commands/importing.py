"""`nursery import`: a list of farmers from CSV or XLSX. Without --apply nothing is kept."""

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import click
from rapidfuzz import process

from assistant.commands.deployment import opened, settings_now
from assistant.commands.one_line import OneLineCommand, one_line, shown
from assistant.people import Officer, read_phone
from assistant.service.consent import Enroller
from assistant.service.house import House
from assistant.service.lists.listing import Paper, guessed, outlook, read_paper, take_list
from assistant.service.lists.rejects import rejects_file
from assistant.service.lists.sheets import SheetError
from assistant.service.office.choices import Choices
from assistant.service.office.columns import Field, bare
from assistant.service.office.judging import Outlook, Verdict, WhoQuestion
from assistant.service.office.taking import counts_of
from assistant.service.sight import Sight, sight_of
from assistant.settings import Settings
from assistant.wording import messages_web_people as web_people
from assistant.wording.render import Catalogue, render
from assistant.worker import wall_clock

SHOWN = 20
_CANNOT = {code: message.text for code, message in web_people.CANNOT.items()}
_SHARED = click.Choice(["family", "leave"])
_OWNERS = click.Choice(["rename", "heir", "new", "leave"])


@click.command(cls=OneLineCommand)
@click.argument("file", type=click.Path(path_type=Path))
@click.option("--apply", is_flag=True, help="Take the list in; else it is only shown.")
@click.option(
    "--rejects", type=click.Path(path_type=Path), help="Write the rows left out here."
)
@click.option("--officer", help="Phone of the officer who enrols, and whose villages count.")
@click.option("--column", "columns", multiple=True, help='As "Head=phone"; may be repeated.')
@click.option("--village", help="Village of rows without one.")
@click.option("--lang", help="Language of rows without one.")
@click.option("--unit", default="", help="Unit of field sizes without one, such as ha.")
@click.option("--month-first", is_flag=True, help="3/6 is 6 March.")
@click.option("--sheet", default="", help="Which sheet of a workbook.")
@click.option("--encoding", default="", help="Code of the letters, where they look wrong.")
@click.option("--shared", type=_SHARED, default="leave", help="Several names on one number.")
@click.option("--owner", type=_OWNERS, default="leave", help="A known number, another name.")
@click.option("--move", is_flag=True, help="Known farmers go to the village of the list.")
def command(file: Path, apply: bool, rejects: Path | None, **given: object) -> None:
    """Take in a list of farmers (CSV or XLSX). Shows what would happen; --apply does it."""
    settings = settings_now()
    paper = _paper(file, str(given["sheet"]), str(given["encoding"]))
    with opened(settings) as house:
        sight, who = _officer(house, settings, given["officer"])
        choices = _choices(house, sight, paper, given)
        _show_columns(paper, choices)
        found = _run(house, sight, who, paper, choices, file.name, apply)
        catalogue = house.catalogue(sight.officer.language)
        for line in _lines(found, catalogue, apply):
            click.echo(line)
        if rejects is not None:
            _write(rejects, paper, found, catalogue)


def _paper(file: Path, sheet: str, encoding: str) -> Paper:
    try:
        paper = read_paper(file.read_bytes(), sheet, encoding)
    except OSError as fault:
        raise one_line(f"{shown(str(file))} cannot be read: {fault.strerror}") from fault
    except SheetError as fault:
        raise one_line(f"{shown(str(file))}: {_CANNOT[fault.why]}") from fault
    if sheet and paper.sheet.sheet != sheet:
        names = ", ".join(paper.sheet.sheets) or "none: it is no workbook"
        raise one_line(f"no sheet {shown(sheet)} with rows; there are: {names}")
    return paper


def _officer(house: House, settings: Settings, given: object) -> tuple[Sight, Enroller]:
    """Who enrols: an officer with their villages, or the office with all of them."""
    with house.store.look() as work:
        if given is None:
            desk = Officer(0, "", house.programme, "", house.languages[0], (), is_lead=True)
            return sight_of(work, desk), Enroller(None, house.programme)
        phone = read_phone(str(given), settings.region[:2] or None)
        officer = work.people.officer(phone) if phone else None
        if officer is None:
            raise one_line(f"--officer {shown(str(given))}: no officer has that number")
        return sight_of(work, officer), Enroller(officer.id, officer.name)


def _choices(house: House, sight: Sight, paper: Paper, given: dict[str, object]) -> Choices:
    choices = guessed(house, sight, paper)
    columns = dict(choices.columns)
    for pair in given["columns"] if isinstance(given["columns"], tuple) else ():
        at, what = _column(str(pair), paper)
        columns = {place: field for place, field in columns.items() if field is not what}
        columns[at] = what
    if Field.PHONE not in columns.values():
        heads = ", ".join(paper.heads)
        raise one_line(f'no column of phone numbers; say --column "HEAD=phone", of: {heads}')
    language = str(given["lang"] or choices.language)
    if language not in house.languages:
        raise one_line(f"--lang is one of {', '.join(house.languages)}")
    return replace(
        choices,
        columns=columns,
        village=_village(sight, given["village"]) or choices.village,
        language=language,
        unit=str(given["unit"]),
        day_first=False if given["month_first"] else choices.day_first,
        moves=bool(given["move"]),
    )


def _column(pair: str, paper: Paper) -> tuple[int, Field]:
    head, mark, what = pair.rpartition("=")
    fields = [field.value for field in Field]
    heads = [bare(each) or each.casefold() for each in paper.heads]
    said = bare(head) or head.casefold()
    if not mark or what not in fields or said not in heads:
        raise one_line(
            f"--column {shown(pair)}: write HEAD=WHAT, with a head of {', '.join(paper.heads)} "
            f"and what of {', '.join(fields)}"
        )
    return heads.index(said), Field(what)


def _village(sight: Sight, given: object) -> int | None:
    if given is None:
        return None
    names = {village.name.casefold(): village.id for village in sight.villages}
    found = names.get(str(given).casefold())
    if found is None:
        near = process.extractOne(str(given).casefold(), list(names), score_cutoff=75)
        hint = f"; is it {near[0]}?" if near else ""
        raise one_line(f"no village {shown(str(given))}{hint}")
    return found


def _run(
    house: House,
    sight: Sight,
    who: Enroller,
    paper: Paper,
    choices: Choices,
    name: str,
    apply: bool,
) -> Outlook:
    """The dry run, or the list taken in. Answers to questions hold for all such numbers."""
    now = wall_clock()
    with house.store.look() as work:
        found = outlook(work, house, sight, paper, choices, now)
        if found.shared or found.owners:
            choices = _answered(choices, found)
            found = outlook(work, house, sight, paper, choices, now)
    if not apply:
        return found
    done = take_list(house, sight, who, paper, choices, name, now)
    if done is None:
        raise one_line("the roll has changed meanwhile; try again")
    return done


def _answered(choices: Choices, found: Outlook) -> Choices:
    context = click.get_current_context().params
    shared = {each.phone: str(context["shared"]) for each in found.shared}
    owners = {each.phone: str(context["owner"]) for each in found.owners}
    return replace(choices, shared=shared, owners=owners)


# --- what is printed -------------------------------------------------------------------------


def _show_columns(paper: Paper, choices: Choices) -> None:
    sheet = paper.sheet
    how = f"sheet {sheet.sheet}" if sheet.sheet else f"{sheet.encoding}, {sheet.delimiter!r}"
    click.echo(f"{len(paper.rows)} rows ({how}). Columns:")
    for at, head in enumerate(paper.heads):
        what = choices.columns.get(at)
        click.echo(f"  {head} = {what.value if what else '(not used)'}")


def _lines(found: Outlook, catalogue: Catalogue, applied: bool) -> Iterator[str]:
    counts = counts_of(found)
    done = "Taken in" if applied else "Would take in"
    yield (
        f"{done}: {counts.new} new, {counts.changed} changed, {counts.same} rows as they are, "
        f"{counts.rejected} rows left out; {counts.beds} nurseries, "
        f"{counts.asked} texts that ask for agreement."
    )
    for question in (*found.shared, *found.owners):
        yield _asked(question)
    for verdict in (Verdict.REJECTED, Verdict.CHANGED, Verdict.NEW):
        some = [each for each in found.judged if each.verdict is verdict and each.says]
        for each in some[:SHOWN]:
            says = "; ".join(render(say, catalogue) for say in each.says)
            yield f"  row {each.row.line} {verdict.value}: {says}"
        if len(some) > SHOWN:
            yield f"  ... and {len(some) - SHOWN} more {verdict.value}"
    if not applied:
        yield "Nothing is kept yet. Run it again with --apply to take it in."


def _asked(question: WhoQuestion) -> str:
    rows = ", ".join(map(str, question.lines))
    names = " / ".join(question.names)
    return f"  {question.phone} is of {names} (rows {rows}): {question.answer or 'leave'}"


def _write(path: Path, paper: Paper, found: Outlook, catalogue: Catalogue) -> None:
    content = rejects_file(paper.heads, found.judged, catalogue, paper.sheet.delimiter)
    try:
        path.write_bytes(content)
    except OSError as fault:
        raise one_line(f"--rejects {shown(str(path))}: {fault.strerror}") from fault
    click.echo(f"Rows left out, to mend and send in again: {path}")
