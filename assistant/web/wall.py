"""Calendars to print: for the wall of a village, or for one nursery."""

from flask import Blueprint, abort, request
from flask.typing import ResponseReturnValue

from assistant.people import LANGUAGES
from assistant.service.season import wall_calendar as service
from assistant.service.season.wall_calendar import WallCalendar
from assistant.web.desk import Desk, PaperWords
from assistant.web.season import asked_date

MOST_NAMES = 4  # in a field of the grid; more are only counted, the list of days has all
FORMS = ("weeks", "list")


def pages(desk: Desk) -> Blueprint:
    """The sheet of a village and that of a nursery."""
    found = Blueprint("wall", __name__)

    @found.get("/villages/<int:village>/calendar")
    def village(village: int) -> ResponseReturnValue:
        begin = asked_date("from")
        return _shown(
            desk,
            service.village_calendar(desk.house, desk.sight, village, desk.now, begin),
            "list",
        )

    @found.get("/nurseries/<int:nursery>/calendar")
    def nursery(nursery: int) -> ResponseReturnValue:
        begin = asked_date("from")
        return _shown(
            desk,
            service.nursery_calendar(desk.house, desk.sight, nursery, desk.now, begin),
            "weeks",
        )

    return found


def _shown(desk: Desk, sheet: WallCalendar | None, usual: str) -> ResponseReturnValue:
    if sheet is None:
        abort(404)
    spoken = desk.house.languages
    language = request.args.get("language")
    form = request.args.get("form")
    return desk.page(
        "wall.html",
        model=sheet,
        sheet=PaperWords(
            desk.house.catalogue(language) if language in spoken else desk.catalogue
        ),
        form=form if form in FORMS else usual,
        languages={code: LANGUAGES[code] for code in spoken},
        most=MOST_NAMES,
    )
