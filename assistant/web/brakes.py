"""Stopping texts: all, a kind, a village. For a lead."""

from flask import Blueprint, abort
from flask.typing import ResponseReturnValue

from assistant.service import brakes as service
from assistant.service.brakes import ALL, KIND, VILLAGE
from assistant.web.desk import Desk, lead_only
from assistant.web.fields import ChosenRow, Needed, OneOf, TypedWords
from assistant.web.forms import OfficerForm
from assistant.wording import messages_web as web
from assistant.wording import messages_web_brakes as words


class BrakeForm(OfficerForm):
    """What is to stop, and why."""

    what = OneOf(words.STOP_TEXTS, (ALL, KIND, VILLAGE), "")
    kind = TypedWords(words.STOP_KIND, longest=20)
    village = ChosenRow(web.VILLAGE)
    why = TypedWords(words.WHY, [Needed()], longest=200)


def pages(desk: Desk) -> Blueprint:
    """The page and its two deeds."""
    found = Blueprint("brakes", __name__)

    @found.get("/stop-texts")
    def brakes() -> ResponseReturnValue:
        return _shown(desk, BrakeForm())

    @found.post("/stop-texts")
    def put_on() -> ResponseReturnValue:
        lead_only(desk)
        form = BrakeForm.sent()
        if not form.validate() or not _put_on(desk, form):
            return _shown(desk, form, 422)
        desk.tell(words.IS_STOPPED)
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


def _shown(desk: Desk, form: BrakeForm, status: int = 200) -> ResponseReturnValue:
    """What stands, and the form that stops."""
    model = service.brakes_page(desk.house, desk.sight, desk.now)
    if model is None:
        abort(404)
    return desk.page(
        "brakes.html", status, model=model, bk=words, kinds=service.KINDS, form=form
    )


def _put_on(desk: Desk, form: BrakeForm) -> bool:
    """Whether it is stopped; else the form says so."""
    done = service.put_on(
        desk.house,
        desk.sight,
        form.what.data,
        form.kind.data,
        form.village.data,
        form.why.data,
        desk.now,
    )
    if not done:
        form.refuse(words.NOT_STOPPED)
    return done
