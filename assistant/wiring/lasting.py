"""While much is made that stays until the process ends, the garbage collector rests."""

import gc
from collections.abc import Iterator
from contextlib import contextmanager

from assistant.reading.text.rules import forget_written
from assistant.wiring.word_lists import forget_folded


@contextmanager
def lasting() -> Iterator[None]:
    """What is made within is never looked through for garbage, neither now nor later.

    Word lists are a million small values. Looking through them again and again while they are
    read was a third of a start, and once they stand it would hold an answer up every so often.
    What was kept only for reading goes at the end.
    """
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        forget_written()
        forget_folded()
        gc.freeze()
        if was_on:
            gc.enable()
