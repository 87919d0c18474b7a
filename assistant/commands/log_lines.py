"""Lines of the log: of a phone number no more than its end, which is enough to find it."""

import logging
import re

END = 3  # digits that stay
# With its plus, or as it is dialled at home; not the digits of an id, a hash or a time.
_NUMBER = re.compile(r"(?<![\w.:/-])(\+\d{2}|0)(\d{5,12})(\d{3})(?![\w:-])")


def masked(text: str) -> str:
    """The text with numbers that tell nobody's phone."""
    return _NUMBER.sub(lambda found: f"{found[1]}...{found[3]}", text)


class Masked(logging.Formatter):
    """Masks whole lines, what a fault says included: it may quote a row."""

    def format(self, record: logging.LogRecord) -> str:
        """The line."""
        return masked(super().format(record))
