"""`nursery texts`, `nursery clock`: what a person says of a service that holds back."""

import click

from assistant.commands.deployment import opened, settings_now
from assistant.service.pulse import hold_texts, let_texts_go, pulse
from assistant.service.time_guard import clock_is_right
from assistant.worker import wall_clock


@click.group()
def texts() -> None:
    """Hold all texts back, let them go, or look how they stand."""


@texts.command()
@click.argument("why")
def hold(why: str) -> None:
    """Send nothing until 'nursery texts go'. WHY is shown on every page."""
    with opened(settings_now()) as house:
        hold_texts(house, why, wall_clock())
    click.echo("No text leaves. Let them go with: nursery texts go")


@texts.command()
def go() -> None:
    """Let held texts go."""
    with opened(settings_now()) as house:
        let_texts_go(house)
    click.echo("Texts leave again.")


@texts.command()
def look() -> None:
    """How texts stand: who works, what waits, what the operator said last."""
    with opened(settings_now()) as house:
        found = pulse(house, wall_clock())
    for name, value in (
        ("tasks followed up", found.ticking),
        ("texts sent", found.sending),
        ("oldest text waits since", found.waiting_since),
        ("the operator answered", found.line.answered_at),
        ("the operator took a text", found.line.took_at),
        ("the line rests until", found.line.rests_until),
        ("held since", found.line.held_at),
    ):
        click.echo(f"{name}: {value:%Y-%m-%d %H:%M:%S} UTC" if value else f"{name}: -")
    for words in filter(None, (found.line.said, found.line.held_why)):
        click.echo(words)


@click.group()
def clock() -> None:
    """What to make of this machine's clock."""


@clock.command()
def right() -> None:
    """Say that the clock is right: it jumped, and nobody else could bear it out."""
    now = wall_clock()
    with opened(settings_now()) as house:
        clock_is_right(house, now)
    click.echo(f"It is {now:%Y-%m-%d %H:%M} UTC. Workers act on that from now on.")
