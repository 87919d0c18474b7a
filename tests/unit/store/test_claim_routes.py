"""A claim passes over what would go by a route of which all lines rest."""

from datetime import UTC, datetime, timedelta

import pytest

from assistant.channel import RouteStands
from assistant.dialogue.values import Kind
from assistant.store import Lane, OutboxText, Store

NOW = datetime(2026, 6, 1, 5, tzinfo=UTC)
LEASE = timedelta(seconds=20)
WRITTEN = (
    ("far prompt", "+999100900101", Kind.PROMPT),
    ("far warning", "+999100900102", Kind.WARNING),
    ("near prompt", "+999200900103", Kind.PROMPT),
    ("far answer", "+999100900104", Kind.REPLY),
)
FAR = ("+9991",)
UP, DOWN = False, True
CASES = {
    "none rests": ((RouteStands((), (), UP),), {each[0] for each in WRITTEN}),
    "the first route that takes a text is its": (
        (
            RouteStands(FAR, ("warning",), UP),
            RouteStands(FAR, (), DOWN),
            RouteStands((), ("prompt",), UP),
        ),
        {"far warning", "near prompt", "far answer"},
    ),
    "of a kind": (
        (RouteStands((), ("prompt", "no such kind"), DOWN),),
        {"far warning", "far answer"},
    ),
    "all rest, and an answer may go by another": (
        (RouteStands((), (), DOWN),),
        {"far answer"},
    ),
    "what no route takes is offered, and says so": (
        (RouteStands(FAR, (), DOWN),),
        {"near prompt", "far answer"},
    ),
}


@pytest.mark.parametrize("case", CASES)
def test_what_is_claimed(store: Store, case: str) -> None:
    """On both databases, by number and kind, in the order of the routes."""
    with store.work() as work:
        work.outbox.add_all(
            OutboxText(
                message_id=name,
                phone=phone,
                text="Water the beds.",
                kind=kind,
                due_at=NOW,
                not_after=NOW + timedelta(days=1),
                created_at=NOW,
                lane=Lane.TASK,
            )
            for name, phone, kind in WRITTEN
        )
    routes, expected = CASES[case]
    with store.work() as work:
        found = work.outbox.claim(NOW, 9, LEASE, routes=routes)
    assert {each.message_id for each in found} == expected
