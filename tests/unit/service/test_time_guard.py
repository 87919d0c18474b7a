"""A clock that jumps is not acted on until somebody else bears it out."""

from datetime import datetime, timedelta

import pytest

from assistant.service.time_guard import TimeGuard, clock_is_right
from tests.valley import Valley

MINUTE, HOUR, DAY = timedelta(minutes=1), timedelta(hours=1), timedelta(days=1)


class Machine:
    """A computer whose clock can be set, beside an operator whose clock may be read."""

    def __init__(self, valley: Valley) -> None:
        self.house, self.true_now = valley.house, valley.now
        self.off = timedelta(0)
        self.operator_tells = True
        self.restart()

    def restart(self) -> None:
        """Another process, which knows only what the database does."""
        self.guard = TimeGuard(self.house, self._steady_s, self._operator)

    def _steady_s(self) -> float:
        return self.true_now.timestamp() - 1_000_000

    def _operator(self) -> datetime | None:
        return self.true_now if self.operator_tells else None

    @property
    def now(self) -> datetime:
        """What the machine's clock says."""
        return self.true_now + self.off

    def acts(self, later: timedelta = MINUTE) -> bool:
        """Whether it acts some time later."""
        self.true_now += later
        if not self.guard.may_act(self.now):
            return False
        self.guard.keep(self.now)
        return True


@pytest.fixture
def machine(valley: Valley) -> Machine:
    """It has acted for a minute."""
    found = Machine(valley)
    assert found.acts() and found.acts()
    return found


JUMPS = [400 * timedelta(seconds=1), 2 * HOUR, DAY, 90 * DAY]


@pytest.mark.parametrize("jump", [*JUMPS, *(-each for each in JUMPS)])
@pytest.mark.parametrize("tells", [True, False])
def test_a_jump_is_not_acted_on_and_the_right_time_is(
    machine: Machine, jump: timedelta, tells: bool, caplog: pytest.LogCaptureFixture
) -> None:
    """Either way, by minutes or months, whether or not the operator's clock can be read."""
    machine.operator_tells = tells
    machine.off = jump
    assert not machine.acts()
    assert "nothing is done" in caplog.text
    assert not machine.acts()
    machine.off = timedelta(0)
    assert machine.acts()


@pytest.mark.parametrize("jump", [400 * timedelta(seconds=1), 90 * DAY])
def test_a_process_that_starts_with_a_wrong_clock_is_not_believed(
    machine: Machine, jump: timedelta
) -> None:
    """A computer that slept, or whose battery is dead: the operator knows better."""
    machine.off = jump
    machine.restart()
    assert not machine.acts()


def test_a_machine_that_stood_still_for_days_goes_on_where_the_operator_agrees(
    machine: Machine,
) -> None:
    """The time is right, and much of it has passed."""
    machine.restart()
    assert machine.acts(5 * DAY)


def test_without_the_operators_clock_a_night_is_believed_and_days_are_not(
    machine: Machine,
) -> None:
    """Then a person says that the clock is right."""
    machine.operator_tells = False
    machine.restart()
    assert machine.acts(10 * HOUR)
    machine.restart()
    assert not machine.acts(5 * DAY)
    clock_is_right(machine.house, machine.now)
    assert machine.acts()


def test_a_clock_that_drifts_is_followed(machine: Machine) -> None:
    """A second a minute, all day."""
    for _ in range(600):
        machine.off += timedelta(seconds=1)
        assert machine.acts()
