"""Signing in and out, and an officer's own account: password and language."""

from flask import Blueprint, request, session
from flask.typing import ResponseReturnValue
from flask_login import current_user, login_user, logout_user

from assistant.service.desk import accounts
from assistant.service.desk.accounts import Locked, Refused, Session, Unfit, Welcome
from assistant.web.desk import Desk, SignedIn, inside, typed
from assistant.web.guard import SINCE
from assistant.wording import messages_web as w
from assistant.wording.message import Message, Say

START = "morning.morning"

UNFIT: dict[Unfit, Message] = {
    Unfit.WRONG_OLD: w.PASSWORD_WRONG_OLD,
    Unfit.SHORT: w.PASSWORD_SHORT,
    Unfit.LONG: w.PASSWORD_LONG,
    Unfit.SAME: w.PASSWORD_SAME,
    Unfit.EASY: w.PASSWORD_EASY,
    Unfit.DIFFERENT: w.PASSWORD_DIFFERENT,
}


def pages(desk: Desk) -> Blueprint:
    """The door and the account."""
    found = Blueprint("door", __name__)
    _door(found, desk)
    _account(found, desk)
    return found


def _door(found: Blueprint, desk: Desk) -> None:
    @found.get("/sign-in")
    def sign_in() -> ResponseReturnValue:
        if current_user.is_authenticated:
            return desk.to(START)
        return desk.page("sign_in.html", phone="", wrong=None)

    @found.post("/sign-in")
    def enter() -> ResponseReturnValue:
        phone, address = typed("phone", 40), request.remote_addr or "-"
        password = request.form.get("password", "")
        outcome = accounts.sign_in(desk.house, phone, password, address, desk.now)
        if isinstance(outcome, Welcome):
            return _let_in(desk, outcome.session)
        status = 429 if isinstance(outcome, Locked) else 401
        return desk.page("sign_in.html", status, phone=phone, wrong=_wrong(desk, outcome))

    @found.post("/sign-out")
    def sign_out() -> ResponseReturnValue:
        logout_user()
        session.clear()
        desk.tell(w.SIGNED_OUT)
        return desk.to("door.sign_in")


def _let_in(desk: Desk, which: Session) -> ResponseReturnValue:
    """Begins a session anew, so that nothing of an earlier one lives on in it."""
    session.clear()
    found = accounts.member(desk.house, which)
    if found is None:  # the password was changed in this very moment
        return desk.to("door.sign_in")
    login_user(SignedIn(found))
    session.permanent = True
    session[SINCE] = desk.now.timestamp()
    onward = inside(request.args.get("next"))
    if onward and not found.must_change:
        return "", 303, {"Location": onward}
    return desk.to(START)


def _wrong(desk: Desk, outcome: Refused | Locked) -> Say:
    if isinstance(outcome, Refused):
        return w.SIGN_IN_WRONG()
    return w.SIGN_IN_LOCKED(n=max(1, round((outcome.until - desk.now).total_seconds() / 60)))


def _account(found: Blueprint, desk: Desk) -> None:
    @found.get("/account")
    def account() -> ResponseReturnValue:
        return desk.page("account.html", languages=accounts.languages(desk.house))

    @found.post("/account")
    def change_language() -> ResponseReturnValue:
        if accounts.set_language(desk.house, desk.member, typed("language"), desk.now):
            return desk.to("door.account")
        return desk.to("door.account")

    @found.get("/password")
    def password() -> ResponseReturnValue:
        return desk.page("password.html", wrong=None, first=desk.member.must_change)

    @found.post("/password")
    def change_password() -> ResponseReturnValue:
        old, new, again = (request.form.get(name, "") for name in ("old", "new", "again"))
        outcome = accounts.change_password(desk.house, desk.member, old, new, again, desk.now)
        if isinstance(outcome, Unfit):
            wrong = UNFIT[outcome]
            first = desk.member.must_change
            return desk.page("password.html", 422, wrong=wrong, first=first)
        answer = _let_in(desk, outcome)
        desk.tell(w.PASSWORD_CHANGED)
        return answer
