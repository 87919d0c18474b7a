"""The command line: run the operator, or hold one of its phones.

python -m gateway_sim                      the operator, until Ctrl-C
python -m gateway_sim --line smpp          the same as a message centre; or modem, http
    --faults throttle,,drop                on its connection, one a text; or --bad-day 7
    --card no-credit                       in the modem
python -m gateway_sim phone 07700900101    a phone in the terminal, by text
python -m gateway_sim phone 07700900101 --ussd '*555*7#'
"""

import os
import signal
import sys
from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path
from threading import Event
from types import FrameType

import click

from gateway_sim import breaks, modem, provider, smpp
from gateway_sim.controller import OWN_NUMBER, USSD_CODE, MakeSide, OperatorController
from gateway_sim.core import OperatorLimits
from gateway_sim.errors import OperatorError
from gateway_sim.handset import Handset
from gateway_sim.modem import Card, Modem
from gateway_sim.provider import SimulatedProvider
from gateway_sim.record import EntryKind, RecordEntry
from gateway_sim.server import OFFERED
from gateway_sim.smpp import Centre
from gateway_sim.talk import PipePace, TextPrinter, talk_by_text, talk_by_ussd
from gateway_sim.terminal import Terminal

_CARDS: Mapping[str, Card] = {
    "no-credit": Card(credit=False),
    "no-network": Card(network=False),
    "missing": Card(in_place=False),
}
_FAULTS: Mapping[type, tuple[str, ...]] = {
    Centre: smpp.FAULTS,
    Modem: modem.FAULTS,
    SimulatedProvider: provider.FAULTS,
}
_BAD_DAY_TEXTS = 10_000
PORT = 8471
SMPP_PORT = 2775
CALLBACK_URL = "http://127.0.0.1:8470"


class _Refusal(click.ClickException):
    """One line saying what to do instead."""

    exit_code = 2


@click.group(invoke_without_command=True)
@click.option("--host", envvar="OPERATOR_HOST", default="127.0.0.1", show_default=True)
@click.option("--port", envvar="OPERATOR_PORT", default=PORT, show_default=True)
@click.option(
    "--callback",
    envvar="NURSERY_CALLBACK_URL",
    default=CALLBACK_URL,
    show_default=True,
    help="Where the assistant listens.",
)
@click.option(
    "--secret",
    envvar="NURSERY_GATEWAY_SECRET",
    help="Shared with the assistant; better set as NURSERY_GATEWAY_SECRET.",
)
@click.option("--number", default=OWN_NUMBER, show_default=True, help="What phones text.")
@click.option("--code", default=USSD_CODE, show_default=True, help="What phones dial.")
@click.option(
    "--line",
    type=click.Choice(["wire", "smpp", "modem", "http"]),
    default="wire",
    show_default=True,
    help="How it looks to the assistant.",
)
@click.option("--smpp-port", default=SMPP_PORT, show_default=True, help="Of an smpp line.")
@click.option(
    "--mapping",
    type=click.Path(exists=True, dir_okay=False, path_type=Path),
    help="Of an http line; --callback is then where its calls go, such as .../gateway/hill.",
)
@click.option(
    "--faults",
    metavar="NAMES",
    help="What goes wrong on the connection of the line, one a text, with commas.",
)
@click.option("--bad-day", type=int, metavar="SEED", help="Faults and a bad network by chance.")
@click.option("--card", type=click.Choice(list(_CARDS)), help="What is wrong in a modem.")
@click.option("--pin", default="", help="That the card of a modem wants.")
@click.option("--watch", is_flag=True, help="Print all that happens.")
@click.pass_context
def main(
    context: click.Context,
    host: str,
    port: int,
    callback: str,
    secret: str | None,
    number: str,
    code: str,
    line: str,
    smpp_port: int,
    mapping: Path | None,
    faults: str | None,
    bad_day: int | None,
    card: str | None,
    pin: str,
    watch: bool,
) -> None:
    """Run the simulated operator; with `phone`, hold one of its phones instead."""
    if context.invoked_subcommand is not None:
        return
    if not secret and line in ("wire", "http"):
        raise _Refusal("no secret: set NURSERY_GATEWAY_SECRET as for the assistant")
    try:
        side = _side(line, smpp_port, mapping, secret or "")
        operator = OperatorController(
            secret=secret or "",
            side=side,
            callback_url=callback,
            number=number,
            ussd_code=code,
            host=host,
            port=port,
        )
        operator.on_entry(_print_all if watch else _print_faults)
        _have_trouble(operator, faults, bad_day)
        _put_in(operator, card, pin)
        with operator:
            end = _end_by_signal()
            _say_where(operator)
            _say_line(operator)
            end.wait()
    except OperatorError as error:
        raise _Refusal(str(error)) from error


