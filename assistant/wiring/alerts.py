"""Official alerts of a deployment: its sources, its thresholds, and what follows by itself."""

import tomllib
from collections.abc import Callable, Mapping
from dataclasses import replace
from datetime import timedelta
from pathlib import Path
from typing import Any

from assistant.alert_terms import CATEGORIES, CERTAINTIES, SEVERITIES, URGENCIES, Rules
from assistant.alert_watch import AlertWatch
from assistant.alerts.sources import AlertSource
from assistant.gateways.alert_address import AlertAddress
from assistant.gateways.alert_files import AlertFiles
from assistant.service.house import House
from assistant.settings import Settings, SettingsError
from assistant.wiring.alert_keys import open_alert_keys
from assistant.worker import wall_clock

__all__ = ["open_alert_keys", "open_alert_rules", "open_alert_sources", "open_watch"]

MOST_HOURS = 72  # an alert without an end does not hold for longer
LONGEST_EVENT = 60
Read = Callable[[object], object]


def open_alert_sources(settings: Settings) -> tuple[AlertSource, ...]:
    """The files, folders and addresses that alerts are read from."""
    return tuple(
        AlertAddress(place, timeout_s=settings.gateway_timeout_s)
        if "://" in place
        else AlertFiles(Path(place))
        for place in settings.alerts_from
    )


def open_added(house: House, timeout_s: float) -> tuple[AlertSource, ...]:
    """The addresses that a page added."""
    return tuple(AlertAddress(place, timeout_s=timeout_s) for place in house.alerts_from)


def open_watch(house: House, settings: Settings, wake: Callable[[], None]) -> AlertWatch:
    """What looks for alerts: at the sources of the machine, and those that a page adds."""
    return AlertWatch(
        house,
        open_alert_sources(settings),
        every_s=settings.alerts_every_s,
        wake=wake,
        clock=wall_clock,
        more=lambda now: open_added(now, settings.gateway_timeout_s),
    )


def open_alert_rules(settings: Settings) -> Rules:
    """The thresholds of the programme file, or the defaults.

    Raises:
        SettingsError: lists every entry of [alerts] that cannot be used; or alerts are to be
            sent without asking and no events are named.
    """
    rules = Rules()
    if settings.programme_file:
        rules = read_alert_rules(Path(settings.programme_file))
    if settings.alerts_then == "sent" and not rules.events:
        raise SettingsError(
            "NURSERY_ALERTS_THEN=sent warns farmers of rain without asking: name the service's "
            'words for it in the programme file first, [alerts] events = ["heavy rain"]'
        )
    return rules


def read_alert_rules(path: Path) -> Rules:
    """The table [alerts] of a programme file; what is not named keeps its default.

    Raises:
        SettingsError: lists every entry that cannot be used.
    """
    try:
        table = tomllib.loads(path.read_text(encoding="utf-8")).get("alerts", {})
    except (OSError, UnicodeDecodeError, tomllib.TOMLDecodeError) as fault:
        raise SettingsError(f"NURSERY_PROGRAMME_FILE={path}: {fault}") from fault
    given, faults = _given(table if isinstance(table, Mapping) else {"alerts": table})
    if faults:
        raise SettingsError(f"NURSERY_PROGRAMME_FILE={path}: [alerts] " + "; ".join(faults))
    return Rules(**given)


def with_said(rules: Rules, said: Mapping[str, str]) -> Rules:
    """Thresholds with what a page says of some of them, its words with commas between.

    Raises:
        SettingsError: lists what cannot be used.
    """
    entries = ("events", "severities", "urgencies", "certainties")
    table = {name: said[f"alerts_{name}"] for name in entries if f"alerts_{name}" in said}
    lists = {name: [e.strip() for e in text.split(",")] for name, text in table.items()}
    given, faults = _given(lists)
    if faults:
        raise SettingsError("; ".join(faults))
    return replace(rules, **given)


def _given(table: Mapping[str, Any]) -> tuple[dict[str, Any], list[str]]:
    given: dict[str, Any] = {}
    faults: list[str] = []
    for name, value in table.items():
        if name not in _ENTRIES:
            faults.append(f"{name} is not known; known are {', '.join(_ENTRIES)}")
            continue
        field, read = _ENTRIES[name]
        try:
            given[field] = read(value)
        except ValueError as fault:
            faults.append(f"{name}: {fault}")
    return given, faults


def _some_of(*words: str) -> Read:
    """Reads a list of the standard's words, in whatever capitals."""
    known = {word.casefold(): word for word in words}

    def read(value: object) -> frozenset[str]:
        if not isinstance(value, list) or not value:
            raise ValueError(f"write a list of some of {', '.join(words)}")
        unknown = [each for each in value if str(each).casefold() not in known]
        if unknown:
            raise ValueError(f"no {unknown}; write some of {', '.join(words)}")
        return frozenset(known[str(each).casefold()] for each in value)

    return read


def _events(value: object) -> tuple[str, ...]:
    fine = isinstance(value, list) and all(
        isinstance(each, str) and 0 < len(each.strip()) <= LONGEST_EVENT for each in value
    )
    if not fine or not isinstance(value, list):
        raise ValueError('write a list of words, such as ["heavy rain", "thunderstorm"]')
    return tuple(each.strip() for each in value)


def _hours(value: object) -> timedelta:
    fine = isinstance(value, int) and not isinstance(value, bool)
    if not fine or not isinstance(value, int) or not 1 <= value <= MOST_HOURS:
        raise ValueError(f"write a whole number of hours from 1 to {MOST_HOURS}")
    return timedelta(hours=value)


_ENTRIES: Mapping[str, tuple[str, Read]] = {
    "categories": ("categories", _some_of(*CATEGORIES)),
    "events": ("events", _events),
    "severities": ("severities", _some_of(*SEVERITIES)),
    "urgencies": ("urgencies", _some_of(*URGENCIES)),
    "certainties": ("certainties", _some_of(*CERTAINTIES)),
    "hours_without_end": ("lasts", _hours),
}
