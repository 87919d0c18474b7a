"""The settings of one deployment: one frozen value, units in the names, read once (`reading`).

Nothing is checked here, and nothing large opened: whoever only passes settings on, or only
names their fault, does not wait for what reads them.
"""

from dataclasses import dataclass, field
from datetime import time
from decimal import Decimal


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
    parts: tuple[str, ...] = ("alerts", "lists")  # official alerts, office lists; or without
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
