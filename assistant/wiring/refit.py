"""What a page may set, joined with what the programme file and the machine say."""

from collections.abc import Mapping
from dataclasses import fields, replace
from datetime import timedelta
from pathlib import Path
from urllib.parse import urlsplit

from assistant.alert_terms import Rules
from assistant.channel import Tariff
from assistant.dialogue.values import Nearby
from assistant.people import LANGUAGES, LONGEST_NAME
from assistant.reminders.plan import Hours
from assistant.service.house import House, Part, Refit, SettingOrigin
from assistant.service.nearby import KEYS
from assistant.settings import Settings, SettingsError
from assistant.settings.reading import layered
from assistant.wiring.catalogues import open_catalogue
from assistant.wiring.parts import alerts, parts_of
from assistant.wiring.programme import read_programme

MOST_SOURCES = 5


def refit_of(settings: Settings, base: House) -> Refit:
    """How the house of these settings becomes that of what a page says."""
    book, rules = base.phonebook, base.alert_rules

    def refit(house: House, said: Mapping[str, str]) -> House:
        now = layered(settings, said)
        nearby = {key: said.get(key) or getattr(book.programme, key) for key in KEYS}
        return replace(
            house,
            programme=_name(said["programme"]) if "programme" in said else now.programme,
            languages=_spoken(now.languages),
            catalogues={
                code: house.catalogues.get(code) or open_catalogue(code)
                for code in now.languages
            },
            hours=Hours(now.prompt_at, now.second_at, now.quiet_from, now.quiet_until),
            replies_free=now.replies_free,
            tariff=tariff_of(now),
            season_months=now.season_months,
            phonebook=replace(book, programme=Nearby(**nearby)),
            alarm_next=timedelta(minutes=now.alarm_next_minutes),
            day_segments=now.day_segments,
            month_money=now.month_money,
            village_segments=now.village_segments,
            village_month_money=now.village_month_money,
            officer_day_texts=now.officer_day_texts,
            officer_month_texts=now.officer_month_texts,
            strangers_hour_answers=now.strangers_hour_answers,
            alert_rules=(
                alerts().with_said(rules, said) if Part.ALERTS in base.parts else rules
            ),
            alerts_from=_addresses(said.get("alerts_from", "")),
        )

    return refit


def tariff_of(settings: Settings) -> Tariff | None:
    """What a segment costs; None where nobody said it."""
    if not settings.price_per_segment:
        return None
    return Tariff(settings.price_per_segment, settings.currency)


def said_by(settings: Settings) -> Mapping[str, SettingOrigin]:
    """Who says each setting outside of the pages; what is not named is built in."""
    found = {
        each.name: SettingOrigin.MACHINE
        for each in fields(Settings)
        if getattr(settings, each.name) != each.default
    }
    if not settings.programme_file:
        return found
    path = Path(settings.programme_file)
    programme = read_programme(path)
    has_alerts = Part.ALERTS in parts_of(settings)
    rules = alerts().read_alert_rules(path) if has_alerts else Rules()
    costs = programme.tariff is not None and programme.tariff == tariff_of(settings)
    said = {
        "programme": programme.name == settings.programme != Settings.programme,
        "price_per_segment": costs,
        "currency": costs,
        **{key: bool(getattr(programme.phonebook.programme, key)) for key in KEYS},
        **{
            f"alerts_{key}": value != getattr(Rules(), key)
            for key, value in vars(rules).items()
        },
    }
    return {**found, **{name: SettingOrigin.FILE for name, is_so in said.items() if is_so}}


def _name(name: str) -> str:
    if not 0 < len(name.strip()) <= LONGEST_NAME:
        raise SettingsError(f"programme: write up to {LONGEST_NAME} letters")
    return name.strip()


def _spoken(codes: tuple[str, ...]) -> tuple[str, ...]:
    unknown = [code for code in codes if code not in LANGUAGES]
    if unknown:
        raise SettingsError(f"languages: set some of {', '.join(LANGUAGES)}")
    return codes


def _addresses(text: str) -> tuple[str, ...]:
    """A page reaches out by https to names only: files of the machine, and addresses of the
    house's own net, are for who runs it.

    Raises:
        SettingsError: something else is among them, or they are too many.
    """
    found = tuple(dict.fromkeys(text.split()))
    if len(found) > MOST_SOURCES or not all(map(_outside, found)):
        raise SettingsError(f"alerts_from: at most {MOST_SOURCES} https addresses, by name")
    return found


def _outside(address: str) -> bool:
    try:
        parts = urlsplit(address)
        host = parts.hostname or ""
    except ValueError:
        return False
    by_name = "." in host and not host.rpartition(".")[2].isdigit()
    return parts.scheme == "https" and by_name and not parts.username and len(address) <= 500
