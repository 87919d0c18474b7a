"""Taking in an office's list: send it in, approve its columns, see what it would do, do it."""

from dataclasses import replace

from babel import Locale
from flask import Blueprint, Response, abort, make_response, request
from flask.typing import ResponseReturnValue

from assistant.people import LANGUAGES
from assistant.service.lists import keeping
from assistant.service.lists.asking import asking
from assistant.service.lists.keeping import OpenedList
from assistant.service.lists.listing import approval, fingerprint, guessed, read_paper
from assistant.service.lists.rejects import written
from assistant.service.lists.sheets import ENCODINGS, MOST_BYTES, SheetError
from assistant.service.office.choices import OWNERS, SHARED, Choices
from assistant.service.office.columns import Field
from assistant.service.office.judging import Outlook, Verdict
from assistant.service.office.taking import counts_of
from assistant.web.broadcasts import why_not
from assistant.web.desk import Desk, may_reach, typed
from assistant.web.jobs import Job, Jobs
from assistant.web.storms import priced
from assistant.wording import messages_web_people as web_people
from assistant.wording import messages_web_rain

SHOWN = 50  # rows of each table
_ROOM = 100_000  # octets of a form around the file
_CSV = "text/csv; charset=utf-8"


def pages(desk: Desk) -> Blueprint:
    """The pages of lists."""
    found = Blueprint("lists", __name__)
    jobs = Jobs()
    _sending(found, desk)
    _reading(found, desk)
    _looking(found, desk, jobs)
    _taking(found, desk, jobs)
    return found


# --- sending it in ---------------------------------------------------------------------------


def _sending(found: Blueprint, desk: Desk) -> None:
    @found.url_value_preprocessor
    def room(endpoint: str | None, values: object) -> None:
        """A list may be longer than other forms. Set before anything reads the form, as the
        look for its token does."""
        if endpoint == "lists.send":
            request.max_content_length = MOST_BYTES + _ROOM

    @found.get("/lists")
    def lists() -> ResponseReturnValue:
        earlier = keeping.latest(desk.house, desk.sight)
        return desk.page("lists.html", earlier=earlier)

    @found.post("/lists")
    def send() -> ResponseReturnValue:
        sent = request.files.get("file")
        if sent is None or not sent.filename:
            desk.tell(web_people.NO_FILE, wrong=True)
            return desk.to("lists.lists")
        try:
            content = sent.read()
            made = keeping.send_in(desk.house, desk.sight, sent.filename, content, desk.now)
        except SheetError as fault:
            desk.tell(web_people.CANNOT[fault.why], wrong=True)
            return desk.to("lists.lists")
        return desk.to("lists.columns", number=made)

    @found.get("/lists/example.csv")
    def example() -> ResponseReturnValue:
        heads = [desk.say(web_people.FIELDS[field]) for field in Field]
        return _file(written([heads]), "farmers.csv")


def _file(content: bytes, name: str) -> Response:
    response = make_response(content)
    response.headers["Content-Type"] = _CSV
    response.headers["Content-Disposition"] = f'attachment; filename="{name}"'
    return response


def _opened(desk: Desk, number: int) -> OpenedList:
    paper = keeping.opened(desk.house, desk.sight, number)
    if paper is None:
        abort(404)
    return paper


# --- how it is read --------------------------------------------------------------------------


def _reading(found: Blueprint, desk: Desk) -> None:
    @found.get("/lists/<int:number>")
    def columns(number: int) -> ResponseReturnValue:
        kept = keeping.find(desk.house, desk.sight, number)
        if kept is not None and kept.content is None:
            return desk.to("lists.outcome", number=number)
        it = _opened(desk, number)
        return desk.page(
            "list_columns.html",
            it=it,
            model=approval(desk.house, desk.sight, it.paper, it.choices),
            villages=desk.sight.villages,
            encodings=ENCODINGS,
            languages=desk.house.languages,
            fields=tuple(Field),
            region=_region(desk),
        )

    @found.post("/lists/<int:number>")
    def approve(number: int) -> ResponseReturnValue:
        it = _opened(desk, number)
        sheet, encoding = typed("sheet"), typed("encoding")
        sheet = sheet if sheet in it.paper.sheet.sheets else ""
        encoding = encoding if encoding in ENCODINGS else ""
        if (sheet or it.choices.sheet) != it.choices.sheet or encoding != it.choices.encoding:
            return _read_anew(desk, it, sheet, encoding)
        choices = _approved(desk, it)
        keeping.choose(desk.house, number, choices, desk.now)
        if Field.PHONE not in choices.columns.values():
            desk.tell(web_people.NEEDS_PHONE, wrong=True)
            return desk.to("lists.columns", number=number)
        return desk.to("lists.outlook", number=number)


