"""What a programme sets on a page: said there it goes before the programme file, and that
before the environment. What can be reached only by who runs the machine is not among it, nor
what holds a lead back (two leads for thousands of letters)."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime, time
from enum import StrEnum
from zoneinfo import ZoneInfo

from assistant.people import LANGUAGES
from assistant.reminders.plan import Hours, local
from assistant.service.audit import TrailAct, note
from assistant.service.desk.village_office import Helpers
from assistant.service.house import House, Part, SettingOrigin
from assistant.service.nearby import KEYS
from assistant.service.sight import Sight
from assistant.settings import SettingsError
from assistant.store import Work

GROUPS: Mapping[str, tuple[str, ...]] = {
    "hours": ("prompt_at", "second_at", "quiet_from", "quiet_until"),
    "languages": ("languages",),
    "name": ("programme", *KEYS),
    "price": ("price_per_segment", "currency"),
    "seasons": ("season_months",),
    "limits": (
        "day_segments",
        "month_money",
        "village_segments",
        "village_month_money",
        "officer_day_texts",
        "officer_month_texts",
        "strangers_hour_answers",
    ),
    "alerts": (
        "alerts_events",
        "alerts_severities",
        "alerts_urgencies",
        "alerts_certainties",
        "alerts_from",
    ),
}
_CLOCK = re.compile(r"(\d{1,2})(?:[:.h](\d\d))?")


class NotSet(StrEnum):
    """Why nothing was changed."""

    UNFIT = "unfit"
    SPOKEN = "spoken"


@dataclass(frozen=True)
class Setting:
    """One setting as it stands: its value as it is written, and who says it; `outside` is what
    it would be without the page."""

    name: str
    value: str
    origin: SettingOrigin
    outside: str


@dataclass(frozen=True)
class SettingsPage:
    """All of them by group, and which languages nobody may take away."""

    groups: Mapping[str, tuple[Setting, ...]]
    spoken: frozenset[str]

    @property
    def values(self) -> Mapping[str, str]:
        """What is in force, by name."""
        return {each.name: each.value for group in self.groups.values() for each in group}

    def by_page(self, group: str) -> bool:
        """Whether the page says something of a group."""
        return any(each.origin is SettingOrigin.PAGE for each in self.groups[group])


def settings_page(house: House, sight: Sight) -> SettingsPage | None:
    """The page; None for anybody but a lead, and where no page may set anything."""
    if not sight.officer.is_lead or house.refit is None:
        return None
    with house.store.look() as work:
        said, spoken = work.running.settings(), work.people.languages()
    now, outside = _written(house), _written(house.refit(house, {}))
    groups = {
        group: tuple(
            Setting(name, now[name], _origin(house, name, said), outside[name])
            for name in names
        )
        for group, names in GROUPS.items()
    }
    return SettingsPage(groups, spoken)


def _origin(house: House, name: str, said: Mapping[str, str]) -> SettingOrigin:
    return (
        SettingOrigin.PAGE if name in said else house.said_by.get(name, SettingOrigin.BUILT_IN)
    )


def _groups(house: House) -> frozenset[str]:
    """Those of the parts that there are."""
    return frozenset(GROUPS) - (frozenset() if Part.ALERTS in house.parts else {"alerts"})


def set_group(
    house: House, sight: Sight, group: str, typed: Mapping[str, str], now: datetime
) -> House | NotSet | None:
    """Says what a group of settings is; what is empty, or as it is anyway, the page says no
    more. The house as it then is; None for anybody but a lead, and for no such group."""
    if not sight.officer.is_lead or house.refit is None or group not in _groups(house):
        return None
    outside = _written(house.refit(house, {}))
    wanted = {name: _tidy(name, typed.get(name, "")) for name in GROUPS[group]}
    pages = {name: said for name, said in wanted.items() if said not in ("", outside[name])}
    with house.store.work() as work:
        others = {
            name: said
            for name, said in work.running.settings().items()
            if name not in GROUPS[group]
        }
        changed = _changed(house, {**others, **pages}, pages)
        if isinstance(changed, NotSet):
            return changed
        if work.people.languages() & set(house.languages) - set(changed.languages):
            return NotSet.SPOKEN
        for name in GROUPS[group]:
            work.running.set(name, pages.get(name))
        _note(work, sight, house, changed, group, now)
        if _day(changed.hours) != _day(house.hours):
            _move_prompts(work, changed, now)
    house.store.changes += 1
    return changed


def _changed(house: House, said: Mapping[str, str], pages: Mapping[str, str]) -> House | NotSet:
    helpers = {key: pages.get(key, "") for key in KEYS}
    if house.refit is None or not Helpers(**helpers).fit:
        return NotSet.UNFIT
    try:
        return house.refit(house, said)
    except SettingsError:
        return NotSet.UNFIT


def _note(
    work: Work, sight: Sight, before: House, after: House, group: str, now: datetime
) -> None:
    old, new = _written(before), _written(after)
    moved = [
        f"{name}: {old[name] or '-'} -> {new[name] or '-'}"
        for name in GROUPS[group]
        if old[name] != new[name]
    ]
    if moved:
        note(work, sight.officer.id, TrailAct.SETTING_CHANGED, now, detail="; ".join(moved))


def _day(hours: Hours) -> tuple[time, time]:
    """What the moments of a planned task are made of."""
    return hours.prompt, hours.quiet_from


def _move_prompts(work: Work, house: House, now: datetime) -> None:
    """What is planned already leaves at the new hour too, from the first day whose old and new
    hour are both to come; today's texts may be on their way."""
    zones = {each.zone for each in work.people.villages()} | {house.zone}
    for zone in sorted(zones):
        today = now.astimezone(ZoneInfo(zone)).date()
        days = [day for day in work.reminders.planned_days(today) if day > today]
        hours = {
            day: (
                local(day, house.hours.prompt, zone),
                local(day, house.hours.quiet_from, zone),
            )
            for day in days
        }
        if hours:
            work.reminders.move_hours(zone, house.zone, hours)


