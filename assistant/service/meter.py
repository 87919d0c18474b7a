"""What a process counts while it works, for who watches it; the wiring says where it goes."""

from typing import Protocol

from assistant.channel import Channel, Fate


class Meter(Protocol):
    """Where counts go."""

    def turned(self, channel: Channel, seconds: float) -> None:
        """A text or a dial was answered, and how long that took."""

    def handed(self, fate: Fate) -> None:
        """What an operator said of a text."""

    def receipts(self, count: int) -> None:
        """Receipts that were of ours."""


class NoMeter:
    """Nobody watches."""

    def turned(self, channel: Channel, seconds: float) -> None:
        """Nothing is counted."""

    def handed(self, fate: Fate) -> None:
        """Nothing is counted."""

    def receipts(self, count: int) -> None:
        """Nothing is counted."""
