"""An officer's own account: password, language, second factor, where they are signed in."""

import segno
from flask import Blueprint, request, session
from flask.typing import ResponseReturnValue

from assistant.service.desk import accounts, second_factor, sessions
from assistant.service.desk.accounts import Unfit
from assistant.web.desk import Desk, proved, typed
from assistant.web.door import let_in
from assistant.wording import messages_web as web
from assistant.wording import messages_web_door as web_door
from assistant.wording.message import Message

UNFIT: dict[Unfit, Message] = {
    Unfit.WRONG_OLD: web.PASSWORD_WRONG_OLD,
    Unfit.SHORT: web.PASSWORD_SHORT,
    Unfit.LONG: web.PASSWORD_LONG,
    Unfit.SAME: web.PASSWORD_SAME,
    Unfit.EASY: web.PASSWORD_EASY,
    Unfit.DIFFERENT: web.PASSWORD_DIFFERENT,
}
SALT = "salt"  # in the cookie: no secret, since the deployment's key makes one of it


def pages(desk: Desk) -> Blueprint:
    """The account."""
    found = Blueprint("account", __name__)
    _account(found, desk)
    _password(found, desk)
    _factor(found, desk)
    return found


def _account(found: Blueprint, desk: Desk) -> None:
    @found.get("/account")
    def account() -> ResponseReturnValue:
        return desk.page(
            "account.html",
            languages=accounts.languages(desk.house),
            signed_in=sessions.open_sessions(desk.house, desk.member, desk.now),
            member=desk.member,
        )

    @found.post("/account")
    def change_language() -> ResponseReturnValue:
        accounts.set_language(desk.house, desk.member, typed("language"), desk.now)
        return desk.to("account.account")

    @found.post("/account/sessions")
    def end_sessions() -> ResponseReturnValue:
        key = typed("key", 64) or None
        count = sessions.sign_out_elsewhere(desk.house, desk.member, key, desk.now)
        desk.tell(web_door.SESSIONS_ENDED(n=count))
        return desk.to("account.account", anchor="signed-in")


def _password(found: Blueprint, desk: Desk) -> None:
    @found.get("/password")
    def password() -> ResponseReturnValue:
        return _password_page(desk, None)

    @found.post("/password")
    def change_password() -> ResponseReturnValue:
        old, new, again = (request.form.get(name, "") for name in ("old", "new", "again"))
        outcome = accounts.change_password(desk.house, desk.member, old, new, again, desk.now)
        if isinstance(outcome, Unfit):
            return _password_page(desk, UNFIT[outcome], 422)
        answer = let_in(desk, outcome)
        desk.tell(web.PASSWORD_CHANGED)
        return answer


def _password_page(desk: Desk, wrong: Message | None, status: int = 200) -> ResponseReturnValue:
    known = accounts.knows_old(desk.member, desk.now)
    first = desk.member.must_change
    return desk.page("password.html", status, wrong=wrong, first=first, known=known)


def _factor(found: Blueprint, desk: Desk) -> None:
    @found.get("/second-factor")
    def factor() -> ResponseReturnValue:
        salt = session.setdefault(SALT, second_factor.new_salt())
        return _factor_page(desk, salt, None)

    @found.post("/second-factor")
    def add_factor() -> ResponseReturnValue:
        salt = session.get(SALT)
        if salt is None:
            return desk.to("account.factor")
        if desk.member.has_factor and not proved(desk):
            return _factor_page(desk, salt, web_door.NOT_PROVED, 422)
        if not second_factor.add(desk.house, desk.member, salt, typed("code", 12), desk.now):
            return _factor_page(desk, salt, web_door.WRONG_FACTOR, 422)
        session.pop(SALT)
        desk.tell(web_door.FACTOR_ADDED)
        return desk.to("account.account")


def _factor_page(
    desk: Desk, salt: str, wrong: Message | None, status: int = 200
) -> ResponseReturnValue:
    house, phone = desk.house, desk.sight.officer.phone
    secret = second_factor.secret_of(house, salt)
    return desk.page(
        "second_factor.html",
        status,
        square=segno.make(second_factor.address_of(house, salt, phone)).svg_data_uri(scale=5),
        secret=" ".join(secret[at : at + 4] for at in range(0, len(secret), 4)),
        wrong=wrong,
        must=desk.member.must_add_factor,
        member=desk.member,
    )
