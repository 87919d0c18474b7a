"""Ways of raising seedlings. One file each; adding one needs no code (see `mat.toml`)."""

from assistant.agronomy.practices.mat import MAT
from assistant.agronomy.practices.practice import (
    Anchor,
    Bed,
    Days,
    Labour,
    Piece,
    PieceKind,
    Planting,
    Point,
    Practice,
    TaskRule,
    Window,
)

__all__ = [
    "MAT",
    "Anchor",
    "Bed",
    "Days",
    "Labour",
    "Piece",
    "PieceKind",
    "Planting",
    "Point",
    "Practice",
    "TaskRule",
    "Window",
]
