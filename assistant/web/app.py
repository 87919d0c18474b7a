"""The Flask application: it owns no state but what the wiring hands it."""

from collections.abc import Callable

from flask import Flask

from assistant.channel import Clock
from assistant.service.house import House
from assistant.web.callbacks import Door, callbacks

LARGEST_BODY = 256_000  # octets; the longest text that the wire allows, with room to spare


def create_app(house: House, *, secret: str, wake: Callable[[], None], clock: Clock) -> Flask:
    """The web side of one deployment.

    Args:
        secret: shared with the operator, for signatures.
        wake: called when texts wait in the outbox.
        clock: reads the time of each request.
    """
    app = Flask("assistant.web")
    app.config["MAX_CONTENT_LENGTH"] = LARGEST_BODY
    app.register_blueprint(callbacks(Door(house, secret, wake, clock)))

    @app.get("/health")
    def health() -> dict[str, str]:
        return {"status": "ok"}

    return app
