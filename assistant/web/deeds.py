"""What is done from the list: a page that shows for whom and what it takes, then the deed.

The page changes nothing, so it may be asked for by a link (one line) or by a form (those that
are ticked).
"""

from typing import Any

from flask import Blueprint, abort, request
from flask.typing import ResponseReturnValue

from assistant.service.desk.visits import Wrong
from assistant.service.letters import Unsent
from assistant.service.waiting import deeds
from assistant.service.waiting.deeds import Did, Nothing, Outcome
from assistant.web.deed_forms import FORMS, DeedForm, TextForm, offered, today
from assistant.web.desk import Desk, asked_number
from assistant.web.storms import priced
from assistant.wording import messages_web as web
from assistant.wording import messages_web_desk as web_desk
from assistant.wording import messages_web_rain


def pages(desk: Desk) -> Blueprint:
    """The page of a deed, the deed, and the way back."""
    found = Blueprint("deeds", __name__)

    @found.route("/deeds", methods=["GET", "POST"])
    def begin() -> ResponseReturnValue:
        deed = _deed()
        begun = {"on": today(desk), "phrase": request.values.get("phrase", "")}
        return _shown(desk, deed, _lines(), FORMS[deed](data=begun))

    @found.post("/deeds/cost")
    def cost() -> ResponseReturnValue:
        words = TextForm.sent().words.data
        shown = offered(desk, _lines(), {"own": words}) if words else ()
        return desk.page("_cost.html", offers=shown, money=priced(desk), r=messages_web_rain)

    @found.post("/deeds/do")
    def do() -> ResponseReturnValue:
        deed, lines = _deed(), _lines()
        form = FORMS[deed].sent()
        if not form.validate():
            return _shown(desk, deed, lines, form, 422)
        if "look" in request.form or not lines:
            return _shown(desk, deed, lines, form)
        return _after(desk, deed, lines, form, form.do(desk, lines))

    @found.post("/deeds/<int:deed>/undo")
    def undo(deed: int) -> ResponseReturnValue:
        left = deeds.undo(desk.house, desk.sight, deed, desk.now)
        if left is None:
            desk.tell(web_desk.TOO_LATE, wrong=True)
        else:
            desk.tell(web_desk.UNDONE_BUT(n=left) if left else web_desk.UNDONE())
        return to_list(desk)

    return found


def to_list(desk: Desk) -> ResponseReturnValue:
    """Back to what waits, as it was chosen."""
    by = request.values.get("by") or None
    return desk.to("morning.morning", village=asked_number("village"), by=by)


def _deed() -> str:
    deed = request.values.get("deed", "")
    if deed not in deeds.DEEDS:
        abort(404)
    return deed


def _lines() -> list[str]:
    """The lines that were ticked, or the one whose own button was pressed."""
    only = request.args.get("only")
    return [only] if only else request.values.getlist("line")


def _shown(
    desk: Desk, deed: str, lines: list[str], form: DeedForm, status: int = 200
) -> ResponseReturnValue:
    """The page of a deed, with what was filled in."""
    found = deeds.look_at(desk.house, desk.sight, lines, deed, desk.now)
    if lines and not (found.picks or found.refused):
        abort(404)
    if not found.picks and not found.refused:
        desk.tell(web_desk.NONE_TICKED, wrong=True)
        return to_list(desk)
    values: dict[str, Any] = {"deed": deed, "found": found, "r": messages_web_rain}
    values |= {"today": today(desk), "money": priced(desk), "form": form}
    return desk.page("deed.html", status, **values, **form.shows(desk, found))


def _after(
    desk: Desk, deed: str, lines: list[str], form: DeedForm, outcome: Outcome
) -> ResponseReturnValue:
    if isinstance(outcome, (Wrong, Unsent)):
        words = web.WRONG if isinstance(outcome, Wrong) else web.UNSENT
        return _shown(desk, deed, lines, form.refuse(words[outcome]), 422)
    if isinstance(outcome, Nothing):
        return _shown(desk, deed, lines, form)
    return after(desk, outcome)


def after(desk: Desk, outcome: Did | Nothing) -> ResponseReturnValue:
    """Back to the list, which says what was done and offers to undo it."""
    if isinstance(outcome, Nothing):
        abort(404)
    desk.wake()
    return to_list(desk)
