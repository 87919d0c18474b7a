"""The exceptions of this room: what our own code did wrong, never what a person typed."""


class AgronomyError(ValueError):
    """A value reached the arithmetic that a reader should have asked about first.

    The text names what was expected, what came, and what to do next.
    """
