"""What settings say only together: hours in their order, limits and their price, and what
would leave texts or the pages open."""

from collections.abc import Iterator

from assistant.settings import Settings
from assistant.settings.kinds import ADDRESSES

_HERE = ("127.0.0.1", "localhost", "::1")
SHORTEST_SECRET = 16  # characters; 128 bits where they are random and hexadecimal


def disagreements(settings: Settings) -> Iterator[str]:
    """What does not go together, by the names of the settings and with what to set."""
    yield from filter(None, (_disorder(settings), _moneyless(settings)))


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


def unsafe(settings: Settings) -> Iterator[str]:
    """What would leave texts, or the page, open to whoever is on the way."""
    if settings.gateway_url and not settings.gateway_url.startswith(ADDRESSES):
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
