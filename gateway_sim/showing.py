"""What stands beside the phones where somebody shows them: people's stories, and a clock that
is pushed."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field


@dataclass(frozen=True)
class Owner:
    """Whose phone it is. `small`: a phone with few lines on its screen."""

    name: str
    story: str
    small: bool = False


@dataclass(frozen=True)
class Push:
    """One way to move the clock. `begin` returns at once; the way may take some time."""

    label: str
    begin: Callable[[], None]


@dataclass(frozen=True)
class Showing:
    """What the phone page shows besides.

    owners:  by number, in the order in which phones are offered
    pushes:  ways to move the clock, by a key
    zone:    the time zone (IANA) that the phones show; "" where it is the watcher's own
    local:   what the clock shows, as people read it
    busy:    whether a push is still under way
    beside:  a page to open beside this one, as (label, address)
    """

    owners: Mapping[str, Owner] = field(default_factory=dict)
    pushes: Mapping[str, Push] = field(default_factory=dict)
    zone: str = ""
    local: Callable[[], str] = lambda: ""
    busy: Callable[[], bool] = lambda: False
    beside: Callable[[], tuple[str, str]] | None = None
