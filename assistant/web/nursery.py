"""A nursery and its farmer: to look at, to visit, to write to, to move."""

from flask import Blueprint, abort, request
from flask.typing import ResponseReturnValue

from assistant.agronomy.life.rows import asked_tasks
from assistant.service import letters, looked
from assistant.service.desk import visits
from assistant.service.desk.nursery_page import farmer_page, nursery_page
from assistant.service.desk.visits import Wrong
from assistant.service.letters import LONGEST_WORDS, Unsent
from assistant.service.mending.beds import kinds
from assistant.service.privacy import erased_on
from assistant.service.waiting import deeds
from assistant.service.waiting.deeds import Did
from assistant.web.desk import Desk
from assistant.web.forms import OfficerForm
from assistant.web.morning import tell_posted
from assistant.web.nursery_forms import (
    CloseForm,
    DatesForm,
    LetterForm,
    NumberForm,
    PersonForm,
    VisitForm,
    forms_of,
)
from assistant.web.season import NUMBERS
from assistant.wording import messages_web as web
from assistant.wording import messages_web_rain
from assistant.wording.day import TASK_TEXTS


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
        return nursery_shown(desk, nursery)

    @found.get("/farmers/<int:farmer>")
    def farmer(farmer: int) -> ResponseReturnValue:
        return farmer_shown(desk, farmer)

    @found.post("/farmers/<int:farmer>/shown-number")
    def show_number(farmer: int) -> ResponseReturnValue:
        if not looked.show_number(desk.house, desk.sight, farmer, desk.now):
            abort(404)
        return farmer_shown(desk, farmer, shown_number=True)


def nursery_shown(desk: Desk, nursery: int, **refused: OfficerForm) -> ResponseReturnValue:
    """The page of a nursery; a form that was refused stands there as it was filled in."""
    page = nursery_page(
        desk.house, desk.sight, nursery, desk.now, whole="whole" in request.args
    )
    if page is None:
        abort(404)
    desk.looks_at(page.person.farmer.id)
    return desk.page(
        "nursery.html",
        422 if refused else 200,
        page=page,
        person=page.person,
        tasks=TASK_TEXTS,
        kinds=kinds(desk.house, page.person.village, desk.sight.officer.language),
        asked=asked_tasks(),
        numbers=NUMBERS,
        longest=LONGEST_WORDS,
        form={**forms_of(page), **refused},
        refused=refused,
    )


def farmer_shown(
    desk: Desk, farmer: int, *, shown_number: bool = False, **refused: OfficerForm
) -> ResponseReturnValue:
    """The page of a farmer; as above."""
    whole = "whole" in request.args
    person = farmer_page(desk.house, desk.sight, farmer, desk.now, whole=whole)
    if person is None:
        abort(404)
    desk.looks_at(person.farmer.id)
    forms = {
        "write": LetterForm(),
        "mend": PersonForm.of(person.farmer),
        "number": NumberForm(),
    }
    return desk.page(
        "farmer.html",
        422 if refused else 200,
        person=person,
        shown_number=shown_number,
        erased_on=erased_on(desk.house, person.farmer.phone),
        longest=LONGEST_WORDS,
        villages=desk.sight.villages,
        languages=desk.house.languages,
        form={**forms, **refused},
        refused=refused,
    )


def _visit(found: Blueprint, desk: Desk) -> None:
    @found.post("/nurseries/<int:nursery>/visit")
    def visit(nursery: int) -> ResponseReturnValue:
        form = VisitForm.sent()
        if not form.validate():
            return nursery_shown(desk, nursery, visit=form)
        outcome = visits.note_visit(desk.house, desk.sight, nursery, form.noted(), desk.now)
        if outcome is None:
            abort(404)
        if isinstance(outcome, Wrong):
            return nursery_shown(desk, nursery, visit=form.refuse(web.WRONG[outcome]))
        desk.tell(web.VISIT_NOTED)
        return desk.to("nursery.nursery", nursery=nursery)


def _dates(found: Blueprint, desk: Desk) -> None:
    @found.post("/nurseries/<int:nursery>/dates")
    def dates(nursery: int) -> ResponseReturnValue:
        form = DatesForm.sent()
        if not form.validate():
            return nursery_shown(desk, nursery, dates=form)
        if "look" in request.form:
            return _foreseen(desk, nursery, form)
        outcome = deeds.set_dates(
            desk.house, desk.sight, nursery, form.wanted(), desk.now, tell=form.tell.data
        )
        if isinstance(outcome, Wrong):
            return nursery_shown(desk, nursery, dates=form.refuse(web.WRONG[outcome]))
        if not isinstance(outcome, Did):
            abort(404)
        desk.wake()
        return desk.to("nursery.nursery", nursery=nursery)

    _closing(found, desk)


def _closing(found: Blueprint, desk: Desk) -> None:
    @found.post("/nurseries/<int:nursery>/close")
    def close(nursery: int) -> ResponseReturnValue:
        form = CloseForm.sent()
        if not form.validate():
            return nursery_shown(desk, nursery, close=form)
        why = form.why.data
        if visits.close_nursery(desk.house, desk.sight, nursery, why, desk.now) is None:
            abort(404)
        desk.tell(web.NURSERY_CLOSED)
        return desk.to("nursery.nursery", nursery=nursery)


def _foreseen(desk: Desk, nursery: int, form: DatesForm) -> ResponseReturnValue:
    """What the new days would change, and the text that would go, before anything is done."""
    seen = deeds.foresee_dates(desk.house, desk.sight, nursery, form.wanted(), desk.now)
    if seen is None:
        abort(404)
    if isinstance(seen.change, Wrong):
        return nursery_shown(desk, nursery, dates=form.refuse(web.WRONG[seen.change]))
    return desk.page(
        "dates.html", pick=seen.pick, change=seen.change, form=form, r=messages_web_rain
    )


def _write(found: Blueprint, desk: Desk) -> None:
    def send(form: LetterForm, farmer: int, nursery: int | None) -> bool:
        if not form.validate():
            return False
        outcome = letters.write(
            desk.house,
            desk.sight,
            farmer,
            form.words.data,
            desk.now,
            nursery_id=nursery,
            urgent=form.urgent.data,
        )
        if isinstance(outcome, Unsent):
            form.refuse(web.UNSENT[outcome])
            return False
        tell_posted(desk, outcome)
        return True

    @found.post("/farmers/<int:farmer>/text")
    def write_to(farmer: int) -> ResponseReturnValue:
        form = LetterForm.sent()
        if not send(form, farmer, None):
            return farmer_shown(desk, farmer, write=form)
        return desk.to("nursery.farmer", farmer=farmer)

    @found.post("/nurseries/<int:nursery>/text/<int:farmer>")
    def write_of(nursery: int, farmer: int) -> ResponseReturnValue:
        form = LetterForm.sent()
        if not send(form, farmer, nursery):
            return nursery_shown(desk, nursery, write=form)
        return desk.to("nursery.nursery", nursery=nursery)
