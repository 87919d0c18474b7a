"""The settings of one deployment: one frozen value, units in the names, read once."""

import re
import tomllib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, fields, replace
from datetime import time
from decimal import Decimal, InvalidOperation
from difflib import get_close_matches
from zoneinfo import ZoneInfo

LAST_PORT = 65_535
_ADDRESSES = ("https://", "http://127.0.0.1:", "http://localhost:")  # http: on this machine
# Read where a command begins, or by the simulator.
_NOT_OURS = frozenset({"NURSERY_SETTINGS_FILE", "NURSERY_CALLBACK_URL"})
_HERE = ("127.0.0.1", "localhost", "::1")
_HOST = re.compile(r"[a-z0-9.-]{1,253}|\[[0-9a-f:]+\]")
SHORTEST_SECRET = 16  # characters; 128 bits where they are random and hexadecimal
SMALLEST_SCREEN = 40
MOST_A_SEGMENT = 1_000_000
LAST_MONTH = 12
_CLOCK = re.compile(r"([01][0-9]|2[0-3]):[0-5][0-9]")
_CURRENCY = re.compile(r"[A-Z]{3}")
_REGION = re.compile(r"[A-Za-z]{2}(-[A-Za-z0-9]{1,3})?")


class SettingsError(Exception):
    """One or more settings cannot be used; the text lists all of them and what to set."""


@dataclass(frozen=True)
class Settings:
    """All settings. Each is read from NURSERY_<NAME>; what is not set keeps its default."""

    database_url: str = "sqlite:///.nursery/nursery.sqlite3"
    key_file: str = ""  # the deployment's own key; none: beside a SQLite file, else .nursery/
    journal_file: str = ""  # of who said STOP; none: beside a SQLite file
    programme: str = "Rice nursery"
    programme_file: str = ""  # TOML, see wiring.programme
    zone: str = "UTC"
    region: str = ""  # ISO 3166-1 or -2, for units of land and local phone numbers
    languages: tuple[str, ...] = ("en", "sw")
    prompt_at: time = time(6, 0)
    second_at: time = time(16, 0)
    quiet_from: time = time(20, 0)
    quiet_until: time = time(5, 30)
    urgent_breaks_quiet: bool = True
    alarm_next_minutes: int = 10  # without an answer to an alarm the next person is told
    price_per_segment: Decimal = Decimal(0)  # what the operator takes; 0: not known
    currency: str = ""  # ISO 4217, of that price
    day_segments: int = 0  # after so many a day only dangers leave; 0: no limit
    village_segments: int = 0  # the same for one village; 0: no limit
    village_month_money: Decimal = Decimal(0)  # the same for what a village costs a month
    officer_day_texts: int = 2000  # so many phones an officer who is no lead writes to a day
    officer_month_texts: int = 0  # the same a month; 0: no limit
    strangers_hour_answers: int = 500  # so many answers an hour to unknown numbers
    month_money: Decimal = Decimal(0)  # the same for what a month costs, by that price
    four_eyes: int = 500  # letters to more phones than that are sent by another lead
    season_months: tuple[int, ...] = (1, 7)  # a season begins with each; by the day of sowing
    practices_folder: str = ""  # TOML files of more ways to raise seedlings, one each
    prices_file: str = ""  # TOML, what seed, soil, labour cost here; see README
    varieties_file: str = ""  # TOML, the varieties grown here and their days; see README
    alerts_from: tuple[str, ...] = ()  # official alerts: files, folders, https addresses
    alerts_then: str = "drafted"  # for an officer to decide; "sent": farmers are warned at once
    alerts_keys: tuple[str, ...] = ()  # certificates (PEM) of who signs them; none: not checked
    alerts_every_s: float = 300.0
    gateway_url: str = ""  # the operator's address; none: the simulator is started beside
    gateway_secret: str = field(default="", repr=False)
    gateway_secret_before: str = field(default="", repr=False)  # also good, while it is changed
    gateway_timeout_s: float = 10.0
    lines_file: str = ""  # TOML, several lines in place of the one above; see README
    replies_free: bool = False  # farmers pay nothing for a reply; they are told which
    sender: str = "+447700900000"
    ussd_code: str = "*555*7#"
    screen_septets: int = 182
    screen_ucs2: int = 80
    host: str = "127.0.0.1"
    port: int = 8470
    calls_port: int = 0  # where operators call, apart from the pages; 0: at the same port
    log_lines: str = "text"  # how the log is written; "json": an object a line
    metrics_port: int = 0  # figures for who watches, at 127.0.0.1 only; 0: none
    web_secret: str = field(default="", repr=False)  # instead of the key in that file
    second_factor: bool = True  # leads sign in with a code of an app as well
    code_uses: int = 5  # so often an officer's code by SMS is good; then the next one is sent
    web_https: bool = False  # officers reach the page by https, through a proxy in front
    web_hosts: tuple[str, ...] = ()  # names by which they reach it; this machine's always count
    web_proxy: str = "127.0.0.1"  # where that proxy is: what it says of who asks is believed
    copies_folder: str = ""  # where the worker copies the database once a day; none: nowhere
    copies_kept: int = 7
    worker_pause_s: float = 1.0
    lease_s: float = 20.0  # twice the longest answer: what a killed worker held waits so long
    send_batch: int = 100
    send_hands: int = 16  # texts on their way to the operator at once


