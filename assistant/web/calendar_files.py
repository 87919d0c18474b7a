"""Calendar files to download: of a village, or of all that an officer serves."""

from datetime import date
from io import BytesIO

from flask import Blueprint, abort, send_file, url_for
from flask.typing import ResponseReturnValue

from assistant.agronomy.tasks import TaskCode
from assistant.service.season import calendar_file as service
from assistant.service.season.calendar_file import CalendarFile
from assistant.web.desk import Desk


def pages(desk: Desk) -> Blueprint:
    """The files."""
    found = Blueprint("calendar_files", __name__)

    @found.get("/villages/<int:village>/calendar.ics")
    def village(village: int) -> ResponseReturnValue:
        return _sent(service.of_village(desk.house, desk.sight, village, desk.now, _address))

    @found.get("/calendar.ics")
    def mine() -> ResponseReturnValue:
        return _sent(service.of_mine(desk.house, desk.sight, desk.now, _address))

    return found


def _address(village: int, task: TaskCode, on: date) -> str:
    day = on.isoformat()
    return url_for("season.season", village=village, task=task.value, on=day, _external=True)


def _sent(file: CalendarFile | None) -> ResponseReturnValue:
    if file is None:
        abort(404)
    return send_file(
        BytesIO(file.content),
        mimetype="text/calendar; charset=utf-8",
        as_attachment=True,
        download_name=f"{file.name}.ics",
    )
