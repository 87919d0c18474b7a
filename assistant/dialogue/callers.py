"""A farmer's name before the number, as an officer reads it in a text."""

from assistant.wording import messages_officer as o
from assistant.wording.message import Slot

LONGEST_NAME = 20  # letters; a notice with a village still fits one segment
_CUT = "..."


def caller(name: str | None, phone: str) -> Slot:
    """Name and number, to stand where a number stands; the number alone where no name is
    known. Long names are cut, never the number."""
    if not name:
        return phone
    if len(name) > LONGEST_NAME:
        name = f"{name[: LONGEST_NAME - len(_CUT)].rstrip()}{_CUT}"
    return o.CALLER(name=name, phone=phone)
