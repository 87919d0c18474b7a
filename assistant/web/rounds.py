"""My round: a page that a phone can read without a line, and whose notes come later."""

from pathlib import Path
from uuid import uuid4

from flask import Blueprint, Response, current_app, request
from flask.typing import ResponseReturnValue
from wtforms import BooleanField

from assistant.service.desk.visits import Wrong
from assistant.service.letters import Unsent
from assistant.service.waiting.deeds import Noted, Nothing, Outcome
from assistant.service.waiting.round import my_round, take_note
from assistant.web.deed_forms import LONGEST_NOTE
from assistant.web.desk import Desk
from assistant.web.fields import Day, TypedLines, TypedWords, is_id
from assistant.web.forms import OfficerForm
from assistant.wording import messages_web as web
from assistant.wording import messages_web_desk as k
from assistant.wording.message import Say

LONGEST_KEY = 40


class NoteForm(OfficerForm):
    """What was seen at one stop."""

    line = TypedWords(k.ROUND, longest=LONGEST_KEY)
    key = TypedWords(k.ROUND, longest=LONGEST_KEY)
    on = Day(web.VISITED_ON)
    note = TypedLines(k.YOUR_NOTE, longest=LONGEST_NOTE)
    done = BooleanField()

    def noted(self) -> Noted:
        """What was written down."""
        return Noted(self.on.data, self.note.data, self.done.data)


def pages(desk: Desk) -> Blueprint:
    """The page, what keeps it on the phone, and the notes."""
    found = Blueprint("rounds", __name__)

    @found.get("/round")
    def shown() -> ResponseReturnValue:
        return _shown(desk)

    @found.get("/round/worker.js")
    def worker() -> ResponseReturnValue:
        script = Path(current_app.static_folder or "") / "round.js"
        answer = Response(script.read_bytes(), mimetype="text/javascript")
        answer.headers["Service-Worker-Allowed"] = "/round"
        return answer

    @found.post("/round/notes")
    def note() -> ResponseReturnValue:
        form = NoteForm.sent()
        if form.validate():
            outcome = take_note(
                desk.house, desk.sight, form.line.data, form.noted(), form.key.data, desk.now
            )
            wrong = _wrong(outcome)
            if wrong is not None:
                form.refuse(wrong)
        why = next(iter(form.faults), None)
        if request.headers.get("Accept") == "application/json":  # the script, perhaps later
            return {"wrong": desk.say(why) if why else None}
        if why:
            desk.tell(k.NOTE_NOT_TAKEN(why=desk.say(why)), wrong=True)
            return _shown(desk, form)
        desk.tell(k.NOTE_TAKEN)
        return desk.to("rounds.shown", village=_villages())

    return found


def _shown(desk: Desk, refused: NoteForm | None = None) -> ResponseReturnValue:
    """The page; a note that was not taken stands where it was written."""
    model = my_round(desk.house, desk.sight, _villages(), desk.now)
    status = 422 if refused else 200
    return desk.page(
        "round.html", status, model=model, key=lambda: uuid4().hex, refused=refused
    )


def _villages() -> list[int]:
    return [int(each) for each in request.values.getlist("village") if is_id(each)]


def _wrong(outcome: Outcome) -> Say | None:
    if isinstance(outcome, Nothing):
        return web.NOT_HERE()
    if isinstance(outcome, Wrong):
        return web.WRONG[outcome]()
    return web.UNSENT[outcome]() if isinstance(outcome, Unsent) else None
