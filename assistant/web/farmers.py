"""The list of farmers, by village, with a search."""

from flask import Blueprint, request
from flask.typing import ResponseReturnValue

from assistant.service.farmers import LONGEST_SEARCH, list_farmers
from assistant.web.desk import Desk, asked_number


def pages(desk: Desk) -> Blueprint:
    """The list."""
    found = Blueprint("farmers", __name__)

    @found.get("/farmers")
    def farmers() -> ResponseReturnValue:
        model = list_farmers(
            desk.house,
            desk.sight,
            desk.now,
            village_id=asked_number("village"),
            search=request.args.get("search", ""),
            page=asked_number("page") or 1,
        )
        return desk.page("farmers.html", model=model, longest=LONGEST_SEARCH)

    return found
