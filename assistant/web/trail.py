"""What was done, by whom: for the lead."""

from flask import Blueprint, abort, request
from flask.typing import ResponseReturnValue

from assistant.service import audit
from assistant.web.desk import Desk, asked_number


def pages(desk: Desk) -> Blueprint:
    """The trail."""
    found = Blueprint("trail", __name__)

    @found.get("/trail")
    def trail() -> ResponseReturnValue:
        model = audit.trail(
            desk.house,
            desk.sight,
            officer_id=asked_number("officer"),
            before=asked_number("before"),
            looks="looks" in request.args,
        )
        if model is None:
            abort(404)
        return desk.page("trail.html", model=model)

    return found
