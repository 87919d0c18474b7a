"""What is to be said of a modem on the desk."""

from dataclasses import dataclass


@dataclass(frozen=True)
class ModemTerms:
    """A modem and its SIM card.

    port:      the serial port, such as /dev/ttyUSB0 (by-id names last longer)
    pin:       of the SIM; it is tried once, since three wrong ones block the card
    poll_s:    how often the store of the SIM is looked through besides
    doubt_s:   how long a text whose answer was lost waits for a report, before it goes again
    credit:    code that tells the credit, such as *100#, for `nursery line test`
    country:   put in the place of a leading 0, such as +44
    """

    port: str
    pin: str = ""
    baud: int = 115_200
    answer_s: float = 10.0
    send_s: float = 40.0
    poll_s: float = 10.0
    doubt_s: float = 20.0
    credit: str = ""
    country: str = ""

    def __post_init__(self) -> None:
        if self.pin and not (self.pin.isdecimal() and 4 <= len(self.pin) <= 8):
            raise ValueError("pin: set 4 to 8 digits, as on the letter of the SIM card")
