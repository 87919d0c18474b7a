"""This morning: who must be seen today and why, and the calls for help."""

from flask import Blueprint, abort, request
from flask.typing import ResponseReturnValue

from assistant.service import letters
from assistant.service.letters import LONGEST_WORDS, Posted, Unsent
from assistant.service.morning import morning as gathered
from assistant.web.desk import Desk, asked_number, typed
from assistant.wording import messages_web as w
from assistant.wording import messages_web_calls as c

SHOWN = 50  # lines of the list, unless all are asked for


def pages(desk: Desk) -> Blueprint:
    """The first page of the day."""
    found = Blueprint("morning", __name__)

    @found.get("/")
    def start() -> ResponseReturnValue:
        return desk.to("morning.morning")

    @found.get("/morning")
    def morning() -> ResponseReturnValue:
        village = asked_number("village")
        model = gathered(desk.house, desk.sight, desk.now, village)
        shown = len(model.to_see) if "all" in request.args else SHOWN
        return desk.page("morning.html", model=model, shown=shown, longest=LONGEST_WORDS)

    _answers(found, desk)
    _ends(found, desk)
    return found


def _answers(found: Blueprint, desk: Desk) -> None:
    """What answers a call by a text."""

    @found.post("/calls/<int:call>/answer")
    def answer(call: int) -> ResponseReturnValue:
        outcome = letters.answer_call(
            desk.house,
            desk.sight,
            call,
            typed("words"),
            desk.now,
            urgent="urgent" in request.form,
        )
        tell_posted(desk, outcome)
        return desk.to("morning.morning", village=asked_number("village"))

    @found.post("/calls/<int:call>/at-once")
    def at_once(call: int) -> ResponseReturnValue:
        hastened = letters.hasten_answer(desk.house, desk.sight, call, desk.now)
        if hastened is None:
            abort(404)
        desk.wake()
        desk.tell(w.SENT_NOW if hastened else c.HAD_LEFT, wrong=not hastened)
        return desk.to("morning.morning", village=asked_number("village"))


def _ends(found: Blueprint, desk: Desk) -> None:
    """What ends a call."""

    @found.post("/calls/<int:call>/handled")
    def handled(call: int) -> ResponseReturnValue:
        if not letters.handle_call(desk.house, desk.sight, call, desk.now):
            abort(404)
        desk.tell(w.HANDLED)
        return desk.to("morning.morning", village=asked_number("village"))

    @found.post("/calls/<int:call>/closed")
    def closed(call: int) -> ResponseReturnValue:
        done = " ".join(typed("done").split())[:LONGEST_WORDS]
        if not done:
            desk.tell(c.SAY_WHAT_DONE, wrong=True)
        elif letters.handle_call(desk.house, desk.sight, call, desk.now, done):
            desk.tell(c.ALARM_CLOSED)
        else:
            abort(404)
        return desk.to("morning.morning", village=asked_number("village"))


def tell_posted(desk: Desk, outcome: Posted | Unsent | None) -> None:
    """Says what became of an officer's words."""
    if outcome is None:
        abort(404)
    if isinstance(outcome, Unsent):
        desk.tell(w.UNSENT[outcome], wrong=True)
        return
    desk.wake()
    if outcome.waits:
        desk.tell(w.SENT_LATER(time=outcome.due_at.time()))
    else:
        desk.tell(w.SENT_NOW)
