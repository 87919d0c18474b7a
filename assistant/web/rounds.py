"""My round: a page that a phone can read without a line, and whose notes come later."""

from pathlib import Path
from uuid import uuid4

from flask import Blueprint, Response, current_app, request
from flask.typing import ResponseReturnValue

from assistant.service.desk.visits import Wrong
from assistant.service.letters import Unsent
from assistant.service.waiting.deeds import Noted, Nothing, Outcome
from assistant.service.waiting.round import my_round, take_note
from assistant.web.deeds import LONGEST_NOTE
from assistant.web.desk import Desk, typed, typed_date
from assistant.web.warnings import ticked_in
from assistant.wording import messages_web as web
from assistant.wording import messages_web_desk as k
from assistant.wording.message import Say

LONGEST_KEY = 40


def pages(desk: Desk) -> Blueprint:
    """The page, what keeps it on the phone, and the notes."""
    found = Blueprint("rounds", __name__)

    @found.get("/round")
    def shown() -> ResponseReturnValue:
        model = my_round(desk.house, desk.sight, _villages(), desk.now)
        return desk.page("round.html", model=model, key=lambda: uuid4().hex)

    @found.get("/round/worker.js")
    def worker() -> ResponseReturnValue:
        script = Path(current_app.static_folder or "") / "round.js"
        answer = Response(script.read_bytes(), mimetype="text/javascript")
        answer.headers["Service-Worker-Allowed"] = "/round"
        return answer

    @found.post("/round/notes")
    def note() -> ResponseReturnValue:
        outcome = take_note(
            desk.house,
            desk.sight,
            typed("line", LONGEST_KEY),
            Noted(typed_date("on"), typed("note", LONGEST_NOTE), "done" in request.form),
            typed("key", LONGEST_KEY),
            desk.now,
        )
        wrong = _wrong(outcome)
        if (
            request.headers.get("Accept") == "application/json"
        ):  # the script, perhaps hours later
            return {"wrong": desk.say(wrong) if wrong else None}
        told = k.NOTE_NOT_TAKEN(why=desk.say(wrong)) if wrong else k.NOTE_TAKEN()
        desk.tell(told, wrong=wrong is not None)
        return desk.to("rounds.shown", village=_villages())

    return found


def _villages() -> list[int]:
    return [int(each) for each in ticked_in(request.values)]


def _wrong(outcome: Outcome) -> Say | None:
    if isinstance(outcome, Nothing):
        return web.NOT_HERE()
    if isinstance(outcome, Wrong):
        return web.WRONG[outcome]()
    return web.UNSENT[outcome]() if isinstance(outcome, Unsent) else None
