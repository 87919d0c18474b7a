"""A nursery and its farmer: to look at, to visit, to write to, to move."""

from datetime import datetime

from flask import Blueprint, abort, request
from flask.typing import ResponseReturnValue

from assistant.agronomy.calendar import TaskCode
from assistant.agronomy.life.rows import asked_tasks
from assistant.service import letters, looked
from assistant.service.desk import visits
from assistant.service.desk.nursery_page import farmer_page, nursery_page
from assistant.service.desk.visits import Dates, Kept, Visit, Wrong
from assistant.service.letters import LONGEST_WORDS
from assistant.service.mending.beds import kinds
from assistant.service.privacy import erased_on
from assistant.service.waiting import deeds
from assistant.service.waiting.deeds import Did
from assistant.web.desk import Desk, typed, typed_date
from assistant.web.morning import tell_posted
from assistant.web.season import NUMBERS
from assistant.wording import messages_web as web
from assistant.wording import messages_web_rain
from assistant.wording.day import TASK_TEXTS

LONGEST_NOTE = 2000
LONGEST_WHY = 200


def pages(desk: Desk) -> Blueprint:
    """The pages of a nursery and of a farmer."""
    found = Blueprint("nursery", __name__)
    _look(found, desk)
    _visit(found, desk)
    _dates(found, desk)
    _write(found, desk)
    return found


def _look(found: Blueprint, desk: Desk) -> None:
    @found.get("/nurseries/<int:nursery>")
    def nursery(nursery: int) -> ResponseReturnValue:
        whole = "whole" in request.args
        page = nursery_page(desk.house, desk.sight, nursery, desk.now, whole=whole)
        if page is None:
            abort(404)
        desk.looks_at(page.person.farmer.id)
        return desk.page(
            "nursery.html",
            page=page,
            person=page.person,
            tasks=TASK_TEXTS,
            kinds=kinds(desk.house, page.person.village, desk.sight.officer.language),
            asked=asked_tasks(),
            numbers=NUMBERS,
            longest=LONGEST_WORDS,
        )

    @found.get("/farmers/<int:farmer>")
    def farmer(farmer: int) -> ResponseReturnValue:
        return _farmer(desk, farmer)

    @found.post("/farmers/<int:farmer>/shown-number")
    def show_number(farmer: int) -> ResponseReturnValue:
        if not looked.show_number(desk.house, desk.sight, farmer, desk.now):
            abort(404)
        return _farmer(desk, farmer, shown_number=True)


def _farmer(desk: Desk, farmer: int, *, shown_number: bool = False) -> ResponseReturnValue:
    whole = "whole" in request.args
    person = farmer_page(desk.house, desk.sight, farmer, desk.now, whole=whole)
    if person is None:
        abort(404)
    desk.looks_at(person.farmer.id)
    return desk.page(
        "farmer.html",
        person=person,
        shown_number=shown_number,
        erased_on=erased_on(desk.house, person.farmer.phone),
        longest=LONGEST_WORDS,
        villages=desk.sight.villages,
        languages=desk.house.languages,
    )


def _visit(found: Blueprint, desk: Desk) -> None:
    @found.post("/nurseries/<int:nursery>/visit")
    def visit(nursery: int) -> ResponseReturnValue:
        done = [code for code in TaskCode if code.value in request.form.getlist("done")]
        noted = Visit(typed_date("on"), typed("words", LONGEST_NOTE), done)
        outcome = visits.note_visit(desk.house, desk.sight, nursery, noted, desk.now)
        if _kept(desk, outcome):
            desk.tell(web.VISIT_NOTED)
        return desk.to("nursery.nursery", nursery=nursery)


def _dates(found: Blueprint, desk: Desk) -> None:
    @found.post("/nurseries/<int:nursery>/dates")
    def dates(nursery: int) -> ResponseReturnValue:
        wanted = Dates(
            sow=typed_date("sow"),
            sown="sown" in request.form,
            uncovered_on=typed_date("uncovered_on"),
            transplant=typed_date("transplant"),
            transplanted_on=typed_date("transplanted_on"),
        )
        if "look" in request.form:
            return _foreseen(desk, nursery, wanted)
        tell = "tell" in request.form
        outcome = deeds.set_dates(desk.house, desk.sight, nursery, wanted, desk.now, tell=tell)
        if isinstance(outcome, Wrong):
            desk.tell(web.WRONG[outcome], wrong=True)
        elif not isinstance(outcome, Did):
            abort(404)
        desk.wake()
        return desk.to("nursery.nursery", nursery=nursery)

    @found.post("/nurseries/<int:nursery>/close")
    def close(nursery: int) -> ResponseReturnValue:
        why = typed("why", LONGEST_WHY)
        outcome = visits.close_nursery(desk.house, desk.sight, nursery, why, desk.now)
        if _kept(desk, outcome):
            desk.tell(web.NURSERY_CLOSED)
        return desk.to("nursery.nursery", nursery=nursery)


def _foreseen(desk: Desk, nursery: int, wanted: Dates) -> ResponseReturnValue:
    """What the new days would change, and the text that would go, before anything is done."""
    seen = deeds.foresee_dates(desk.house, desk.sight, nursery, wanted, desk.now)
    if seen is None:
        abort(404)
    if isinstance(seen.change, Wrong):
        desk.tell(web.WRONG[seen.change], wrong=True)
        return desk.to("nursery.nursery", nursery=nursery)
    return desk.page(
        "dates.html", pick=seen.pick, change=seen.change, form=request.form, r=messages_web_rain
    )


def _kept(desk: Desk, outcome: Kept | Wrong | None) -> Kept | None:
    """What was kept; says why where nothing was."""
    if outcome is None:
        abort(404)
    if isinstance(outcome, Wrong):
        desk.tell(web.WRONG[outcome], wrong=True)
        return None
    return outcome


def _write(found: Blueprint, desk: Desk) -> None:
    def send(farmer: int, nursery: int | None, now: datetime) -> None:
        outcome = letters.write(
            desk.house,
            desk.sight,
            farmer,
            typed("words"),
            now,
            nursery_id=nursery,
            urgent="urgent" in request.form,
        )
        tell_posted(desk, outcome)

    @found.post("/farmers/<int:farmer>/text")
    def write_to(farmer: int) -> ResponseReturnValue:
        send(farmer, None, desk.now)
        return desk.to("nursery.farmer", farmer=farmer)

    @found.post("/nurseries/<int:nursery>/text/<int:farmer>")
    def write_of(nursery: int, farmer: int) -> ResponseReturnValue:
        send(farmer, nursery, desk.now)
        return desk.to("nursery.nursery", nursery=nursery)
