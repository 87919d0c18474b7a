"""While much is made that stays until the process ends, the garbage collector rests."""

import gc
from collections.abc import Iterator
from contextlib import contextmanager


@contextmanager
def lasting() -> Iterator[None]:
    """What is made within is never looked through for garbage, neither now nor later.

    Word lists are a million small values. Looking through them again and again while they are
    read was a third of a start, and once they stand it would hold an answer up every so often.
    """
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        gc.freeze()
        if was_on:
            gc.enable()
