"""The parts that a deployment may leave out, and the one place of the wiring that opens them.

They are opened by name and nowhere imported, so that a start without them loads nothing of
them, and a package whose folders were taken out starts all the same.
"""

from importlib import import_module
from importlib.util import find_spec
from typing import Any

from assistant.alert_terms import Rules
from assistant.service.house import CheckAlert, Part
from assistant.settings import Settings, SettingsError

_HOMES = {Part.ALERTS: "assistant.alerts", Part.LISTS: "assistant.service.lists"}


def parts_of(settings: Settings) -> frozenset[Part]:
    """The parts that a deployment has.

    Raises:
        SettingsError: one is set and is not installed here.
    """
    found = frozenset(map(Part, settings.parts))
    gone = sorted(part for part in found if find_spec(_HOMES[part]) is None)
    if gone:
        raise SettingsError(
            f"NURSERY_PARTS: {', '.join(gone)} is not installed here; set those that are "
            f"({', '.join(sorted(found - set(gone))) or 'none'})"
        )
    return found


def alerts() -> Any:
    """`wiring.alerts`; only for who has them."""
    return import_module("assistant.wiring.alerts")


def alert_rules(settings: Settings) -> Rules:
    """The thresholds that are set; the defaults, which nothing asks for, without alerts."""
    if Part.ALERTS not in parts_of(settings):
        return Rules()
    rules: Rules = alerts().open_alert_rules(settings)
    return rules


def alert_check(settings: Settings) -> CheckAlert | None:
    """The check of signatures; None where there is none."""
    if Part.ALERTS not in parts_of(settings):
        return None
    check: CheckAlert | None = alerts().open_alert_keys(settings)
    return check
