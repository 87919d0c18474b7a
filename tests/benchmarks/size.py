"""How large the benchmarks are: whole, or small, to see that none is broken."""

from os import environ

SMALL = environ.get("NURSERY_BENCHMARKS") == "small"


def sized(whole: int, *, small: int) -> int:
    """A number of rows or turns of a whole run, or that of a small one."""
    return small if SMALL else whole
