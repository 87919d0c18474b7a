"""The operator's HTTP side: the wire for the assistant, and its phones for people.

POST /texts                          a text from the assistant, signed (see `wire`)
GET  /                               the phone page: ?phone=... for each phone wanted
GET  /phones                         the phones used so far
GET  /clock                          what the clock shows; POST pushes it on
GET  /news?phone=..&after=..&wait=.. what several phones got and sent
and under /phones/<number>: POST texts, dial, keys, hang-up, power; GET inbox, screen.
"""

from collections.abc import Callable
from typing import Any, TypeVar
from uuid import uuid4

from flask import Flask, Response, jsonify, render_template, request
from flask.typing import ResponseReturnValue
from werkzeug.exceptions import BadRequest, HTTPException

from gateway_sim import wire
from gateway_sim.callbacks import Side
from gateway_sim.errors import NumberError, OperatorError, SessionError
from gateway_sim.network import Network
from gateway_sim.phones import Phone, Received, SentText
from gateway_sim.showing import Showing

LONGEST_WAIT_SECONDS = 30.0
MOST_BODY_OCTETS = 1024 * 1024  # a list of 500 texts, each of many segments
# What the page offers to choose from; the first is shown where none is asked for.
OFFERED = tuple(f"+447700900{last}" for last in range(101, 107))
MOST_PHONES_ON_A_PAGE = 6
T = TypeVar("T")


def create_app(
    network: Network,
    side: Side,
    on_error: Callable[[BaseException], None],
    showing: Showing | None = None,
) -> Flask:
    """The operator as a Flask application; unforeseen errors go to `on_error` as well."""
    app = Flask(__name__, template_folder="page", static_folder="page/static")
    app.config["MAX_CONTENT_LENGTH"] = MOST_BODY_OCTETS
    # A page from elsewhere must not reach the phones under a name that it made point here.
    app.config["TRUSTED_HOSTS"] = ["127.0.0.1", "localhost"]
    app.json.ensure_ascii = False  # type: ignore[attr-defined]
    side.serve(app, network)
    _add_reading(app, network)
    _add_keys(app, network)
    _add_page(app, network, showing or Showing())
    _add_clock(app, network, showing or Showing())
    _add_errors(app, on_error)
    return app


def _add_reading(app: Flask, network: Network) -> None:
    operator = uuid4().hex  # a page that was left open sees that turns begin anew

    @app.get("/phones")
    def phones() -> ResponseReturnValue:
        return {"number": network.own_number, "code": network.ussd_code} | {
            "phones": [
                {"number": phone.number, "on": phone.on, "texts": len(phone.inbox)}
                for phone in network.phones()
            ]
        }

    @app.get("/phones/<text>/inbox")
    def inbox(text: str) -> ResponseReturnValue:
        phone = network.phone(text)
        news = network.news([phone], _asked("after", 0), _wait(), sent=False)
        return {"messages": [_as_json(phone, item) for _, item in news]}

    @app.get("/phones/<text>/screen")
    def screen(text: str) -> ResponseReturnValue:
        return _screen(network.phone(text))

    @app.get("/news")
    def news() -> ResponseReturnValue:
        wanted = [network.phone(text) for text in request.args.getlist("phone")]
        found = network.news(wanted, _asked("after", 0), _wait())
        return {
            "operator": operator,
            "messages": [_as_json(phone, item) for phone, item in found],
            "phones": [_state(phone) for phone in wanted],
        }


def _add_keys(app: Flask, network: Network) -> None:
    @app.post("/phones/<text>/texts")
    def send(text: str) -> ResponseReturnValue:
        phone = network.phone(text)
        return _as_json(phone, phone.text(_field("text", str))), 202

    @app.post("/phones/<text>/dial")
    def dial(text: str) -> ResponseReturnValue:
        phone = network.phone(text)
        phone.dial(_field("code", str))
        return _screen(phone)

    @app.post("/phones/<text>/keys")
    def keys(text: str) -> ResponseReturnValue:
        phone = network.phone(text)
        phone.answer(_field("text", str))
        return _screen(phone)

    @app.post("/phones/<text>/hang-up")
    def hang_up(text: str) -> ResponseReturnValue:
        phone = network.phone(text)
        phone.hang_up()
        return _state(phone)

    @app.post("/phones/<text>/power")
    def power(text: str) -> ResponseReturnValue:
        phone = network.phone(text)
        phone.power(_field("on", bool))
        return _state(phone)


