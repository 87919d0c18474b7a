"""The thresholds and sources of official alerts, from a programme file and the settings."""

from dataclasses import replace
from datetime import timedelta
from pathlib import Path

import pytest

from assistant.alert_terms import Rules
from assistant.settings import Settings, SettingsError
from assistant.settings.reading import read_settings
from assistant.wiring.alerts import open_alert_rules, open_alert_sources, read_alert_rules


def programme(folder: Path, text: str) -> Path:
    path = folder / "programme.toml"
    path.write_text(text, encoding="utf-8")
    return path


def test_what_is_not_named_keeps_its_default(tmp_path: Path) -> None:
    """Also where the file has no such table, or there is no file."""
    assert read_alert_rules(programme(tmp_path, 'zone = "UTC"')) == Rules()
    assert open_alert_rules(Settings()) == Rules()


def test_thresholds_are_the_standards_words(tmp_path: Path) -> None:
    """In whatever capitals."""
    path = programme(
        tmp_path,
        """[alerts]
        categories = ["met", "Geo"]
        events = [" heavy rain ", "OET=OET-052"]
        severities = ["Extreme"]
        urgencies = ["immediate"]
        certainties = ["Observed", "Likely", "Possible"]
        hours_without_end = 12
        """,
    )
    assert read_alert_rules(path) == Rules(
        categories=frozenset({"Met", "Geo"}),
        events=("heavy rain", "OET=OET-052"),
        severities=frozenset({"Extreme"}),
        urgencies=frozenset({"Immediate"}),
        certainties=frozenset({"Observed", "Likely", "Possible"}),
        lasts=timedelta(hours=12),
    )


def test_all_faults_are_told_together_with_what_to_write(tmp_path: Path) -> None:
    """Each by its name."""
    path = programme(
        tmp_path,
        """[alerts]
        severities = ["Red"]
        urgencies = []
        certainties = "Likely"
        events = [""]
        hours_without_end = true
        colour = "red"
        """,
    )
    with pytest.raises(SettingsError) as told:
        read_alert_rules(path)
    for name in ("severities", "urgencies", "certainties", "events", "hours_without_end"):
        assert f"{name}: " in str(told.value)
    assert "colour is not known" in str(told.value) and "Extreme, Severe" in str(told.value)


def test_a_file_that_cannot_be_read_is_told(tmp_path: Path) -> None:
    """With its path."""
    with pytest.raises(SettingsError, match="programme.toml"):
        read_alert_rules(programme(tmp_path, "[alerts"))


def test_farmers_are_not_warned_of_rain_for_any_weather(tmp_path: Path) -> None:
    """Sent without asking needs the service's words for rain; drafted does not."""
    sent = replace(Settings(), alerts_then="sent")
    with pytest.raises(SettingsError, match="name the service's words"):
        open_alert_rules(sent)
    path = programme(tmp_path, '[alerts]\nevents = ["rain"]')
    assert open_alert_rules(replace(sent, programme_file=str(path))).events == ("rain",)


def test_sources_are_files_folders_and_addresses() -> None:
    """With commas between them."""
    wanted = "/var/alerts, https://weather.example.org/cap,,http://127.0.0.1:8000/a"
    settings = read_settings({"NURSERY_ALERTS_FROM": wanted})
    names = [source.name for source in open_alert_sources(settings)]
    assert names == [
        "/var/alerts",
        "https://weather.example.org/cap",
        "http://127.0.0.1:8000/a",
    ]


@pytest.mark.parametrize(
    "environment",
    [
        {"NURSERY_ALERTS_FROM": "http://weather.example.org/cap"},
        {"NURSERY_ALERTS_FROM": "ftp://weather.example.org/cap"},
        {"NURSERY_ALERTS_THEN": "shown"},
        {"NURSERY_ALERTS_EVERY_S": "0"},
    ],
)
def test_settings_that_cannot_be_used_are_refused(environment: dict[str, str]) -> None:
    """Before anything starts."""
    with pytest.raises(SettingsError, match="NURSERY_ALERTS"):
        read_settings(environment)
