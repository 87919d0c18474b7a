"""`nursery web`, `nursery worker`, and `nursery start`: both, beside a simulated operator."""

import logging
import os
import secrets
import signal
import subprocess
import sys
import threading
import time
import urllib.error
import urllib.request
from collections.abc import Callable, Iterator
from contextlib import ExitStack, contextmanager
from dataclasses import dataclass, replace
from functools import partial
from pathlib import Path
from typing import Any

import click
from flask import Flask

from assistant.channel import Gateway
from assistant.commands.demo import demo_officer
from assistant.commands.deployment import opened, programme_of, settings_now
from assistant.commands.log_lines import formatter
from assistant.service.enrol import add_villages_if_none, enter_climates
from assistant.service.house import House, Part
from assistant.service.land_units import enter_units
from assistant.service.placing import place_villages
from assistant.service.time_guard import TimeGuard
from assistant.settings import Settings, SettingsError
from assistant.web.app import create_app
from assistant.web.connections import listen
from assistant.web.guard import LOCAL_HOSTS
from assistant.wiring.lines import Opened, open_lines
from assistant.wiring.parts import alerts
from assistant.worker import LineWatch, Watchman, Worker, wall_clock

OPERATOR_PORT = 8471
WEB_THREADS = 8


def _behind(proxy: str) -> dict[str, Any]:
    """The proxy in front tells who asks, and by which scheme. From anybody else these headers
    are taken away."""
    return {
        "trusted_proxy": proxy,
        "trusted_proxy_count": 1,
        "trusted_proxy_headers": {"x-forwarded-for", "x-forwarded-proto"},
        "clear_untrusted_proxy_headers": True,
    }


def _log(way: str) -> None:
    handler = logging.StreamHandler(sys.stderr)
    handler.setFormatter(formatter(way))
    logging.basicConfig(level=logging.INFO, handlers=[handler])
    for noisy in ("waitress.queue", "alembic"):
        logging.getLogger(noisy).setLevel(logging.WARNING)


def _opened(house: House, settings: Settings) -> Opened:
    try:
        return open_lines(settings, house)
    except SettingsError as fault:
        raise click.ClickException(str(fault)) from fault


@dataclass(frozen=True)
class _Hands:
    """What sends: the worker and, where lines listen, who keeps their connections."""

    worker: Worker
    watch: LineWatch | None


def _hands(house: House, settings: Settings, opened: Opened) -> _Hands:
    lines = opened.lines
    if lines is None or not lines.listens:
        return _Hands(_worker(house, settings, opened.gateway), None)
    watch = LineWatch(house, lines, owner=secrets.token_hex(8), whys=lines.whys)
    worker = _worker(house, settings, opened.gateway, watch.has)
    watch.wake = worker.wake
    return _Hands(worker, watch)


def _worker(
    house: House,
    settings: Settings,
    gateway: Gateway,
    may_send: Callable[[], bool] = lambda: True,
) -> Worker:
    return Worker(
        house,
        gateway,
        may_send=may_send,
        pause_s=settings.worker_pause_s,
        batch=settings.send_batch,
        lease_s=settings.lease_s,
        hands=settings.send_hands,
        guard=TimeGuard(house, time.monotonic, gateway.time),
    )


def _watchman(house: House, settings: Settings, opened: Opened | None) -> Watchman:
    """Who looks whether texts leave. Where a line keeps a connection, only its owner sends."""
    shared = opened is not None and not (opened.lines and opened.lines.listens)
    folder = settings.copies_folder
    return Watchman(
        house,
        gateway=opened.gateway if opened is not None and shared else None,
        copies=(Path(folder), settings.copies_kept) if folder else None,
    )


@contextmanager
def _watching(watchman: Watchman) -> Iterator[None]:
    """The watchman, until the block ends."""
    watchman.start()
    try:
        yield
    finally:
        watchman.stop()


@contextmanager
def _figures(house: House, settings: Settings) -> Iterator[None]:
    """The figures for who watches, where a port is set for them."""
    if not settings.metrics_port:
        yield
        return
    from assistant.wiring.watching import watched  # noqa: PLC0415  # few need it

    with watched(house, settings.metrics_port, wall_clock):
        yield


