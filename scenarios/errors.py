"""What can be wrong with a season file or with how it went."""


class SeasonError(Exception):
    """A file that cannot be read as a season; says where and what to write instead."""

    def __init__(self, path: str, line: int, why: str) -> None:
        super().__init__(f"{path}:{line}: {why}" if line else f"{path}: {why}")


class Difference(Exception):
    """A season went otherwise than its file says; the text shows both."""
