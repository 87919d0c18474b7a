"""Every line that there is has gone through the contract, and is played over."""

from pathlib import Path

import scenarios
from assistant.wiring.lines import KINDS
from scenarios.lines import LINES as PLAYED
from scenarios.lines import WIRE
from tests.contract.lines import LINES, MAPPED
from tests.scenario.over_lines import FAULTS

MAPPINGS = Path(scenarios.__file__).parent / "district" / "lines"


def test_each_kind_of_line_is_held_to_the_contract() -> None:
    for kind in KINDS:
        assert any(name.casefold().startswith(kind) for name in LINES), kind


def test_each_mapping_is_held_to_the_contract_and_played_on_a_bad_day() -> None:
    """A file that nobody opens may map anything."""
    mappings = {path.stem for path in MAPPINGS.glob("*.toml")}
    assert mappings == set(MAPPED)
    assert mappings <= set(PLAYED)


def test_each_line_that_is_played_has_its_faults() -> None:
    assert set(PLAYED) - {WIRE} == set(FAULTS)