def _region(desk: Desk) -> str:
    """The name of the programme's country, in the language of the page."""
    code = (desk.house.region or "")[:2]
    return str(Locale.parse(desk.catalogue.language).territories.get(code, code))


def _read_anew(desk: Desk, it: OpenedList, sheet: str, encoding: str) -> ResponseReturnValue:
    """Another sheet or other letters: all of it is guessed anew, and shown."""
    try:
        paper = read_paper(it.kept.content or b"", sheet, encoding)
        choices = replace(guessed(desk.house, desk.sight, paper), encoding=encoding)
        keeping.choose(desk.house, it.kept.id, choices, desk.now)
    except SheetError as fault:
        desk.tell(web_people.CANNOT[fault.why], wrong=True)
    return desk.to("lists.columns", number=it.kept.id)


def _approved(desk: Desk, it: OpenedList) -> Choices:
    """What the form of columns says; what it does not know of stays."""
    columns: dict[int, Field] = {}
    for at in range(len(it.paper.heads)):
        what = request.form.get(f"column-{at}", "")
        if what in set(Field) and Field(what) not in columns.values():
            columns[at] = Field(what)
    mine = {str(village.id): village.id for village in desk.sight.villages}
    named: dict[str, int] = {}
    for place in range(len(request.form)):
        folded = request.form.get(f"named-{place}")
        chosen = request.form.get(f"village-{place}", "")
        if folded and chosen in mine:
            named[folded] = mine[chosen]
    language = typed("language")
    return replace(
        it.choices,
        columns=columns,
        day_first=typed("order") != "month",
        unit=typed("unit", 30),
        village=mine.get(typed("village")),
        language=language if language in LANGUAGES else it.choices.language,
        villages=named,
        approved=True,
    )


# --- what it would do ------------------------------------------------------------------------


def _looking(found: Blueprint, desk: Desk, jobs: Jobs) -> None:
    @found.get("/lists/<int:number>/outlook")
    def outlook(number: int) -> ResponseReturnValue:
        it = _opened(desk, number)
        if not it.choices.approved:
            return desk.to("lists.columns", number=number)
        job = _dry(desk, jobs, it)
        if job.failed:
            abort(500)
        if job.running:
            return _wait(desk, job)
        seen: Outlook = job.result
        by = {
            verdict: [each for each in seen.judged if each.verdict is verdict]
            for verdict in Verdict
        }
        return desk.page(
            "list_outlook.html",
            it=it,
            seen=seen,
            by=by,
            counts=counts_of(seen),
            asking=asking(desk.house, desk.sight, seen),
            money=priced(desk),
            r=messages_web_rain,
            shown=SHOWN,
            mark=fingerprint(seen),
            questions=seen.shared or seen.owners,
            open_rows=seen.open_rows,
        )

    @found.post("/lists/<int:number>/answers")
    def answer(number: int) -> ResponseReturnValue:
        it = _opened(desk, number)
        keeping.choose(desk.house, number, _decided(it), desk.now)
        return desk.to("lists.outlook", number=number)

    @found.get("/lists/<int:number>/rejects.csv")
    def rejects(number: int) -> ResponseReturnValue:
        kept = keeping.find(desk.house, desk.sight, number)
        if kept is not None and kept.rejects is not None:
            return _file(kept.rejects, "to-mend.csv")
        it = _opened(desk, number)
        seen = keeping.dry_run(desk.house, desk.sight, it, desk.now)
        content = keeping.rejects_of(it.paper, seen, desk.house, desk.sight)
        return _file(content, "to-mend.csv")


def _decided(it: OpenedList) -> Choices:
    """The choices of a list with what was answered on the page."""
    return replace(
        it.choices,
        shared={**it.choices.shared, **_answers("shared-", SHARED)},
        owners={**it.choices.owners, **_answers("owner-", OWNERS)},
        moves=_YES_NO.get(typed("moves"), it.choices.moves),
        leave_cells=_YES_NO.get(typed("leave_cells"), it.choices.leave_cells),
        mended=_mended(it),
    )


_YES_NO = {"yes": True, "no": False}
LONGEST_CELL = 100