def _add_clock(app: Flask, network: Network, showing: Showing) -> None:
    def shown() -> dict[str, Any]:
        now = wire.stamp(network.core.now())
        return {"at": now, "local": showing.local(), "busy": showing.busy()}

    @app.get("/clock")
    def clock() -> ResponseReturnValue:
        return shown()

    @app.post("/clock")
    def push() -> ResponseReturnValue:
        found = showing.pushes.get(_field("push", str))
        if found is None:
            raise BadRequest(f"expected one of {', '.join(showing.pushes) or 'none'}")
        found.begin()
        return shown(), 202


def _add_page(app: Flask, network: Network, showing: Showing) -> None:
    offers = tuple(showing.owners) or OFFERED

    @app.get("/")
    def page() -> ResponseReturnValue:
        asked = request.args.getlist("phone")[:MOST_PHONES_ON_A_PAGE] or [offers[0]]
        shown: list[str] = []
        complaints: list[str] = []
        for text in asked:
            try:
                shown.append(network.phone(text).number)
            except NumberError as unknown:
                complaints.append(str(unknown))
        shown = shown or [network.phone(offers[0]).number]
        used = {phone.number for phone in network.phones()}
        return render_template(
            "phones.html",
            shown=list(dict.fromkeys(shown)),
            complaints=complaints,
            offered=[*offers, *sorted(used - set(offers))],
            owners=showing.owners,
            pushes=showing.pushes,
            zone=showing.zone,
            beside=showing.beside() if showing.beside else None,
            number=network.own_number,
            code=network.ussd_code,
            most=MOST_PHONES_ON_A_PAGE,
        )

    @app.after_request
    def _keep_to_ourselves(response: Response) -> Response:
        response.headers["Content-Security-Policy"] = "default-src 'self'"
        response.headers["Cache-Control"] = "no-store"
        return response


def _add_errors(app: Flask, on_error: Callable[[BaseException], None]) -> None:
    @app.errorhandler(wire.RequestError)
    def broken(error: wire.RequestError) -> ResponseReturnValue:
        return {"detail": error.detail}, error.code

    @app.errorhandler(OperatorError)
    def refused(error: OperatorError) -> ResponseReturnValue:
        return {"error": str(error)}, 409 if isinstance(error, SessionError) else 400

    @app.errorhandler(HTTPException)
    def known(error: HTTPException) -> ResponseReturnValue:
        return jsonify(error=error.description), error.code or 500

    @app.errorhandler(Exception)
    def unforeseen(error: Exception) -> ResponseReturnValue:
        on_error(error)
        return {"error": f"the operator failed: {error!r}"}, 500


def _field(name: str, kind: type[T]) -> T:
    fields = request.get_json()
    value = fields.get(name) if isinstance(fields, dict) else None
    if not isinstance(value, kind):
        raise BadRequest(f"expected a JSON object with {name!r}, a {kind.__name__}")
    return value


def _asked(name: str, usual: int) -> int:
    return request.args.get(name, usual, type=int)


def _wait() -> float:
    return min(max(request.args.get("wait", 0.0, type=float), 0.0), LONGEST_WAIT_SECONDS)


def _as_json(phone: Phone, item: Received | SentText) -> dict[str, Any]:
    return {
        "phone": phone.number,
        "turn": item.turn,
        "id": item.id,
        "sender": item.sender if isinstance(item, Received) else None,
        "text": item.text,
        "encoding": item.encoding,
        "segments": item.segments,
        "at": wire.stamp(item.at),
    }


def _state(phone: Phone) -> dict[str, Any]:
    return {"phone": phone.number, "on": phone.on, "in_session": phone.in_session}


def _screen(phone: Phone) -> dict[str, Any]:
    screen = phone.screen
    shown = vars(screen) if screen else {}
    ends = phone.session.ends if phone.session else None
    return _state(phone) | {
        "screen": dict(shown) or None,
        "ended": phone.ended,
        "ends": wire.stamp(ends) if ends else None,
    }
