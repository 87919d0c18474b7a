"""The lines to the phones: how each stands, and a text that tries it. For a lead."""

from decimal import Decimal

from flask import Blueprint, abort
from flask.typing import ResponseReturnValue

from assistant.service.desk.lines import lines_page, try_line
from assistant.web.desk import Desk, typed
from assistant.wording import messages_web_lines as words
from assistant.wording.render import money


def pages(desk: Desk) -> Blueprint:
    """The page and its one deed."""
    found = Blueprint("lines", __name__)

    @found.get("/lines")
    def shown() -> ResponseReturnValue:
        model = lines_page(desk.house, desk.sight, desk.terms, desk.now)
        if model is None:
            abort(404)

        def priced(amount: Decimal) -> str:
            return money(amount, model.currency, desk.catalogue.language)

        return desk.page("lines.html", model=model, money=priced)

    @found.post("/lines/try")
    def tried() -> ResponseReturnValue:
        if not try_line(desk.house, desk.sight, desk.terms, typed("line", 20), desk.now):
            abort(404)
        desk.wake()
        desk.tell(words.TRIED(phone=desk.sight.officer.phone))
        return desk.to("lines.shown")

    return found
