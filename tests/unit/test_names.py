"""One name, one meaning: what `python -m tests.benchmarks.names` counts does not grow."""

from tests.benchmarks.names import classes, letters, shared

# What was counted when this was written; who mends one lowers it, nobody raises it.
SHARED_CLASSES, SHARED_LETTERS = 95, 12


def test_no_more_class_names_have_two_homes() -> None:
    """A new class has a name that no other module's class has."""
    found = shared(classes())
    assert len(found) <= SHARED_CLASSES, f"give the new one a name of its own: {found}"


def test_no_more_letters_stand_for_two_modules() -> None:
    """A module is called by a word, or by a letter that stands for no other module."""
    found = shared(letters())
    assert len(found) <= SHARED_LETTERS, f"write the module's name: {found}"