@main.command()
@click.argument("number")
@click.option("--ussd", metavar="CODE", help=f"Dial this code, such as {USSD_CODE}.")
@click.option("--url", help=f"The operator's address.  [default: http://127.0.0.1:{PORT}]")
@click.option("--earlier", is_flag=True, help="Print the texts that are in the inbox first.")
@click.option(
    "--quiet",
    default=PipePace.quiet,
    show_default=True,
    help="Seconds without a text that end the talk, once there are no more lines.",
)
def phone(number: str, ussd: str | None, url: str | None, earlier: bool, quiet: float) -> None:
    """Hold the phone NUMBER: each line you type, or pipe in, is sent as a text.

    Numbers are those set aside for fiction, such as 07700900101.
    """
    terminal = Terminal()
    try:
        handset = Handset(number, url or _usual_url())
        _hold(handset, terminal, ussd, earlier, PipePace(quiet=quiet))
    except OperatorError as error:
        terminal.note(f"{error}")
        sys.exit(2)
    except KeyboardInterrupt:
        terminal.note("\nThe phone is put away.")
        sys.exit(130)


def _hold(
    handset: Handset, terminal: Terminal, ussd: str | None, earlier: bool, pace: PipePace
) -> None:
    already = handset.inbox()
    after = already[-1].turn if already and not earlier else 0
    if terminal.typed:
        _greet(handset, terminal, ussd)
    if already and not earlier:
        terminal.note(f"Earlier texts in the inbox: {len(already)} (--earlier prints them).")
    ear = TextPrinter(handset, terminal, after)
    try:
        if ussd is None:
            talk_by_text(handset, terminal, ear, pace)
        else:
            talk_by_ussd(handset, terminal, ear, pace, ussd)
    finally:
        ear.hush()


def _greet(handset: Handset, terminal: Terminal, ussd: str | None) -> None:
    what = "Answer each screen" if ussd else f"Type a text to {handset.service}"
    terminal.note(f"Phone {handset.number}. {what} and press Enter; Ctrl-D puts it away.")


def _usual_url() -> str:
    host = os.environ.get("OPERATOR_HOST", "127.0.0.1")
    return f"http://{host}:{os.environ.get('OPERATOR_PORT', PORT)}"


def _say_where(operator: OperatorController) -> None:
    click.echo(f"The phones are at {operator.url}/?phone={OFFERED[0].replace('+', '%2B')}")
    click.echo(f"or in a terminal: python -m gateway_sim phone {OFFERED[0]}")
    click.echo(
        f"They text {operator.network.own_number} and dial {operator.network.ussd_code}."
    )


def _side(line: str, smpp_port: int, mapping: Path | None, secret: str) -> MakeSide | None:
    """How the operator looks to the assistant; None for our own wire."""
    if line == "http":
        if mapping is None:
            raise _Refusal("an http line needs --mapping, such as scenarios/.../hill.toml")
        names = ("token", "user", "password", "secret")
        secrets = dict.fromkeys(names, secret)
        return lambda clock: SimulatedProvider(
            mapping, "", secrets, clock, OperatorLimits().answer_seconds
        )
    kinds: dict[str, MakeSide] = {
        "smpp": lambda clock: Centre(clock, port=smpp_port),
        "modem": Modem,
    }
    return kinds.get(line)


def _say_line(operator: OperatorController) -> None:
    side = operator.network.core.assistant
    if isinstance(side, Centre):
        account = side.account
        click.echo(
            f"SMPP at 127.0.0.1:{side.port}, system_id {account.system_id}, "
            f"password {account.password}"
        )
    elif isinstance(side, Modem):
        click.echo(f"The modem is at {side.port}")


def _have_trouble(operator: OperatorController, script: str | None, seed: int | None) -> None:
    """Has the line and its network go wrong, by script or by seed."""
    side = operator.network.core.assistant
    kinds = next((names for kind, names in _FAULTS.items() if isinstance(side, kind)), ())
    faults: tuple[str, ...] = ()
    if script is not None:
        try:
            faults = breaks.by_script(script, kinds)
        except ValueError as strange:
            raise _Refusal(str(strange)) from strange
    elif seed is not None:
        operator.handler = breaks.bad_network(seed)
        faults = breaks.by_seed(seed, _BAD_DAY_TEXTS, breaks.SHARE, kinds) if kinds else ()
    if isinstance(side, Centre | Modem | SimulatedProvider):
        side.faults.extend(faults)


def _put_in(operator: OperatorController, card: str | None, pin: str) -> None:
    side = operator.network.core.assistant
    if not isinstance(side, Modem):
        if card or pin:
            raise _Refusal("only a modem has a card: add --line modem")
        return
    side.card = replace(_CARDS[card] if card else Card(), pin=pin)


def _print_all(entry: RecordEntry) -> None:
    click.echo(f"{entry.at.astimezone():%H:%M:%S} {entry}")


def _print_faults(entry: RecordEntry) -> None:
    if entry.kind is EntryKind.FAULT:
        click.echo(f"{entry.at.astimezone():%H:%M:%S} {entry}", err=True)


def _end_by_signal() -> Event:
    """Set by Ctrl-C or a polite kill."""
    end = Event()

    def stop(number: int, frame: FrameType | None) -> None:
        end.set()

    for number in (signal.SIGINT, signal.SIGTERM):
        signal.signal(number, stop)
    return end