def from_file(text: str, place: str) -> dict[str, str]:
    """The entries of a settings file (TOML, names as in `Settings`), as an environment has
    them.

    Raises:
        SettingsError: it cannot be read, or has entries that are no settings; the nearest are
            named.
    """
    try:
        given = tomllib.loads(text)
    except tomllib.TOMLDecodeError as fault:
        raise SettingsError(f"{place}: {fault}; nursery settings prints one") from fault
    faults = [f"{place}: {_unknown(name)}" for name in given if _unknown(name)]
    if faults:
        raise SettingsError("Mend the settings file and start again:\n  " + "\n  ".join(faults))
    return {f"NURSERY_{name.upper()}": _as_text(value) for name, value in given.items()}


def mistyped(environment: Mapping[str, str]) -> list[str]:
    """What is set in the environment and is nearly the name of a setting."""
    names = [name for name in environment if name.startswith("NURSERY_")]
    names = [name for name in names if name not in _NOT_OURS]
    faults = ((name, _unknown(name.removeprefix("NURSERY_").lower())) for name in names)
    return [f"{name}: {fault}" for name, fault in faults if "did you mean" in fault]


def _unknown(name: str) -> str:
    """Why this is no setting; empty where it is one."""
    known = [each.name for each in fields(Settings)]
    if name in known:
        return ""
    near = get_close_matches(name, known, n=1, cutoff=0.8)
    hint = f"; did you mean {near[0]}?" if near else "; nursery settings lists all"
    return f"no setting is called {name}{hint}"


def _as_text(value: object) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, list):
        return ",".join(map(str, value))
    return str(value)


def read_settings(environment: Mapping[str, str]) -> Settings:
    """The settings from the environment.

    Raises:
        SettingsError: lists every entry that cannot be used.
    """
    given: dict[str, object] = {}
    faults: list[str] = []
    known = {f"NURSERY_{each.name.upper()}": each for each in fields(Settings)}
    for name, each in known.items():
        if name not in environment:
            continue
        try:
            given[each.name] = _READ.get(each.name, _plain)(environment[name], each.default)
        except ValueError as fault:
            faults.append(f"{name}={environment[name]!r}: {fault}")
    faults += mistyped(environment)
    settings = Settings(**given)  # type: ignore[arg-type]
    faults += filter(None, [_disorder(settings), _moneyless(settings), *_unsafe(settings)])
    if faults:
        raise SettingsError("Mend these settings and start again:\n  " + "\n  ".join(faults))
    return settings


def layered(settings: Settings, said: Mapping[str, str]) -> Settings:
    """Settings with what a page says of some of them, written as the environment has it.

    Raises:
        SettingsError: lists what cannot be used, with the names of the settings.
    """
    given: dict[str, object] = {}
    faults: list[str] = []
    for each in fields(Settings):
        if each.name not in said:
            continue
        try:
            given[each.name] = _READ.get(each.name, _plain)(said[each.name], each.default)
        except ValueError as fault:
            faults.append(f"{each.name}: {fault}")
    found = replace(settings, **given)  # type: ignore[arg-type]
    faults += filter(None, [_disorder(found), _moneyless(found)])
    if faults:
        raise SettingsError("; ".join(faults))
    return found