# --- as they are written ---------------------------------------------------------------------


def _written(house: House) -> dict[str, str]:
    """What is in force, written as the environment has it."""
    hours, tariff, rules = house.hours, house.tariff, house.alert_rules
    near = house.phonebook.programme
    return {
        "programme": house.programme,
        **{key: getattr(near, key) for key in KEYS},
        "languages": ",".join(house.languages),
        "prompt_at": f"{hours.prompt:%H:%M}",
        "second_at": f"{hours.second:%H:%M}",
        "quiet_from": f"{hours.quiet_from:%H:%M}",
        "quiet_until": f"{hours.quiet_until:%H:%M}",
        "price_per_segment": f"{tariff.per_segment}" if tariff else "",
        "currency": tariff.currency if tariff else "",
        "season_months": ",".join(map(str, house.season_months)),
        "day_segments": str(house.day_segments),
        "month_money": str(house.month_money),
        "village_segments": str(house.village_segments),
        "village_month_money": str(house.village_month_money),
        "officer_day_texts": str(house.officer_day_texts),
        "officer_month_texts": str(house.officer_month_texts),
        "strangers_hour_answers": str(house.strangers_hour_answers),
        "alerts_events": ", ".join(rules.events),
        "alerts_severities": _list(rules.severities),
        "alerts_urgencies": _list(rules.urgencies),
        "alerts_certainties": _list(rules.certainties),
        "alerts_from": "\n".join(house.alerts_from),
    }


def _list(words: frozenset[str]) -> str:
    return ", ".join(sorted(words))


def _tidy(name: str, typed: str) -> str:
    """What was typed, as it is written: hours of two digits, languages in their known order."""
    said = typed.strip()
    if name in GROUPS["hours"] and (found := _CLOCK.fullmatch(said)):
        return f"{int(found[1]):02}:{found[2] or '00'}"
    if name == "languages":
        return ",".join(code for code in said.split(",") if code in LANGUAGES) or said
    if name.startswith("alerts_") and name != "alerts_from":
        return ", ".join(filter(None, (each.strip() for each in said.split(","))))
    if name == "alerts_from":
        return "\n".join(said.split())
    return " ".join(said.split())
