"""Officers and their accounts, for the lead.

A password or code stands on the page that answers the form, and nowhere else: not in a
redirect, whose notice would travel in a cookie.
"""

from datetime import timedelta

from flask import Blueprint, abort, request
from flask.typing import ResponseReturnValue

from assistant.service.desk import officers as service
from assistant.service.desk.accounts import ONE_TIME_LASTS, languages
from assistant.service.desk.officers import Issued, Unfit
from assistant.web.desk import Desk, lead_only
from assistant.web.officer_forms import NewOfficerForm, OfficerDataForm, ServedForm
from assistant.wording import messages_web_books as words
from assistant.wording import messages_web_door as door_words
from assistant.wording import messages_web_office as office
from assistant.wording.message import Say

AN_HOUR, A_DAY = 60, 24  # minutes, hours


def pages(desk: Desk) -> Blueprint:
    """The list and a page for each."""
    found = Blueprint("officers", __name__)
    _look(found, desk)
    _issue(found, desk)
    _change(found, desk)
    _data(found, desk)
    desk.again["officers.add"] = lambda: _list(desk, NewOfficerForm.sent(), 422)
    desk.again["officers.mend"] = lambda officer: _one(desk, officer, OfficerDataForm.sent())
    return found


def _look(found: Blueprint, desk: Desk) -> None:
    @found.get("/officers")
    def officers() -> ResponseReturnValue:
        return _list(desk, NewOfficerForm())

    @found.get("/officers/<int:officer>")
    def one(officer: int) -> ResponseReturnValue:
        return _one(desk, officer)


def _list(desk: Desk, form: NewOfficerForm, status: int = 200) -> ResponseReturnValue:
    """All of them, with the form that adds one."""
    lead_only(desk)
    return desk.page(
        "officers.html",
        status,
        lines=service.list_officers(desk.house, desk.sight, desk.now),
        b=words,
        villages=desk.sight.villages,
        languages=languages(desk.house),
        waited=_waited,
        form=form,
    )


def _one(
    desk: Desk, officer: int, refused: OfficerDataForm | None = None
) -> ResponseReturnValue:
    line = service.one_officer(desk.house, desk.sight, officer)
    if line is None:
        abort(404)
    return desk.page(
        "officer.html",
        422 if refused else 200,
        line=line,
        b=words,
        villages=desk.sight.villages,
        languages=languages(desk.house),
        lasts=ONE_TIME_LASTS.days,
        form=refused or OfficerDataForm.of(line.officer),
    )


def _waited(span: timedelta) -> Say:
    """A time that somebody waited, in the largest unit that says enough."""
    minutes = round(span.total_seconds() / 60)
    if minutes < 2 * AN_HOUR:
        return office.N_MINUTES(n=minutes)
    hours = round(minutes / AN_HOUR)
    return office.N_HOURS(n=hours) if hours < 2 * A_DAY else office.N_DAYS(n=hours // A_DAY)


def _issue(found: Blueprint, desk: Desk) -> None:
    def shown(issued: Issued | None, officer: int) -> ResponseReturnValue:
        if issued is not None:
            return desk.page("issued.html", issued=issued, b=words, lasts=ONE_TIME_LASTS.days)
        return _refused(desk, officer)

    @found.post("/officers/<int:officer>/password")
    def password(officer: int) -> ResponseReturnValue:
        issued = service.give_password(desk.house, desk.sight, officer, desk.now)
        return shown(issued, officer)

    @found.post("/officers/<int:officer>/code")
    def code(officer: int) -> ResponseReturnValue:
        return shown(service.give_code(desk.house, desk.sight, officer, desk.now), officer)

    @found.post("/officers")
    def add() -> ResponseReturnValue:
        lead_only(desk)
        form = NewOfficerForm.sent()
        if not form.validate():
            return _list(desk, form, 422)
        outcome = service.add_officer(desk.house, desk.sight, form.new(), desk.now)
        if isinstance(outcome, Unfit):
            return _list(desk, form.refuse(words.UNFIT_OFFICER[outcome]), 422)
        return shown(outcome, 0)


def _change(found: Blueprint, desk: Desk) -> None:
    @found.post("/officers/<int:officer>/villages")
    def villages(officer: int) -> ResponseReturnValue:
        ticked = ServedForm.sent().village.data
        changed = service.give_villages(desk.house, desk.sight, officer, ticked, desk.now)
        if changed is None:
            return _refused(desk, officer)
        desk.tell(words.VILLAGES_KEPT(officer=changed.name))
        return desk.to("officers.one", officer=officer)

    @found.post("/officers/<int:officer>/close")
    def close(officer: int) -> ResponseReturnValue:
        if "sure" not in request.form:
            desk.tell(words.CLOSE_NOT_SURE, wrong=True)
            return desk.to("officers.one", officer=officer)
        closed = service.close_account(desk.house, desk.sight, officer, desk.now)
        if closed is None:
            return _refused(desk, officer)
        desk.tell(words.ACCOUNT_CLOSED(officer=closed.name))
        return desk.to("officers.officers")

    @found.post("/officers/<int:officer>/second-factor")
    def take_factor(officer: int) -> ResponseReturnValue:
        name = service.take_factor(desk.house, desk.sight, officer, desk.now)
        if name is None:
            return _refused(desk, officer)
        desk.tell(door_words.FACTOR_TAKEN(officer=name))
        return desk.to("officers.one", officer=officer)


def _data(found: Blueprint, desk: Desk) -> None:
    @found.post("/officers/<int:officer>/mend")
    def mend(officer: int) -> ResponseReturnValue:
        form = OfficerDataForm.sent()
        if not form.validate():
            return _one(desk, officer, form)
        mended = service.mend_officer(desk.house, desk.sight, officer, form.wanted(), desk.now)
        if mended is None:
            abort(404)
        if isinstance(mended, Unfit):
            return _one(desk, officer, form.refuse(words.UNFIT_OFFICER[mended]))
        desk.tell(office.OFFICER_KEPT)
        return desk.to("officers.one", officer=officer)


def _refused(desk: Desk, officer: int) -> ResponseReturnValue:
    """A lead's own account says so; anything else is not there."""
    lead_only(desk)
    if officer != desk.sight.officer.id:
        abort(404)
    desk.tell(words.NOT_YOURSELF, wrong=True)
    return desk.to("officers.one", officer=officer)
