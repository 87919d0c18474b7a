"""Our simulated modem driven by a program that no one here wrote: Gammu, a general tool for
phones (Debian's gammu). Skipped where it is missing, unless NURSERY_REQUIRE_TELECOM is set."""

import shutil
import subprocess
import time
from collections.abc import Callable
from pathlib import Path

from gateway_sim import OperatorController
from gateway_sim.modem import Modem
from tests.contract.lines import SOON
from tests.contract.test_foreign_smpp import needs

AMINA = "+447700900101"
LONG = "Soak the seed for a day and a night. " * 5


def test_gammu_sends_a_long_text_and_reads_what_a_phone_wrote(tmp_path: Path) -> None:
    """It cuts a text in two, and lists the card: Bengali in UCS-2."""
    needs(shutil.which("gammu"), "gammu")
    plugged: list[Modem] = []

    def side(clock: Callable[[], object]) -> Modem:
        plugged.append(Modem(clock, answer_seconds=0.1))  # type: ignore[arg-type]
        return plugged[0]

    with OperatorController(side=side, limits=SOON) as operator:
        settings = tmp_path / "gammurc"
        port = plugged[0].port
        settings.write_text(f"[gammu]\ndevice = {port}\nconnection = at115200\nmodel = at\n")

        def gammu(*words: str) -> str:
            command = ["gammu", "-c", str(settings), *words]
            done = subprocess.run(command, capture_output=True, text=True, timeout=60)
            assert done.returncode == 0, done.stdout + done.stderr
            return done.stdout

        gammu("sendsms", "TEXT", AMINA, "-text", LONG, "-len", "400")
        assert operator.phone(AMINA).texts == [LONG]
        operator.phone(AMINA).text("help me বীজ")
        end = time.monotonic() + 60
        while not plugged[0].card.stored and time.monotonic() < end:
            time.sleep(0.01)
        said = gammu("getallsms")
    assert "help me বীজ" in said and AMINA in said and "+447000000000" in said
