"""The checks themselves: how many there are, that each names its source, and their table."""

from tests.reference.sourced import (
    CITED,
    HERE,
    INDEPENDENT,
    NO_PUBLISHER,
    PRACTICE,
    checks,
    page,
)

CHECKS = list(checks())


def test_what_is_called_independent_names_a_publisher_or_a_library():
    """And what has none says that it is arithmetic or common practice."""
    nobody = NO_PUBLISHER - {"scipy"}
    for check in CHECKS:
        if nobody.issuperset(check.sources):
            assert check.kind in ("arithmetic", PRACTICE), check.name
        if check.kind == PRACTICE:
            assert nobody.issuperset(check.sources), check.name


def test_there_are_as_many_independent_checks_as_could_be_had():
    """Counted by what they prove, not by what they cite; forty were looked for."""
    assert sum(check.kind == INDEPENDENT for check in CHECKS) >= 36


def test_every_check_says_what_it_holds_against_what():
    """A sentence and known sources; no two of one name."""
    for check in CHECKS:
        assert check.says.endswith("."), check.name
        assert set(check.sources) <= set(CITED)
    assert len({check.name for check in CHECKS}) == len(CHECKS)


def test_every_publication_that_is_cited_is_used():
    """The list holds nothing that no check stands on."""
    used = {key for check in CHECKS for key in check.sources}
    assert sorted(set(CITED) - used) == []


def test_the_committed_table_is_the_generated_one():
    """CHECKS.md was made from the tests as they are now (the page says how to make it anew)."""
    assert (HERE / "CHECKS.md").read_text(encoding="utf-8") == page()
