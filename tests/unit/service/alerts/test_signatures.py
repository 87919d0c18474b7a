"""What follows an official alert by itself where keys are set: only what one of them signed."""

from dataclasses import replace
from pathlib import Path

import pytest

from assistant.settings.reading import read_settings
from assistant.store import Became
from assistant.wiring.alert_keys import open_alert_keys
from assistant.wording import messages_officer as o
from assistant.wording import messages_talk as m
from tests.seals import kept, key_of, signed
from tests.unit.service.alerts.test_alerts import (
    FIRST,
    drafted,
    first,
    later,
    standing,
    take,
    to_two_beds,
)
from tests.valley import AMINA, KIJANI, OFFICER, Staged, Valley, like

OURS, OTHERS = key_of("Lindara weather service"), key_of("Somebody")


@pytest.fixture
def keyed(staged: Staged, tmp_path: Path) -> Valley:
    """Two beds in danger, alerts that are sent at once, and the key of their service."""
    valley = staged(to_two_beds)
    keys = open_alert_keys(read_settings({"NURSERY_ALERTS_KEYS": kept(OURS, tmp_path)}))
    valley.house = replace(valley.house, alerts_go_out=True, check_alert=keys)
    return valley


def test_what_the_services_key_signed_is_sent_at_once(keyed: Valley) -> None:
    """And it is kept whose key that was."""
    alert = take(keyed, signed(first(), OURS))
    assert alert and (alert.became, alert.sealed_by) == (Became.SENT, OURS_NAME)
    keyed.send()
    assert keyed.heard(AMINA) == [like(m.WARNING, ...)]


OURS_NAME = "Lindara weather service"
OTHERWISE = {
    "not signed": (first(), None),
    "changed on its way": (signed(first(), OURS).replace(b"Severe", b"Extreme"), ""),
    "signed by somebody": (signed(first(), OTHERS), ""),
}


@pytest.mark.parametrize("what", OTHERWISE)
def test_anything_else_waits_for_the_officer(keyed: Valley, what: str) -> None:
    """It is drafted: it may be true, and a person can ask the service."""
    raw, seal = OTHERWISE[what]
    alert = take(keyed, raw)
    assert alert and (alert.became, alert.sealed_by) == (Became.DRAFTED, seal)
    assert alert.is_forged is (seal == "") and len(drafted(keyed)) == 1
    keyed.send()
    assert keyed.heard(AMINA) == [] and keyed.heard(OFFICER) == [like(o.ALERT_DRAFTED)]


def test_a_forged_cancel_ends_no_warning(keyed: Valley) -> None:
    """Nor does it stand in the way of the true one, which bears the same name."""
    take(keyed, signed(first(), OURS))
    keyed.send()
    cancel = later("Cancel", 2, FIRST)
    forged = take(keyed, signed(cancel, OTHERS))
    assert forged and forged.is_forged and standing(keyed, KIJANI.id) == 1
    true = take(keyed, signed(cancel, OURS))
    assert true and true.sealed_by == OURS_NAME and standing(keyed, KIJANI.id) == 0
    assert take(keyed, signed(cancel, OURS) + b"\n") is None


def test_a_cancel_without_a_signature_leaves_the_end_to_the_officer(keyed: Valley) -> None:
    """As it is where alerts are drafted."""
    take(keyed, signed(first(), OURS))
    keyed.send()
    keyed.heard(OFFICER)
    take(keyed, later("Cancel", 2, FIRST))
    keyed.send()
    assert standing(keyed, KIJANI.id) == 1
    assert keyed.heard(OFFICER) == [like(o.ALERT_OVER)]
