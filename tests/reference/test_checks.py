"""The checks themselves: how many there are, that each names its source, and their table."""

from tests.reference.sourced import CITED, HERE, NO_PUBLISHER, checks, page

CHECKS = list(checks())


def test_there_are_at_least_forty_checks_against_publications():
    """Those against plain arithmetic, memory, a library or common practice are not counted."""
    published = [each for each in CHECKS if not NO_PUBLISHER.issuperset(each.sources)]
    assert len(published) >= 40


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
