"""Signing in and out."""

from flask import Blueprint, request, session
from flask.typing import ResponseReturnValue
from flask_login import current_user, login_user, logout_user

from assistant.service.desk import accounts, sessions
from assistant.service.desk.accounts import (
    HALFWAY_LASTS,
    KNOWN_LASTS,
    DoorVisit,
    Halfway,
    Locked,
    SignInRefused,
    Welcome,
)
from assistant.web.browsers import browser_name
from assistant.web.desk import Desk, SignedIn, inside, typed
from assistant.wording import messages_web as web
from assistant.wording import messages_web_door as web_door
from assistant.wording.message import Say

START = "morning.morning"
HALFWAY = "halfway"  # in the cookie, which is signed: whose password was right, and when


def pages(desk: Desk) -> Blueprint:
    """The door, and the way back for who was locked out."""
    found = Blueprint("door", __name__)
    _enter(found, desk)
    _further(found, desk)
    _leave(found, desk)
    return found


def _enter(found: Blueprint, desk: Desk) -> None:
    @found.get("/sign-in")
    def sign_in() -> ResponseReturnValue:
        if current_user.is_authenticated:
            return desk.to(START)
        return _shown(desk, "")

    @found.post("/sign-in")
    def enter() -> ResponseReturnValue:
        phone, password = typed("phone", 40), request.form.get("password", "")
        outcome = accounts.sign_in(desk.house, phone, password, _visit(desk), desk.now)
        if isinstance(outcome, Welcome):
            return let_in(desk, outcome)
        if isinstance(outcome, Halfway):
            session[HALFWAY] = [outcome.officer_id, desk.now.timestamp()]
            return desk.to("door.further", next=inside(request.args.get("next")))
        return _shown(desk, phone, outcome)

    @found.post("/sign-in/code")
    def text_code() -> ResponseReturnValue:
        phone = typed("phone", 40)
        sent = accounts.text_code(desk.house, phone, _address(), desk.now)
        desk.wake()
        desk.tell(web_door.CODE_TEXTED if sent else web_door.CODE_TOO_OFTEN, wrong=not sent)
        return _shown(desk, phone, asks_code=sent)


def _shown(
    desk: Desk,
    phone: str,
    outcome: SignInRefused | Locked | None = None,
    *,
    asks_code: bool = False,
) -> ResponseReturnValue:
    """The door; who is locked out may have a code sent to their phone."""
    locked = isinstance(outcome, Locked)
    return desk.page(
        "sign_in.html",
        (429 if locked else 401) if outcome else 200,
        phone=phone,
        wrong=_wrong(desk, outcome) if outcome else None,
        locked=locked,
        asks_code=asks_code or locked or bool(typed("code", 12)),
    )


def _further(found: Blueprint, desk: Desk) -> None:
    """The second factor of who has one."""

    @found.get("/sign-in/further")
    def further() -> ResponseReturnValue:
        if _half_way(desk) is None:
            return desk.to("door.sign_in")
        return desk.page("sign_in_further.html", wrong=None)

    @found.post("/sign-in/further")
    def go_further() -> ResponseReturnValue:
        officer_id = _half_way(desk)
        if officer_id is None:
            return desk.to("door.sign_in")
        outcome = accounts.sign_in_further(
            desk.house, officer_id, typed("code", 12), _visit(desk), desk.now
        )
        if isinstance(outcome, Welcome):
            return let_in(desk, outcome)
        wrong = (
            _wrong(desk, outcome) if isinstance(outcome, Locked) else web_door.WRONG_FACTOR()
        )
        return desk.page("sign_in_further.html", 401, wrong=wrong)


def _half_way(desk: Desk) -> int | None:
    """Whose password was right a moment ago in this browser."""
    kept = session.get(HALFWAY)
    if not isinstance(kept, list) or len(kept) != 2:
        return None
    age = desk.now.timestamp() - kept[1]
    return int(kept[0]) if 0 <= age <= HALFWAY_LASTS.total_seconds() else None


def _leave(found: Blueprint, desk: Desk) -> None:
    @found.post("/sign-out")
    def sign_out() -> ResponseReturnValue:
        sessions.sign_out(desk.house, desk.member, desk.now)
        logout_user()
        session.clear()
        desk.tell(web.SIGNED_OUT)
        return desk.to("door.sign_in")


def let_in(desk: Desk, welcome: Welcome) -> ResponseReturnValue:
    """Begins a session anew, so that nothing of an earlier one lives on in it."""
    session.clear()
    found = sessions.member(desk.house, welcome.token, desk.now)
    if found is None:  # the password was changed in this very moment
        return desk.to("door.sign_in")
    login_user(SignedIn(found))
    session.permanent = True
    onward = inside(request.args.get("next"))
    answer = desk.to(START)
    if onward and not found.must_change:
        answer.headers["Location"] = onward
    answer.set_cookie(
        desk.known_cookie,
        welcome.known,
        max_age=KNOWN_LASTS,
        secure=desk.https,
        httponly=True,
        samesite="Lax",
    )
    return answer


def _visit(desk: Desk) -> DoorVisit:
    return DoorVisit(
        address=_address(),
        browser=browser_name(request.user_agent.string),
        known=request.cookies.get(desk.known_cookie, ""),
        code="".join(typed("code", 12).split()),
    )


def _address() -> str:
    return request.remote_addr or "-"


def _wrong(desk: Desk, outcome: SignInRefused | Locked) -> Say:
    if isinstance(outcome, SignInRefused):
        return web.SIGN_IN_WRONG()
    return web.SIGN_IN_LOCKED(n=max(1, round((outcome.until - desk.now).total_seconds() / 60)))
