"""`python .ci/needs.py SITE`: what the wheel installed in SITE asks for, linked from here.

Everything was brought from the network once, for the tests; of that the new environment has
what the wheel's own metadata name, and what those name in turn. What only the developers have
is not found there, as it is not found by somebody who installs the wheel.
"""

import sys
from collections.abc import Iterator
from importlib.metadata import Distribution, PathDistribution, distribution, distributions
from pathlib import Path

from packaging.requirements import Requirement

Need = tuple[str, frozenset[str]]  # a distribution and the extras that are wanted of it


def needs(of: Distribution, extras: frozenset[str]) -> Iterator[Need]:
    """What a distribution asks for on this machine, with these extras of it."""
    for line in of.requires or ():
        need = Requirement(line)
        wanted = extras or {""}
        if not need.marker or any(need.marker.evaluate({"extra": each}) for each in wanted):
            yield need.name.lower(), frozenset(need.extras)


def closure(of: Distribution) -> dict[Need, Distribution]:
    """All that it asks for, and what that asks for; PackageNotFoundError where one is not."""
    found: dict[Need, Distribution] = {}
    open_ones = list(needs(of, frozenset()))
    while open_ones:
        name, extras = open_ones.pop()
        if (name, extras) not in found:
            found[name, extras] = distribution(name)
            open_ones += needs(found[name, extras], extras)
    return found


def link(there: Distribution, site: Path) -> None:
    """Puts its folders and modules into a folder of packages, but no programs."""
    tops = {file.parts[0] for file in there.files or ()} - {"..", "__pycache__"}
    for top in tops:
        if not (site / top).exists():
            (site / top).symlink_to(str(there.locate_file(top)))


def main() -> None:
    """Links all."""
    site = Path(sys.argv[1])
    (wheel,) = (each for each in distributions(path=[str(site)]) if each.name == "nursery")
    assert isinstance(wheel, PathDistribution)
    for each in closure(wheel).values():
        link(each, site)


if __name__ == "__main__":
    main()
