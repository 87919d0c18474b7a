"""Waiting for me: the first page of the day, and what ends a call there."""

from flask import Blueprint, abort, request
from flask.typing import ResponseReturnValue

from assistant.service import letters
from assistant.service.letters import LONGEST_WORDS, Posted
from assistant.service.waiting import deeds
from assistant.service.waiting.deeds import Did, Nothing
from assistant.service.waiting.page import counts, waiting_for
from assistant.web.deeds import after, to_list
from assistant.web.desk import Desk, asked_number, typed
from assistant.wording import messages_web as web
from assistant.wording import messages_web_calls as web_calls
from assistant.wording import messages_web_rain as web_rain

OPENABLE = 150  # nurseries; with more a village opens as a page of its own
IN_GROUP = 60  # lines of one group
FEW = 20  # lines of one group, where there are many in all


def pages(desk: Desk) -> Blueprint:
    """The first page of the day."""
    found = Blueprint("morning", __name__)

    @found.get("/")
    def start() -> ResponseReturnValue:
        return desk.to("morning.morning")

    @found.get("/morning")
    def morning() -> ResponseReturnValue:
        village, by_reason = asked_number("village"), request.args.get("by") == "reason"
        model = waiting_for(desk.house, desk.sight, desk.now, village, by_reason=by_reason)
        # The script asks for the part that changes only.
        template = "_waiting.html" if "part" in request.args else "morning.html"
        by = "reason" if by_reason else None
        return desk.page(
            template,
            model=model,
            by=by,
            openable=OPENABLE,
            in_group=IN_GROUP,
            few=FEW,
            r=web_rain,
        )

    @found.get("/morning/counts")
    def counted() -> ResponseReturnValue:
        now = counts(desk.house, desk.sight, desk.now)
        return {"morning": now.all, "warnings": now.warnings}

    _ends(found, desk)
    return found


def _ends(found: Blueprint, desk: Desk) -> None:
    """What ends a call, or lets an answer go."""

    @found.post("/calls/<int:call>/at-once")
    def at_once(call: int) -> ResponseReturnValue:
        hastened = letters.hasten_answer(desk.house, desk.sight, call, desk.now)
        if hastened is None:
            abort(404)
        desk.wake()
        desk.tell(web.SENT_NOW if hastened else web_calls.HAD_LEFT, wrong=not hastened)
        return to_list(desk)

    @found.post("/calls/<int:call>/closed")
    def closed(call: int) -> ResponseReturnValue:
        done = " ".join((typed(f"done-{call}") or typed("done")).split())[:LONGEST_WORDS]
        if not done:
            desk.tell(web_calls.SAY_WHAT_DONE, wrong=True)
            return to_list(desk)
        outcome = deeds.close(desk.house, desk.sight, f"call-{call}", done, desk.now)
        if not isinstance(outcome, (Did, Nothing)):
            abort(404)
        return after(desk, outcome)


def tell_posted(desk: Desk, outcome: Posted | None) -> None:
    """Says when an officer's words go out."""
    if outcome is None:
        abort(404)
    desk.wake()
    if outcome.waits:
        desk.tell(web.SENT_LATER(time=outcome.due_at.time()))
    else:
        desk.tell(web.SENT_NOW)
