"""The page's locks: sign-in before everything, CSRF tokens, cookies, headers.

A page is closed unless it stands in `OPEN`, so that one that is added later cannot be left
open by oversight.
"""

import logging
from collections.abc import Collection
from urllib.parse import urlsplit

from flask import Flask, Response, abort, redirect, request, url_for
from flask.typing import ResponseReturnValue
from flask_login import LoginManager, current_user
from flask_wtf import CSRFProtect
from flask_wtf.csrf import CSRFError
from werkzeug.exceptions import HTTPException
from werkzeug.sansio.utils import host_is_trusted

from assistant.service.away import DatabaseAwayError
from assistant.service.desk.sessions import LASTS, member
from assistant.web.desk import Desk, SignedIn, inside, proved
from assistant.wording import messages_web as web
from assistant.wording import messages_web_door as web_door

log = logging.getLogger(__name__)

GATEWAY = "gateway"
WATCHED = frozenset({"health", "ready"})
LOCAL_HOSTS = ("127.0.0.1", "localhost", "[::1]")
OPEN = frozenset(
    {
        "health",
        "ready",
        "static",
        "door.sign_in",
        "door.enter",
        "door.text_code",
        "door.further",
        "door.go_further",
    }
)
# What may be done before a one-time password is changed, or a lead has a second factor.
UNCHANGED = frozenset({"account.password", "account.change_password", "door.sign_out"})
UNFACTORED = frozenset({"account.factor", "account.add_factor", "door.sign_out"})

# What can do so much harm that the officer shows once more who they are: each form holds the
# macro `prove`.
GRAVE = frozenset(
    {
        "officers.password",
        "officers.code",
        "officers.add",
        "officers.close",
        "officers.mend",
        "officers.take_factor",
        "brakes.let_go",
        "settings.keep",
        "farmers.kept",
        "farmers.erase",
    }
)

POLICY = "; ".join(
    (
        "default-src 'none'",
        "style-src 'self'",
        "script-src 'self'",
        "img-src 'self' data:",
        "connect-src 'self'",
        "form-action 'self'",
        "base-uri 'none'",
        "frame-ancestors 'none'",
    )
)
HEADERS = {
    "Content-Security-Policy": POLICY,
    "X-Frame-Options": "DENY",
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "same-origin",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Permissions-Policy": "camera=(), microphone=(), geolocation=()",
}


def lock(
    app: Flask,
    desk: Desk,
    *,
    secret: str,
    https: bool,
    hosts: Collection[str] = LOCAL_HOSTS,
) -> CSRFProtect:
    """Puts the locks on an application.

    Args:
        secret: signs the sessions.
        https: officers reach the page by https only, so cookies must not travel otherwise.
        hosts: the names by which they reach it.
    """
    app.secret_key = secret
    app.config.update(
        SESSION_COOKIE_NAME="__Host-nursery" if https else "nursery",
        SESSION_COOKIE_SECURE=https,
        SESSION_COOKIE_HTTPONLY=True,
        SESSION_COOKIE_SAMESITE="Lax",
        PERMANENT_SESSION_LIFETIME=LASTS,
        WTF_CSRF_TIME_LIMIT=None,  # as long as the session: a page may lie open over night
    )
    _sessions(app, desk)
    app.before_request(lambda: _elsewhere(hosts))
    app.before_request(lambda: _closed(desk))
    app.after_request(lambda response: _headed(response, https=https))
    _refusals(app, desk)
    return CSRFProtect(app)


def _sessions(app: Flask, desk: Desk) -> None:
    manager = LoginManager(app)
    manager.session_protection = "basic"  # "strong" signs out whoever's network address changes

    @manager.user_loader  # type: ignore[untyped-decorator]
    def load(kept: str) -> SignedIn | None:
        found = member(desk.house, kept, desk.now)
        return SignedIn(found) if found else None


def _elsewhere(hosts: Collection[str]) -> ResponseReturnValue | None:
    """Refuses who asks for another host than ours. Operators sign their calls, and whoever
    watches the service may ask by any address."""
    if request.blueprint == GATEWAY or request.endpoint in WATCHED:
        return None
    if host_is_trusted(request.environ.get("HTTP_HOST"), hosts):
        return None
    said = "This is not our name; see NURSERY_WEB_HOSTS.\n"
    return said, 421, {"Content-Type": "text/plain"}


def _closed(desk: Desk) -> ResponseReturnValue | None:
    """Sends on whoever may not see a page."""
    if request.blueprint == GATEWAY or request.endpoint is None or request.endpoint in OPEN:
        return None
    if not current_user.is_authenticated:
        back = inside(request.full_path.rstrip("?")) if request.method == "GET" else None
        return redirect(url_for("door.sign_in", next=None if back == "/" else back), 303)
    if desk.member.must_change and request.endpoint not in UNCHANGED:
        return redirect(url_for("account.password"), 303)
    if _lacks_factor(desk) and request.endpoint not in UNFACTORED:
        return redirect(url_for("account.factor"), 303)
    return _unproved(desk) if request.endpoint in GRAVE and not proved(desk) else None


def _unproved(desk: Desk) -> ResponseReturnValue:
    """A grave form is not taken: back to its page, filled in as it was where it has fields."""
    desk.tell(web_door.NOT_PROVED, wrong=True)
    again = desk.again.get(request.endpoint or "")
    if again:
        return again(**(request.view_args or {}))
    return redirect(inside(urlsplit(request.referrer or "").path) or "/", 303)


def _lacks_factor(desk: Desk) -> bool:
    return desk.member.must_add_factor and not desk.member.must_change


def _headed(response: Response, *, https: bool) -> Response:
    if request.blueprint == GATEWAY:
        return response
    response.headers.update(HEADERS)
    if https:
        response.headers["Strict-Transport-Security"] = "max-age=31536000"
    if request.endpoint == "static":
        response.headers["Cache-Control"] = "public, max-age=31536000, immutable"
    else:
        response.headers["Cache-Control"] = "no-store"  # names and phones of people
    return response


def _refusals(app: Flask, desk: Desk) -> None:
    """What a browser is shown when something cannot be; the gateway gets plain words."""

    def refused(fault: Exception) -> ResponseReturnValue:
        code = fault.code if isinstance(fault, HTTPException) and fault.code else 500
        if request.blueprint == GATEWAY:
            return fault if isinstance(fault, HTTPException) else ("", code)
        if isinstance(fault, DatabaseAwayError):
            log.warning("%s could not be shown: %s", request.endpoint, fault)
            return web.OUR_FAULT.text, 503, {"Retry-After": "5", "Content-Type": "text/plain"}
        known = {400: web.OLD_PAGE, 404: web.NOT_HERE, 405: web.NOT_HERE, 413: web.TOO_MUCH}
        return desk.page("refused.html", code, what=known.get(code, web.OUR_FAULT))

    for kind in (DatabaseAwayError, CSRFError, 400, 404, 405, 413, 500):
        app.register_error_handler(kind, refused)


def not_there() -> None:
    """Ends the request: what was asked for is not there, or not for this officer."""
    abort(404)
