"""Which pages show people, and that who looks at them stands in the trail."""

from flask import Flask, request
from flask_login import current_user

from assistant.web.desk import Desk

# Pages that list people. Those of one person keep whom they show (`Desk.looks_at`), files that
# are taken away stand in the trail by themselves; a test holds that each page is one of these
# or shows nobody.
THROUGH = frozenset(
    {
        "morning.morning",
        "rounds.shown",
        "find.anybody",
        "farmers.farmers",
        "groups.shown",
        "messages.ledger",
        "messages.unread",
        "results.shown",
        "season.season",
        "warnings.draft",
        "warnings.followed",
        "wall.nursery",
        "wall.village",
        "deeds.begin",
        "mending.sent",
        "lists.outlook",
        "lists.outcome",
        "lists.rejects",
    }
)


def keep_looks(app: Flask, desk: Desk) -> None:
    """Before each such page its line is kept; without it the page is not shown."""

    @app.before_request
    def keep() -> None:
        if request.endpoint in THROUGH and current_user.is_authenticated:
            desk.looks.through(desk.house, desk.sight, request.path, desk.now)
