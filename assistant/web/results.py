"""Season results: by village, by nursery, and as a file."""

from collections.abc import Callable, Sequence

from flask import Blueprint, Response, request
from flask.typing import ResponseReturnValue

from assistant.service.season.results import Results, SeasonSpan, results, results_page
from assistant.service.season.results_file import HEAD, Value, note_taken, rows
from assistant.service.season.results_lines import Ended
from assistant.web.desk import Desk, asked_number
from assistant.web.sheets import Cell, csv_file, xlsx_file
from assistant.wording import messages_web_books as words
from assistant.wording.message import Say
from assistant.wording.render import month

KINDS = {
    "csv": "text/csv; charset=utf-8",
    "xlsx": "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
}
ON_A_PAGE = 100  # nurseries of a village
Maker = Callable[[str, Sequence[str], Sequence[Sequence[Cell]]], bytes]


def pages(desk: Desk) -> Blueprint:
    """The page and its files."""
    found = Blueprint("results", __name__)

    @found.get("/results")
    def shown() -> ResponseReturnValue:
        season = request.args.get("season", "")
        village = asked_number("village")
        model = results_page(desk.house, desk.sight, desk.now, village, season)
        pages = max(1, -(-len(model.lines) // ON_A_PAGE))
        page = min(max(asked_number("page") or 1, 1), pages)

        def called(season: SeasonSpan) -> str:
            return desk.say(_season(desk, season))

        return desk.page(
            "results.html",
            model=model,
            b=words,
            ended=Ended,
            season_name=called,
            page=page,
            pages=pages,
            lines=model.lines[(page - 1) * ON_A_PAGE : page * ON_A_PAGE],
        )

    @found.get("/results.csv")
    def as_csv() -> ResponseReturnValue:
        return _file(desk, "csv", lambda title, head, lines: csv_file(head, lines))

    @found.get("/results.xlsx")
    def as_xlsx() -> ResponseReturnValue:
        return _file(desk, "xlsx", xlsx_file)

    return found


def _asked(desk: Desk) -> Results:
    return results(
        desk.house,
        desk.sight,
        desk.now,
        village_id=asked_number("village"),
        season=request.args.get("season", ""),
    )


def _season(desk: Desk, season: SeasonSpan) -> Say:
    language = desk.catalogue.language
    first, last = month(season.start, language), month(season.last, language)
    return words.SEASON_OF(month=first, until=last)


def _file(desk: Desk, kind: str, make: Maker) -> ResponseReturnValue:
    model = _asked(desk)
    head = [desk.say(each) for each in HEAD]
    lines = [
        [_worded(desk, value) for value in row] for row in rows(model, desk.catalogue.language)
    ]
    content = make(desk.say(words.RESULTS), head, lines)
    note_taken(desk.house, desk.sight, model, desk.now)
    place = f"-village-{model.chosen.id}" if model.chosen else ""
    name = f"season-{model.season.key}{place}.{kind}"
    headers = {"Content-Disposition": f'attachment; filename="{name}"'}
    return Response(content, headers=headers, content_type=KINDS[kind])


def _worded(desk: Desk, value: Value) -> Cell:
    return desk.say(value) if isinstance(value, Say) else value
