"""Names that mean more than one thing: `python -m tests.benchmarks.names`.

Counted are public classes of one name in several modules, and modules that are called by one
letter, with how many modules a letter stands for. A reader who meets such a name has to look up
which one is meant. `tests/unit/test_names.py` holds the counts down.
"""

import ast
from collections import defaultdict
from collections.abc import Iterator, Mapping
from functools import cache
from pathlib import Path

ROOT = Path(__file__).parents[2]
PACKAGES = ("assistant", "gateway_sim", "scenarios")
NOT_OURS = ("migrations",)  # written once each, and called by nobody

Homes = Mapping[str, tuple[str, ...]]


@cache
def modules() -> tuple[tuple[str, ast.Module], ...]:
    """Every module of the packages under its dotted name, read."""
    return tuple(_read())


def _read() -> Iterator[tuple[str, ast.Module]]:
    for package in PACKAGES:
        for path in sorted((ROOT / package).rglob("*.py")):
            if not set(NOT_OURS) & set(path.parts):
                dotted = ".".join(path.relative_to(ROOT).with_suffix("").parts)
                yield dotted, ast.parse(path.read_text("utf-8"))


def classes() -> Homes:
    """Public class -> the modules that have one of that name."""
    found: dict[str, list[str]] = defaultdict(list)
    for dotted, tree in modules():
        for node in tree.body:
            if isinstance(node, ast.ClassDef) and not node.name.startswith("_"):
                found[node.name].append(dotted)
    return {name: tuple(homes) for name, homes in found.items()}


def letters() -> Homes:
    """Letter -> the modules that it stands for somewhere."""
    found: dict[str, set[str]] = defaultdict(set)
    for _, tree in modules():
        for node in ast.walk(tree):
            for name, module in _renamed(node):
                if len(name) == 1:
                    found[name].add(module)
    return {letter: tuple(sorted(named)) for letter, named in sorted(found.items())}


def _renamed(node: ast.AST) -> Iterator[tuple[str, str]]:
    """`import a.b as c`, and `from a import b as c`: c, a.b."""
    if isinstance(node, ast.Import):
        yield from ((each.asname, each.name) for each in node.names if each.asname)
    if isinstance(node, ast.ImportFrom):
        for each in node.names:
            if each.asname:
                yield each.asname, f"{node.module}.{each.name}"


def shared(homes: Homes) -> Homes:
    """Those that stand for more than one thing, the worst first."""
    many = [(name, found) for name, found in homes.items() if len(found) > 1]
    return dict(sorted(many, key=lambda each: (-len(each[1]), each[0])))


def main() -> None:
    """Prints them."""
    for what, homes in (("classes", classes()), ("modules by one letter", letters())):
        several = shared(homes)
        print(f"{what}: {len(homes)} names, {len(several)} of them for", end=" ")
        print(f"{sum(map(len, several.values()))} things")
        for name, found in several.items():
            print(f"  {name}: {', '.join(found)}")


if __name__ == "__main__":
    main()