def _mended(it: OpenedList) -> dict[str, dict[str, str]]:
    """The cells of rows left out as they were typed on the page, with those typed before; what
    is as the file has it is none."""
    mended = {line: dict(cells) for line, cells in it.choices.mended.items()}
    rows = {str(row.line): row for row in it.paper.rows}
    for name in request.form:
        line, _, at = name.removeprefix("cell-").partition("-")
        if not name.startswith("cell-") or line not in rows or not at.isdecimal():
            continue
        if int(at) not in it.choices.columns:
            continue
        words, cells = typed(name, LONGEST_CELL), rows[line].cells
        mended.setdefault(line, {})[at] = words
        if words == (cells[int(at)] if int(at) < len(cells) else ""):
            del mended[line][at]
    return {line: cells for line, cells in mended.items() if cells}


def _answers(start: str, known: tuple[str, ...]) -> dict[str, str]:
    """What was answered to the questions of the page, by number."""
    return {
        name.removeprefix(start): said
        for name, said in request.form.items()
        if name.startswith(start) and said in known
    }


def _dry(desk: Desk, jobs: Jobs, it: OpenedList) -> Job:
    house, sight, now = desk.house, desk.sight, desk.now
    return jobs.job(_key(it), lambda job: keeping.dry_run(house, sight, it, now))


def _key(it: OpenedList) -> tuple[object, ...]:
    """One dry run for each way in which a list is read and each time it was decided."""
    return "dry", it.kept.id, it.kept.changed_at, repr(it.choices)


def _wait(desk: Desk, job: Job | None) -> ResponseReturnValue:
    """A page that looks again by itself, without a script too."""
    response = make_response(desk.page("list_working.html", job=job))
    response.headers["Refresh"] = "2"
    return response


# --- taking it in ----------------------------------------------------------------------------


def _taking(found: Blueprint, desk: Desk, jobs: Jobs) -> None:
    @found.post("/lists/<int:number>/take")
    def take(number: int) -> ResponseReturnValue:
        it = _opened(desk, number)
        held_up = _held_up(desk, it, _dry(desk, jobs, it))
        if held_up is not None:
            return held_up
        if keeping.begin(desk.house, number, desk.now):
            _take(desk, jobs, it, typed("mark"))
        return desk.to("lists.outcome", number=number)

    @found.get("/lists/<int:number>/outcome")
    def outcome(number: int) -> ResponseReturnValue:
        kept = keeping.find(desk.house, desk.sight, number)
        if kept is None:
            abort(404)
        job = jobs.known(("take", number))
        if kept.state == "working" and not (job and job.failed):
            return _wait(desk, job)
        if kept.state == "done":
            return desk.page("list_done.html", kept=kept)
        desk.tell(
            web_people.NOT_TAKEN if job is None or job.failed else web_people.MOVED_ON,
            wrong=True,
        )
        return desk.to("lists.outlook", number=number)


def _may_ask(desk: Desk, dry: Job) -> bool:
    """Whether all who would be asked by text may be; not before it was seen who they are."""
    if dry.running or dry.failed:
        return False
    asked = counts_of(dry.result).asked
    refused = keeping.refused(desk.house, desk.sight, asked, desk.now)
    if refused is not None:
        desk.tell(why_not(refused), wrong=True)
    return refused is None and may_reach(desk, asked)


def _held_up(desk: Desk, it: OpenedList, dry: Job) -> ResponseReturnValue | None:
    """Where the button sends back to the page. The questions stand in the same form: what was
    answered since the look is not lost, and what is open is left out only where that was
    ticked."""
    decided = _decided(it)
    if decided != it.choices:
        keeping.choose(desk.house, it.kept.id, decided, desk.now)
        desk.tell(web_people.ANSWERS_COUNTED)
        return desk.to("lists.outlook", number=it.kept.id)
    if typed("asks") and not typed("without"):
        desk.tell(web_people.ANSWER_FIRST, wrong=True)
        return desk.to("lists.outlook", number=it.kept.id, anchor="questions")
    return None if _may_ask(desk, dry) else desk.to("lists.outlook", number=it.kept.id)


def _take(desk: Desk, jobs: Jobs, it: OpenedList, mark: str) -> None:
    house, sight, now, wake = desk.house, desk.sight, desk.now, desk.wake

    def work(job: Job) -> bool:
        taken = keeping.take_in(house, sight, it, mark, now, job.told)
        jobs.forget(_key(it))
        wake()
        return taken

    jobs.forget(("take", it.kept.id))
    jobs.job(("take", it.kept.id), work)
