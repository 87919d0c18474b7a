"""Stopping texts: all, a kind, a village. For a lead."""

from flask import Blueprint, abort, request
from flask.typing import ResponseReturnValue

from assistant.service import brakes as service
from assistant.web.desk import Desk, lead_only, typed
from assistant.wording import messages_web_brakes as words


def pages(desk: Desk) -> Blueprint:
    """The page and its two deeds."""
    found = Blueprint("brakes", __name__)

    @found.get("/stop-texts")
    def brakes() -> ResponseReturnValue:
        model = service.brakes_page(desk.house, desk.sight, desk.now)
        if model is None:
            abort(404)
        return desk.page("brakes.html", model=model, bk=words, kinds=service.KINDS)

    @found.post("/stop-texts")
    def put_on() -> ResponseReturnValue:
        lead_only(desk)
        village = typed("village", 10)
        done = service.put_on(
            desk.house,
            desk.sight,
            request.form.get("what", ""),
            typed("kind", 20),
            int(village) if village.isdecimal() else None,
            typed("why", 200),
            desk.now,
        )
        desk.tell(words.IS_STOPPED if done else words.NOT_STOPPED, wrong=not done)
        return desk.to("brakes.brakes")

    @found.post("/stop-texts/<int:brake>/let-go")
    def let_go(brake: int) -> ResponseReturnValue:
        lead_only(desk)
        if not service.let_go(desk.house, desk.sight, brake, desk.now):
            abort(404)
        desk.wake()
        desk.tell(words.IS_LET_GO)
        return desk.to("brakes.brakes")

    return found