@contextmanager
def _working(house: House, settings: Settings, hands: _Hands) -> Iterator[None]:
    """The worker, its lines, and the watch for official alerts, until the block ends."""
    worker = hands.worker
    has_alerts = Part.ALERTS in house.parts
    watch = alerts().open_watch(house, settings, worker.wake) if has_alerts else None
    worker.start()
    if watch is not None:
        watch.start()
    if hands.watch is not None:
        hands.watch.start()
    try:
        yield
    finally:
        if watch is not None:
            watch.stop()
        worker.stop()
        if hands.watch is not None:
            hands.watch.stop()


@contextmanager
def _web(
    house: House, settings: Settings, opened: Opened, wake: Callable[[], None]
) -> Iterator[None]:
    """The web side, answering until the block ends; what operators call has threads of its own
    where it has a port of its own, so that no page holds up a screen of USSD."""
    app = partial(
        create_app,
        house,
        secret=settings.gateway_secret,
        wake=wake,
        clock=wall_clock,
        https=settings.web_https,
        hooks=opened.hooks,
        terms=opened.terms,
        hosts=(*LOCAL_HOSTS, *settings.web_hosts),
    )
    with ExitStack() as held:
        held.enter_context(_served(app(), settings, settings.port, "NURSERY_PORT"))
        if settings.calls_port:
            calls = app(pages=())
            port = settings.calls_port
            held.enter_context(_served(calls, settings, port, "NURSERY_CALLS_PORT"))
        yield


@contextmanager
def _served(app: Flask, settings: Settings, port: int, name: str) -> Iterator[None]:
    """Answers at a port with threads of its own, until the block ends."""
    behind = _behind(settings.web_proxy) if settings.web_https else {}
    try:
        server = listen(app, settings.host, port, threads=WEB_THREADS, **behind)
    except OSError as fault:
        raise click.ClickException(
            f"Port {port} is taken ({fault}). Set {name} to another one."
        ) from fault
    thread = threading.Thread(target=server.run, name=f"web {port}", daemon=True)
    thread.start()
    try:
        yield
    finally:
        server.close()


def _until_stopped() -> None:
    """Waits for Ctrl-C, or a polite request to end."""
    ended = threading.Event()
    for signal_number in (signal.SIGINT, signal.SIGTERM):
        signal.signal(signal_number, lambda *_: ended.set())
    ended.wait()
    click.echo("\nStopped.")


def _nothing() -> None:
    """The worker runs elsewhere and looks by itself."""


def _called(house: House, settings: Settings) -> Opened:
    """The lines as the web side needs them: of our own wire only the secret."""
    address = settings.gateway_url or "http://127.0.0.1"
    return _opened(house, replace(settings, gateway_url=address))


@click.command()
def web() -> None:
    """Only the web side: what the gateway calls. The worker runs elsewhere."""
    settings = settings_now()
    _log(settings.log_lines)
    if not settings.gateway_secret and not settings.lines_file:
        raise click.ClickException("Set NURSERY_GATEWAY_SECRET, shared with the operator.")
    with opened(settings) as house:
        lines = _called(house, settings)
        # It tells people where the worker is gone; copies are the worker's.
        known = settings.gateway_url or settings.lines_file
        watchman = _watchman(
            house, replace(settings, copies_folder=""), lines if known else None
        )
        with (
            _web(house, settings, lines, _nothing),
            _watching(watchman),
            _figures(house, settings),
        ):
            click.echo(
                f"Web side and officers' page at http://{settings.host}:{settings.port}/"
            )
            _until_stopped()


@click.command()
def worker() -> None:
    """Only the worker: due prompts and the outbox. The web side runs elsewhere."""
    settings = settings_now()
    _log(settings.log_lines)
    with opened(settings) as house:
        lines = _opened(house, settings)
        hands = _hands(house, settings, lines)
        watchman = _watchman(house, settings, lines)
        with (
            _working(house, settings, hands),
            _watching(watchman),
            _figures(house, settings),
        ):
            click.echo("Worker running.")
            _until_stopped()


