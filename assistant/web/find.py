"""Anybody found from every page, and what is kept of them put right."""

from flask import Blueprint, abort, request
from flask.typing import ResponseReturnValue

from assistant.service.desk.found import find
from assistant.service.mending.people import (
    mend_farmer,
    reopen_bed,
    reopen_call,
    stop_texts,
)
from assistant.web.desk import Desk
from assistant.web.nursery import farmer_shown
from assistant.web.nursery_forms import PersonForm
from assistant.wording import messages_web_desk as k

LONGEST = 60


def pages(desk: Desk) -> Blueprint:
    """The search, and the forms of a farmer's page that mend what is kept."""
    found = Blueprint("find", __name__)

    @found.get("/find")
    def anybody() -> ResponseReturnValue:
        asked = request.args.get("q", "").strip()[:LONGEST]
        model = find(desk.house, desk.sight, asked)
        return desk.page("find.html", model=model, asked=asked)

    @found.post("/farmers/<int:farmer>/mend")
    def mend(farmer: int) -> ResponseReturnValue:
        form = PersonForm.sent()
        if not form.validate():
            return farmer_shown(desk, farmer, mend=form)
        if mend_farmer(desk.house, desk.sight, farmer, form.wanted(), desk.now) is None:
            return farmer_shown(desk, farmer, mend=form.refuse(k.NOT_MENDED))
        desk.tell(k.MENDED)
        return desk.to("nursery.farmer", farmer=farmer)

    @found.post("/farmers/<int:farmer>/stop")
    def stop(farmer: int) -> ResponseReturnValue:
        if "sure" not in request.form:
            desk.tell(k.TICK_SURE, wrong=True)
        elif stop_texts(desk.house, desk.sight, farmer, desk.now):
            desk.tell(k.STOPPED)
        else:
            abort(404)
        return desk.to("nursery.farmer", farmer=farmer)

    _reopening(found, desk)
    return found


def _reopening(found: Blueprint, desk: Desk) -> None:
    @found.post("/calls/<int:call>/reopen")
    def call_again(call: int) -> ResponseReturnValue:
        farmer = reopen_call(desk.house, desk.sight, call, desk.now)
        if farmer is None:
            abort(404)
        desk.tell(k.CALL_OPEN_AGAIN)
        return desk.to("morning.morning", anchor=f"call-{call}")

    @found.post("/nurseries/<int:nursery>/reopen")
    def bed_again(nursery: int) -> ResponseReturnValue:
        if not reopen_bed(desk.house, desk.sight, nursery, desk.now):
            abort(404)
        desk.tell(k.BED_OPEN_AGAIN)
        return desk.to("nursery.nursery", nursery=nursery)
