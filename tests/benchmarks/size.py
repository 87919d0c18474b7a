"""How large the benchmarks are: whole, or small, to see that none is broken."""

from os import environ

# Another number of farmers than the usual five thousand: NURSERY_BENCHMARK_FARMERS=50000.
ASKED_FARMERS = int(environ.get("NURSERY_BENCHMARK_FARMERS", "0"))
SMALL = environ.get("NURSERY_BENCHMARKS") == "small"


def sized(whole: int, *, small: int) -> int:
    """A number of rows or turns of a whole run, or that of a small one."""
    return small if SMALL else whole