@click.command()
@click.option(
    "--demo", is_flag=True, help="Show a filled valley in mid-season, on a clock to push."
)
def start(demo: bool) -> None:
    """All in one; with no gateway set, beside a simulated operator to try it by hand."""
    settings = settings_now()
    if demo:
        sys.exit(_show(settings))
    _log(settings.log_lines)
    if settings.gateway_url or settings.lines_file:
        with opened(settings, migrate=True) as house:
            _serve(house, settings, "")
        return
    simulated = replace(
        settings,
        gateway_url=f"http://127.0.0.1:{_operator_port()}",
        gateway_secret=settings.gateway_secret or secrets.token_hex(16),
        second_factor=False,  # to be tried in a minute
    )
    with opened(simulated, migrate=True) as house, _operator(simulated):
        _serve(house, simulated, _how_to_try(simulated))


def _show(settings: Settings) -> int:
    """The demo in a process of its own, on a database that is gone with it; how it ended."""
    if settings.gateway_url or settings.lines_file:
        raise click.ClickException(
            "A real line is set (NURSERY_GATEWAY_URL or NURSERY_LINES_FILE), and the demo "
            "signs people in without a password. Take it out of the environment, or start "
            "without --demo."
        )
    with subprocess.Popen([sys.executable, "-m", "scenarios", "demo"]) as shown:
        try:
            return shown.wait()
        except KeyboardInterrupt:  # the terminal has told it, too
            return shown.wait()


def _operator_port() -> int:
    return int(os.environ.get("OPERATOR_PORT", OPERATOR_PORT))


def _serve(house: House, settings: Settings, greeting: str) -> None:
    if settings.programme_file:
        programme = programme_of(settings)
        add_villages_if_none(house, programme.villages)
        place_villages(house, programme.places, wall_clock())
        enter_climates(house, programme.climates, wall_clock())
        enter_units(house, programme.units, wall_clock())
    lines = _opened(house, settings)
    hands = _hands(house, settings, lines)
    with (
        _web(house, settings, lines, hands.worker.wake),
        _working(house, settings, hands),
        _watching(_watchman(house, settings, lines)),
        _figures(house, settings),
    ):
        click.echo(f"The officers' page is at http://{settings.host}:{settings.port}/")
        for line in (demo_officer(house) if greeting else "", greeting):
            click.echo(line, nl=bool(line))
        _until_stopped()


@contextmanager
def _operator(settings: Settings) -> Iterator[None]:
    """The simulated operator as a process of its own, for as long as the block lasts."""
    environment = {
        **os.environ,
        "NURSERY_GATEWAY_SECRET": settings.gateway_secret,
        "NURSERY_CALLBACK_URL": f"http://{settings.host}:{settings.port}",
        "OPERATOR_HOST": "127.0.0.1",
        "OPERATOR_PORT": str(_operator_port()),
    }
    command = [sys.executable, "-m", "gateway_sim"]
    command += ["--number", settings.sender, "--code", settings.ussd_code]
    process = subprocess.Popen(command, env=environment, stdout=subprocess.DEVNULL)
    try:
        _wait_for(settings.gateway_url, process)
        yield
    finally:
        process.terminate()
        process.wait(timeout=10)


def _wait_for(url: str, process: "subprocess.Popen[bytes]") -> None:
    """Waits until the simulated operator answers."""
    for _ in range(100):
        if process.poll() is not None:
            break
        try:
            urllib.request.urlopen(url, timeout=1).close()  # noqa: S310  # our own simulator
            return
        except (urllib.error.URLError, OSError):
            time.sleep(0.1)
    raise click.ClickException(
        f"The simulated operator did not start at {url}; if its port is taken, set "
        "OPERATOR_PORT to another one."
    )


def _python() -> str:
    """This Python as it can be typed here."""
    here = Path.cwd()
    running = Path(sys.executable)
    return str(running.relative_to(here) if running.is_relative_to(here) else running)


def _how_to_try(settings: Settings) -> str:
    return (
        f"The simulated phone is at {settings.gateway_url}/\n"
        f"Text HELLO to {settings.sender}, or dial {settings.ussd_code}\n"
        f"In another terminal: {_python()} -m gateway_sim phone 07700900101\n"
        "Ctrl-C ends it. The data stays in .nursery/."
    )