def _plain(text: str, default: object) -> object:
    if isinstance(default, bool):
        if text.lower() not in ("yes", "no"):
            raise ValueError("set yes or no")
        return text.lower() == "yes"
    if isinstance(default, int):
        return _number(int, text)
    if isinstance(default, float):
        return _number(float, text)
    if isinstance(default, time):
        return _hour(text)
    return text


def _number(kind: type[int] | type[float], text: str) -> float:
    try:
        number = kind(text)
    except ValueError:
        raise ValueError("set a number") from None
    if not 0 < number < float("inf"):
        raise ValueError("set a number above 0")
    return number


def _hour(text: str) -> time:
    if not _CLOCK.fullmatch(text):
        raise ValueError("set an hour of the day such as 06:00")
    return time.fromisoformat(text)


def _port(text: str, default: object) -> float:
    number = _number(int, text)
    if number > LAST_PORT:
        raise ValueError(f"set a number from 1 to {LAST_PORT}")
    return number


def _screen(text: str, default: object) -> float:
    number = _number(int, text)
    if number < SMALLEST_SCREEN:
        raise ValueError(f"set {SMALLEST_SCREEN} or more; less holds no choice and its hints")
    return number


def _zone(text: str, default: object) -> str:
    if not is_zone(text):
        raise ValueError("set an IANA time zone such as Africa/Nairobi")
    return text


def is_zone(name: str) -> bool:
    """Whether there is an IANA time zone of that name."""
    try:
        ZoneInfo(name)
    except (KeyError, ValueError, OSError):  # not found; no name of one; "Africa", a folder
        return False
    return True


def _region(text: str, default: object) -> str:
    if not _REGION.fullmatch(text):
        raise ValueError("set a country or its part as in ISO 3166, such as KE or IN-WB")
    return text.upper()


def _languages(text: str, default: object) -> tuple[str, ...]:
    codes = tuple(code.strip() for code in text.split(",") if code.strip())
    if not codes or not all(code.isalpha() for code in codes):
        raise ValueError("set the codes of languages with commas, such as en,sw")
    return codes


def read_price(text: str) -> Decimal:
    """A price from digits with a point.

    Raises:
        ValueError: no price; the text says what to write.
    """
    try:
        price = Decimal(text)
    except InvalidOperation:
        price = Decimal(-1)
    if not (price.is_finite() and 0 <= price <= MOST_A_SEGMENT):
        raise ValueError("set the price of one segment such as 0.80")
    return price


def _money(text: str, default: object) -> Decimal:
    try:
        return read_price(text)
    except ValueError:
        raise ValueError("set an amount of money such as 25000, or 0 for no limit") from None


def _limit(text: str, default: object) -> int:
    if not (text.isascii() and text.isdecimal() and len(text) < 10):
        raise ValueError("set a whole number, 0 for no limit")
    return int(text)


def _price(text: str, default: object) -> Decimal:
    return read_price(text)


def read_currency(text: str) -> str:
    """The code of a currency, in capitals.

    Raises:
        ValueError: no code; the text says what to write.
    """
    if not _CURRENCY.fullmatch(text.upper()):
        raise ValueError("set a currency as in ISO 4217, such as KES")
    return text.upper()


def _currency(text: str, default: object) -> str:
    return read_currency(text)


def _months(text: str, default: object) -> tuple[int, ...]:
    parts = [part.strip() for part in text.split(",")]
    months = sorted({int(part) for part in parts if part.isdecimal() and part.isascii()})
    if len(months) != len(parts) or not 1 <= months[0] <= months[-1] <= LAST_MONTH:
        raise ValueError("set the months in which seasons begin, such as 3,10")
    return tuple(months)


