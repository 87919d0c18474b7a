"""The Flask application: it owns no state but what the wiring hands it.

`PAGES` are the officers' pages, `PLACES` the way to them; README.md says how to add one.
"""

from collections.abc import Callable, Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass
from hashlib import blake2b
from importlib import import_module
from pathlib import Path

from flask import Blueprint, Flask, url_for
from flask.typing import ResponseReturnValue

from assistant.channel import Clock, Hooks
from assistant.gateways import wire_hooks
from assistant.service.connections import Allows
from assistant.service.house import House, Part
from assistant.service.in_force import InForce
from assistant.service.pulse import RoomTried, pulse
from assistant.web import (
    account,
    brakes,
    broadcasts,
    calendar_files,
    deeds,
    door,
    farmers,
    find,
    groups,
    lines,
    mending,
    messages,
    morning,
    nursery,
    officers,
    programme,
    questions,
    results,
    rounds,
    season,
    settings,
    trail,
    village_beds,
    villages,
    wall,
    warnings,
)
from assistant.web.callbacks import Door, callbacks
from assistant.web.desk import Desk, furnish
from assistant.web.frame import counted, last_deed
from assistant.web.guard import LOCAL_HOSTS, lock
from assistant.web.looks import keep_looks
from assistant.web.packing import pack
from assistant.web.standing_still import standing_still, texts_leave
from assistant.wording import messages_web as web
from assistant.wording import (
    messages_web_books,
    messages_web_desk,
    messages_web_office,
    messages_web_rain,
    messages_web_season,
)
from assistant.wording.message import Message

LARGEST_BODY = 256_000  # octets; the longest text that the wire allows, with room to spare


@dataclass(frozen=True)
class MenuPlace:
    """One page in the list at the top of every page; `under`: blueprints of pages below it."""

    endpoint: str
    name: Message
    for_lead: bool = False
    under: tuple[str, ...] = ()
    count: str = ""  # which count of what waits stands beside it

    def holds(self, blueprint: str | None) -> bool:
        """Whether the pages of a blueprint are found by this place."""
        return blueprint in (self.endpoint.partition(".")[0], *self.under)


PAGES: tuple[Callable[[Desk], Blueprint], ...] = (
    door.pages,
    account.pages,
    morning.pages,
    deeds.pages,
    rounds.pages,
    find.pages,
    mending.pages,
    nursery.pages,
    warnings.pages,
    broadcasts.pages,
    season.pages,
    wall.pages,
    calendar_files.pages,
    farmers.pages,
    groups.pages,
    villages.pages,
    village_beds.pages,
    messages.pages,
    questions.pages,
    results.pages,
    officers.pages,
    programme.pages,
    settings.pages,
    trail.pages,
    brakes.pages,
    lines.pages,
)
PARTS: Mapping[Part, str] = {
    Part.ALERTS: "assistant.web.alerts",
    Part.LISTS: "assistant.web.lists",
}
"""Pages that a deployment may leave out, by name: nobody imports them."""

PLACES = (
    MenuPlace("morning.morning", messages_web_desk.WAITING, under=("deeds",), count="morning"),
    MenuPlace("rounds.shown", messages_web_desk.ROUND),
    MenuPlace(
        "warnings.warnings",
        messages_web_rain.WARNINGS,
        under=("broadcasts", "alerts"),
        count="warnings",
    ),
    MenuPlace("season.season", messages_web_season.SEASON, under=("wall",)),
    MenuPlace(
        "farmers.farmers", web.FARMERS, under=("nursery", "lists", "find", "mending", "groups")
    ),
    MenuPlace("villages.villages", web.VILLAGES),
    MenuPlace("messages.ledger", web.MESSAGES, under=("lines", "questions")),
    MenuPlace("results.shown", messages_web_books.RESULTS),
    MenuPlace(
        "programme.shown",
        messages_web_office.PROGRAMME,
        for_lead=True,
        under=("settings", "officers", "trail", "brakes"),
    ),
)


def create_app(
    house: House,
    *,
    secret: str,
    wake: Callable[[], None],
    clock: Clock,
    https: bool = False,
    hooks: Mapping[str, Hooks] | None = None,
    terms: Mapping[str, Allows] | None = None,
    hosts: Collection[str] = LOCAL_HOSTS,
    pages: Iterable[Callable[[Desk], Blueprint]] | None = None,
) -> Flask:
    """The web side of one deployment.

    Args:
        secret: shared with the operator of our own wire, for signatures.
        wake: called when texts wait in the outbox.
        clock: reads the time of each request.
        https: officers reach the page by https, through a proxy in front.
        hosts: names by which officers reach the page; others get nothing, so that no address
            of ours leads to somebody else's
        hooks: what operators call, by the names of their lines; our own wire where none given.
        terms: what is set of each line, where there is a file of lines.
        pages: of officers, all of this house where not said; without any it is there for
            operators alone.
    """
    app = Flask("assistant.web")
    app.config["MAX_CONTENT_LENGTH"] = LARGEST_BODY
    called = {"": wire_hooks(secret)} if hooks is None else hooks
    kept = InForce(house)
    gateway = callbacks(Door(kept, called, wake, clock))
    app.register_blueprint(gateway)

    _tell_health(app, kept, clock)
    desk = Desk(kept, wake, clock, https, terms or {})
    locks = lock(
        app, desk, secret=house.key_for("web sessions").hex(), https=https, hosts=hosts
    )
    locks.exempt(gateway)  # signed, each of them
    keep_looks(app, desk)
    pack(app)
    furnish(app, desk)
    _serve_static(app)
    for some in _pages_of(house) if pages is None else pages:
        app.register_blueprint(some(desk))
    app.jinja_env.globals["places"] = PLACES
    app.jinja_env.globals["has"] = lambda part: part in app.blueprints
    app.jinja_env.globals["standing_still"] = lambda: standing_still(desk)
    app.jinja_env.globals["texts_leave"] = lambda: texts_leave(desk)
    app.jinja_env.globals["undoable"] = lambda: last_deed(desk)
    app.jinja_env.globals["waiting_counts"] = lambda: counted(desk)
    return app


def _pages_of(house: House) -> Iterator[Callable[[Desk], Blueprint]]:
    yield from PAGES
    for part, module in PARTS.items():
        if part in house.parts:
            yield import_module(module).pages


def _tell_health(app: Flask, kept: InForce, clock: Clock) -> None:
    """What may be asked by whoever watches the service."""
    try_room = RoomTried(kept.house)

    @app.get("/health")
    def health() -> dict[str, str]:
        """That this process answers."""
        return {"status": "ok"}

    @app.get("/health/ready")
    def ready() -> ResponseReturnValue:
        """That the service does its work; 503 with what is wrong. No names, no numbers."""
        try_room(clock())
        faults = pulse(kept.house, clock()).faults
        return {"faults": faults}, 503 if faults else 200


def _serve_static(app: Flask) -> None:
    """Addresses of static files that change with the file, so that browsers may keep them."""
    folder = Path(app.static_folder or "")

    def static(name: str) -> str:
        content = (folder / name).read_bytes()
        return url_for("static", filename=name, v=blake2b(content, digest_size=6).hexdigest())

    app.jinja_env.globals["static"] = static
