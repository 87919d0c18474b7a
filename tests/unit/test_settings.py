"""The settings of a deployment: read once, all faults told together with what to set."""

from dataclasses import fields, replace
from datetime import time

import pytest

from assistant.settings import Settings, SettingsError
from assistant.settings.kinds import is_zone
from assistant.settings.reading import read_settings

# what is set: the field and its value
READ = {
    ("NURSERY_ZONE", "Africa/Nairobi"): ("zone", "Africa/Nairobi"),
    ("NURSERY_REGION", "in-wb"): ("region", "IN-WB"),
    ("NURSERY_LANGUAGES", "sw, en"): ("languages", ("sw", "en")),
    ("NURSERY_PROMPT_AT", "07:15"): ("prompt_at", time(7, 15)),
    ("NURSERY_URGENT_BREAKS_QUIET", "No"): ("urgent_breaks_quiet", False),
    ("NURSERY_PORT", "80"): ("port", 80),
    ("NURSERY_CURRENCY", "kes"): ("currency", "KES"),
    ("NURSERY_SEASON_MONTHS", "10, 3"): ("season_months", (3, 10)),
    ("NURSERY_WORKER_PAUSE_S", "0.5"): ("worker_pause_s", 0.5),
    ("NURSERY_SENDER", "+447700900999"): ("sender", "+447700900999"),
    ("NURSERY_DATABASE_URL", "postgresql://x"): ("database_url", "postgresql://x"),
}


def test_what_is_not_set_keeps_its_default() -> None:
    """And what is not ours is not read."""
    assert read_settings({"PATH": "/bin", "NURSERY_UNKNOWN": "x"}) == Settings()


@pytest.mark.parametrize(("given", "expected"), READ.items(), ids=lambda row: str(row))
def test_a_setting_is_read(given: tuple[str, str], expected: tuple[str, object]) -> None:
    """One changes, the others stay."""
    name, value = expected
    assert read_settings(dict([given])) == replace(Settings(), **{name: value})  # type: ignore[arg-type]


# what is set wrongly: a word of what to set
FAULTY = {
    ("NURSERY_ZONE", "Africa"): "Africa/Nairobi",  # a folder of zones
    ("NURSERY_ZONE", "Nairobi"): "Africa/Nairobi",
    ("NURSERY_ZONE", "../../etc/passwd"): "Africa/Nairobi",
    ("NURSERY_ZONE", "x" * 5000): "Africa/Nairobi",
    ("NURSERY_REGION", "Kenya"): "KE",
    ("NURSERY_LANGUAGES", ""): "en,sw",
    ("NURSERY_LANGUAGES", "en;sw"): "en,sw",
    ("NURSERY_PROMPT_AT", "6 am"): "06:00",
    ("NURSERY_PROMPT_AT", "25:00"): "06:00",
    ("NURSERY_PROMPT_AT", "06:00+03:00"): "06:00",
    ("NURSERY_PROMPT_AT", "21:00"): "in the order of the day",  # in the quiet hours
    ("NURSERY_QUIET_FROM", "01:00"): "in the order of the day",
    ("NURSERY_URGENT_BREAKS_QUIET", "1"): "yes or no",
    ("NURSERY_PRICE_PER_SEGMENT", "a shilling"): "0.80",
    ("NURSERY_PRICE_PER_SEGMENT", "nan"): "0.80",
    ("NURSERY_PRICE_PER_SEGMENT", "-1"): "0.80",
    ("NURSERY_PRICE_PER_SEGMENT", "0.80"): "NURSERY_CURRENCY",
    ("NURSERY_CURRENCY", "shilling"): "KES",
    ("NURSERY_SEASON_MONTHS", "0,7"): "3,10",
    ("NURSERY_SEASON_MONTHS", "March"): "3,10",
    ("NURSERY_GATEWAY_SECRET", "x"): "openssl rand -hex 32",
    ("NURSERY_GATEWAY_URL", "http://operator.example/"): "https address",
    ("NURSERY_HOST", "0.0.0.0"): "NURSERY_WEB_HTTPS=yes",
    ("NURSERY_WEB_HTTPS", "yes"): "NURSERY_WEB_HOSTS",
    ("NURSERY_WEB_HOSTS", "https://nursery.example"): "without https://",
    ("NURSERY_PORT", "eighty"): "a number",
    ("NURSERY_PORT", "99999"): "65535",
    ("NURSERY_PORT", "-1"): "above 0",
    ("NURSERY_WORKER_PAUSE_S", "nan"): "above 0",
    ("NURSERY_WORKER_PAUSE_S", "inf"): "above 0",
    ("NURSERY_LEASE_S", "0"): "above 0",
    ("NURSERY_SCREEN_UCS2", "10"): "40 or more",
    ("NURSERY_SENDER", "NURSERY"): "can be answered",
    ("NURSERY_SENDER", "+12"): "can be answered",
}


@pytest.mark.parametrize(("given", "says"), FAULTY.items(), ids=lambda row: str(row)[:50])
def test_a_faulty_setting_is_told_with_what_to_set(given: tuple[str, str], says: str) -> None:
    """By its name."""
    with pytest.raises(SettingsError) as told:
        read_settings(dict([given]))
    assert given[0] in str(told.value) or says.startswith("NURSERY_")
    assert says in str(told.value)


def test_all_faults_are_told_together() -> None:
    """Mended in one go."""
    environment = {"NURSERY_ZONE": "x", "NURSERY_PORT": "y", "NURSERY_LANGUAGES": ","}
    with pytest.raises(SettingsError) as told:
        read_settings(environment)
    lines = str(told.value).splitlines()
    assert [line.split("=")[0].strip() for line in lines[1:]] == [
        "NURSERY_ZONE",
        "NURSERY_LANGUAGES",
        "NURSERY_PORT",
    ]


def test_what_is_well_is_held_against_the_rest_beside_a_fault() -> None:
    """A setting that cannot be read hides nothing that is wrong between the others."""
    given = {"NURSERY_ZONE": "x", "NURSERY_PROMPT_AT": "21:00", "NURSERY_MONTH_MONEY": "5"}
    with pytest.raises(SettingsError) as told:
        read_settings(given)
    words = ("Africa/Nairobi", "in the order of the day", "NURSERY_PRICE_PER_SEGMENT too")
    assert all(each in str(told.value) for each in words)


def test_every_setting_is_read_or_told_in_our_words_whatever_bytes_it_has() -> None:
    """Also one that is added; Python gives what is no UTF-8 in an environment as half
    characters."""
    for each in fields(Settings):
        name = f"NURSERY_{each.name.upper()}"
        try:
            assert getattr(read_settings({name: "\udcff"}), each.name) in (
                "\udcff",
                ("\udcff",),
            )
        except SettingsError as told:
            assert f"{name}=" not in str(told) or ": set " in str(told)


def test_secrets_are_not_shown() -> None:
    """Not where settings are printed."""
    settings = read_settings(
        {
            "NURSERY_GATEWAY_SECRET": "keep me to yourself",
            "NURSERY_WEB_SECRET": "keep me to yourself",
        }
    )
    assert "keep me" not in repr(settings)


def test_a_zone_is_one_that_there_is() -> None:
    """Names of the IANA database."""
    assert is_zone("Asia/Dhaka") and is_zone("UTC")
    assert not any(map(is_zone, ("", "Africa", "Asia/Nowhere", "\0", "/etc/passwd")))