def _places(text: str, default: object) -> tuple[str, ...]:
    places = tuple(place.strip() for place in text.split(",") if place.strip())
    wrong = [place for place in places if "://" in place and not place.startswith(_ADDRESSES)]
    if wrong:
        raise ValueError(f"set files, folders and https addresses with commas, not {wrong[0]}")
    return places


def _then(text: str, default: object) -> str:
    if text not in ("drafted", "sent"):
        raise ValueError("set drafted or sent")
    return text


def _log_lines(text: str, default: object) -> str:
    if text not in ("text", "json"):
        raise ValueError("set text or json")
    return text


def _sender(text: str, default: object) -> str:
    digits = text.removeprefix("+")
    if not (text.startswith("+") and digits.isdigit() and 5 <= len(digits) <= 15):
        raise ValueError("set a number that can be answered, with + and its country code")
    return text


def _disorder(settings: Settings) -> str:
    """What is wrong with the hours of the day; prompts outside them would never leave."""
    hours = (settings.quiet_until, settings.prompt_at, settings.second_at, settings.quiet_from)
    if hours[0] <= hours[1] < hours[2] < hours[3]:
        return ""
    return (
        "NURSERY_QUIET_UNTIL, NURSERY_PROMPT_AT, NURSERY_SECOND_AT, NURSERY_QUIET_FROM: set "
        "them in the order of the day, such as 05:30, 06:00, 16:00, 20:00"
    )


def _moneyless(settings: Settings) -> str:
    limits = {
        "NURSERY_MONTH_MONEY": settings.month_money,
        "NURSERY_VILLAGE_MONTH_MONEY": settings.village_month_money,
    }
    for name, money in limits.items():
        if money and not settings.price_per_segment:
            return f"{name}: set NURSERY_PRICE_PER_SEGMENT too, to count it by"
    if not settings.price_per_segment or settings.currency:
        return ""
    return "NURSERY_CURRENCY: set the currency of NURSERY_PRICE_PER_SEGMENT, such as KES"


def _unsafe(settings: Settings) -> Iterator[str]:
    """What would leave texts, or the page, open to whoever is on the way."""
    if settings.gateway_url and not settings.gateway_url.startswith(_ADDRESSES):
        yield (
            "NURSERY_GATEWAY_URL: set an https address; by http everybody on the way reads "
            "the farmers' texts (on this machine http will do)"
        )
    for name in ("gateway_secret", "gateway_secret_before", "web_secret"):
        secret = getattr(settings, name)
        if secret and len(secret) < SHORTEST_SECRET:
            yield (
                f"NURSERY_{name.upper()}: set {SHORTEST_SECRET} characters or more that nobody "
                "guesses, such as: openssl rand -hex 32"
            )
    if settings.host not in _HERE and not settings.web_https:
        yield (
            "NURSERY_HOST: by http names and passwords can be read on the way; serve this "
            "machine only (127.0.0.1), or put a proxy with https in front and set "
            "NURSERY_WEB_HTTPS=yes"
        )
    if settings.web_https and not settings.web_hosts:
        yield "NURSERY_WEB_HOSTS: set the name by which officers reach the page by https"


def _hosts(text: str, default: object) -> tuple[str, ...]:
    hosts = tuple(host.strip().lower() for host in text.split(",") if host.strip())
    if any(not _HOST.fullmatch(host) for host in hosts):
        raise ValueError("set names without https:// and port, such as nursery.example.org")
    return hosts


_READ = {
    "web_hosts": _hosts,
    "zone": _zone,
    "region": _region,
    "languages": _languages,
    "price_per_segment": _price,
    "currency": _currency,
    "month_money": _money,
    "day_segments": _limit,
    "village_segments": _limit,
    "officer_day_texts": _limit,
    "officer_month_texts": _limit,
    "village_month_money": _money,
    "strangers_hour_answers": _limit,
    "four_eyes": _limit,
    "season_months": _months,
    "sender": _sender,
    "alerts_from": _places,
    "alerts_keys": _places,
    "alerts_then": _then,
    "log_lines": _log_lines,
    "port": _port,
    "metrics_port": _port,
    "calls_port": _port,
    "screen_septets": _screen,
    "screen_ucs2": _screen,
}
