"""What operators call: each line's own addresses, read by the line, kept by the service."""

import logging
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace

import flask
from flask import Blueprint
from flask.typing import ResponseReturnValue

from assistant.channel import (
    Brought,
    Clock,
    Hook,
    Hooks,
    Incoming,
    News,
    NotTakenError,
    Request,
    Response,
)
from assistant.service.arrivals import take_all
from assistant.service.away import DatabaseAwayError
from assistant.service.in_force import InForce

log = logging.getLogger(__name__)

AGAIN_S = "5"  # when the operator may send what could not be kept


@dataclass(frozen=True)
class Door:
    """What a callback needs to be taken and to be answered.

    `lines` are the addresses of each line by its name; those of the line without a name stand
    directly below /gateway.
    """

    kept: InForce
    lines: Mapping[str, Hooks]
    wake: Callable[[], None]
    clock: Clock


def callbacks(door: Door) -> Blueprint:
    """The operators' calls."""
    found = Blueprint("gateway", __name__, url_prefix="/gateway")
    for line, hooks in door.lines.items():
        for name, hook in hooks.items():
            path = f"/{line}/{name}" if line else f"/{name}"
            found.add_url_rule(
                path,
                endpoint=path.replace("/", "_"),
                view_func=_view(door, line, hook),
                methods=["GET", "POST"] if line else ["POST"],
            )
    return found


def _view(door: Door, line: str, hook: Hook) -> Callable[[], ResponseReturnValue]:
    def view() -> ResponseReturnValue:
        asked = flask.request
        call = Request(
            asked.method,
            asked.path,
            asked.args.to_dict(),
            dict(asked.headers),
            asked.get_data(),
        )
        now = door.clock()
        try:
            brought = hook(call, now)
            answer = _kept(door, line, brought)
        except NotTakenError as fault:
            if fault.why:
                log.warning("%s refused: %s", call.path, fault.why)
            return flask.Response(f"{fault}\n", fault.status)
        except DatabaseAwayError as fault:
            log.warning("%s not taken, to be sent again: %s", call.path, fault)
            return flask.Response("send the same again\n", 503, {"Retry-After": AGAIN_S})
        return flask.Response(answer.body, answer.status, content_type=answer.kind)

    return view


def _kept(door: Door, line: str, brought: Brought) -> Response:
    """Keeps all that a call brought; its answer."""
    news = [_by(line, each) for each in brought.news]
    screen = take_all(door.kept.house, news, door.clock())
    if any(isinstance(each, Incoming) for each in brought.news):
        door.wake()
    return brought.answer(screen)


def _by(line: str, news: News) -> News:
    """News that says by which line it came."""
    return replace(news, line=line) if line else news
