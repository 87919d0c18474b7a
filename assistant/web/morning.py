"""This morning: who must be seen today and why, and the calls for help."""

from flask import Blueprint
from flask.typing import ResponseReturnValue

from assistant.web.desk import Desk


def pages(desk: Desk) -> Blueprint:
    """The first page of the day."""
    found = Blueprint("morning", __name__)

    @found.get("/")
    def start() -> ResponseReturnValue:
        return desk.to("morning.morning")

    @found.get("/morning")
    def morning() -> ResponseReturnValue:
        return desk.page("morning.html")

    return found
