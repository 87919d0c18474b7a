"""A nursery, its prompts, the outbox and the line, in any order of what can happen to them,
beside a small model of what must hold. Hypothesis looks for the order that breaks it."""

from collections import Counter
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import timedelta
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest
from hypothesis import HealthCheck, settings
from hypothesis import strategies as st
from hypothesis.stateful import (
    RuleBasedStateMachine,
    invariant,
    precondition,
    rule,
    run_state_machine_as_test,
)

from assistant.channel import Fate, Handover, Receipt
from assistant.dialogue.values import Kind
from assistant.reminders.values import State
from assistant.service.dispatch import dispatch, take_receipts
from assistant.service.pulse import hold_texts, let_texts_go
from assistant.service.tick import tick
from assistant.store import OutboxText, TextState
from tests.valley import AMINA, LEASE, NAIROBI, Staged, Valley, settle

SAID: dict[str, Handover | Exception] = {
    "accepts": Handover(Fate.ACCEPTED),
    "refuses": Handover(Fate.FAILED, "no such number"),
    "is busy": Handover(Fate.TRY_LATER, "503", rest=timedelta(seconds=20)),
    "is silent": Handover(Fate.TRY_LATER, "no answer", answered=False),
    "puts off": Handover(Fate.TRY_LATER, "later"),
    "breaks off": RuntimeError("killed between the hand-over and its record"),
}
WAITED = (timedelta(minutes=1), timedelta(minutes=20), timedelta(hours=5), timedelta(days=1))
ENDS = {TextState.DELIVERED, TextState.FAILED, TextState.EXPIRED, TextState.WITHDRAWN}


def sown(valley: Valley) -> None:
    """A farmer with a bed that is to be sown in nine days."""
    settle(valley)
    valley.enrol(AMINA)
    valley.plan(AMINA, "10/6")
    valley.leap("7 Jun 05:00")


_VALLEYS: Iterator[Valley] = iter(())  # the test puts them there


class Service(RuleBasedStateMachine):
    """What can happen; `valley` is set by who makes it."""

    valley: Valley

    def __init__(self) -> None:
        super().__init__()
        self.valley = next(_VALLEYS)
        self.stopped = self.held = False
        self.refused: set[str] = set()

    # --- what happens ------------------------------------------------------------------------

    @rule(by=st.sampled_from(WAITED))
    def the_clock_goes_on(self, by: timedelta) -> None:
        self.valley.now += by
        tick(self.valley.house, self.valley.now)

    @rule(says=st.sampled_from(sorted(SAID)))
    def texts_leave(self, says: str) -> None:
        """One look at the outbox, with what the operator says of the first text."""
        operator = self.valley.operator
        before = len(operator.offered)
        operator.answers = [SAID[says]]
        with self._killed(says):
            dispatch(self.valley.house, operator, self.valley.now, limit=10, lease=LEASE)
        offered = operator.offered[before:]
        held = [each for each in offered if not each.text.startswith("Stopped.")]
        assert not (self.held and held), "a text left while all but a STOP's answer were held"
        assert not self.refused & {each.message_id for each in offered}
        if says == "refuses" and offered:
            self.refused.add(offered[0].message_id)
        operator.answers = []

    @contextmanager
    def _killed(self, says: str) -> Iterator[None]:
        if says == "breaks off":
            try:
                yield
            except RuntimeError:  # what was claimed comes back when its lease is over
                return
        else:
            yield

    @rule(fate=st.sampled_from((Fate.DELIVERED, Fate.FAILED)), late=st.booleans())
    def receipts_come(self, fate: Fate, late: bool) -> None:
        """Of all that was taken, twice, the last first where they are late."""
        taken = self.valley.operator.delivered[-4:]
        order = taken[::-1] if late else taken
        told = [Receipt(each.message_id, fate, self.valley.now) for each in order] * 2
        if told:
            take_receipts(self.valley.house, told, self.valley.now)

    @rule(words=st.sampled_from(("1", "2", "HELP", "MENU", "thank you", "not yet", "done")))
    def she_writes(self, words: str) -> None:
        self.valley.post(AMINA, words)

    @rule()
    def she_stops(self) -> None:
        self.valley.post(AMINA, "STOP")
        self.stopped = True

    @precondition(lambda self: self.stopped)
    @rule()
    def she_starts_again(self) -> None:
        self.valley.post(AMINA, "START")
        with self.valley.house.store.look() as work:
            farmer = work.people.farmer(AMINA)
        assert farmer is not None
        self.stopped = farmer.stopped_at is not None

    @rule()
    def all_is_held(self) -> None:
        hold_texts(self.valley.house, "a trial", self.valley.now)
        self.held = True

    @rule()
    def all_is_let_go(self) -> None:
        let_texts_go(self.valley.house)
        self.held = False

    # --- what holds --------------------------------------------------------------------------

    @invariant()
    def every_text_is_in_a_state_that_it_can_be_in(self) -> None:
        for text in self._texts():
            assert (text.ended_at is not None) == (
                text.state in ENDS - {TextState.DELIVERED}
            ), text
            assert text.state is not TextState.DELIVERED or text.accepted_at, text
            assert text.not_after > text.created_at, text

    @invariant()
    def nobody_who_stopped_has_a_task_waiting(self) -> None:
        if self.stopped:
            waiting = [text.kind for text in self._texts() if text.state is TextState.WAITING]
            assert not {Kind.PROMPT, Kind.SECOND} & set(waiting)

    @invariant()
    def no_day_has_two_texts_of_its_tasks_that_arrived(self) -> None:
        zone = ZoneInfo(NAIROBI)
        days = Counter(
            text.created_at.astimezone(zone).date()
            for text in self._texts()
            if text.kind is Kind.PROMPT and text.state is TextState.DELIVERED
        )
        assert all(count == 1 for count in days.values()), days

    @invariant()
    def the_plan_is_whole(self) -> None:
        """One row a task and day; what was said names its text; sown before uncovered."""
        with self.valley.house.store.look() as work:
            farmer = work.people.farmer(AMINA)
            assert farmer is not None
            for bed in work.nurseries.of_farmer(farmer.id, open_only=False):
                story = work.reminders.of_nursery(bed.id)
                keys = [(each.task, each.day) for each in story]
                assert len(keys) == len(set(keys))
                for each in story:
                    assert each.state is not State.SENT or each.message_id, each
                    missed = each.asked > 0  # its text never left: the next one says so
                    assert each.due_at < each.not_after or missed, each
                assert not bed.uncovered or bed.sown or bed.sow_assumed, bed

    def _texts(self) -> tuple[OutboxText, ...]:
        with self.valley.house.store.look() as work:
            return work.outbox.of_phone(AMINA)

    def teardown(self) -> None:
        self.valley.house.store.close()


def test_any_order_of_what_can_happen_leaves_all_whole(
    staged: Staged, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Each try begins with a valley of its own."""

    def valleys() -> Iterator[Valley]:
        while True:
            yield staged(sown)

    monkeypatch.setitem(globals(), "_VALLEYS", valleys())
    run_state_machine_as_test(
        Service,
        settings=settings(
            max_examples=2,
            stateful_step_count=10,
            deadline=None,
            suppress_health_check=list(HealthCheck),
        ),
    )
