"""Whole seasons, end to end: each as its file says, and again through a bad network."""

import os
import pickle
from collections.abc import Callable, Mapping
from datetime import timedelta
from functools import cache
from pathlib import Path

import pytest

import scenarios
from gateway_sim import Chain, MessageDelay, NoReceipt, ReceiptLater, Repeat
from scenarios.ending import Ending
from scenarios.play import Replay, play
from scenarios.printing import say_nothing
from scenarios.reading import read_season

FOLDER = Path(scenarios.__file__).parent
SEASONS = {
    path.stem: path
    for path in sorted(FOLDER.rglob("*"))
    if path.is_file()
    and path.suffix not in (".py", ".pyc", ".md")
    and "district" not in path.relative_to(FOLDER).parts
}


Endings = Mapping[str, Ending | None]
AsWritten = Callable[[str], Endings]


@pytest.fixture(scope="session")
def as_written(tmp_path_factory: pytest.TempPathFactory) -> AsWritten:
    """How a season ends when it goes as it is written: played once, whichever of the processes
    of a run wants it first."""
    folder = tmp_path_factory.getbasetemp()
    if "PYTEST_XDIST_WORKER" in os.environ:
        folder = folder.parent

    @cache
    def ending(name: str) -> Endings:
        kept = folder / f"{name}.ending"
        if kept.is_file():
            found: Endings = pickle.loads(kept.read_bytes())
            return found
        found = play(read_season(SEASONS[name]), say_nothing)
        writing = kept.with_suffix(f".{os.getpid()}")
        writing.write_bytes(pickle.dumps(found))
        writing.replace(kept)
        return found

    return ending


@pytest.mark.parametrize("name", SEASONS)
def test_each_season_goes_as_its_file_says(name: str, as_written: AsWritten) -> None:
    """Everything that a line expects is heard, and nothing breaks on the way."""
    assert as_written(name)


def test_the_seasons_that_were_promised_are_there() -> None:
    """Smooth by SMS, by USSD, slow and rainy, and in Swahili."""
    assert {"smooth", "ussd", "rain", "kiswahili"} <= set(SEASONS)


def test_every_language_has_a_season() -> None:
    """As people of that language really type; the smooth season is the English one."""
    asian = {"hindi", "bangla", "indonesian", "vietnamese", "filipino"}
    assert asian | {"smooth", "kiswahili", "francais", "portugues"} <= set(SEASONS)


# --- the same seasons through a bad network, to the same end ----------------------------------

# Lines hold that do not depend on the minute, nor on what only a receipt can tell. At every
# build, each fault through those seasons that take another way under it: repeats of texts, of
# keys and of an officer's words; answers that are late for what they answer.
REPLAYS: Mapping[str, tuple[Replay, frozenset[str]]] = {
    "every message of a phone comes twice": (
        Replay(lambda: Repeat(ways=("to_assistant", "ussd"))),
        frozenset({"ussd", "rain", "wrong-input"}),
    ),
    "every text to a phone comes twice, its receipt two hours late": (
        Replay(
            lambda: Chain(Repeat(ways=("to_phone",)), ReceiptLater(timedelta(hours=2))),
            forgiving=True,
        ),
        frozenset({"two-nurseries", "crossed"}),
    ),
    "every text takes three minutes, each way": (
        Replay(lambda: MessageDelay(timedelta(minutes=3)), forgiving=True),
        frozenset({"rain"}),
    ),
    "no receipt ever comes": (
        Replay(lambda: NoReceipt(), forgiving=True),
        frozenset({"every-day"}),
    ),
    "every USSD session breaks before each answer": (
        Replay(cut=True),
        frozenset({"ussd", "kiswahili"}),
    ),
}
# More of the same through each fault: in the hour before a release, not at every build.
MORE: Mapping[str, frozenset[str]] = {
    "every message of a phone comes twice": frozenset(
        {
            "smooth",
            "kiswahili",
            "late",
            "two-nurseries",
            "stop-start",
            "sown-again",
            "second-season",
            "officer-by-page",
        }
    ),
    "every text to a phone comes twice, its receipt two hours late": frozenset({"smooth"}),
    "every text takes three minutes, each way": frozenset({"kiswahili", "phone-off"}),
    "no receipt ever comes": frozenset({"crossed", "late"}),
}
ALL = "NURSERY_ALL_REPLAYS"
MATRIX = [
    (fault, name)
    for fault, (_, names) in REPLAYS.items()
    for name in sorted(names | (MORE.get(fault, frozenset()) if ALL in os.environ else set()))
]


@pytest.mark.parametrize(("fault", "name"), MATRIX)
def test_a_bad_network_leads_to_the_same_end(
    fault: str, name: str, as_written: AsWritten
) -> None:
    """All that the file expects holds, and what is kept of everybody in the end is the same."""
    replay, _ = REPLAYS[fault]
    assert play(read_season(SEASONS[name]), say_nothing, replay=replay) == as_written(name)
